using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// Where the track seems to have a kink: the slopes of two short stretches that follow one another differ by more than the
/// curvature round about explains. A search that adds one kink at a time takes the first ones for a sharper curve.
/// </summary>
internal static class KinkSeeds
{
    // A kink of this is to be seen, radians: a degree and a half.
    private const double WantedTurn = 1.5 * Math.PI / 180;

    // A turn counts from this many of its own standard deviations.
    private const double Significant = 4;

    // Curvature round about is the middle one of the bends at so many stations on either side for every station of the stretches.
    private const int Around = 4;

    /// <summary>Chainages in mm and turns in radians, the clearest first; empty where the readings are too few or show none.</summary>
    public static (double At, double Turn)[] Among(IReadOnlyList<Observation> observations, int most)
    {
        int n = observations.Count;
        if (n < 7 || observations[0].At.Length > 1)
        {
            return [];
        }

        double spacing = (observations[^1].Place - observations[0].Place) / (n - 1), sigma = observations[0].Sigma;
        int lag = Math.Clamp((int)Math.Ceiling(2 * sigma * Significant / WantedTurn / spacing), 1, n / 7);
        double[] bends = [.. Enumerable.Range(0, n).Select(i => i < lag || i >= n - lag ? double.NaN
            : Bend(observations[i - lag], observations[i], observations[i + lag]))];
        double[] turn = new double[n], clear = new double[n];
        for (int i = lag; i + 1 + lag < n; i++)
        {
            Observation a = observations[i - lag], b = observations[i], c = observations[i + 1], d = observations[i + 1 + lag];
            double before = b.Place - a.Place, after = d.Place - c.Place;
            if (before > 0 && after > 0)
            {
                double apart = (c.Place + d.Place - a.Place - b.Place) / 2;
                turn[i] = ((d.Value - c.Value) / after) - ((b.Value - a.Value) / before) - (apart * Usual(bends, i, lag));
                clear[i] = Math.Abs(turn[i]) / (Math.Sqrt(2) * sigma * Math.Sqrt((1 / (before * before)) + (1 / (after * after))));
            }
        }

        return [.. Enumerable.Range(0, n - 1)
            .Where(i => clear[i] > Significant && Enumerable.Range(Math.Max(0, i - lag), Math.Min(n, i + lag + 1) - Math.Max(0, i - lag))
                .All(k => clear[k] <= clear[i]))
            .OrderByDescending(i => clear[i])
            .Take(most)
            .Select(i => ((observations[i].Place + observations[i + 1].Place) / 2, turn[i]))];
    }

    private static double Usual(double[] bends, int i, int lag)
    {
        int reach = Around * (lag + 1), from = Math.Max(0, i - reach), to = Math.Min(bends.Length, i + reach + 2);
        double[] near = [.. bends[from..to].Where(double.IsFinite).Order()];
        return near.Length == 0 ? 0 : near[near.Length / 2];
    }

    private static double Bend(Observation a, Observation b, Observation c)
    {
        double before = b.Place - a.Place, after = c.Place - b.Place;
        return before > 0 && after > 0 ? (((c.Value - b.Value) / after) - ((b.Value - a.Value) / before)) / ((before + after) / 2) : double.NaN;
    }
}
