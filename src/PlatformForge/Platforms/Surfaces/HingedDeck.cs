using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Platforms.Surfaces;

/// <summary>
/// Lays planes over a platform that share a line wherever two of them meet. Level parts without crossfall are one plane. With a crossfall, a
/// deck on a curve is part of a cone, and a plane can follow it only nearly: of all planes hinged at the given lines across, those are taken
/// whose coping keeps nearest to its height and whose lines across keep nearest to the fall asked, the worst place counting. A ramp is the plane
/// through the line at its head and the foot of its coping front.
/// </summary>
internal static class HingedDeck
{
    /// <summary>What the coping's front edge may be off its height, mm. Three quarters of a usual layer.</summary>
    public const double CopingAllowance = 0.15;

    /// <summary>What the fall from front edge to back may be off the fall asked at a line across, mm.</summary>
    public const double FallAllowance = 0.02;

    /// <summary>Planes are not hinged nearer to each other than this, mm, where nothing says where the cuts are.</summary>
    private const double UncutPitch = 100;

    /// <summary>The surface of a platform that has not been cut yet: hinged at stations some way apart.</summary>
    public static DeckSurface Uncut(PlatformPlan plan)
    {
        var hinges = new List<double>();
        double last = plan.Profile.StartHead;
        foreach (double s in plan.Stations.Where(s => s < plan.Profile.EndHead - (UncutPitch / 2)))
        {
            if (s >= last + UncutPitch)
            {
                hinges.Add(s);
                last = s;
            }
        }

        return Of(plan, hinges);
    }

    /// <summary>The surface hinged at given stations of the plan; those on ramps bend nothing.</summary>
    public static DeckSurface Of(PlatformPlan plan, IEnumerable<double> hinges)
    {
        var profile = plan.Profile;
        bool falls = plan.Spec.Deck.Crossfall > 0;
        double[] inside = falls ? [.. hinges.Where(s => s > profile.StartHead && s < profile.EndHead).Distinct().Order()] : [];
        HingeLine[] lines = [.. new[] { profile.StartHead }.Concat(inside).Append(profile.EndHead).Distinct().Select(s => HingeLine.At(plan, s))];
        var level = lines.Length == 1 ? [] : falls ? HingeProgram.Solve(plan, lines) : [new HeightPlane(profile.Level)];
        var surface = WithRamps(plan, lines, level);

        // Vehicles that may pass over the coping are held to its height: there it never stands higher.
        double high = plan.Spec.Face.BodiesPassOver && falls ? plan.Stations.Max(s => surface.At(s).At(plan.ToLayout(
            s,
            plan.CopingFront.At(s))) - profile.At(s)) : 0;
        return high > 0 ? surface with { Planes = Array.ConvertAll(surface.Planes, p => p with { Z = p.Z - high }) } : surface;
    }

    private static DeckSurface WithRamps(PlatformPlan plan, HingeLine[] lines, HeightPlane[] level)
    {
        var profile = plan.Profile;
        double fall = plan.Spec.Deck.Crossfall > 0 ? 1 / plan.Spec.Deck.Crossfall : 0;
        List<double> breaks = [.. lines.Select(l => l.Chainage)];
        List<HeightPlane> planes = [.. level];
        if (profile.StartHead > profile.From)
        {
            breaks.Insert(0, profile.From);
            planes.Insert(0, Ramp(plan, lines[0], level.Length > 0 ? level[0] : null, fall, profile.From, profile.StartFoot));
        }

        if (profile.EndHead < profile.To)
        {
            breaks.Add(profile.To);
            planes.Add(Ramp(plan, lines[^1], level.Length > 0 ? level[^1] : null, fall, profile.To, profile.EndFoot));
        }

        return new([.. breaks], [.. planes]);
    }

    private static HeightPlane Ramp(PlatformPlan plan, HingeLine head, HeightPlane? level, double fall, double end, double foot)
    {
        double top = level?.At(head.Front) ?? plan.Profile.Level, slope = level is { } l ? -((l.X * head.Away.X) + (l.Y * head.Away.Y)) : fall;
        var run = plan.ToLayout(end, plan.CopingFront.At(end)) - head.Front;
        var along = head.Away.Left;
        double rise = (foot - top + (slope * Point2.Dot(head.Away, run))) / Point2.Dot(along, run);
        double x = (along.X * rise) - (head.Away.X * slope), y = (along.Y * rise) - (head.Away.Y * slope);
        return new(top - (x * head.Front.X) - (y * head.Front.Y), x, y);
    }
}

/// <summary>A straight line across the platform at which two planes meet.</summary>
/// <param name="Chainage">mm; a station of the plan.</param>
/// <param name="Front">Its point on the coping's front edge, layout frame, mm.</param>
/// <param name="Away">Unit direction away from the track.</param>
/// <param name="Length">Length over which the deck falls along it, mm: the deck's width, and more where it lies askew.</param>
internal readonly record struct HingeLine(double Chainage, Point2 Front, Point2 Away, double Length)
{
    public static HingeLine At(PlatformPlan plan, double chainage)
    {
        Point2 front = plan.ToLayout(chainage, plan.CopingFront.At(chainage));
        double length = plan.Spec.IsIsland || plan.Body.Across is null ? plan.Spec.Deck.Width
            : (plan.ToLayout(chainage, plan.Back.At(chainage)) - front).Length;
        return new(chainage, front, plan.Spine.Away(chainage), length);
    }
}
