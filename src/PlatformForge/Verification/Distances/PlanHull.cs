using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>The convex outline in plan of a point set.</summary>
internal static class PlanHull
{
    /// <summary>Corners counter-clockwise, by the monotone chain; fewer than three where all points are in line.</summary>
    public static List<Point2> Of(IEnumerable<Point2> points)
    {
        Point2[] sorted = [.. points.ToHashSet()];
        Array.Sort(sorted, static (a, b) => a.X != b.X ? a.X.CompareTo(b.X) : a.Y.CompareTo(b.Y));
        var hull = new List<Point2>();
        if (sorted.Length == 0)
        {
            return hull;
        }

        for (int way = 0; way < 2; way++)
        {
            int start = hull.Count;
            foreach (var p in sorted)
            {
                while (hull.Count >= start + 2 && Point2.Cross(hull[^1] - hull[^2], p - hull[^1]) <= 0)
                {
                    hull.RemoveAt(hull.Count - 1);
                }

                hull.Add(p);
            }

            hull.RemoveAt(hull.Count - 1); // the last begins the way back
            Array.Reverse(sorted);
        }

        return hull;
    }

    /// <summary>Whether two convex outlines share no inner point: then an edge of one has the other beyond it.</summary>
    public static bool AreApart(IReadOnlyList<Point2> a, IReadOnlyList<Point2> b) => HasBeyond(a, b) || HasBeyond(b, a);

    private static bool HasBeyond(IReadOnlyList<Point2> a, IReadOnlyList<Point2> b)
    {
        for (int i = 0; i < a.Count; i++)
        {
            var along = a[(i + 1) % a.Count] - a[i];
            var start = a[i];
            if (b.All(p => Point2.Cross(along, p - start) <= 0))
            {
                return true;
            }
        }

        return false;
    }
}
