namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// Least squares by normal equations, scaled to a unit diagonal so that figures of all sizes (mm, radians, 1/mm) live together,
/// and solved by Cholesky's rule.
/// </summary>
internal sealed class NormalEquations(int count)
{
    // Pivots below this part of the diagonal mean that the readings say nothing about a figure.
    private const double LeastPivot = 1e-11;

    private readonly double[] matrix = new double[count * count];
    private readonly double[] right = new double[count];

    /// <summary>Adds one row of the Jacobian and its residual.</summary>
    public void Add(ReadOnlySpan<double> row, double residual)
    {
        for (int i = 0; i < count; i++)
        {
            if (row[i] == 0)
            {
                continue;
            }

            right[i] += row[i] * residual;
            for (int j = 0; j <= i; j++)
            {
                matrix[(i * count) + j] += row[i] * row[j];
            }
        }
    }

    /// <summary>The step that lowers the sum of squares, each diagonal raised by a part <paramref name="damping"/>.</summary>
    public double[] Step(double damping)
    {
        var factor = Factor(damping, out double[] scale);
        double[] x = [.. right.Select((r, i) => r * scale[i])];
        Solve(factor, x);
        for (int i = 0; i < count; i++)
        {
            x[i] *= scale[i];
        }

        return x;
    }

    /// <summary>Adds what is known of a figure beforehand: its standard deviation about the value found.</summary>
    public void Hold(int figure, double deviation) => matrix[(figure * count) + figure] += 1 / (deviation * deviation);

    /// <summary>A square root of the covariance: rows of a matrix F with F·Fᵀ = (JᵀJ)⁻¹.</summary>
    public double[] CovarianceRoot()
    {
        var factor = Factor(0, out double[] scale);

        // (L Lᵀ)⁻¹ = L⁻ᵀ L⁻¹, so that F = S · L⁻ᵀ, upper triangular.
        double[] root = new double[count * count];
        for (int c = 0; c < count; c++)
        {
            double[] column = new double[count];
            column[c] = 1;
            for (int i = count - 1; i >= 0; i--)
            {
                double sum = column[i];
                for (int k = i + 1; k < count; k++)
                {
                    sum -= factor[(k * count) + i] * column[k];
                }

                column[i] = sum / factor[(i * count) + i];
            }

            for (int i = 0; i < count; i++)
            {
                root[(i * count) + c] = scale[i] * column[i];
            }
        }

        return root;
    }

    private double[] Factor(double damping, out double[] scale)
    {
        scale = new double[count];
        for (int i = 0; i < count; i++)
        {
            double diagonal = matrix[(i * count) + i];
            scale[i] = diagonal > 0 ? 1 / Math.Sqrt(diagonal) : 0;
        }

        double[] factor = new double[count * count];
        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = i == j ? 1 + damping : matrix[(i * count) + j] * scale[i] * scale[j];
                for (int k = 0; k < j; k++)
                {
                    sum -= factor[(i * count) + k] * factor[(j * count) + k];
                }

                factor[(i * count) + j] = i == j ? Math.Sqrt(Math.Max(sum, LeastPivot)) : sum / factor[(j * count) + j];
            }
        }

        return factor;
    }

    private void Solve(double[] factor, double[] x)
    {
        for (int i = 0; i < count; i++)
        {
            for (int k = 0; k < i; k++)
            {
                x[i] -= factor[(i * count) + k] * x[k];
            }

            x[i] /= factor[(i * count) + i];
        }

        for (int i = count - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < count; k++)
            {
                x[i] -= factor[(k * count) + i] * x[k];
            }

            x[i] /= factor[(i * count) + i];
        }
    }
}
