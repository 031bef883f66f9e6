using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>Piers, buttresses, downpipes and openings of a platform's walls in plan, which lie under its edges: hidden outlines, each between two lines and two
/// chainages.</summary>
internal static class PierView
{
    /// <summary>The same as closed lines on the layout.</summary>
    public static IEnumerable<Point2[]> Rings(PlatformPlan plan)
    {
        Point2 At(PlanLine line, double s) => plan.ToLayout(s, line.At(s));
        return Of(plan).Select(p => new[] { At(p.Near, p.From), At(p.Near, p.To), At(p.Far, p.To), At(p.Far, p.From), At(p.Near, p.From) });
    }

    /// <summary>Of a plan that has its cuts.</summary>
    public static IEnumerable<(PlanLine Near, PlanLine Far, double From, double To)> Of(PlatformPlan plan) =>
        plan.Piers.Select(p => (plan.WallAt(p.IsFar, p.Middle), plan.Panels(p.IsFar), p.From, p.To)).Concat(Pipes(plan))
        .Concat(plan.WallOpenings.Select(o =>
        {
            double half = o.Spec.Width / 2 / plan.Spine.Stretch(o.Chainage, plan.Panels(o.IsFar).At(o.Chainage));
            var face = plan.Panels(o.IsFar);
            var behind = o.Spec.IsThrough ? o.IsFar ? plan.BackWallFace : plan.WallBack : face.Shifted(o.IsFar ? -o.Spec.Depth : o.Spec.Depth);
            return (face, behind, o.Chainage - half, o.Chainage + half);
        }));

    // Pipes without what stands round them.
    private static IEnumerable<(PlanLine Near, PlanLine Far, double From, double To)> Pipes(PlatformPlan plan)
    {
        foreach (var pipe in plan.Downpipes)
        {
            var spec = plan.Spec.Facing!.Downpipes!;
            var panel = plan.Panels(pipe.IsFar);
            double before = spec.Projection - spec.Clip, half = spec.Diameter / 2 / plan.Spine.Stretch(pipe.Middle, panel.At(pipe.Middle));
            yield return (panel.Shifted(pipe.IsFar ? before : -before), panel, pipe.Middle - half, pipe.Middle + half);
        }
    }
}
