using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;

namespace PlatformForge.Exports.Drawings;

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
        var bank = plan.Bank;
        if (bank is not null && bank.ReturnsIn(s, s).FirstOrDefault() is { } turn)
        {
            foreach (var facet in ReturnFacets.Of(bank, turn))
            {
                yield return new(facet, Palette.Of(Paint.Turf)) { Pen = ReturnFacets.Pen };
            }
        }
        else if (bank is not null)
        {
            Point2 edge = plan.ToLayout(s, bank.Edge.At(s)), foot = plan.ToLayout(s, bank.Foot.At(s));
            double top = plan.TopAt(s, plan.Back.At(s));
            yield return new([(edge, 0), (foot, 0), (foot, bank.Ground), (edge, top)], Palette.Of(Paint.Turf));
        }

        foreach (var strip in plan.Body.Top)
        {
            bool isCoping = strip.Role == StripRole.Coping;
            double thick = isCoping ? plan.Spec.Coping.Thickness : plan.Spec.Deck.Thickness, near = strip.Near.At(s), far = strip.Far.At(s);
            (Point2 Place, double Height) a = (plan.ToLayout(s, near), plan.TopAt(s, near)), b = (plan.ToLayout(s, far), plan.TopAt(s, far));
            yield return new([(a.Place, Math.Max(0, a.Height - thick)), (b.Place, Math.Max(0, b.Height - thick)), b, a],
                Palette.Of(isCoping ? CopingGrooves.PaintOf(plan) : Paint.Deck));
        }
    }
}
