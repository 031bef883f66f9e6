using System.Numerics;

namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// Symmetric positive definite systems with three bands beside the diagonal, one in each lane of a vector: factors L·D·Lᵀ.
/// Lanes never mix, so that an answer does not depend on how many the machine takes at once.
/// </summary>
internal sealed class LaneSystem(int size)
{
    private const int Bands = SplineGrid.Span;

    // Row i holds the entries (i, i), (i, i−1), (i, i−2), (i, i−3): of the matrix; then of its factors, with one over D in the place of D.
    private readonly Vector<double>[] entries = new Vector<double>[size * Bands];

    public void Clear() => Array.Clear(entries);

    /// <summary>Adds weight·f·fᵀ of four neighbouring unknowns.</summary>
    public void AddOuter(int column, ReadOnlySpan<double> f, Vector<double> weight)
    {
        var at = entries.AsSpan(column * Bands, Bands * Bands);
        for (int p = 0; p < Bands; p++)
        {
            var scaled = weight * f[p];
            for (int q = 0; q <= p; q++)
            {
                at[(p * Bands) + p - q] += scaled * f[q];
            }
        }
    }

    public void Factorise()
    {
        // A row's factors, and those of the two rows before it.
        Vector<double> before1 = default, before2 = default, twice1 = default;
        Vector<double> inverse1 = default, inverse2 = default, inverse3 = default;
        for (int i = 0; i < size; i++)
        {
            var at = entries.AsSpan(i * Bands, Bands);
            Vector<double> by3 = at[3], by2 = at[2] - (by3 * twice1), by1 = at[1] - (by3 * before2) - (by2 * before1);
            var (l1, l2, l3) = (by1 * inverse1, by2 * inverse2, by3 * inverse3);
            var inverse = Vector<double>.One / Vector.Max(at[0] - (l1 * by1) - (l2 * by2) - (l3 * by3), new Vector<double>(Least));
            (at[0], at[1], at[2], at[3]) = (inverse, l1, l2, l3);
            (twice1, before1, before2) = (before1, l1, l2);
            (inverse3, inverse2, inverse1) = (inverse2, inverse1, inverse);
        }
    }

    public void Solve(Span<Vector<double>> b)
    {
        Vector<double> one = default, two = default, three = default;
        for (int i = 0; i < size; i++)
        {
            var at = entries.AsSpan(i * Bands, Bands);
            b[i] -= (at[1] * one) + (at[2] * two) + (at[3] * three);
            (three, two, one) = (two, one, b[i]);
        }

        for (int i = size - 1; i >= 0; i--)
        {
            b[i] *= entries[i * Bands];
            for (int d = 1; d <= Math.Min(Bands - 1, size - 1 - i); d++)
            {
                b[i] -= entries[((i + d) * Bands) + d] * b[i + d];
            }
        }
    }

    // A pivot that rounding has eaten up.
    private const double Least = 1e-280;
}
