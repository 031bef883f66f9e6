using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;

namespace PlatformForge.Solids.Bodies.Copings;

/// <summary>The joint between a coping and the deck, engraved.</summary>
internal static class CopingSeamBlocks
{
    /// <summary>Cuts it between two chainages.</summary>
    /// <returns>Its area from above, mm².</returns>
    public static double Cut(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        double area = 0;
        if (CopingSeam.Of(chart.Plan) is not { } seam)
        {
            return area;
        }

        foreach (var (near, far) in seam.Along(chart.Plan))
        {
            Groove(near, far, seam.From, seam.To);
        }

        foreach (var turn in CopingReturn.Of(chart.Plan))
        {
            var (near, far, a, b) = seam.Beside(chart.Plan, turn);
            Groove(near, far, a, b);
        }

        return area;

        void Groove(PlanLine near, PlanLine far, double first, double last)
        {
            if (Math.Min(to, last) - Math.Max(from, first) < Tolerances.GridStep)
            {
                return;
            }

            foreach (var piece in top.Cover(near, far, Math.Max(from, first), Math.Min(to, last)))
            {
                area += (piece.To - piece.From) * (far.At(piece.From) - near.At(piece.From));
                blocks.Add(Layer.Removed(piece.Ring, piece.Top.Raised(-seam.Depth), piece.Top.Raised(Layer.Above), CopingGrooves.PaintOf(chart.Plan)));
            }
        }
    }
}
