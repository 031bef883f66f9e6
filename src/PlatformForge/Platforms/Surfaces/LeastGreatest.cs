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
        double[] best = new double[count];
        double least = Worst(rows, best);
        for (int round = 0; round < Rounds && least > Nothing; round++)
        {
            double[] found = Weighted(rows, weights, count);
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

    // Normal equations, solved by Cholesky's factors.
    private static double[] Weighted(double[][] rows, double[] weights, int count)
    {
        var matrix = new double[count, count];
        var right = new double[count];
        for (int r = 0; r < rows.Length; r++)
        {
            double[] row = rows[r];
            for (int i = 0; i < count; i++)
            {
                double w = weights[r] * row[i];
                right[i] -= w * row[^1];
                for (int j = 0; j <= i; j++)
                {
                    matrix[i, j] += w * row[j];
                }
            }
        }

        for (int i = 0; i < count; i++)
        {
            matrix[i, i] += Ridge * (1 + matrix[i, i]);
        }

        return Cholesky(matrix, right);
    }

    private static double[] Cholesky(double[,] matrix, double[] right)
    {
        int n = right.Length;
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = matrix[i, j];
                for (int k = 0; k < j; k++)
                {
                    sum -= matrix[i, k] * matrix[j, k];
                }

                matrix[i, j] = i == j ? Math.Sqrt(Math.Max(sum, Ridge * Ridge)) : sum / matrix[j, j];
            }
        }

        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < i; k++)
            {
                right[i] -= matrix[i, k] * right[k];
            }

            right[i] /= matrix[i, i];
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < n; k++)
            {
                right[i] -= matrix[k, i] * right[k];
            }

            right[i] /= matrix[i, i];
        }

        return right;
    }
}
