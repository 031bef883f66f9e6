using PlatformForge.Clearance;
using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>
/// A part's outline widened by the vehicle's play. Both ends of the vehicle may be off the track's middle by q, to either
/// side: between the pivots a point is then off by at most q, beyond them, the vehicle lying askew, by 2q|x|/a at a
/// distance x from midway between pivots a apart.
/// </summary>
internal static class PlayedOutline
{
    /// <param name="part">The part.</param>
    /// <param name="vehicle">The vehicle that carries it.</param>
    /// <param name="play">q in mm.</param>
    public static Point2[] Of(VehiclePart part, Vehicle vehicle, double play)
    {
        var ring = part.Outline;
        if (play == 0)
        {
            return [.. ring];
        }

        double half = vehicle.PivotCentres / 2;
        double pivot = part.Carrier switch { PartCarrier.LeadingBogie => half, PartCarrier.TrailingBogie => -half, _ => 0 };
        double Off(double x) => play * Math.Max(1, Math.Abs(x + pivot) / half);

        var widened = new List<Point2>();
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 p = ring[i], q = ring[(i + 1) % ring.Count];
            foreach (double t in Breaks(p, q, [-half - pivot, half - pivot]))
            {
                double x = p.X + (t * (q.X - p.X)), y = p.Y + (t * (q.Y - p.Y));

                // A tip on the middle line goes to both sides, in the ring's order.
                int side = y != 0 ? Math.Sign(y) : q.Y >= 0 ? 1 : -1;
                if (y == 0)
                {
                    widened.Add(new(x, -side * Off(x)));
                }

                widened.Add(new(x, y + (side * Off(x))));
            }
        }

        return [.. widened];
    }

    // Where an edge starts, and where it passes a pivot and the widening begins to grow.
    private static List<double> Breaks(Point2 p, Point2 q, ReadOnlySpan<double> stations)
    {
        var at = new List<double> { 0 };
        foreach (double x in stations)
        {
            double t = (x - p.X) / (q.X - p.X);
            if (t is > 0 and < 1)
            {
                at.Add(t);
            }
        }

        at.Sort();
        return at;
    }
}
