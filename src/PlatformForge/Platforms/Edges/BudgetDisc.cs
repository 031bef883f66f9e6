namespace PlatformForge.Platforms.Edges;

/// <summary>
/// Keeps a budget in every direction, not only square to the track: what a disc of the budget's radius touches when it rolls along the swept
/// line. Where the swept line runs at a slope the edge needs more than the budget square to the track; on a line at an even slope m, budget × √(1 + m²).
/// </summary>
internal static class BudgetDisc
{
    /// <summary>
    /// Least reach per station, mm. The swept line is straight between stations and goes on straight beyond its ends; lengths along an offset line are taken at
    /// the shorter of both offsets, which is on the safe side.
    /// </summary>
    /// <param name="stations">Evenly spaced chainages, mm.</param>
    /// <param name="swept">Reach there, mm; negative infinity where nothing reaches.</param>
    /// <param name="budget">Radius of the disc, mm.</param>
    /// <param name="curvature">Curvature at a chainage, 1/mm, positive where the centre of curvature lies on the platform's side.</param>
    public static double[] Roll(double[] stations, double[] swept, double budget, Func<double, double> curvature)
    {
        var least = Array.ConvertAll(swept, t => t + budget);
        int n = stations.Length;
        if (n < 2 || budget <= 0)
        {
            return least;
        }

        double spacing = stations[1] - stations[0];
        for (int j = 0; j + 1 < n; j++)
        {
            if (double.IsNegativeInfinity(swept[j]) || double.IsNegativeInfinity(swept[j + 1]))
            {
                continue;
            }

            double bend = curvature(stations[j]), high = Math.Max(swept[j], swept[j + 1]);
            double step = spacing * Math.Clamp(1 - (bend * (bend > 0 ? high + budget : high)), LeastStretch, double.MaxValue), slope = (swept[j + 1] - swept[j]) / step;
            int window = (int)Math.Min(n, Math.Ceiling(budget / step));
            for (int i = Math.Max(0, j - window); i <= Math.Min(n - 1, j + 1 + window); i++)
            {
                double begin = j == 0 ? double.NegativeInfinity : (j - i) * step, end = j + 2 == n ? double.PositiveInfinity : (j + 1 - i) * step;
                double at = Math.Clamp(Math.Clamp(budget * slope / Math.Sqrt(1 + (slope * slope)), begin, end), -budget, budget);
                double reach = swept[j] + (slope * (at - ((j - i) * step))) + Math.Sqrt(Math.Max(0, (budget * budget) - (at * at)));
                if (at >= begin && at <= end)
                {
                    least[i] = Math.Max(least[i], reach);
                }
            }
        }

        return least;
    }

    // A line so near to the track's centre of curvature that it is this much shorter than the track has no chainages to speak of.
    private const double LeastStretch = 0.05;
}
