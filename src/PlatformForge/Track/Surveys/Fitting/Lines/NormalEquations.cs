using System.Numerics;
using System.Runtime.InteropServices;

namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>
/// Least squares by normal equations, scaled to a unit diagonal so that figures of all sizes (mm, radians, 1/mm) live together,
/// and solved by Cholesky's rule.
/// </summary>
internal sealed class NormalEquations
{
    // Pivots below this part of the diagonal mean that the readings say nothing about a figure.
    private const double LeastPivot = 1e-11;

    private readonly int count;
    private readonly double[] matrix, right;

    // What a solution is worked out in: a search solves the same equations over and over, each with another damping or another right side.
    private readonly double[] factor, scale, solution;

    public NormalEquations(int count)
    {
        this.count = count;
        (matrix, factor) = (new double[count * count], new double[count * count]);
        (right, scale, solution) = (new double[count], new double[count], new double[count]);
    }

    /// <summary>Takes all rows out again.</summary>
    public void Clear()
    {
        Array.Clear(matrix);
        Array.Clear(right);
    }

    /// <summary>Keeps the matrix and takes out what stands on the right of it.</summary>
    public void ClearRight() => Array.Clear(right);

    /// <summary>Adds the residual of a row that the matrix holds already.</summary>
    public void AddRight(ReadOnlySpan<double> row, double residual) => AddMultiple(right, row, residual);

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
            AddMultiple(matrix.AsSpan(i * count, i + 1), row, row[i]);
        }
    }

    // Each entry for itself, so that a vector of them sums up to the same last digit as one after the other.
    private static void AddMultiple(Span<double> to, ReadOnlySpan<double> of, double factor)
    {
        of = of[..to.Length];
        int j = 0;
        var factors = new Vector<double>(factor);
        ref double target = ref MemoryMarshal.GetReference(to), source = ref MemoryMarshal.GetReference(of);
        for (; j <= to.Length - Vector<double>.Count; j += Vector<double>.Count)
        {
            var sum = Vector.LoadUnsafe(ref target, (nuint)j) + (factors * Vector.LoadUnsafe(ref source, (nuint)j));
            sum.StoreUnsafe(ref target, (nuint)j);
        }

        for (; j < to.Length; j++)
        {
            to[j] += factor * of[j];
        }
    }

    /// <summary>The step that lowers the sum of squares, each diagonal raised by a part <paramref name="damping"/>. The row belongs to these equations: the
    /// next step is written over it.</summary>
    public double[] Step(double damping)
    {
        Factor(damping);
        double[] x = solution;
        for (int i = 0; i < count; i++)
        {
            x[i] = right[i] * scale[i];
        }

        Solve(x);
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
        Factor(0);

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

    private void Factor(double damping)
    {
        for (int i = 0; i < count; i++)
        {
            double diagonal = matrix[(i * count) + i];
            scale[i] = diagonal > 0 ? 1 / Math.Sqrt(diagonal) : 0;
        }

        // Row by row; a row takes the multiples of those above it in their order, all entries at once. The columns above the diagonal
        // hold the factor transposed, so that those entries lie side by side.
        for (int i = 0; i < count; i++)
        {
            var own = factor.AsSpan(i * count, count);
            for (int j = 0; j < i; j++)
            {
                own[j] = matrix[(i * count) + j] * scale[i] * scale[j];
            }

            double pivot = 1 + damping;
            for (int k = 0; k < i; k++)
            {
                own[k] /= factor[(k * count) + k];
                AddMultiple(own[(k + 1)..i], factor.AsSpan((k * count) + k + 1, i - k - 1), -own[k]);
                pivot -= own[k] * own[k];
            }

            own[i] = Math.Sqrt(Math.Max(pivot, LeastPivot));
            for (int k = 0; k < i; k++)
            {
                factor[(k * count) + i] = own[k];
            }
        }
    }

    private void Solve(double[] x)
    {
        // A figure that is known is taken out of all rows after it at once: each row takes them in their order all the same.
        for (int k = 0; k < count; k++)
        {
            var beyond = factor.AsSpan(k * count, count)[k..];
            x[k] /= beyond[0];
            AddMultiple(x.AsSpan(k + 1), beyond[1..], -x[k]);
        }

        for (int i = count - 1; i >= 0; i--)
        {
            var own = factor.AsSpan(i * count, count);
            double rest = x[i];
            for (int k = i + 1; k < own.Length; k++)
            {
                rest -= own[k] * x[k];
            }

            x[i] = rest / own[i];
        }
    }
}
