using PlatformForge.Geometry;

namespace PlatformForge.Exports.Paper;

/// <summary>Cuts lines and areas off at a window, exactly, so that a sheet holds nothing that it does not show.</summary>
internal static class WindowCutter
{
    /// <summary>The pieces of a row of straight lines that lie in the window (clipping by parameters, Liang and Barsky 1984).</summary>
    public static IEnumerable<Point2[]> Lines(IReadOnlyList<Point2> points, SheetWindow window)
    {
        var piece = new List<Point2>();
        for (int i = 0; i + 1 < points.Count; i++)
        {
            if (Segment(points[i], points[i + 1], window) is not var (a, b, isWhole))
            {
                continue;
            }

            if (piece.Count == 0 || piece[^1] != a)
            {
                if (piece.Count > 1)
                {
                    yield return [.. piece];
                }

                piece.Clear();
                piece.Add(a);
            }

            piece.Add(b);
            if (!isWhole)
            {
                yield return [.. piece];
                piece.Clear();
            }
        }

        if (piece.Count > 1)
        {
            yield return [.. piece];
        }
    }

    /// <summary>What of an area lies in the window, side after side (Sutherland and Hodgman 1974); fewer than three corners when nothing does.</summary>
    public static IReadOnlyList<Point2> Area(IReadOnlyList<Point2> ring, SheetWindow window)
    {
        IReadOnlyList<Point2> left = ring;
        foreach (var depth in new Func<Point2, double>[] { p => p.X - window.Left, p => window.Right - p.X, p => p.Y - window.Top, p => window.Bottom - p.Y })
        {
            var kept = new List<Point2>();
            for (int i = 0; i < left.Count; i++)
            {
                Point2 a = left[i], b = left[(i + 1) % left.Count];
                double da = depth(a), db = depth(b);
                if (da >= 0)
                {
                    kept.Add(a);
                }

                if (da >= 0 != db >= 0)
                {
                    kept.Add(a + ((b - a) * (da / (da - db))));
                }
            }

            left = kept;
        }

        return left;
    }

    // A line's part in the window, and whether it goes on there beyond its end.
    private static (Point2 A, Point2 B, bool IsWhole)? Segment(Point2 a, Point2 b, SheetWindow window)
    {
        double from = 0, to = 1;
        var d = b - a;
        foreach (var (step, room) in ((double, double)[])[(-d.X, a.X - window.Left), (d.X, window.Right - a.X), (-d.Y, a.Y - window.Top),
            (d.Y, window.Bottom - a.Y)])
        {
            if (step == 0)
            {
                if (room < 0)
                {
                    return null;
                }
            }
            else if (step < 0)
            {
                from = Math.Max(from, room / step);
            }
            else
            {
                to = Math.Min(to, room / step);
            }
        }

        return from >= to ? null : (from == 0 ? a : a + (d * from), to == 1 ? b : a + (d * to), to == 1);
    }
}
