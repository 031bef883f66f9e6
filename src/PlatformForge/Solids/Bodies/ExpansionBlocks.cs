using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;

namespace PlatformForge.Solids.Bodies;

/// <summary>Expansion joints, engraved in the deck.</summary>
internal static class ExpansionBlocks
{
    /// <summary>Cuts those between two chainages.</summary>
    /// <returns>Their area from above, mm².</returns>
    public static double Cut(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var (near, far) = ExpansionJoints.Between(chart.Plan);
        double area = 0;
        foreach (double at in ExpansionJoints.Of(chart.Plan))
        {
            double a = Math.Max(from, at - (DeckSpec.JointWidth / 2)), b = Math.Min(to, at + (DeckSpec.JointWidth / 2));
            if (b - a < Tolerances.GridStep)
            {
                continue;
            }

            area += (b - a) * (far.At(at) - near.At(at));
            foreach (var piece in top.Cover(near, far, a, b))
            {
                blocks.Add(Layer.Removed(piece.Ring, piece.Top.Raised(-DeckSpec.JointDepth), piece.Top.Raised(Layer.Above),
                    PavingBlocks.PaintOf(chart.Plan)));
            }
        }

        return area;
    }
}
