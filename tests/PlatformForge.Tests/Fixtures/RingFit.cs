using PlatformForge.Geometry;

namespace PlatformForge.Tests.Fixtures;

/// <summary>One ring in plan laid on another as a hand would lay it. The outside tests use this file too.</summary>
internal static class RingFit
{
    /// <summary>The turn and shift, never turned over, that lays four corners on four others; of the ways round that which has all of a row nearest to the
    /// ring.</summary>
    public static Func<Point2, Point2> Laid(Point2[] from, Point2[] ring, Point2[] to, Point2[] row)
    {
        static Point2 Middle(Point2[] ring) => ring.Aggregate((a, b) => a + b) * (1.0 / ring.Length);
        Point2 here = Middle(from), there = Middle(to);
        return Enumerable.Range(0, 4).Select(k =>
        {
            double cross = 0, dot = 0;
            for (int i = 0; i < 4; i++)
            {
                Point2 a = from[(i + k) % 4] - here, b = to[i] - there;
                (cross, dot) = (cross + Point2.Cross(a, b), dot + Point2.Dot(a, b));
            }

            var x = Point2.FromAngle(Math.Atan2(cross, dot));
            Point2 On(Point2 p) => there + (x * (p - here).X) + (x.Left * (p - here).Y);
            return (Func<Point2, Point2>)On;
        }).MinBy(on => ring.Select(on).ToArray() is var laid ? row.Max(p => Far(p, laid)) : 0)!;
    }

    /// <summary>How far a place is from the nearest line of a closed ring.</summary>
    public static double Far(Point2 p, Point2[] ring) => Enumerable.Range(0, ring.Length).Min(i =>
    {
        Point2 a = ring[i], along = ring[(i + 1) % ring.Length] - a;
        return (p - a - (along * Math.Clamp(Point2.Dot(p - a, along) / Point2.Dot(along, along), 0, 1))).Length;
    });
}
