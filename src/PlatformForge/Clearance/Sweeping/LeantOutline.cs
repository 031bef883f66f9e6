using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// Widens the outline of a part by what it leans: every point of a side that looks left goes as far to the left as lean and cant bring it
/// at any of the part's heights, and the
/// other side likewise.
/// </summary>
internal static class LeantOutline
{
    /// <summary>Ring of a part, leaning as far as it can either way at once; counter-clockwise as the part's own. Null when nothing of it
    /// comes into the window.</summary>
    /// <param name="part">The part.</param>
    /// <param name="lean">How far it leans.</param>
    /// <param name="window">Heights above rail top in mm that count while it leans.</param>
    public static IReadOnlyList<Point2>? Of(VehiclePart part, LeanRange lean, (double Low, double High) window)
    {
        if (lean.IsUpright)
        {
            return part.Outline;
        }

        // How far a place comes is the greatest of linear functions of its distance from the middle, and so under the straight join of an
        // edge's ends.
        bool whole = double.IsInfinity(window.Low) && double.IsInfinity(window.High);
        Func<double, double> left = y => lean.Leftmost(y, (part.ZLow, part.ZHigh), window)!.Value, right = left;
        if (!whole)
        {
            if (Widest(part, lean, window, 1) is not { } toLeft || Widest(part, lean, window, -1) is not { } toRight)
            {
                return null;
            }

            (left, right) = (y => y + toLeft, y => y + toRight);
        }

        return Widened(part.Outline, left, right);
    }

    // What a window adds at most along a side. Of the ways to lean that bring a place into the window some bring in more the farther out it
    // is, others less, so one of the ends has the most;
    // what a cosine takes off is less farther in.
    private static double? Widest(VehiclePart part, LeanRange lean, (double Low, double High) window, int side)
    {
        var ring = part.Outline;
        double[] places = [.. Enumerable.Range(0, ring.Count).Where(i => Looks(ring, i, side) || Looks(ring, (i + ring.Count - 1) % ring.Count, side))
            .Select(i => side * ring[i].Y)];
        double?[] added = [.. places.Select(y => lean.Leftmost(y, (part.ZLow, part.ZHigh), window) - y)];
        return added.Max() + ((places.Max() - places.Where((_, i) => added[i] is not null).DefaultIfEmpty(places.Max()).Min())
            * (1 - Math.Cos(lean.Roll + lean.Cant)));
    }

    // Whether the edge from a corner to the next looks to a side. One of a counter-clockwise ring that runs backward looks left.
    private static bool Looks(IReadOnlyList<Point2> ring, int edge, int side) => side * (ring[edge].X - ring[(edge + 1) % ring.Count].X) > 0;

    private static List<Point2> Widened(IReadOnlyList<Point2> ring, Func<double, double> left, Func<double, double> right)
    {
        Point2 Moved(Point2 p, int side) => side == 0 ? p : new(p.X, side > 0 ? left(p.Y) : -right(-p.Y));
        var result = new List<Point2>(2 * ring.Count);
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 last = ring[(i + ring.Count - 1) % ring.Count], p = ring[i], next = ring[(i + 1) % ring.Count];
            int before = Math.Sign(last.X - p.X), after = Math.Sign(p.X - next.X);
            (before, after) = (before != 0 ? before : after, after != 0 ? after : before);
            result.Add(Moved(p, before));
            if (after != before)
            {
                result.Add(Moved(p, after));
            }
        }

        return result;
    }
}
