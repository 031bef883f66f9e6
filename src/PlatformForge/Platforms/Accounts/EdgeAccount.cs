using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms;

/// <summary>
/// All that decides the coping's place at one chainage, and what each style of edge would make of it. Lengths in mm of the model, reaches from the
/// track's middle.
/// </summary>
/// <param name="Chainage">Where.</param>
/// <param name="Vehicle">The vehicle that reaches farthest, with its track where that is another one.</param>
/// <param name="Part">Its part that does.</param>
/// <param name="Bare">Its reach without any play.</param>
/// <param name="Allowances">What each allowance adds; with the bare reach they come to <paramref name="Required"/>.</param>
/// <param name="Required">Least reach of the coping.</param>
/// <param name="Styles">One a style of edge.</param>
public sealed record EdgeAccount(
    double Chainage, string Vehicle, string Part, double Bare, IReadOnlyList<AllowanceAmount> Allowances, double Required, IReadOnlyList<StyleAccount> Styles)
{
    /// <summary>The account of a plan at a chainage; beyond an end, that of the end. Between stations all is straight.</summary>
    public static EdgeAccount At(PlatformPlan plan, double chainage)
    {
        var need = plan.Requirement;
        double s = Math.Clamp(chainage, plan.Spec.Face.From, plan.Spec.Face.To);
        double place = Math.Clamp((s - need.Stations[0]) / (need.Stations[1] - need.Stations[0]), 0, need.Stations.Length - 1);
        int i = Math.Min((int)place, need.Stations.Length - 2), near = (int)Math.Round(place);
        double share = place - i;
        double Between(Func<int, double> value) => value(i) + (share * (value(i + 1) - value(i)));
        var parts = need.Allowances ?? new(need.Swept, []);
        return new(
            s,
            need.GoverningVehicle[near] < 0 ? "" : need.Called(need.GoverningVehicle[near]),
            need.GoverningPart[near],
            Between(k => parts.Bare[k]),
            [.. parts.Costs.Select(c => new AllowanceAmount(c.Name, Between(k => c.Amount[k])))],
            Between(need.Required),
            [.. Enum.GetValues<EdgeStyle>().Select(style => StyleAccount.At(plan, style, s))]);
    }
}

/// <summary>What an allowance costs at one place, mm.</summary>
public sealed record AllowanceAmount(string Name, double Mm);

/// <summary>What a style of edge comes to at one place.</summary>
/// <param name="Style">The style.</param>
/// <param name="Chosen">Whether it is the one that is built.</param>
/// <param name="Reach">Its coping from the track's middle, mm.</param>
/// <param name="Gaps">Level gaps to the doors of each vehicle that has them there.</param>
public sealed record StyleAccount(EdgeStyle Style, bool Chosen, double Reach, IReadOnlyList<DoorGap> Gaps)
{
    internal static StyleAccount At(PlatformPlan plan, EdgeStyle style, double s)
    {
        // A gap moves with the edge: what another style would leave is the chosen one's gap and the difference of the edges.
        double reach = plan.Alternatives[(int)style].At(s), moved = reach - plan.CopingFront.At(s);
        return new(style, style == plan.Spec.Face.Edge, reach, [.. plan.Gaps.Traces
            .Select(t => new DoorGap(t.Vehicle, new PlanLine(t.Stations, t.Nearest).At(s) + moved, new PlanLine(t.Stations, t.Farthest).At(s) + moved))
            .Where(g => double.IsFinite(g.Nearest) && double.IsFinite(g.Farthest))]);
    }
}

/// <summary>Gap from a coping to a vehicle's door sills at one place: when the nearest door stands there and when the farthest does, mm.</summary>
public sealed record DoorGap(string Vehicle, double Nearest, double Farthest);
