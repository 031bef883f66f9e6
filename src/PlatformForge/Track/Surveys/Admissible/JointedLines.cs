using System.Numerics;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// All lines of straight and curved pieces between stated joints that meet every reading within its error: each piece has one
/// curvature, one of those stated, and a kink up to the
/// stated angle may be at any joint. Told by offset and slope at the start of every piece, which is all there is to say of it: a piece
/// is a parabola over the stated line.
/// </summary>
internal sealed class JointedLines
{
    // How a curvature differs from the second derivative of an offset, in parts of its square and per mm: offsets from the stated line
    // are some millimetres at most.
    private const double Offset = 3;

    // Stated joints lie within this of the true ones, mm: what that moves a change of curvature by is a kink.
    private const double Placed = 2;

    // A piece is one of the stated ones where its curvature lies within what the readings leave of it; pieces differ by this part in
    // manufacture (common practice, no source).
    private const double Made = 0.01;

    private const double ProgramGap = 1e-3;
    private const int MostRounds = 6;

    // No figure of a line that is looked at differs from the middle by more, mm or slope: for what rounding leaves.
    private const double MostFigure = 1e3;

    private readonly double[] joints, turned;
    private readonly double spacing;
    private readonly double[] low, high, start;
    private readonly BandedRows rows;

    private JointedLines(double[] joints, double[] turned, double spacing, double[] low, double[] high, BandedRows rows, MiddleFound found)
    {
        (this.joints, this.turned, this.spacing, this.low, this.high) = (joints, turned, spacing, low, high);
        (start, LeastShare, AtOdds) = (found.Figures, found.LeastShare, found.AtOdds);
        this.rows = Moved(rows, start);
    }

    public double LeastShare { get; }

    /// <summary>Indices of the readings that contradict one another; empty where there is a line.</summary>
    public int[] AtOdds { get; }

    /// <summary>Pieces that none of the stated radii goes with, by the chainages of their ends.</summary>
    public IReadOnlyList<(double From, double To)> Strange { get; private init; } = [];

    public IReadOnlyList<double> Joints => joints;

    /// <summary>Greatest curvature of a piece less that of the stated line, 1/mm, over the piece that holds a chainage.</summary>
    public double Bend(double chainage, double stated) =>
        Math.Max(Math.Abs(high[PieceAt(chainage)] - stated), Math.Abs(low[PieceAt(chainage)] - stated));

    /// <summary>Finds the set.</summary>
    /// <param name="laying">How the track was laid.</param>
    /// <param name="stated">The line that was found.</param>
    /// <param name="places">Readings on it, in order.</param>
    /// <param name="joints">Chainages of the joints on it, rising.</param>
    public static JointedLines Of(Laying laying, Centreline stated, IReadOnlyList<BandPlace> places, IEnumerable<double> joints)
    {
        double from = Math.Min(0, places[0].Chainage), to = Math.Max(stated.Length, places[^1].Chainage);
        double[] ends = [from, .. joints.Where(j => j > from + Placed && j < to - Placed), to];
        var (turning, step) = Twice(stated, from, to);
        double[] allowed = laying.Radii.Count == 0 ? [] : [0, .. laying.Radii.SelectMany(r => (double[])[1 / r, -1 / r])];
        double sharpest = allowed.Length == 0 ? laying.Curvature : allowed.Max();
        double loose = (Made * sharpest) + (Offset * sharpest * sharpest);
        double[] least = [.. Enumerable.Repeat(-sharpest - loose, ends.Length - 1)], most = [.. Enumerable.Repeat(sharpest + loose, ends.Length - 1)];
        for (int round = 0; ; round++)
        {
            var banded = Rows(laying, places, ends, turning, step, least, most);
            double[] begin = Begin(ends, least, most);
            var found = MiddleLine.Of(Moved(banded, begin));
            var set = new JointedLines(ends, turning, step, least, most, banded, found with { Figures = [.. found.Figures.Zip(begin, (a, b) => a + b)] });
            if (set.AtOdds.Length > 0 || allowed.Length == 0 || round == MostRounds)
            {
                return set;
            }

            if (Narrowed(set.Bends(), allowed, loose, least, most) is not { } next)
            {
                return set;
            }

            if (next.Strange.Count > 0)
            {
                return new(ends, turning, step, least, most, banded, new(set.start, set.LeastShare, []))
                {
                    Strange =
                    [.. next.Strange.Select(p => (ends[p], ends[p + 1]))]
                };
            }

            (least, most) = (next.Low, next.High);
        }
    }

    // A line that keeps curvatures and kinks with room to spare: without kinks, every piece as its range's middle says.
    private static double[] Begin(double[] joints, double[] least, double[] most)
    {
        double[] figures = new double[2 * joints.Length];
        for (int p = 0; p + 1 < joints.Length; p++)
        {
            double h = joints[p + 1] - joints[p], bend = (least[p] + most[p]) / 2;
            figures[(2 * p) + 2] = figures[2 * p] + (figures[(2 * p) + 1] * h) + (bend * h * h / 2);
            figures[(2 * p) + 3] = figures[(2 * p) + 1] + (bend * h);
        }

        return figures;
    }

    // What the stated curvatures leave of the range of every piece; null where nothing changes.
    private static (double[] Low, double[] High, List<int> Strange)? Narrowed(LineRange[] bends, double[] allowed, double loose, double[] least, double[] most)
    {
        double[] nextLow = [.. least], nextHigh = [.. most];
        var strange = new List<int>();
        for (int p = 0; p < bends.Length; p++)
        {
            double[] left = [.. allowed.Where(k => k >= bends[p].Least - loose && k <= bends[p].Most + loose)];
            if (left.Length == 0)
            {
                strange.Add(p);
                continue;
            }

            (nextLow[p], nextHigh[p]) = (Math.Max(least[p], left.Min() - loose), Math.Min(most[p], left.Max() + loose));
        }

        return strange.Count == 0 && nextLow.SequenceEqual(least) && nextHigh.SequenceEqual(most) ? null : (nextLow, nextHigh, strange);
    }

    /// <summary>Least and greatest value of every measure of the offset from the stated line.</summary>
    public LineRange[] Bound(IReadOnlyList<LineMeasure> measures) => Solve(measures.Count, (i, add) =>
    {
        double own = 0;
        for (int k = 0; k < measures[i].At.Length; k++)
        {
            double s = measures[i].At[k];
            AddValue(s, measures[i].Weights[k], add);
            own -= measures[i].Weights[k] * Turned(turned, spacing, joints[0], s);
        }

        return own;
    });

    /// <summary>Range of the sharpness of every piece, 1/mm: what its curvature is at least and at most, either way; nil at least where it may be
    /// straight.</summary>
    public LineRange[] Sharpness() =>
        AtOdds.Length > 0 ? []
            : [.. Bends().Select(b => new LineRange(b.Least < 0 && b.Most > 0 ? 0 : Math.Min(Math.Abs(b.Least), Math.Abs(b.Most)),
                Math.Max(Math.Abs(b.Least), Math.Abs(b.Most))))];

    // Range of the curvature of every piece: asked as versines, mm, since programs stop when they are near in mm.
    private LineRange[] Bends() => [.. Solve(joints.Length - 1, (p, add) =>
    {
        const double Unit = 2 / 8.0;
        add(2 * p, -Unit);
        add((2 * p) + 1, -Unit * (joints[p + 1] - joints[p]));
        add((2 * p) + 2, Unit);
        return 0;
    }).Select((versine, p) => (Versine: versine, Per: 8 / ((joints[p + 1] - joints[p]) * (joints[p + 1] - joints[p]))))
    .Select(b => new LineRange(b.Versine.Least * b.Per, b.Versine.Most * b.Per))];

    private LineRange[] Solve(int count, Func<int, Action<int, double>, double> describe)
    {
        var ranges = new LineRange[count];
        int together = Math.Max(1, LaneProgram.Lanes / 2);
        Parallel.For(0, (count + together - 1) / together, () => new LaneProgram(rows), (batch, _, program) =>
        {
            var cost = new Vector<double>[rows.Figures];
            var multipliers = new Vector<double>[rows.Count];
            int first = batch * together, last = Math.Min(count, first + together);
            double[] own = new double[last - first];
            for (int i = first; i < last; i++)
            {
                int lane = 2 * (i - first);
                own[i - first] = describe(i, (column, weight) =>
                {
                    own[i - first] += weight * start[column];
                    cost[column] = cost[column].WithElement(lane, cost[column][lane] + weight).WithElement(lane + 1, cost[column][lane + 1] - weight);
                }) + own[i - first];
            }

            program.Maximise(cost, multipliers, ProgramGap);
            for (int i = first; i < last; i++)
            {
                int lane = 2 * (i - first);
                ranges[i] = new(own[i - first] - Proven(cost, multipliers, lane + 1), own[i - first] + Proven(cost, multipliers, lane));
            }

            return program;
        }, _ => { });
        return ranges;
    }

    // A value that a cost does not exceed: whatever the multipliers are, bounds times multipliers, and what they leave of the cost
    // times the most that any figure may be.
    private double Proven(Vector<double>[] cost, Vector<double>[] multipliers, int lane)
    {
        double[] rest = [.. cost.Select(c => c[lane])];
        double bound = 0;
        for (int i = 0; i < rows.Count; i++)
        {
            double z = multipliers[i][lane];
            bound += z > 0 ? z * rows.High(i) : z * rows.Low(i);
            var f = rows.Factors(i);
            for (int k = 0; k < f.Length; k++)
            {
                rest[rows.Column(i) + k] -= z * f[k];
            }
        }

        return bound + rest.Sum(r => Math.Abs(r) * MostFigure);
    }

    private static BandedRows Rows(Laying laying, IReadOnlyList<BandPlace> places, double[] joints, double[] turned, double spacing, double[] low,
        double[] high)
    {
        var banded = new BandedRows(2 * joints.Length);
        for (int p = 0; p + 1 < joints.Length; p++)
        {
            double h = joints[p + 1] - joints[p], unit = 2 / (h * h);
            banded.Add(RowKind.Bend, 2 * p, joints[p], [-unit, -unit * h, unit, 0], low[p], high[p], -1);

            // The slope at the end of one piece is twice the chord's less that at its start; the last joint is the end of the line.
            double shift = p + 2 < joints.Length ? Math.Max(high[p], high[p + 1]) - Math.Min(low[p], low[p + 1]) : 0;
            double kink = p + 2 < joints.Length ? Math.Tan(laying.GreatestKink) + (Placed * shift) : Placed * Math.Max(Math.Abs(high[p]), Math.Abs(low[p]));
            banded.Add(RowKind.Kink, 2 * p, joints[p + 1], [2 / h, 1, -2 / h, 1], -kink, kink, -1);
        }

        var set = new double[4];
        foreach (var place in places)
        {
            int p = PieceOf(joints, place.Chainage);
            Array.Clear(set);
            Value(joints, p, place.Chainage, (c, w) => set[c - (2 * p)] += w);
            double at = place.Offset + Turned(turned, spacing, joints[0], place.Chainage);
            banded.Add(RowKind.Value, 2 * p, place.Chainage, set, at - place.Error, at + place.Error, place.Band);
        }

        return banded;
    }

    private void AddValue(double s, double weight, Action<int, double> add) => Value(joints, PieceAt(s), s, (c, w) => add(c, weight * w));

    // Offset and slope at the start and offset at the end tell the parabola.
    private static void Value(double[] joints, int p, double s, Action<int, double> add)
    {
        double h = joints[p + 1] - joints[p], t = s - joints[p], u = t / h;
        add(2 * p, 1 - (u * u));
        add((2 * p) + 1, t - (u * t));
        add((2 * p) + 2, u * u);
    }

    private static BandedRows Moved(BandedRows rows, double[] to)
    {
        var moved = new BandedRows(rows.Figures);
        for (int i = 0; i < rows.Count; i++)
        {
            double own = rows.Of(i, to);
            moved.Add(rows.Kind(i), rows.Column(i), rows.Place(i), rows.Factors(i), rows.Low(i) - own, rows.High(i) - own, rows.Reading(i));
        }

        return moved;
    }

    private int PieceAt(double s) => PieceOf(joints, s);

    private static int PieceOf(double[] joints, double s)
    {
        int p = Array.BinarySearch(joints, s);
        return Math.Clamp(p < 0 ? ~p - 1 : p, 0, joints.Length - 2);
    }

    // Distance between places at which the stated line's turning is summed, mm.
    private const double Fine = 1;

    // The curvature of the stated line summed twice, kinks too: what a parabola is told over.
    private static (double[] Turned, double Spacing) Twice(Centreline stated, double from, double to)
    {
        int count = Math.Max(2, (int)Math.Ceiling((to - from) / Fine) + 1);
        double step = (to - from) / (count - 1), slope = 0;
        double[] turning = new double[count];
        for (int i = 1; i < count; i++)
        {
            // Between two places the tangent turns by what it has turning about the middle between them, half a step before and after.
            double a = from + ((i - 1) * step);
            turning[i] = turning[i - 1] + (step * slope);
            var (before, after) = (stated.At(a).Tangent, stated.At(a + step).Tangent);
            double turn = Math.Atan2(Geometry.Point2.Cross(before, after), Geometry.Point2.Dot(before, after));
            turning[i] += step * turn / 2;
            slope += turn;
        }

        return (turning, step);
    }

    private static double Turned(double[] turned, double spacing, double from, double s)
    {
        double place = (s - from) / spacing;
        int i = Math.Clamp((int)Math.Floor(place), 0, turned.Length - 2);
        return turned[i] + ((place - i) * (turned[i + 1] - turned[i]));
    }
}

/// <summary>A line that is one of a set of jointed ones.</summary>
internal sealed class JointedDoubt(JointedLines lines, Centreline stated) : LineDoubt
{
    /// <inheritdoc/>
    public override LineRange[] Bound(IReadOnlyList<LineMeasure> measures) => lines.Bound(measures);

    /// <inheritdoc/>
    /// <remarks>Within a step a line bows by what its piece bends otherwise than the stated line, and by a fourth of a step of any kink
    /// there, its own or the stated line's.</remarks>
    public override double Bow(IReadOnlyList<LineMeasure> measures, double step)
    {
        double[] at = [.. lines.Joints.Skip(1).SkipLast(1), .. stated.Kinks.Select(k => k.Chainage)];
        var ranges = lines.Bound([.. at.Select(s => new LineMeasure([s - (step / 2), s, s + (step / 2)], [-0.5, 1, -0.5]))]);
        double Own(double s)
        {
            double bend = Math.Max(lines.Bend(s - step, stated.At(s).Curvature), lines.Bend(s + step, stated.At(s).Curvature)) * step * step / 8;
            for (int j = 0; j < at.Length; j++)
            {
                bend = Math.Abs(at[j] - s) <= step ? Math.Max(bend, Math.Max(Math.Abs(ranges[j].Least), Math.Abs(ranges[j].Most))) : bend;
            }

            return bend;
        }

        return measures.Select(m => m.At.Zip(m.Weights, (s, w) => Math.Abs(w) * Own(s)).Sum()).DefaultIfEmpty(0).Max();
    }
}
