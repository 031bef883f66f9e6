namespace PlatformForge.Geometry;

/// <summary>Width of a convex ring: the least distance of two parallel lines between which it lies. One of them runs along a side.</summary>
public static class ConvexWidth
{
    /// <summary>Of a ring of three corners or more, counter-clockwise.</summary>
    public static double Of(IReadOnlyList<Point2> ring)
    {
        ArgumentNullException.ThrowIfNull(ring);
        double width = double.PositiveInfinity;
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 a = ring[i], side = ring[(i + 1) % ring.Count] - a;
            if (side.Length > 0)
            {
                width = Math.Min(width, ring.Max(p => Point2.Cross(side, p - a)) / side.Length);
            }
        }

        return width;
    }
}
