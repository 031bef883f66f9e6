using PlatformForge.Geometry;

namespace PlatformForge.Exports.LineArt;

/// <summary>Joins lines that meet end to end, so that a long edge is one stroke of a pen and not a hundred.</summary>
internal static class LineChains
{
    // Ends nearer than this, in mm of the sheet, are one: far below what any printer shows.
    private const double Same = 0.002;

    /// <summary>Strokes through all lines, each line once; contours and creases apart.</summary>
    public static IReadOnlyList<(IReadOnlyList<Point2> Points, bool Contour)> Of(IReadOnlyList<VisibleLine> lines)
    {
        var ends = new Dictionary<(long, long, bool), List<int>>();
        for (int i = 0; i < lines.Count; i++)
        {
            foreach (var end in (Point2[])[lines[i].From, lines[i].To])
            {
                var key = Key(end, lines[i].Contour);
                ends[key] = ends.TryGetValue(key, out var there) ? there : [];
                ends[key].Add(i);
            }
        }

        var taken = new bool[lines.Count];
        var strokes = new List<(IReadOnlyList<Point2> Points, bool Contour)>();
        for (int i = 0; i < lines.Count; i++)
        {
            if (!taken[i])
            {
                taken[i] = true;
                bool contour = lines[i].Contour;
                var back = Walk(lines[i].From);
                back.Reverse();
                strokes.Add(([.. back, lines[i].From, lines[i].To, .. Walk(lines[i].To)], contour));

                List<Point2> Walk(Point2 from)
                {
                    var way = new List<Point2>();
                    while (ends[Key(from, contour)].FindIndex(k => !taken[k]) is var at and >= 0)
                    {
                        int next = ends[Key(from, contour)][at];
                        taken[next] = true;
                        from = Key(lines[next].From, contour) == Key(from, contour) ? lines[next].To : lines[next].From;
                        way.Add(from);
                    }

                    return way;
                }
            }
        }

        return strokes;
    }

    private static (long, long, bool) Key(Point2 p, bool contour) => ((long)Math.Round(p.X / Same), (long)Math.Round(p.Y / Same), contour);
}
