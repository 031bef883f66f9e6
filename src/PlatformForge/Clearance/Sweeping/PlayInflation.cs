using PlatformForge.Geometry;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// Widens the outline of a part by the play of what carries it. Points of a frame guided at two points a apart, each with
/// play q to either side, move sideways by up to q·max(1, 2|x|/a) at a distance x from midway: shift and yaw at their worst
/// together. Yaw also moves points along the vehicle, by y·2q/a, so every corner goes that much farther from midway as well.
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

    // Upper edges of a counter-clockwise ring run backward (x falls) and move up, lower edges move down; a tip between both is opened.
    private static List<Point2> Widen(List<Point2> ring, double guide, double q, double lean)
    {
        var result = new List<Point2>();
        for (int i = 0; i < ring.Count; i++)
        {
            var p = ring[i];
            double before = p.X - ring[(i + ring.Count - 1) % ring.Count].X, after = ring[(i + 1) % ring.Count].X - p.X;
            var by = new Point2(0, (q * Math.Max(1, 2 * Math.Abs(p.X) / guide)) + lean);
            p = new(p.X + (Math.Sign(p.X) * Math.Abs(p.Y) * 2 * q / guide), p.Y);
            bool up = before < 0 || after < 0, down = before > 0 || after > 0;
            if (up && down)
            {
                bool front = before > 0;
                result.Add(front ? p - by : p + by);
                result.Add(front ? p + by : p - by);
            }
            else
            {
                result.Add(up ? p + by : down ? p - by : p);
            }
        }

        return result;
    }
}
