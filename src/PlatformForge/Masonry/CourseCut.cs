using PlatformForge.Geometry;

namespace PlatformForge.Masonry;

/// <summary>Cuts an oblong of a course by the edges of its wall: by a slope over it, by its foot.</summary>
internal static class CourseCut
{
    /// <summary>Bricks do not end nearer to a bend than this, mm: their sides lean with it. A tenth of a joint at most.</summary>
    public const double OffBends = 0.02;

    // What would be cut less than this, mm, is not cut: a bed may be so much thinner.
    private const double Hair = 1e-3;

    /// <summary>What is left of an oblong, as outlines counter-clockwise.</summary>
    /// <param name="top">What it stays under.</param>
    /// <param name="foot">What it stays over.</param>
    /// <param name="bends">Bends of the wall.</param>
    /// <param name="box">The oblong, mm.</param>
    /// <param name="least">Pieces lower or shorter are left out, mm.</param>
    public static IEnumerable<Point2[]> Of(EdgeLine top, EdgeLine foot, IReadOnlyList<double> bends, (double From, double To, double Low,
        double High) box, double least)
    {
        if (top.Lowest >= box.High - Hair && foot.Highest <= box.Low + Hair)
        {
            return [Oblong(box)];
        }

        var (under, _) = top.Range(box.From, box.To);
        var (_, over) = foot.Range(box.From, box.To);
        return under >= box.High - Hair && over <= box.Low + Hair ? [Oblong(box)] : Pieces(top, foot, bends, box, least);
    }

    private static Point2[] Oblong((double From, double To, double Low, double High) box) =>
        [new(box.From, box.Low), new(box.To, box.Low), new(box.To, box.High), new(box.From, box.High)];

    // Between the places at which an edge bends or crosses a side of the oblong, both edges of what is left are straight.
    private static IEnumerable<Point2[]> Pieces(
        EdgeLine top, EdgeLine foot, IReadOnlyList<double> bends, (double From, double To, double Low, double High) box, double least)
    {
        double High(double x) => Math.Min(box.High, top.At(x));
        double Low(double x) => Math.Max(box.Low, foot.At(x));
        double[] places = [box.From, .. top.Within(box.From, box.To).Concat(foot.Within(box.From, box.To)).Distinct().Order(), box.To];
        var marks = new List<double> { places[0] };
        for (int i = 0; i + 1 < places.Length; i++)
        {
            var (a, b) = (places[i], places[i + 1]);
            double[] crossings =
            [
                Crossing(a, b, top.At(a) - box.High, top.At(b) - box.High), Crossing(a, b, foot.At(a) - box.Low, foot.At(b) - box.Low),
            ];
            foreach (double x in crossings.Where(double.IsFinite).Order().Append(b).Where(x => x > marks[^1]).ToArray())
            {
                double last = marks[^1], cut = Crossing(last, x, High(last) - Low(last) - least, High(x) - Low(x) - least);
                if (cut > last && cut < x)
                {
                    marks.Add(cut);
                }

                marks.Add(x);
            }
        }

        for (int i = 0; i + 1 < marks.Count; i++)
        {
            int end = i;
            while (end + 1 < marks.Count && Stands((marks[end] + marks[end + 1]) / 2))
            {
                end++;
            }

            if (end > i)
            {
                var outline = Outline(marks, i, end, High, Low, bends, least);
                if (outline is not null)
                {
                    yield return outline;
                }

                i = end - 1;
            }
        }

        bool Stands(double x) => High(x) - Low(x) > least;
    }

    private static Point2[]? Outline(List<double> marks, int first, int last, Func<double, double> high, Func<double, double> low,
        IReadOnlyList<double> bends, double least)
    {
        double from = Clear(bends, marks[first], 1), to = Clear(bends, marks[last], -1);
        if (to - from < least)
        {
            return null;
        }

        double[] places = [from, .. marks.Skip(first + 1).Take(last - first - 1).Where(x => x > from && x < to && !Near(x)), to];
        return Straightened([.. places.Select(x => new Point2(x, low(x))), .. places.Reverse().Select(x => new Point2(x, high(x)))]);

        // A crossing right beside a bend, which is a corner itself where the edge turns there.
        bool Near(double x) => bends.Any(b => b != x && Math.Abs(b - x) < OffBends);
    }

    /// <summary>A place a hair off all bends, ascending, to one side: also where two of them lie that near to one another.</summary>
    /// <param name="bends">The bends.</param>
    /// <param name="at">The place, mm.</param>
    /// <param name="inward">1 to move on, -1 to move back.</param>
    public static double Clear(IReadOnlyList<double> bends, double at, int inward)
    {
        for (int i = 0; i < bends.Count; i++)
        {
            double bend = bends[inward > 0 ? i : bends.Count - 1 - i];
            at = Math.Abs(at - bend) < OffBends - Units.Tolerances.Rounding ? bend + (inward * OffBends) : at;
        }

        return at;
    }

    private static double Crossing(double a, double b, double atA, double atB) => (atA < 0) == (atB < 0) || atA == atB ? double.NaN
        : a + ((b - a) * atA / (atA - atB));

    // Without corners on one line with their neighbours, one after another: of two at one place one stays.
    private static Point2[] Straightened(Point2[] ring)
    {
        var kept = ring.ToList();
        for (int i = 0, sound = 0; sound < kept.Count && kept.Count > 3;)
        {
            int n = kept.Count;
            if (OnLine(kept[(i + n - 1) % n], kept[i % n], kept[(i + 1) % n]))
            {
                kept.RemoveAt(i % n);
                (i, sound) = (i % n, 0);
            }
            else
            {
                (i, sound) = ((i + 1) % n, sound + 1);
            }
        }

        return [.. kept];
    }

    private static bool OnLine(Point2 a, Point2 b, Point2 c)
    {
        double length = (c - a).Length;
        return length <= Hair || Math.Abs(Point2.Cross(b - a, c - a)) <= Hair * length;
    }
}
