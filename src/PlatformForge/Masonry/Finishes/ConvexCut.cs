using PlatformForge.Geometry;

namespace PlatformForge.Masonry.Finishes;

/// <summary>Cuts convex rings by lines.</summary>
internal static class ConvexCut
{
    /// <summary>The part of a convex ring that does not go farther than a distance in a unit direction.</summary>
    /// <param name="ring">Its corners, counter-clockwise, mm.</param>
    /// <param name="outward">The direction.</param>
    /// <param name="distance">The distance from the origin, mm.</param>
    public static Point2[] Under(Point2[] ring, Point2 outward, double distance)
    {
        var kept = new List<Point2>(ring.Length + 1);
        for (int i = 0; i < ring.Length; i++)
        {
            Point2 a = ring[i], b = ring[(i + 1) % ring.Length];
            double overA = Point2.Dot(outward, a) - distance, overB = Point2.Dot(outward, b) - distance;
            if (overA <= 0)
            {
                kept.Add(a);
            }

            if ((overA < 0 && overB > 0) || (overA > 0 && overB < 0))
            {
                kept.Add(a + ((b - a) * (overA / (overA - overB))));
            }
        }

        return [.. kept];
    }
}
