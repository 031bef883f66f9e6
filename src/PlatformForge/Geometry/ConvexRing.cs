namespace PlatformForge.Geometry;

/// <summary>Small acts on convex rings in plan: counter-clockwise, mm, the first point not repeated.</summary>
public static class ConvexRing
{
    /// <summary>The part of a convex ring to the left of the directed line through two points; empty when nothing is left of it.</summary>
    public static Point2[] LeftOf(IReadOnlyList<Point2> ring, Point2 a, Point2 b)
    {
        var along = b - a;
        var kept = new List<Point2>(ring.Count + 1);
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 p = ring[i], q = ring[(i + 1) % ring.Count];
            double dp = Point2.Cross(along, p - a), dq = Point2.Cross(along, q - a);
            if (dp >= 0)
            {
                kept.Add(p);
            }

            if ((dp > 0 && dq < 0) || (dp < 0 && dq > 0))
            {
                kept.Add(p + ((q - p) * (dp / (dp - dq))));
            }
        }

        return kept.Count < 3 ? [] : [.. kept];
    }

    /// <summary>Whether a point lies in a convex ring or on it.</summary>
    public static bool Contains(IReadOnlyList<Point2> ring, Point2 point)
    {
        for (int i = 0; i < ring.Count; i++)
        {
            if (Point2.Cross(ring[(i + 1) % ring.Count] - ring[i], point - ring[i]) < 0)
            {
                return false;
            }
        }

        return ring.Count > 2;
    }

    /// <summary>Twice-signed area halved: positive for counter-clockwise rings, mm².</summary>
    public static double Area(IReadOnlyList<Point2> ring)
    {
        double sum = 0;
        for (int i = 1; i < ring.Count - 1; i++)
        {
            sum += Point2.Cross(ring[i] - ring[0], ring[i + 1] - ring[0]);
        }

        return sum / 2;
    }

    /// <summary>Convex hull by Andrew's monotone chain: counter-clockwise, least x first, no three corners in line.</summary>
    public static Point2[] Hull(IEnumerable<Point2> points)
    {
        Point2[] all = points as Point2[] ?? [.. points];
        var sorted = Sorted(HullThinning.Of(all));
        if (sorted.Length < 3)
        {
            return sorted;
        }

        var hull = new Point2[2 * sorted.Length];
        int count = 0;
        for (int pass = 0; pass < 2; pass++)
        {
            int floor = count + 1;
            for (int i = 0; i < sorted.Length; i++)
            {
                var p = sorted[pass == 0 ? i : sorted.Length - 1 - i];
                while (count > floor && Point2.Cross(hull[count - 1] - hull[count - 2], p - hull[count - 2]) <= 0)
                {
                    count--;
                }

                hull[count++] = p;
            }

            count--; // the last point of a chain begins the next one
        }

        return hull[..count];
    }

    /// <summary>By x, and where that is the same by y.</summary>
    private static Point2[] Sorted(Point2[] points)
    {
        var keys = new ulong[points.Length];
        var order = new int[points.Length];
        for (int i = 0; i < points.Length; i++)
        {
            (keys[i], order[i]) = (Key(points[i].X), i);
        }

        Array.Sort(keys, order);
        for (int from = 0; from < keys.Length;)
        {
            int to = from + 1;
            while (to < keys.Length && keys[to] == keys[from])
            {
                to++;
            }

            if (to > from + 1)
            {
                for (int i = from; i < to; i++)
                {
                    keys[i] = Key(points[order[i]].Y);
                }

                Array.Sort(keys, order, from, to - from);
            }

            from = to;
        }

        return Array.ConvertAll(order, i => points[i]);
    }

    // A number's bits as one that sorts as it does: whole numbers are sorted without asking how. Adding nil turns minus nil into nil.
    private static ulong Key(double value)
    {
        const ulong sign = 1UL << 63;
        ulong bits = BitConverter.DoubleToUInt64Bits(value + 0.0);
        return (bits & sign) != 0 ? ~bits : bits | sign;
    }

    /// <summary>The same ring run through the other way.</summary>
    public static Point2[] Reversed(Point2[] ring)
    {
        var copy = (Point2[])ring.Clone();
        Array.Reverse(copy);
        return copy;
    }
}
