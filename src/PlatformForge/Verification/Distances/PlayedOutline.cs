using PlatformForge.Clearance;
using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>
/// A part's outline widened by the vehicle's play. Both guided points of a carrier may be off the track's middle by q, to
/// either side: between them a point is then off by at most q, beyond them, the carrier lying askew, by 2q|x|/a at a
/// distance x from midway between points a apart, and turned with it, so that what swings out also comes towards midway. A
/// body is guided at its pivots by wheelsets and pivots, a bogie by its wheelsets at its axles; a body also leans on its
/// springs, and cant tilts bodies and bogies about rail top. Every point of the result is one that the part can come to, or
/// lies between two such.
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
        if (q + lean == 0)
        {
            return [.. ring];
        }

        var edges = Pieces(ring, half);
        var plays = edges.ConvertAll(e => Outmost(e.Normal, (e.From + e.To) * 0.5, q, half, lean));
        var widened = new List<Point2>();
        for (int i = 0; i < edges.Count; i++)
        {
            int last = (i + edges.Count - 1) % edges.Count;
            Corner(widened, edges[i].From, edges[last].Normal, edges[i].Normal, plays[last], plays[i], n => Outmost(n, edges[i].From, q, half, lean));
        }

        return [.. widened];
    }

    // A corner in the ways to lie that press it out farthest while the outward direction turns from that of the edge before to that of the edge after. On its
    // way round a tip the direction passes others: along the line from midway only shift brings a point out, along the vehicle only yaw.
    private static void Corner(List<Point2> widened, Point2 p, Point2 before, Point2 after, Play first, Play second, Func<Point2, Play> outmost)
    {
        var between = new Point2[] { p, p * -1, new(1, Aslant), new(1, -Aslant), new(-1, Aslant), new(-1, -Aslant) }
            .Where(n => Point2.Cross(before, after) > Straight && Point2.Cross(before, n) > 0 && Point2.Cross(n, after) > 0)
            .OrderBy(n => Math.Atan2(Point2.Cross(before, n), Point2.Dot(before, n)))
            .Select(outmost);
        Play? last = null;
        foreach (var play in between.Prepend(first).Append(second))
        {
            if (play != last)
            {
                widened.Add(play.Of(p));
            }

            last = play;
        }
    }

    // Of the four ways to lie askew or aside as far as can be, the one that brings a point farthest out.
    private static Play Outmost(Point2 outward, Point2 p, double q, double half, double lean)
    {
        double yaw = half > 0 ? q / half : 0, leant = Math.Abs(outward.Y) > Straight ? lean * Math.Sign(outward.Y) : 0;
        double turned = yaw * ((outward.Y * p.X) - (outward.X * p.Y)), shifted = q * outward.Y;
        return Math.Abs(turned) > Math.Abs(shifted) ? new(yaw * Math.Sign(turned), leant) : new(0, (q * Math.Sign(shifted)) + leant);
    }

    // The edges of the ring, counter-clockwise, cut where another way to lie takes over: long sides at the guided points, ends at the middle line.
    private static List<(Point2 From, Point2 To, Point2 Normal)> Pieces(IReadOnlyList<Point2> ring, double half)
    {
        var pieces = new List<(Point2, Point2, Point2)>();
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 p = ring[i], q = ring[(i + 1) % ring.Count], along = q - p;
            if (along.Length == 0)
            {
                continue;
            }

            // Turning by q/half moves a point out by that times its distance along the edge from the foot of midway; shifting by q times how far the edge looks aside.
            var normal = along.Left * (-1 / along.Length);
            double foot = Point2.Cross(p, normal), gain = Point2.Cross(along, normal), even = half * normal.Y;
            double[] cuts = [.. new[] { (even - foot) / gain, (-even - foot) / gain }.Where(t => t is > 0 and < 1).Order(), 1];
            var from = p;
            foreach (double t in cuts)
            {
                var to = t < 1 ? p + (along * t) : q;
                pieces.Add((from, to, normal));
                from = to;
            }
        }

        return pieces;
    }

    // Leans to the side just enough to be told from none.
    private const double Aslant = 1e-6;

    // Edges that turn by less than this sine run on.
    private const double Straight = 1e-9;

    // One way to lie: turned, radians, and off to the left, mm.
    private readonly record struct Play(double Yaw, double Aside)
    {
        public Point2 Of(Point2 p) => new(p.X - (Yaw * p.Y), p.Y + (Yaw * p.X) + Aside);
    }
}
