namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// A bound on a measure over all admissible lines, not only over splines, from multipliers of the rows (weak duality). What the
/// readings and curvatures at nodes, times their multipliers, leave of the measure speaks of the third derivative alone: it is the integral of that
/// times a kernel (G. Peano, 1913), which is a parabola between neighbouring places, and the third derivative is bounded.
/// </summary>
/// <remarks>Safe for any multipliers: those that solve the program on the nodes prove a bound some thousandths of a millimetre above its
/// value.</remarks>
internal sealed class ReachProof
{
    private readonly BandedRows rows;
    private readonly int[] order;
    private readonly double[] rateLow, rateHigh;
    private readonly int[] rateRow;

    // Crude bounds on offset (mm), slope and bend (1/mm) of any admissible line at the first node, for what rounding leaves.
    private const double MostOffset = 1e3, MostSlope = 10, MostBend = 1;

    public ReachProof(BandedRows rows)
    {
        this.rows = rows;
        order = [.. Enumerable.Range(0, rows.Count).Where(i => rows.Kind(i) != RowKind.Rate).OrderByDescending(rows.Place)];
        rateRow = new int[rows.Grid.Cells];
        for (int i = 0; i < rows.Count; i++)
        {
            if (rows.Kind(i) == RowKind.Rate)
            {
                rateRow[rows.Column(i)] = i;
            }
        }

        rateLow = [.. rateRow.Select(rows.Low)];
        rateHigh = [.. rateRow.Select(rows.High)];
    }

    /// <summary>A value that the measure, times a sign, does not exceed on any admissible line.</summary>
    /// <param name="measure">The measure; its chainages within the rows' grid.</param>
    /// <param name="sign">+1 for the greatest value, −1 for the least one with its sign changed.</param>
    /// <param name="multipliers">A multiplier for every row; those of rates are not needed.</param>
    /// <param name="every">Distance between two rows' multipliers.</param>
    public double Most(in LineMeasure measure, int sign, ReadOnlySpan<double> multipliers, int every)
    {
        var grid = rows.Grid;
        double bound = 0, place = grid.To;

        var right = default(Kernel);
        int next = 0, asked = 0, cell = grid.Cells;
        Span<int> at = stackalloc int[measure.At.Length];
        Sort(measure.At, at);
        while (true)
        {
            double row = next < order.Length ? rows.Place(order[next]) : double.NegativeInfinity;
            double own = asked < at.Length ? measure.At[at[asked]] : double.NegativeInfinity;
            double node = cell > 0 ? grid.Node(cell - 1) : double.NegativeInfinity;
            double to = Math.Max(Math.Max(row, own), node);
            if (double.IsNegativeInfinity(to))
            {
                break;
            }

            bound += cell > 0 ? Left(ref right, place - to, cell - 1) : 0;
            place = Math.Min(place, to);
            if (own >= row && own == to)
            {
                right.Bend += sign * measure.Weights[at[asked++]];
            }
            else if (row == to)
            {
                bound += Over(ref right, order[next], multipliers[order[next] * every]);
                next++;
            }

            if (cell > 0 && node == to && place <= node)
            {
                cell--;
            }
        }

        return bound + (Math.Abs(right.Bend) * MostOffset) + (Math.Abs(right.Slope) * MostSlope) + (Math.Abs(right.Value) * MostBend);
    }

    // What lies to the right of a place, as a kernel about it: value + slope·t + bend·t²/2 going left by t.
    private struct Kernel
    {
        public double Value, Slope, Bend;
    }

    // Goes left by t within a cell; gives what that adds to the bound.
    private double Left(ref Kernel right, double t, int cell)
    {
        if (!(t > 0))
        {
            return 0;
        }

        double added = Integral(right.Value, right.Slope, right.Bend, t, rateLow[cell], rateHigh[cell]);
        right.Value += (right.Slope * t) + (right.Bend * t * t / 2);
        right.Slope += right.Bend * t;
        return added;
    }

    // Goes over a row with its multiplier; gives what that adds to the bound.
    private double Over(ref Kernel right, int row, double z)
    {
        if (rows.Kind(row) == RowKind.Value)
        {
            right.Bend -= z;
        }
        else
        {
            right.Value -= z;
        }

        return z > 0 ? z * rows.High(row) : z * rows.Low(row);
    }

    // Greatest of ∫ kernel·rate over a stretch with the rate between two bounds; low ≤ 0 ≤ high is not asked.
    private static double Integral(double value, double slope, double bend, double t, double low, double high)
    {
        double whole = (value * t) + (slope * t * t / 2) + (bend * t * t * t / 6);
        double positive = PositivePart(value, slope, bend, t);
        return (high * positive) + (low * (whole - positive));
    }

    // ∫ max(0, value + slope·x + bend·x²/2) from 0 to t.
    private static double PositivePart(double value, double slope, double bend, double t)
    {
        double Upto(double x) => x * (value + (x * ((slope / 2) + (x * bend / 6))));
        double square = (slope * slope) - (2 * bend * value);
        double first = t, second = t;
        if (square > 0)
        {
            // Roots of a parabola without loss of digits.
            double q = -(slope + (Math.Sign(slope) >= 0 ? Math.Sqrt(square) : -Math.Sqrt(square)));
            double one = bend != 0 ? q / bend : double.NaN, other = q != 0 ? 2 * value / q : double.NaN;
            (first, second) = (Inside(one, t), Inside(other, t));
            (first, second) = (Math.Min(first, second), Math.Max(first, second));
        }

        double sum = 0;
        sum += Math.Max(0, Upto(first));
        sum += Math.Max(0, Upto(second) - Upto(first));
        return sum + Math.Max(0, Upto(t) - Upto(second));
    }

    private static double Inside(double x, double t) => x > 0 && x < t ? x : t;

    private static void Sort(double[] at, Span<int> order)
    {
        for (int i = 0; i < order.Length; i++)
        {
            int j = i;
            for (; j > 0 && at[order[j - 1]] < at[i]; j--)
            {
                order[j] = order[j - 1];
            }

            order[j] = i;
        }
    }
}
