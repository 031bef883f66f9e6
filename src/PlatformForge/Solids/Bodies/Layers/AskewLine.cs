using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;

namespace PlatformForge.Solids.Bodies.Layers;

/// <summary>A cut or an end of a platform that lies askew, or an open back at such an end, in the layout.</summary>
/// <param name="On">A place on it, mm.</param>
/// <param name="Along">Unit direction along it.</param>
public readonly record struct AskewLine(Point2 On, Point2 Along)
{
    /// <summary>All of a platform with a back; lines across an island are never far from square.</summary>
    public static IReadOnlyList<AskewLine> Of(PlatformPlan plan) =>
    [
        .. SkewSpec.Lines(plan.Spec).Select(c => new AskewLine(plan.ToLayout(c.At, plan.CopingFront.At(c.At)), plan.Spine.Away(c.At))),
        .. OpenBacks(plan),
    ];

    // The wall of an end askew runs out at an open back, which stands against a backscene, at an angle: what is laid on it would stand over that.
    private static IEnumerable<AskewLine> OpenBacks(PlatformPlan plan)
    {
        if (plan.Spec.IsIsland || plan.Spec.Back.Kind != BackKind.Open)
        {
            yield break;
        }

        if (plan.Spec.Skew.Start != 0)
        {
            yield return AtBack(plan, plan.Stations[0], plan.Stations[1]);
        }

        if (plan.Spec.Skew.End != 0)
        {
            yield return AtBack(plan, plan.Stations[^1], plan.Stations[^2]);
        }
    }

    private static AskewLine AtBack(PlatformPlan plan, double end, double next)
    {
        Point2 corner = plan.ToLayout(end, plan.Back.At(end)), along = plan.ToLayout(next, plan.Back.At(next)) - corner;
        return new(corner, along * (1 / along.Length));
    }
}
