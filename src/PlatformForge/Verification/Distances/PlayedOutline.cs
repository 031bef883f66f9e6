using PlatformForge.Clearance;
using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>
/// A part's outline widened by the vehicle's play. Both guided points of a carrier may be off the track's middle by q, to
/// either side: between them a point is then off by at most q, beyond them, the carrier lying askew, by 2q|x|/a at a
/// distance x from midway between points a apart. A body is guided at its pivots by wheelsets and pivots, a bogie
/// by its wheelsets at its axles; a body also leans on its springs, and cant tilts bodies and bogies about rail top.
/// </summary>
internal static class PlayedOutline
{
    /// <param name="part">The part.</param>
    /// <param name="vehicle">The vehicle that carries it.</param>
    /// <param name="play">The play.</param>
    public static Point2[] Of(VehiclePart part, Vehicle vehicle, RunningPlay play)
    {
        var ring = part.Outline;
        bool isBody = part.Carrier == PartCarrier.Body;

        // What carries a pivot beyond its own axles swings it out by more than they are off.
        double swing = new[] { (vehicle.LeadingPivotAhead, vehicle.LeadingWheelbase), (vehicle.TrailingPivotAhead, vehicle.TrailingWheelbase) }.Max(c => c.Item1 == 0 ? 1 : Math.Max(1, Math.Abs(c.Item1) / (c.Item2 / 2)));
        double q = (play.Wheelset * swing) + (isBody ? play.Pivot : 0);
        double tilt = Math.Sin(play.Cant) * Math.Max(Math.Abs(part.ZLow), Math.Abs(part.ZHigh));
        double lean = tilt + (isBody ? Math.Max(play.LeanAt(part.ZLow), play.LeanAt(part.ZHigh)) : 0);
        double half = part.Carrier switch
        {
            PartCarrier.LeadingBogie => vehicle.LeadingWheelbase / 2,
            PartCarrier.TrailingBogie => vehicle.TrailingWheelbase / 2,
            _ => vehicle.PivotCentres / 2,
        };
        double Off(double x) => lean + (half > 0 ? q * Math.Max(1, Math.Abs(x) / half) : q);
        if (q + lean == 0)
        {
            return [.. ring];
        }

        var widened = new List<Point2>();
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 p = ring[i], next = ring[(i + 1) % ring.Count];
            foreach (double t in Breaks(p, next, [-half, half]))
            {
                double x = p.X + (t * (next.X - p.X)), y = p.Y + (t * (next.Y - p.Y));

                // A tip on the middle line goes to both sides, in the ring's order.
                int side = y != 0 ? Math.Sign(y) : next.Y >= 0 ? 1 : -1;
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
