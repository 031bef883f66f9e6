using PlatformForge.Geometry;

namespace PlatformForge.Sections.Plates;

/// <summary>
/// A convex outline with fewer corners that holds the given one: the side whose neighbours, drawn on to meet, add the least is left out, again and
/// again. A piece on a curve has dozens of short sides, and packing only needs to know where it is not.
/// </summary>
internal static class CoarseHull
{
    /// <summary>Farthest in mm that a corner may move out of the true outline.</summary>
    private const double Outward = 0.2;

    /// <summary>Corners below which nothing is gained.</summary>
    private const int Enough = 6;

    public static Point2[] Around(IReadOnlyList<Point2> hull)
    {
        var ring = new List<Point2>(hull);
        while (ring.Count > Enough)
        {
            int best = -1;
            double least = Outward;
            Point2 corner = default;
            for (int i = 0; i < ring.Count; i++)
            {
                Point2 a = ring[(i + ring.Count - 1) % ring.Count], b = ring[i], c = ring[(i + 1) % ring.Count], d = ring[(i + 2) % ring.Count];
                Point2 before = b - a, after = d - c, side = c - b;
                double turn = Point2.Cross(before, after);
                if (turn <= 0)
                {
                    continue; // together the two corners turn by half a turn or more: the neighbours never meet
                }

                var meet = b + (before * (Point2.Cross(side, after) / turn));
                double added = Point2.Cross(meet - b, side) / side.Length;
                if (added < least)
                {
                    (best, least, corner) = (i, added, meet);
                }
            }

            if (best < 0)
            {
                break;
            }

            ring[best] = corner;
            ring.RemoveAt((best + 1) % ring.Count);
        }

        return ConvexRing.Hull(ring);
    }
}
