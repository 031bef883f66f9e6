using PlatformForge.Platforms.Surfaces;
using PlatformForge.Units;

namespace PlatformForge.Solids.Bodies;

/// <summary>The joint between a coping and the deck, engraved.</summary>
internal static class CopingSeamBlocks
{
    /// <summary>Cuts it between two chainages.</summary>
    /// <returns>Its area from above, mm².</returns>
    public static double Cut(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        double area = 0;
        if (CopingSeam.Of(chart.Plan) is not { } seam || Math.Min(to, seam.To) - Math.Max(from, seam.From) < Tolerances.GridStep)
        {
            return area;
        }

        foreach (var (near, far) in seam.Along(chart.Plan))
        {
            foreach (var piece in top.Cover(near, far, Math.Max(from, seam.From), Math.Min(to, seam.To)))
            {
                area += (piece.To - piece.From) * seam.Width;
                blocks.Add(Layer.Removed(piece.Ring, piece.Top.Raised(-seam.Depth), piece.Top.Raised(Layer.Above), CopingGrooves.PaintOf(chart.Plan)));
            }
        }

        return area;
    }
}
