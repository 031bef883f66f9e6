using System.Numerics;

namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// Symmetric positive definite systems with three bands beside the diagonal, one in each lane of a vector: factors L·D·Lᵀ.
/// Lanes never mix, so that an answer does not depend on how many the machine takes at once.
/// </summary>
internal sealed class LaneSystem(int size)
{
    private const int Bands = SplineGrid.Span;

    // Row i holds the entries (i, i), (i, i−1), (i, i−2), (i, i−3): of the matrix, then of its factors.
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
        for (int i = 0; i < size; i++)
        {
            for (int d = Math.Min(Bands - 1, i); d >= 1; d--)
            {
                int j = i - d;
                var sum = entries[(i * Bands) + d];
                for (int k = Math.Max(0, i - (Bands - 1)); k < j; k++)
                {
                    sum -= entries[(i * Bands) + i - k] * entries[(j * Bands) + j - k] * entries[k * Bands];
                }

                entries[(i * Bands) + d] = sum / entries[j * Bands];
            }

            var diagonal = entries[i * Bands];
            for (int d = 1; d <= Math.Min(Bands - 1, i); d++)
            {
                var l = entries[(i * Bands) + d];
                diagonal -= l * l * entries[(i - d) * Bands];
            }

            entries[i * Bands] = Vector.Max(diagonal, new Vector<double>(Least));
        }
    }

    public void Solve(Span<Vector<double>> b)
    {
        for (int i = 0; i < size; i++)
        {
            for (int d = 1; d <= Math.Min(Bands - 1, i); d++)
            {
                b[i] -= entries[(i * Bands) + d] * b[i - d];
            }
        }

        for (int i = size - 1; i >= 0; i--)
        {
            b[i] /= entries[i * Bands];
            for (int d = 1; d <= Math.Min(Bands - 1, size - 1 - i); d++)
            {
                b[i] -= entries[((i + d) * Bands) + d] * b[i + d];
            }
        }
    }

    // A pivot that rounding has eaten up.
    private const double Least = 1e-280;
}
