using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// Readings that disagree with their neighbours before anything is fitted: each is held against the cubic through two
/// neighbours on either side.
/// </summary>
internal static class Suspects
{
    /// <summary>A reading this many standard deviations from what its neighbours say is suspect.</summary>
    public const double Disagreement = 4;

    private const int Neighbours = 2;

    /// <summary>Sets to try leaving out, each of which costs a search: the most suspect one, and the two most suspect ones. Empty
    /// where none is suspect.</summary>
    public static IReadOnlyList<bool[]> Among(IReadOnlyList<Observation> observations)
    {
        int n = observations.Count;
        double[] doubt = new double[n];
        for (int i = Neighbours; i < n - Neighbours; i++)
        {
            doubt[i] = Doubt(observations, i);
        }

        // A wild reading makes its neighbours look wild too, less so: only the peaks count.
        int[] peaks = [.. Enumerable.Range(0, n)
            .Where(i => doubt[i] > Disagreement && doubt[i] >= doubt[Math.Max(0, i - 1)] && doubt[i] >= doubt[Math.Min(n - 1, i + 1)])
            .OrderByDescending(i => doubt[i])];
        bool[] Without(params int[] places)
        {
            bool[] set = new bool[n];
            foreach (int place in places)
            {
                set[place] = true;
            }

            return set;
        }

        return peaks.Length switch
        {
            0 => [],
            1 => [Without(peaks)],
            _ => [Without(peaks[0]), Without(peaks[0], peaks[1])],
        };
    }

    private static double Doubt(IReadOnlyList<Observation> observations, int i)
    {
        // Lagrange's weights of the neighbours at the reading's own place.
        double value = observations[i].Value, variance = Square(observations[i].Sigma);
        for (int a = -Neighbours; a <= Neighbours; a++)
        {
            double weight = 1;
            for (int b = -Neighbours; b <= Neighbours && a != 0; b++)
            {
                if (b != 0 && b != a)
                {
                    double gap = observations[i + a].Place - observations[i + b].Place;
                    weight *= gap == 0 ? 0 : (observations[i].Place - observations[i + b].Place) / gap;
                }
            }

            if (a != 0)
            {
                value -= weight * observations[i + a].Value;
                variance += Square(weight * observations[i + a].Sigma);
            }
        }

        return Math.Abs(value) / Math.Sqrt(variance);
    }

    private static double Square(double x) => x * x;
}
