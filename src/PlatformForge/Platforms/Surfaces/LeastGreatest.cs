using System.Numerics;
using System.Runtime.CompilerServices;

namespace PlatformForge.Platforms.Surfaces;

/// <summary>
/// Makes the greatest of many affine forms small: weighted least squares, the weights multiplied by what is left over until no place counts
/// that is not among the worst (C. L. Lawson's algorithm, 1961). The best of all rounds is kept.
/// </summary>
internal static class LeastGreatest
{
    private const int Rounds = 60;

    // Left over this little, in units of what is allowed, is nothing.
    private const double Nothing = 1e-9;

    // Keeps the equations soluble where a figure moves nothing; far below what any figure does.
    private const double Ridge = 1e-12;

    /// <param name="rows">Forms: a factor for each figure, then the constant.</param>
    /// <param name="count">How many figures are free.</param>
    /// <returns>The figures.</returns>
    public static double[] Solve(double[][] rows, int count)
    {
        var weights = new double[rows.Length];
        Array.Fill(weights, 1.0 / rows.Length);
        int[] used = Array.ConvertAll(rows, r => Math.Min(count, Array.FindLastIndex(r, r.Length - 2, f => f != 0) + 1));
        double[] best = new double[count];
        double least = Worst(rows, best);
        for (int round = 0; round < Rounds && least > Nothing; round++)
        {
            double[] found = Weighted(rows, used, weights, count);
            double worst = 0, sum = 0;
            for (int r = 0; r < rows.Length; r++)
            {
                double left = Math.Abs(Value(rows[r], found));
                worst = Math.Max(worst, left);
                sum += weights[r] *= left;
            }

            if (worst < least)
            {
                (best, least) = (found, worst);
            }

            if (sum <= 0)
            {
                break;
            }

            for (int r = 0; r < rows.Length; r++)
            {
                weights[r] /= sum;
            }
        }

        return best;
    }

    private static double Worst(double[][] rows, double[] at) => rows.Max(r => Math.Abs(Value(r, at)));

    private static double Value(double[] row, double[] at)
    {
        double sum = row[^1];
        for (int k = 0; k < at.Length; k++)
        {
            sum += row[k] * at[k];
        }

        return sum;
    }

    // Normal equations, solved by Cholesky's factors. A form hangs on the figures up to its last that is not nil: of planes hinged one to the next those of
    // all planes before, half of
    // all in the mean. Each entry of the matrix is summed form by form, in the same order whatever the width of a lane.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double[] Weighted(double[][] rows, int[] used, double[] weights, int count)
    {
        var matrix = new double[count][];
        for (int i = 0; i < count; i++)
        {
            matrix[i] = new double[i + 1];
        }

        var right = new double[count];
        for (int r = 0; r < rows.Length; r++)
        {
            double[] row = rows[r];
            for (int i = 0; i < used[r]; i++)
            {
                double w = weights[r] * row[i];
                right[i] -= w * row[^1];
                AddTimes(matrix[i], row.AsSpan(0, i + 1), w);
            }
        }

        for (int i = 0; i < count; i++)
        {
            matrix[i][i] += Ridge * (1 + matrix[i][i]);
        }

        return Cholesky(matrix, right);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void AddTimes(Span<double> sums, ReadOnlySpan<double> row, double weight)
    {
        int lanes = Vector<double>.Count, j = 0;
        var weights = new Vector<double>(weight);
        for (; j + lanes <= row.Length; j += lanes)
        {
            (new Vector<double>(sums[j..]) + (weights * new Vector<double>(row[j..]))).CopyTo(sums[j..]);
        }

        for (; j < row.Length; j++)
        {
            sums[j] += weight * row[j];
        }
    }

    private static double[] Cholesky(double[][] matrix, double[] right)
    {
        int n = right.Length;
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = matrix[i][j];
                for (int k = 0; k < j; k++)
                {
                    sum -= matrix[i][k] * matrix[j][k];
                }

                matrix[i][j] = i == j ? Math.Sqrt(Math.Max(sum, Ridge * Ridge)) : sum / matrix[j][j];
            }
        }

        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < i; k++)
            {
                right[i] -= matrix[i][k] * right[k];
            }

            right[i] /= matrix[i][i];
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < n; k++)
            {
                right[i] -= matrix[k][i] * right[k];
            }

            right[i] /= matrix[i][i];
        }

        return right;
    }
}
