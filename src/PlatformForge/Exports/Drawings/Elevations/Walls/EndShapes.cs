using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Copings;

namespace PlatformForge.Exports.Drawings.Elevations.Walls;

/// <summary>What shows at an end of a platform beside and over its end wall.</summary>
/// <param name="Ring">Corners of a convex outline, each a place in plan with its height over the baseboard, mm.</param>
/// <param name="Colour">What it shows.</param>
internal sealed record EndShape(IReadOnlyList<(Point2 Place, double Height)> Ring, Rgb Colour)
{
    /// <summary>The line round it.</summary>
    public Pen Pen { get; init; } = HouseStyle.Thin;
}

/// <summary>The ends of deck and copings, which stand out over the walls, and of a bank or the return that goes on from it.</summary>
internal static class EndShapes
{
    /// <param name="plan">The platform.</param>
    /// <param name="s">Chainage of the end, mm.</param>
    public static IEnumerable<EndShape> Of(PlatformPlan plan, double s)
    {
        foreach (var shape in plan.Bank is { } bank ? OfBank(plan, bank, s) : [])
        {
            yield return shape;
        }

        var corner = CopingReturn.Of(plan).FirstOrDefault(r => r.End == s);
        foreach (var strip in plan.Body.Top.Where(t => corner is null || t.Role != StripRole.Coping))
        {
            bool isCoping = strip.Role == StripRole.Coping;
            yield return Edge(strip.Near, strip.Far, isCoping ? plan.Spec.Coping.Thickness : plan.Spec.Deck.Thickness,
                isCoping ? CopingGrooves.PaintOf(plan) : Paint.Deck);
        }

        if (corner is not null)
        {
            // Slab by slab, from the front to the back; the slab at the corner is the first of the edge.
            bool meets = plan.Body.FarCopingBack is not null;
            PlanLine[] joints = [.. corner.Grooves(plan.Spec.Coping, meets).Where(g => g.IsJoint)
                .Select(g => g.Near.Shifted(plan.Spec.Coping.JointWidth / 2)).OrderBy(l => l.At(s))];
            PlanLine[] bounds = [plan.CopingFront, .. joints, plan.Back];
            foreach (var (near, far) in bounds.Zip(bounds.Skip(1)))
            {
                yield return Edge(near, far, plan.Spec.Coping.Thickness, CopingGrooves.PaintOf(plan));
            }
        }

        EndShape Edge(PlanLine a, PlanLine b, double thick, Paint paint)
        {
            (Point2 Place, double Height) Top(PlanLine line) => (plan.ToLayout(s, line.At(s)), plan.TopAt(s, line.At(s)));
            var (near, far) = (Top(a), Top(b));
            return new([(near.Place, Math.Max(0, near.Height - thick)), (far.Place, Math.Max(0, far.Height - thick)), far, near], Palette.Of(paint));
        }
    }

    // The bank's end, or the facets of the return that it goes on in.
    private static EndShape[] OfBank(PlatformPlan plan, PlanBank bank, double s)
    {
        if (bank.ReturnsIn(s, s).FirstOrDefault() is { } turn)
        {
            return [.. ReturnFacets.Of(bank, turn).Select(facet => new EndShape(facet, Palette.Of(Paint.Turf)) { Pen = ReturnFacets.Pen })];
        }

        Point2 edge = plan.ToLayout(s, bank.Edge.At(s)), foot = plan.ToLayout(s, bank.Foot.At(s));
        double top = plan.TopAt(s, plan.Back.At(s));
        return [new([(edge, 0), (foot, 0), (foot, bank.Ground), (edge, top)], Palette.Of(Paint.Turf))];
    }
}
