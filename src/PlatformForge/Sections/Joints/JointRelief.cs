using PlatformForge.Geometry;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;

namespace PlatformForge.Sections.Joints;

/// <summary>
/// Relief of a joint's end face along the edge that lies on the bed: the squashed first layer bulges out there by some tenths of a millimetre and would keep
/// neighbours apart. A chamfer at 45 degrees, on the deck's side of a piece that lies deck down, at the foot of one that stands.
/// </summary>
internal static class JointRelief
{
    /// <summary>How far in mm the cut reaches out of the material.</summary>
    private const double Overshoot = 0.5;

    /// <param name="chart">The plan by its facets.</param>
    /// <param name="end">Chainage of the end face, mm.</param>
    /// <param name="inward">Unit direction from the end face into the piece.</param>
    /// <param name="size">Size of the chamfer, mm.</param>
    /// <param name="deck">Relieve the edge of the deck.</param>
    /// <param name="foot">Relieve the foot.</param>
    public static IEnumerable<ColumnBlock> Cut(FacetedPlan chart, double end, Point2 inward, double size, bool deck, bool foot)
    {
        if (size <= 0)
        {
            yield break;
        }

        Point2 front = chart.On(chart.Plan.CopingFront, end), back = chart.On(chart.Plan.Back, end), along = (back - front) * (Overshoot / (back - front).Length), deep = inward * size, beyond = inward * -Overshoot;
        Point2[] ring = [front - along + deep, front - along + beyond, back + along + beyond, back + along + deep];
        ring = ConvexRing.Area(ring) > 0 ? ring : ConvexRing.Reversed(ring);

        // Depth of the chamfer: its size at the end face, nil at that distance from it.
        HeightPlane depth = new(size + Point2.Dot(front, inward), -inward.X, -inward.Y);
        if (deck)
        {
            var top = chart.Plan.Surface.At(Inside(chart, end, inward));
            yield return Layer.Removed(ring, new(top.Z - depth.Z, top.X - depth.X, top.Y - depth.Y), top.Raised(Layer.Above), PavingBlocks.PaintOf(chart.Plan));
        }

        if (foot)
        {
            yield return Layer.Removed(ring, new(-Layer.Above), depth, Paint.Wall);
        }
    }

    // A chainage a little inside the piece, whose plane is the piece's own.
    private static double Inside(FacetedPlan chart, double end, Point2 inward) =>
        end + (Overshoot * Math.Sign(Point2.Dot(inward, chart.Forward(end))));
}
