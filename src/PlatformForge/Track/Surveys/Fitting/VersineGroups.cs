using PlatformForge.Track.Surveys.Fitting.Lines;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// Versines as the search takes them: one by one where they are few, by the means of neighbours where they are many, as places are.
/// </summary>
/// <param name="Observations">What the search is to meet.</param>
/// <param name="Targets">The same for the exact fit.</param>
/// <param name="Single">Whether each stands for one reading.</param>
internal sealed record VersineGroups(Observation[] Observations, FitTarget[] Targets, bool Single)
{
    // Stations of a group farther apart than this part of the chord are told by more places than one: the versines of a line
    // bend where a chord's end passes a joint.
    private const double NearInChords = 0.05;

    private const int MostNodes = 8;

    // A reading this many standard deviations from the middle one of its neighbours has no part in their mean.
    private const double FarFromMiddle = 6;

    public static VersineGroups Of(VersineSurvey survey, double[] chainages, double sigma)
    {
        int n = chainages.Length;
        bool single = n <= PlaceFitter.MostSingle;
        int count = single ? n : PlaceFitter.MostSingle;
        var observations = new Observation[count];
        var targets = new FitTarget[count];
        for (int g = 0; g < count; g++)
        {
            int from = (int)((long)n * g / count), to = (int)((long)n * (g + 1) / count);
            int[] near = single ? [g] : Near(survey, from, to, sigma);
            double value = near.Average(i => survey.Readings[i].Versine), linear = near.Average(i => Linear(survey, i));
            double error = single ? sigma : sigma * Math.Max(PlaceFitter.LeastMeanError, 1 / Math.Sqrt(near.Length));
            double[] nodes = Nodes(near, chainages, survey.Chord), weights = [.. Weights(near.Length, nodes.Length)];
            observations[g] = Observe(nodes, weights, linear, survey.Chord / 2, error, near[0]);
            targets[g] = new VersineTarget(nodes, weights, value, survey.Chord, survey.FromCentre, error);
        }

        return new(observations, targets, single);
    }

    // The versine that a parabola of the same curvature would show on the centreline: h²/2 times the curvature.
    private static double Linear(VersineSurvey survey, int reading)
    {
        double half = survey.Chord / 2, bend = VersineFitter.Curvature(survey.Readings[reading].Versine, half);
        return half * half / 2 * bend / (1 + (survey.FromCentre * bend));
    }

    private static int[] Near(VersineSurvey survey, int from, int to, double sigma)
    {
        double[] sorted = [.. Enumerable.Range(from, to - from).Select(i => survey.Readings[i].Versine).Order()];
        double middle = sorted[sorted.Length / 2];
        return [.. Enumerable.Range(from, to - from).Where(i => Math.Abs(survey.Readings[i].Versine - middle) <= FarFromMiddle * sigma)];
    }

    private static double[] Nodes(int[] near, double[] chainages, double chord)
    {
        double width = chainages[near[^1]] - chainages[near[0]];
        int count = Math.Min(Math.Clamp((int)Math.Ceiling(width / (NearInChords * chord)), 1, MostNodes), near.Length);
        return [.. Enumerable.Range(0, count).Select(k => near[(near.Length * k / count)..(near.Length * (k + 1) / count)].Average(i => chainages[i]))];
    }

    private static IEnumerable<double> Weights(int readings, int nodes) =>
        Enumerable.Range(0, nodes).Select(k => (double)((readings * (k + 1) / nodes) - (readings * k / nodes)) / readings);

    private static Observation Observe(double[] nodes, double[] weights, double value, double half, double error, int reading)
    {
        // The middle first, since it is the place that the observation mostly speaks of.
        int middle = nodes.Length / 2;
        int[] order = [middle, .. Enumerable.Range(0, nodes.Length).Where(k => k != middle)];
        return new(
            [.. order.SelectMany(k => new[] { nodes[k], nodes[k] - half, nodes[k] + half })],
            [.. order.SelectMany(k => new[] { -weights[k], weights[k] / 2, weights[k] / 2 })],
            value,
            error,
            reading);
    }
}
