using PlatformForge.Geometry;

namespace PlatformForge.Masonry.Finishes;

/// <summary>All openings of a wall, and what they leave of its courses.</summary>
/// <param name="cuts">The openings.</param>
/// <param name="foot">The wall's foot with the joint kept over it.</param>
/// <param name="edge">The same foot, corner by corner.</param>
/// <param name="raised">That joint, mm.</param>
/// <param name="round">Length of a wall that goes all round, mm: what runs over its end meets the openings at its beginning. Nothing of another.</param>
internal sealed class OpeningSet(IReadOnlyList<OpeningCut> cuts, EdgeLine foot, IReadOnlyList<Point2> edge, double raised, double round)
{
    // An arch's end is upright but for this, mm.
    private const double Hair = 1e-4;

    private readonly Dictionary<string, EdgeLine> lines = [];

    // Those of a ring a second time, beyond its end.
    private readonly OpeningCut[] met = round > 0 ? [.. cuts, .. cuts.Select(c => c.Moved(round))] : [.. cuts];

    public IReadOnlyList<OpeningCut> Cuts => cuts;

    /// <summary>Cuts the pieces of a row by the sides of the openings that it passes.</summary>
    /// <param name="row">The row.</param>
    /// <param name="spans">Its pieces.</param>
    /// <param name="least">A piece that would be left shorter is added to its neighbour, mm.</param>
    public void Part(in WallRow row, List<(double From, double To)> spans, double least)
    {
        foreach (var cut in met)
        {
            if (row.High <= cut.Sill || row.Low >= cut.Spring)
            {
                continue;
            }

            double left = cut.Left - OpeningCut.Ledge, right = cut.Right + OpeningCut.Ledge;
            for (int i = spans.Count - 1; i >= 0; i--)
            {
                if (spans[i].To > left && spans[i].From < right)
                {
                    Open(spans, i, left, right, least);
                }
            }
        }
    }

    /// <summary>Takes the lintels that lie on a row's beds out of it, and gives where they lie.</summary>
    /// <param name="row">The row.</param>
    /// <param name="spans">Its pieces.</param>
    /// <param name="least">A piece that would be left shorter is added to its neighbour, mm.</param>
    /// <param name="joint">Width of joints, mm.</param>
    public List<(double From, double To)> Lintels(in WallRow row, List<(double From, double To)> spans, double least, double joint)
    {
        var lintels = new List<(double From, double To)>();
        foreach (var cut in met)
        {
            if (cut.IsArch || cut.Bearing <= 0 || Math.Abs(row.Low - cut.Spring - OpeningCut.Ledge) > Hair
                || !spans.Exists(s => s.To > cut.Left && s.From < cut.Right) || Beside(cut, row, joint) is not var (before, after))
            {
                continue;
            }

            double from = Borne(spans.Select(s => cut.Left - s.From), cut.Bearing, before), to = Borne(spans.Select(s => s.To - cut.Right), cut.Bearing, after);
            (from, to) = (Math.Max(cut.Left - from, spans.Where(s => s.To > cut.Left - from).Min(s => s.From)),
                Math.Min(cut.Right + to, spans.Where(s => s.From < cut.Right + to).Max(s => s.To)));
            for (int i = spans.Count - 1; i >= 0; i--)
            {
                if (spans[i].To > from - joint + Hair && spans[i].From < to + joint - Hair)
                {
                    Open(spans, i, from - joint, to + joint, least);
                }
            }

            lintels.Add((from, to));
        }

        return lintels;
    }

    // How far a lintel lies on its wall: as far as is asked for, or to where a piece ends that is a third nearer at most or a half farther; half of what is
    // between it and another one at most.
    private static double Borne(IEnumerable<double> ends, double asked, double most) =>
        Math.Min(most, ends.Where(e => e > asked * 2 / 3 && e < asked * 3 / 2 && e <= most).DefaultIfEmpty(asked).MinBy(e => Math.Abs(e - asked)));

    // How far a lintel may lie on the wall on either side for other openings in its row: a joint off them, and off another lintel too, which has half of what
    // is between; null where one lies over it.
    private (double Before, double After)? Beside(OpeningCut cut, in WallRow row, double joint)
    {
        var (before, after) = (double.PositiveInfinity, double.PositiveInfinity);
        foreach (var other in met)
        {
            bool alike = !other.IsArch && other.Bearing > 0 && Math.Abs(row.Low - other.Spring - OpeningCut.Ledge) <= Hair;
            if (other == cut || (!alike && (other.Sill - OpeningCut.Ledge >= row.High || other.Highest <= row.Low)))
            {
                continue;
            }

            double left = cut.Left - other.Middle - other.Reach, right = other.Middle - other.Reach - cut.Right;
            if (Math.Max(left, right) <= joint)
            {
                return null;
            }

            before = left > joint ? Math.Min(before, alike ? (left - joint) / 2 : left - joint) : before;
            after = right > joint ? Math.Min(after, alike ? (right - joint) / 2 : right - joint) : after;
        }

        return (before, after);
    }

    // Takes what lies between two sides out of a piece. What is left of it goes with its neighbour where that is too short, unless a hole lies between.
    private static void Open(List<(double From, double To)> spans, int i, double left, double right, double least)
    {
        var (from, to) = spans[i];
        spans.RemoveAt(i);
        if (to > right)
        {
            if (to - right >= least || i >= spans.Count || spans[i].From - to > least)
            {
                spans.Insert(i, (right, to));
            }
            else
            {
                spans[i] = (right, spans[i].To);
            }
        }

        if (from < left)
        {
            if (left - from >= least || i == 0 || from - spans[i - 1].To > least)
            {
                spans.Insert(i, (from, left));
            }
            else
            {
                spans[i - 1] = (spans[i - 1].From, left);
            }
        }
    }

    /// <summary>Adds pieces of which the back of an arch would leave less than the least along their lower side to those beside them, farther from
    /// its crown.</summary>
    /// <param name="row">The row.</param>
    /// <param name="spans">Its pieces.</param>
    /// <param name="least">The least, mm.</param>
    public void Join(in WallRow row, List<(double From, double To)> spans, double least)
    {
        foreach (var cut in met)
        {
            if (!cut.IsArch || row.High <= cut.Spring + Hair || row.Low >= cut.Highest)
            {
                continue;
            }

            double half = cut.HalfAt(row.Low), middle = cut.Middle;
            if (cut.HalfAt(row.High) > 0 && spans.FindIndex(s => s.From < middle && s.To > middle) is var whole and >= 0)
            {
                // The arch comes through the row: what lies to its left and to its right are two.
                spans.Insert(whole + 1, (middle, spans[whole].To));
                spans[whole] = (spans[whole].From, middle);
            }

            for (int i = spans.Count - 2; i >= 0; i--)
            {
                // To the right of the crown a short one goes to its right neighbour.
                var (from, to) = spans[i];
                if ((from + to) / 2 > middle && from < middle + half && to - (middle + half) < least)
                {
                    spans[i + 1] = (from, spans[i + 1].To);
                    spans.RemoveAt(i);
                }
            }

            for (int i = 1; i < spans.Count; i++)
            {
                var (from, to) = spans[i];
                if ((from + to) / 2 < middle && to > middle - half && middle - half - from < least)
                {
                    spans[i - 1] = (spans[i - 1].From, to);
                    spans.RemoveAt(i--);
                }
            }
        }
    }

    /// <summary>What a row stays over: the wall's foot, or the backs of the arches that spring under it.</summary>
    public EdgeLine Under(in WallRow row)
    {
        var (low, high) = (row.Low, row.High);
        var arches = cuts.Where(c => c.IsArch && high > c.Spring + Hair && low < c.Highest).ToArray();
        if (arches.Length == 0)
        {
            return foot;
        }

        string which = string.Join(',', arches.Select(a => a.Left));
        if (!lines.TryGetValue(which, out var line))
        {
            lines[which] = line = Line(arches);
        }

        return line;
    }

    private EdgeLine Line(OpeningCut[] arches)
    {
        var points = edge.Select(p => p + new Point2(0, raised)).ToList();
        foreach (var arch in arches)
        {
            var over = arch.Extrados().ToList();
            double from = over[0].X - Hair, to = over[^1].X + Hair;
            points.RemoveAll(p => p.X > from && p.X < to);
            int at = points.FindIndex(p => p.X >= to);
            points.InsertRange(at < 0 ? points.Count : at, [new(from, foot.At(from)), .. over, new(to, foot.At(to))]);
        }

        return new(points.DistinctBy(p => p.X).ToList(), 0);
    }
}
