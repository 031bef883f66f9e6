using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Exports.Drawings.Elevations.Walls;

/// <summary>What stands before a wall as an elevation shows it: where it stands in plan, its outlines, along from its middle and up from the baseboard, in
/// the order in which they are drawn, mm, and their colour.</summary>
internal sealed record FittingSight(FittingRow Row, Point2 Middle, double Width, IReadOnlyList<Point2[]> Outlines, Rgb Colour)
{
    /// <summary>Those before the near wall of a plan, or the far one.</summary>
    public static IReadOnlyList<FittingSight> Of(PlatformPlan plan, bool isFar)
    {
        var chart = new FacetedPlan(plan);
        return [.. plan.Fittings.SelectMany(r => r.Places.Where(p => p.IsFar == isFar && p.Parts.Count > 0).Select(p => Of(r, new(chart, p))))];
    }

    private static FittingSight Of(FittingRow row, FittingFrame frame) => new(
        row, frame.Place(0, frame.Ground, 0), frame.Fitting.Width, [.. frame.Fitting.Parts.Select(Box)], Palette.Of(FittingBlocks.PaintOf(row.Face)));

    private static Point2[] Box(FittingPart part) =>
        [new(-part.HalfWidth, part.Low), new(part.HalfWidth, part.Low), new(part.HalfWidth, part.High), new(-part.HalfWidth, part.High)];
}
