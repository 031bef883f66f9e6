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
    public void AddOuter(int column, ReadOnlySpan<double> f, Vector<double> weight) => AddOuter(column, f[0], f[1], f[2], f[3], weight);

    /// <summary>The same.</summary>
    public void AddOuter(int column, double f0, double f1, double f2, double f3, Vector<double> weight)
    {
        var at = entries.AsSpan(column * Bands, Bands * Bands);
        Vector<double> w1 = weight * f1, w2 = weight * f2, w3 = weight * f3;
        at[0] += weight * (f0 * f0);
        at[4] += w1 * f1;
        at[5] += w1 * f0;
        at[8] += w2 * f2;
        at[9] += w2 * f1;
        at[10] += w2 * f0;
        at[12] += w3 * f3;
        at[13] += w3 * f2;
        at[14] += w3 * f1;
        at[15] += w3 * f0;
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

    /// <summary>The factors of one lane, four to a row.</summary>
    public double[] Factors(int lane) => [.. entries.Select(e => e[lane])];

    /// <summary>Solves by the factors of one lane in all lanes.</summary>
    public static void Solve(ReadOnlySpan<double> factors, Span<Vector<double>> b)
    {
        Vector<double> one = default, two = default, three = default;
        for (int i = 0; i < b.Length; i++)
        {
            var at = factors.Slice(i * Bands, Bands);
            var x = b[i] - (at[1] * one) - (at[2] * two) - (at[3] * three);
            b[i] = x;
            (three, two, one) = (two, one, x);
        }

        // Going up, row i takes from those above it what the three below have left.
        (one, two, three) = (default, default, default);
        for (int i = b.Length - 1; i >= 0; i--)
        {
            var x = b[i] * factors[i * Bands];
            x -= i + 1 < b.Length ? factors[((i + 1) * Bands) + 1] * one : default;
            x -= i + 2 < b.Length ? factors[((i + 2) * Bands) + 2] * two : default;
            x -= i + 3 < b.Length ? factors[((i + 3) * Bands) + 3] * three : default;
            b[i] = x;
            (three, two, one) = (two, one, x);
        }
    }

    // A pivot that rounding has eaten up.
    private const double Least = 1e-280;
}
