using PlatformForge.Geometry;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>
/// Widens the outline of a part by what it leans: every point of a side that looks left goes as far to the left as lean and cant bring it at any of the part's heights,
/// and the other side likewise. How far a point comes is a convex function of its distance from the middle and of its height, so what is straight stays
/// under the straight join of its ends, and the highest and the lowest place of a part tell of those between.
/// </summary>
internal static class LeantOutline
{
    /// <summary>Ring of a part, leaning as far as it can either way at once; counter-clockwise as the part's own.</summary>
    public static IReadOnlyList<Point2> Of(VehiclePart part, in LeanRange lean)
    {
        if (lean.IsUpright)
        {
            return part.Outline;
        }

        var ring = part.Outline;
        var result = new List<Point2>(2 * ring.Count);
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 last = ring[(i + ring.Count - 1) % ring.Count], p = ring[i], next = ring[(i + 1) % ring.Count];
            int before = Math.Sign(last.X - p.X), after = Math.Sign(p.X - next.X);
            (before, after) = (before != 0 ? before : after, after != 0 ? after : before);
            result.Add(Leant(p, before, part, lean));
            if (after != before)
            {
                result.Add(Leant(p, after, part, lean));
            }
        }

        return result;
    }

    // An edge of a counter-clockwise ring that runs backward looks left.
    private static Point2 Leant(Point2 p, int side, VehiclePart part, in LeanRange lean) =>
        side == 0 ? p : new(p.X, side * Math.Max(lean.Leftmost(side * p.Y, part.ZLow), lean.Leftmost(side * p.Y, part.ZHigh)));
}
