using PlatformForge.Geometry;

namespace PlatformForge.Sections.Plates;

/// <summary>The shifts at which one convex piece comes nearer than a distance to another: a convex ring, found from their edges in order of
/// direction.</summary>
internal sealed class NoFit
{
    /// <summary>Points nearer to the ring than this, mm, count as outside: pieces may stand exactly the spacing apart.</summary>
    private const double Touch = 1e-7;

    // 1 + cosine of the turn at a corner that is all but a spike; it is cut short there.
    private const double SharpestCorner = 1e-3;

    private NoFit(Point2[] ring) => Ring = ring;

    public Point2[] Ring { get; }

    /// <param name="placed">Convex ring of the piece that stands, counter-clockwise.</param>
    /// <param name="moving">Convex ring of the piece to place, at shift nil.</param>
    /// <param name="spacing">Distance to keep, mm.</param>
    public static NoFit Of(Point2[] placed, Point2[] moving, double spacing) =>
        new(Widened(Sum(placed, Array.ConvertAll(moving, p => p * -1)), spacing));

    /// <summary>Whether a shift brings the pieces too near.</summary>
    public bool Forbids(Point2 shift)
    {
        for (int i = 0; i < Ring.Length; i++)
        {
            var along = Ring[(i + 1) % Ring.Length] - Ring[i];
            if (Point2.Cross(along, shift - Ring[i]) < Touch * along.Length)
            {
                return false;
            }
        }

        return true;
    }

    // Minkowski sum of two convex rings: their edges merged by direction.
    private static Point2[] Sum(Point2[] a, Point2[] b)
    {
        int i = Lowest(a), k = Lowest(b), left = a.Length, right = b.Length;
        var ring = new List<Point2>(left + right);
        while (left > 0 || right > 0)
        {
            ring.Add(a[i % a.Length] + b[k % b.Length]);
            double turn = Point2.Cross(a[(i + 1) % a.Length] - a[i % a.Length], b[(k + 1) % b.Length] - b[k % b.Length]);
            bool first = left > 0 && (right == 0 || turn >= 0), second = right > 0 && (left == 0 || turn <= 0);
            (i, left) = first ? (i + 1, left - 1) : (i, left);
            (k, right) = second ? (k + 1, right - 1) : (k, right);
        }

        return ConvexRing.Hull(ring);
    }

    private static int Lowest(Point2[] ring)
    {
        int best = 0;
        for (int i = 1; i < ring.Length; i++)
        {
            best = (ring[i].Y, ring[i].X).CompareTo((ring[best].Y, ring[best].X)) < 0 ? i : best;
        }

        return best;
    }

    // Every side moved outward; corners stay sharp, which keeps a little more than the distance there.
    private static Point2[] Widened(Point2[] ring, double by)
    {
        var wide = new Point2[ring.Length];
        for (int i = 0; i < ring.Length; i++)
        {
            Point2 before = ring[i] - ring[(i + ring.Length - 1) % ring.Length], after = ring[(i + 1) % ring.Length] - ring[i];
            Point2 u = before * (1 / before.Length), v = after * (1 / after.Length);

            // Along the middle of both sides' normals, as far as brings both of them out by as much. Two sides in line, to rounding, have a corner too.
            var normals = (u.Left + v.Left) * -1;
            wide[i] = ring[i] + (normals * (by / Math.Max(1 + Point2.Dot(u, v), SharpestCorner)));
        }

        return wide;
    }
}
