using System.Numerics;

namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// A program that was solved, and what it says of others over the same rows: its line is one of those that they look for the best of, and
/// its multipliers, changed by the least weighted sum of squares until they meet the other cost, prove a bound for it. Where the same
/// readings hold both, as of a vehicle some millimetres on, the two lie close and nothing is left to solve.
/// </summary>
/// <param name="cost">Cost of every figure.</param>
/// <param name="multipliers">Multiplier of every row; they meet the cost.</param>
/// <param name="figures">The figures it ended at; they keep every row.</param>
/// <param name="weights">Weight of every row where it ended.</param>
/// <param name="factors">Factors of the weighted sum of the rows, as <see cref="LaneSystem.Factors"/> hands them out.</param>
internal sealed class SolvedProgram(double[] cost, double[] multipliers, double[] figures, double[] weights, double[] factors)
{
    /// <summary>Value of a measure on its line.</summary>
    public double Of(in MeasureFigures measure)
    {
        double sum = 0;
        for (int k = 0; k < measure.Count; k++)
        {
            int column = measure.Columns[k];
            var f = measure.Factors.AsSpan(k * SplineGrid.Span, SplineGrid.Span);
            sum += (f[0] * figures[column]) + (f[1] * figures[column + 1]) + (f[2] * figures[column + 2]) + (f[3] * figures[column + 3]);
        }

        return sum;
    }

    /// <summary>Multipliers for other costs, one in each lane; the value back that none of their lines exceeds.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="others">Cost of every figure; becomes of no use.</param>
    /// <param name="found">Becomes the multiplier of every row.</param>
    public Vector<double> Carry(BandedRows rows, Span<Vector<double>> others, Span<Vector<double>> found)
    {
        for (int j = 0; j < others.Length; j++)
        {
            others[j] -= new Vector<double>(cost[j]);
        }

        LaneSystem.Solve(factors, others);
        var most = Vector<double>.Zero;
        for (int i = 0; i < found.Length; i++)
        {
            var f = rows.Factors(i);
            var x = others.Slice(rows.Column(i), SplineGrid.Span);
            var z = new Vector<double>(multipliers[i]) + (weights[i] * ((x[0] * f[0]) + (x[1] * f[1]) + (x[2] * f[2]) + (x[3] * f[3])));
            most += Vector.Max(z * rows.High(i), z * rows.Low(i));
            found[i] = z;
        }

        return most;
    }
}

/// <summary>A measure as a sum of figures: four neighbouring ones for each of its places.</summary>
/// <param name="Columns">First of the four, for each place.</param>
/// <param name="Factors">Their factors, four to a place.</param>
internal readonly record struct MeasureFigures(int[] Columns, double[] Factors)
{
    public int Count => Columns.Length;

    /// <summary>The figures of a measure; places beyond the grid are taken at its ends.</summary>
    public static MeasureFigures Of(in LineMeasure measure, SplineGrid grid)
    {
        var found = new MeasureFigures(new int[measure.At.Length], new double[measure.At.Length * SplineGrid.Span]);
        for (int k = 0; k < found.Count; k++)
        {
            var weights = found.Factors.AsSpan(k * SplineGrid.Span, SplineGrid.Span);
            found.Columns[k] = grid.Value(Math.Clamp(measure.At[k], grid.From, grid.To), weights);
            for (int j = 0; j < SplineGrid.Span; j++)
            {
                weights[j] *= measure.Weights[k];
            }
        }

        return found;
    }

    /// <summary>Adds the measure, times a sign, to the cost in one lane.</summary>
    public void AddTo(Span<double> cost, int lane, int sign)
    {
        for (int k = 0; k < Count; k++)
        {
            for (int j = 0; j < SplineGrid.Span; j++)
            {
                cost[((Columns[k] + j) * LaneProgram.Lanes) + lane] += sign * Factors[(k * SplineGrid.Span) + j];
            }
        }
    }
}
