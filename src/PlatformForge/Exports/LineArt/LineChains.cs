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
        var ends = new LineEnds(lines, Key);
        var taken = new bool[lines.Count];
        var strokes = new List<(IReadOnlyList<Point2> Points, bool Contour)>();
        for (int i = 0; i < lines.Count; i++)
        {
            if (!taken[i])
            {
                taken[i] = true;
                var back = Walk(2 * i);
                back.Reverse();
                strokes.Add(([.. back, lines[i].From, lines[i].To, .. Walk((2 * i) + 1)], lines[i].Contour));
            }
        }

        return strokes;

        // From an end on, always by the first line there that is left.
        List<Point2> Walk(int end)
        {
            var way = new List<Point2>();
            for (int place = ends.PlaceOf(end); ends.NextAt(place, taken) is var next and >= 0; place = ends.PlaceOf(end))
            {
                taken[next] = true;
                end = ends.PlaceOf(2 * next) == place ? (2 * next) + 1 : 2 * next;
                way.Add(end % 2 == 0 ? lines[next].From : lines[next].To);
            }

            return way;
        }
    }

    private static (long, long, bool) Key(Point2 p, bool contour) => ((long)Math.Round(p.X / Same), (long)Math.Round(p.Y / Same), contour);

    /// <summary>
    /// Which lines end at which place. Ends are numbered, two a line, and those of a place lie side by side in one array, in the lines' order: a list for
    /// each place would
    /// be as many lists as there are corners.
    /// </summary>
    private sealed class LineEnds
    {
        private readonly int[] places; // of each end
        private readonly int[] first; // where a place's ends begin, and behind the last where they stop
        private readonly int[] at; // how far a place's ends are used up
        private readonly int[] sorted; // lines, place by place

        public LineEnds(IReadOnlyList<VisibleLine> lines, Func<Point2, bool, (long, long, bool)> key)
        {
            var known = new Dictionary<(long, long, bool), int>();
            places = new int[2 * lines.Count];
            for (int end = 0; end < places.Length; end++)
            {
                var line = lines[end / 2];
                var where = key(end % 2 == 0 ? line.From : line.To, line.Contour);
                if (!known.TryGetValue(where, out places[end]))
                {
                    known.Add(where, places[end] = known.Count);
                }
            }

            first = new int[known.Count + 1];
            foreach (int place in places)
            {
                first[place + 1]++;
            }

            for (int place = 0; place < known.Count; place++)
            {
                first[place + 1] += first[place];
            }

            at = first[..^1];
            sorted = new int[places.Length];
            for (int end = 0; end < places.Length; end++)
            {
                sorted[at[places[end]]++] = end / 2;
            }

            at = first[..^1];
        }

        public int PlaceOf(int end) => places[end];

        /// <summary>The first line at a place that is not taken; -1 when all are.</summary>
        public int NextAt(int place, bool[] taken)
        {
            while (at[place] < first[place + 1] && taken[sorted[at[place]]])
            {
                at[place]++;
            }

            return at[place] < first[place + 1] ? sorted[at[place]] : -1;
        }
    }
}
