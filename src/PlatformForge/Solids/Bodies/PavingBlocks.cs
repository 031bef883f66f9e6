using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;

namespace PlatformForge.Solids.Bodies;

/// <summary>The joints of a paving, engraved in the deck: printed face down they are small channels over the bed.</summary>
internal static class PavingBlocks
{
    /// <summary>What a deck shows.</summary>
    public static Paint PaintOf(PlatformPlan plan) => plan.Spec.Deck.Paving?.Kind switch
    {
        PavingKind.Flags => Paint.Concrete,
        PavingKind.Setts => Paint.Stone,
        PavingKind.Planks => Paint.Timber,
        PavingKind.Bricks => Paint.Paver,
        _ => Paint.Deck,
    };

    /// <summary>Cuts the joints between two chainages.</summary>
    /// <returns>Their area from above, mm², those that cross counted twice.</returns>
    public static double Cut(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var plan = chart.Plan;
        if (PavingLayout.Of(plan) is not { } layout || plan.Spec.Deck.Paving is not { } paving)
        {
            return 0;
        }

        double half = paving.Joint / 2, area = 0;
        foreach (var joint in layout.Joints)
        {
            double a = Math.Max(from, joint.From - (joint.IsAcross ? half : 0)), b = Math.Min(to, joint.To + (joint.IsAcross ? half : 0));
            if (b - a < Tolerances.GridStep)
            {
                continue;
            }

            var (near, far) = joint.IsAcross ? (layout.At(joint.Near), layout.At(joint.Far)) : (layout.At(joint.Near, -half), layout.At(joint.Far, half));
            area += (b - a) * (far.At(a) - near.At(a));
            foreach (var piece in top.Cover(near, far, a, b))
            {
                blocks.Add(Layer.Removed(piece.Ring, piece.Top.Raised(-paving.Depth), piece.Top.Raised(Layer.Above), PaintOf(plan)));
            }
        }

        return area;
    }
}
