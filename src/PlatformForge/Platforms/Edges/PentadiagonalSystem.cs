namespace PlatformForge.Platforms.Edges;

/// <summary>
/// A symmetric positive definite matrix with two bands on either side of the diagonal: factorised as L·D·Lᵀ in time linear in its size.
/// </summary>
internal sealed class PentadiagonalSystem(int size)
{
    private readonly double[] diagonal = new double[size];
    private readonly double[] first = new double[size];
    private readonly double[] second = new double[size];

    public void Clear()
    {
        Array.Clear(diagonal);
        Array.Clear(first);
        Array.Clear(second);
    }

    /// <summary>Adds weight·a·aᵀ, where a has three neighbouring coefficients from a column on; those beyond the last column are nil.</summary>
    public void AddOuter(int column, double a, double b, double c, double weight)
    {
        diagonal[column] += weight * a * a;
        if (b == 0 && c == 0)
        {
            return;
        }

        diagonal[column + 1] += weight * b * b;
        first[column] += weight * a * b;
        if (c != 0)
        {
            diagonal[column + 2] += weight * c * c;
            first[column + 1] += weight * b * c;
            second[column] += weight * a * c;
        }
    }

    /// <summary>Turns the matrix into its factors; after it only <see cref="Solve"/> may be called until <see cref="Clear"/>.</summary>
    public void Factorise()
    {
        for (int i = 0; i < size; i++)
        {
            double pivot = diagonal[i], l1 = first[i] / pivot, l2 = second[i] / pivot;
            if (i + 1 < size)
            {
                diagonal[i + 1] -= l1 * first[i];
                first[i + 1] -= l1 * second[i];
            }

            if (i + 2 < size)
            {
                diagonal[i + 2] -= l2 * second[i];
            }

            (first[i], second[i]) = (l1, l2);
        }
    }

    /// <summary>Replaces a right-hand side by the solution.</summary>
    public void Solve(double[] x)
    {
        for (int i = 0; i < size; i++)
        {
            if (i > 0)
            {
                x[i] -= first[i - 1] * x[i - 1];
            }

            if (i > 1)
            {
                x[i] -= second[i - 2] * x[i - 2];
            }
        }

        for (int i = size - 1; i >= 0; i--)
        {
            x[i] /= diagonal[i];
            if (i + 1 < size)
            {
                x[i] -= first[i] * x[i + 1];
            }

            if (i + 2 < size)
            {
                x[i] -= second[i] * x[i + 2];
            }
        }
    }
}
