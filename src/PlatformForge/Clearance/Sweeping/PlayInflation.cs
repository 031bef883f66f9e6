using PlatformForge.Geometry;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// Widens the outline of a part by the play of what carries it. Points of a frame guided at two points a apart, each with
/// play q to either side, move sideways by up to q·max(1, 2|x|/a) at a distance x from midway: shift and yaw at their worst
/// together. Yaw also moves points along the vehicle, by y·2q/a either way: what swings out beyond a guided point comes towards midway. So the result is what
/// is touched when every point goes as far as both in any combination, a little more than shift and yaw allow together and nowhere less.
/// </summary>
internal static class PlayInflation
{
    /// <summary>Ring of a part with the play of its carrier and the lean of its height.</summary>
    public static IReadOnlyList<Point2> Widen(VehiclePart part, Vehicle vehicle, RunningPlay play)
    {
        bool body = part.Carrier == PartCarrier.Body;
        double guide = part.Carrier switch
        {
            PartCarrier.LeadingBogie => vehicle.LeadingWheelbase,
            PartCarrier.TrailingBogie => vehicle.TrailingWheelbase,
            _ => vehicle.PivotCentres,
        };
        double q = (play.Wheelset * PivotPlay.Share(vehicle)) + (body ? play.Pivot : 0);
        double lean = play.SwayOf(part);
        return q == 0 && lean == 0 ? part.Outline : Widen(WithBreaks(part.Outline, guide / 2), guide, q, lean);
    }

    // The allowance bends at the guided points, so the outline gets a vertex there.
    private static List<Point2> WithBreaks(IReadOnlyList<Point2> ring, double half)
    {
        var result = new List<Point2>();
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 a = ring[i], b = ring[(i + 1) % ring.Count];
            result.Add(a);
            double first = a.X <= b.X ? -half : half;
            foreach (double x in (ReadOnlySpan<double>)[first, -first])
            {
                if ((a.X - x) * (b.X - x) < 0)
                {
                    result.Add(a + ((b - a) * ((x - a.X) / (b.X - a.X))));
                }
            }
        }

        return result;
    }

    // Every edge moves outward whole: across by what its points may be off, and along by what yaw adds, each to the side that the edge faces. The ring is
    // counter-clockwise; a corner between edges that face otherwise is opened.
    private static List<Point2> Widen(List<Point2> ring, double guide, double q, double lean)
    {
        Point2 Moved(Point2 p, Facing to) =>
            new(p.X + (to.X * Math.Abs(p.Y) * 2 * q / guide), p.Y + (to.Y * ((q * Math.Max(1, 2 * Math.Abs(p.X) / guide)) + lean)));

        var result = new List<Point2>();
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 last = ring[(i + ring.Count - 1) % ring.Count], p = ring[i], next = ring[(i + 1) % ring.Count];
            Facing own = FacingOf(last, p, Moved), other = FacingOf(p, next, Moved), first = own.Or(other), second = other.Or(own);
            result.Add(Moved(p, first));
            if (first.X != second.X && first.Y != second.Y)
            {
                bool tip = Point2.Cross(p - last, next - p) >= 0;
                result.Add(Moved(p, tip ? new(-first.Y, first.X) : new(first.Y, -first.X)));
            }

            if (first != second)
            {
                result.Add(Moved(p, second));
            }
        }

        return result;
    }

    // What is off by more the farther out it is makes a side look a little towards the middle, and an end look a little aside: an edge is judged by its way
    // after it has moved.
    private static Facing FacingOf(Point2 from, Point2 to, Func<Point2, Facing, Point2> moved)
    {
        double least = SquareSine * (to - from).Length;
        int Sign(double travel) => Math.Abs(travel) <= least ? 0 : Math.Sign(travel);
        var ahead = new Facing(Sign(to.Y - from.Y), 0);
        var across = new Facing(0, -Sign(moved(to, ahead).X - moved(from, ahead).X));
        return across with { X = Sign(moved(to, across).Y - moved(from, across).Y) };
    }

    // An edge that leans by less than this sine is taken not to.
    private const double SquareSine = 1e-9;

    // Where the outward normal of an edge points: +1 forward, −1 backward, and +1 left, −1 right; 0 neither.
    private readonly record struct Facing(int X, int Y)
    {
        // Neither way goes along with a neighbour.
        public Facing Or(Facing neighbour) => new(X != 0 ? X : neighbour.X, Y != 0 ? Y : neighbour.Y);
    }
}
