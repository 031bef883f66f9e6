using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// Where the curvature seems to change, from differences of neighbouring readings alone: a start for the search that meets short
/// stretches, such as the reverse curves of a crossover, which adding one change at a time can miss.
/// </summary>
internal static class ChangeSeeds
{
    /// <summary>Most places handed on.</summary>
    public const int Most = 8;

    // Neighbours are taken so far apart that scatter shows as less curvature than this, 1/mm.
    private const double WantedCurvature = 3e-4;

    // A step of curvature counts from this many of its own standard deviations.
    private const double Significant = 3;

    /// <summary>Chainages of likely changes, rising; empty where the readings are too few or show none.</summary>
    public static double[] Among(IReadOnlyList<Observation> observations)
    {
        int n = observations.Count;
        if (n < 7 || observations[0].At.Length > 1)
        {
            return [];
        }

        double spacing = (observations[^1].Place - observations[0].Place) / (n - 1);
        double wanted = Math.Sqrt(observations[0].Sigma * Math.Sqrt(6) / WantedCurvature);
        int lag = Math.Clamp((int)Math.Ceiling(wanted / spacing), 1, n / 7);
        double[] curvature = new double[n], sigma = new double[n], step = new double[n];
        for (int i = lag; i < n - lag; i++)
        {
            (curvature[i], sigma[i]) = Bend(observations[i - lag], observations[i], observations[i + lag]);
        }

        for (int i = 2 * lag; i < n - (2 * lag); i++)
        {
            double deviation = Math.Sqrt((sigma[i - lag] * sigma[i - lag]) + (sigma[i + lag] * sigma[i + lag]));
            step[i] = deviation > 0 ? Math.Abs(curvature[i + lag] - curvature[i - lag]) / deviation : 0;
        }

        return [.. Enumerable.Range(0, n)
            .Where(i => step[i] > Significant && Enumerable.Range(Math.Max(0, i - lag), Math.Min(n, i + lag + 1) - Math.Max(0, i - lag))
                .All(k => step[k] <= step[i]))
            .OrderByDescending(i => step[i])
            .Take(Math.Min(Most, n / 4))
            .Select(i => observations[i].Place)
            .Order()];
    }

    private static (double Curvature, double Sigma) Bend(Observation a, Observation b, Observation c)
    {
        double before = b.Place - a.Place, after = c.Place - b.Place, half = (before + after) / 2;
        if (!(before > 0 && after > 0))
        {
            return (0, 0);
        }

        double wa = 1 / (before * half), wc = 1 / (after * half), wb = wa + wc;
        double variance = (wa * wa * a.Sigma * a.Sigma) + (wb * wb * b.Sigma * b.Sigma) + (wc * wc * c.Sigma * c.Sigma);
        return ((wa * a.Value) - (wb * b.Value) + (wc * c.Value), Math.Sqrt(variance));
    }
}
