using PlatformForge.Clearance;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.AsBuilt;

/// <summary>
/// Where a platform's edge really stands, by gaps measured on the layout, and what that leaves for each vehicle.
/// </summary>
/// <param name="Platform">Name of the platform.</param>
/// <param name="Measures">One a reading, in order of chainage.</param>
public sealed record AsBuiltEdge(string Platform, IReadOnlyList<EdgeMeasure> Measures)
{
    /// <summary>The reading that leaves least room; null when no vehicle comes to any.</summary>
    public EdgeMeasure? Worst => Measures.Where(m => m.Closest is not null).MinBy(m => m.Closest!.Left);

    /// <summary>How many readings name no vehicle and so count from the running edge of the nearer rail.</summary>
    public int FromRail => Measures.Count(m => m.Reading.Vehicle is null);

    /// <summary>
    /// Holds readings against a plan. Printing and fitting are in the readings, so what is left has to be the running clearance alone: less is a
    /// warning (PF4081), nothing at all an error (PF4080). A reading beyond the platform (PF4082) or of a vehicle that does not run there (PF4083) is
    /// an error.
    /// </summary>
    /// <param name="plan">The platform as planned.</param>
    /// <param name="envelope">What its vehicles sweep.</param>
    /// <param name="budget">What was kept.</param>
    /// <param name="gauge">Between the running edges, mm.</param>
    /// <param name="readings">The readings.</param>
    public static Outcome<AsBuiltEdge> Of(PlatformPlan plan, SweptEnvelope envelope, ClearanceBudget budget, double gauge, IReadOnlyList<EdgeReading> readings)
    {
        var face = plan.Spec.Face;
        Finding[] beyond = [.. readings.Where(r => !(r.Chainage >= face.From && r.Chainage <= face.To)).Select(r => At(r, Finding.Error(
            "PF4082", plan.Spec.Key, Invariant($"Chainage {r.Chainage:0.#} mm lies beyond the platform {plan.Spec.Name}."),
            Invariant($"It goes from {face.From:0.#} to {face.To:0.#} mm."))))];
        Finding[] strange = [.. readings.Where(r => r.Vehicle is { } name && !envelope.Parts.Any(p => p.IsFaced && string.Equals(
            p.Vehicle.Name,
            name,
            StringComparison.Ordinal))).Select(r => At(r, Finding.Error(
            "PF4083", plan.Spec.Key, $"No vehicle \"{r.Vehicle}\" runs past the platform {plan.Spec.Name}.",
            "Known: " + string.Join(", ", envelope.Parts.Where(p => p.IsFaced).Select(p => $"\"{p.Vehicle.Name}\"").Distinct())
            + ". Leave the field empty for a gap measured from the running edge.")))];
        if (beyond.Length + strange.Length > 0)
        {
            return Outcome.Fault<AsBuiltEdge>([.. beyond, .. strange]);
        }

        var edge = new AsBuiltEdge(plan.Spec.IsIsland ? $"{plan.Spec.Name}, track {face.Track}" : plan.Spec.Name,
            [.. readings.Select(r => Measure(plan, envelope, gauge, r)).OrderBy(m => m.Reading.Chainage).ThenBy(m => m.Reading.Line)]);
        return Outcome.Of(edge, [.. edge.Measures.Select(m => Judged(plan.Spec, budget, m)).OfType<Finding>()]);
    }

    private static EdgeMeasure Measure(PlatformPlan plan, SweptEnvelope envelope, double gauge, EdgeReading reading)
    {
        double planned = plan.First.CopingFront.At(reading.Chainage);
        var swept = Swept(plan, envelope, reading.Chainage);
        double truth = reading.Gap + (gauge / 2);
        if (reading.Vehicle is { } name)
        {
            // The sweep errs outwards; taken backwards from a gap, that error would put the edge too far away.
            var own = swept.Find(v => string.Equals(v.Vehicle, name, StringComparison.Ordinal));
            truth = own.Vehicle is null
                ? throw new BrokenInvariantException(Invariant($"Platforms: the vehicle {name} runs past the platform but never comes to ")
                + Invariant($"chainage {reading.Chainage}."))
                : own.Reach - envelope.ErrorBound + reading.Gap;
        }

        return new(reading, planned, truth, [.. swept.Select(v => new VehicleRoom(v.Vehicle, v.Part, v.Reach, planned - v.Reach, truth - v.Reach))]);
    }

    /// <summary>How far each vehicle of the faced track reaches at the nearest station, by the parts that the coping is held to.</summary>
    private static List<(string Vehicle, string Part, double Reach)> Swept(PlatformPlan plan, SweptEnvelope envelope, double chainage)
    {
        int station = Math.Clamp((int)Math.Round((chainage - envelope.From) / envelope.Spacing), 0, envelope.Count - 1);
        var heights = HeldHeights.At(plan.Spec, plan.Profile.At(chainage) - plan.Site.RailTop);
        var most = new List<(string Vehicle, string Part, double Reach)>();
        foreach (var part in envelope.Parts.Where(p => p.IsFaced))
        {
            double reach = heights.Counted(part, part.Towards(plan.Side)[station]);
            int known = most.FindIndex(m => string.Equals(m.Vehicle, part.Vehicle.Name, StringComparison.Ordinal));
            if (double.IsFinite(reach) && known < 0)
            {
                most.Add((part.Vehicle.Name, part.Part.Name, reach));
            }
            else if (double.IsFinite(reach) && reach > most[known].Reach)
            {
                most[known] = (part.Vehicle.Name, part.Part.Name, reach);
            }
        }

        return most;
    }

    private static Finding? Judged(PlatformSpec spec, ClearanceBudget budget, EdgeMeasure measure)
    {
        if (measure.Closest is not { } near || near.Left >= budget.Running)
        {
            return null;
        }

        string what = Invariant($"At chainage {measure.Reading.Chainage:0.#} mm the coping stands ")
            + (Math.Abs(measure.OffBy) < Told ? "where it was planned; " : Invariant($"{Math.Abs(measure.OffBy):0.00} ")
            + Invariant($"mm {(measure.OffBy < 0 ? "nearer to" : "farther from")} the track than planned; "));
        string remedy = Invariant($"Move it {budget.Running - near.Left:0.00} mm away from the track there.");
        return At(measure.Reading, near.Left < 0
            ? Finding.Error(
                "PF4080",
                spec.Key,
                what + Invariant($"{near.Vehicle} ({near.Part}) fouls it by {-near.Left:0.00} mm."),
                remedy,
                FaultKind.DesignRule)
            : Finding.Warning(
                "PF4081",
                spec.Key,
                what + Invariant($"{near.Left:0.00} mm are left for {near.Vehicle} ({near.Part}), {budget.Running:0.00} mm are wanted."),
                remedy));
    }

    // Half the last digit shown, mm.
    private const double Told = 0.005;

    private static Finding At(EdgeReading reading, Finding finding) => finding with { File = reading.File, Line = reading.Line, Column = 1 };
}
