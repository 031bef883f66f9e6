using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Copings;
using PlatformForge.Solids.Bodies.Layers;

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

        Point2 front = chart.On(chart.Plan.CopingFront, end), back = chart.On(chart.Plan.Back, end);
        var along = (back - front) * (Overshoot / (back - front).Length);
        Side first = new(front - along, inward), last = new(back + along, inward);

        // Depth of the chamfer: its size at the end face, nil at that distance from it.
        HeightPlane depth = new(size + Point2.Dot(front, inward), -inward.X, -inward.Y);
        if (deck)
        {
            var top = chart.Plan.Surface.At(Inside(chart, end, inward));
            foreach (var (near, far, paint) in Shown(chart, end, inward, first, last))
            {
                yield return Layer.Removed(
                    Ring(near, far, inward, size), new(top.Z - depth.Z, top.X - depth.X, top.Y - depth.Y), top.Raised(Layer.Above), paint);
            }
        }

        if (foot)
        {
            yield return Layer.Removed(Ring(first, last, inward, size), new(-Layer.Above), depth, Paint.Wall);
        }
    }

    // A side of what is cut: a place on the end face and the direction from there into the piece.
    private readonly record struct Side(Point2 At, Point2 Into)
    {
        /// <summary>The place on it so far from the end face.</summary>
        public Point2 In(double deep, Point2 inward) => At + (Into * (deep / Point2.Dot(Into, inward)));
    }

    private static Point2[] Ring(Side near, Side far, Point2 inward, double size)
    {
        Point2[] ring = [near.In(size, inward), near.In(-Overshoot, inward), far.In(-Overshoot, inward), far.In(size, inward)];
        return ConvexRing.Area(ring) > 0 ? ring : ConvexRing.Reversed(ring);
    }

    // What shows of it from front to back: copings and the deck between or behind them, in one where they are of one material.
    private static IEnumerable<(Side Near, Side Far, Paint Paint)> Shown(FacetedPlan chart, double end, Point2 inward, Side first, Side last)
    {
        var plan = chart.Plan;
        Paint coping = CopingGrooves.PaintOf(plan), deck = PavingBlocks.PaintOf(plan);
        if (coping == deck)
        {
            return [(first, last, deck)];
        }

        // In the middle of the groove between the two, or a little before it where none is: on the coping's own edge two lines would lie in one another but for
        // rounding.
        double aside = (CopingSeam.Of(plan)?.Width ?? LeastSeam) / 2;
        Side At(PlanLine line) => chart.On(line, end) is var place ? new(place, chart.On(line, Inside(chart, end, inward)) - place) : default;
        var near = At(plan.Body.CopingBack.Shifted(-aside));
        return plan.Body.FarCopingBack is { } edge && At(edge.Shifted(aside)) is var far
            ? [(first, near, coping), (near, far, deck), (far, last, coping)]
            : [(first, near, coping), (near, last, deck)];
    }

    // mm: width in which two colours meet where no groove parts them.
    private const double LeastSeam = 0.1;

    // A chainage a little inside the piece, whose plane is the piece's own.
    private static double Inside(FacetedPlan chart, double end, Point2 inward) =>
        end + (Overshoot * Math.Sign(Point2.Dot(inward, chart.Forward(end))));
}
