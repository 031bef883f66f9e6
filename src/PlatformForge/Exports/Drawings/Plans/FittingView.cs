using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>What stands before a platform's walls and is let into them in plan, which lies under its edges: hidden outlines, each between two lines and two
/// chainages.</summary>
internal static class FittingView
{
    /// <summary>The same as closed lines on the layout.</summary>
    public static IEnumerable<Point2[]> Rings(PlatformPlan plan)
    {
        Point2 At(PlanLine line, double s) => plan.ToLayout(s, line.At(s));
        return Of(plan).Select(p => new[] { At(p.Near, p.From), At(p.Near, p.To), At(p.Far, p.To), At(p.Far, p.From), At(p.Near, p.From) });
    }

    /// <summary>Of a plan that has its cuts.</summary>
    public static IEnumerable<(PlanLine Near, PlanLine Far, double From, double To)> Of(PlatformPlan plan) =>
        plan.Fittings.SelectMany(r => r.Places).Select(p => (Lines: plan.LinesOf(p), p.Footprint))
            .Select(p => (p.Lines.Near, p.Lines.Far, p.Footprint.From, p.Footprint.To));
}
