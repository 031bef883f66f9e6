namespace PlatformForge.Platforms.Edges;

/// <summary>
/// Keeps a budget in every direction, not only square to the track: what a disc of the budget's radius touches when it rolls along the swept
/// line. Where the swept line runs at a slope the edge needs more than the budget square to the track; on a line at an even slope m, budget × √(1 + m²).
/// </summary>
internal static class BudgetDisc
{
    /// <summary>
    /// Least reach per station, mm; its straight join between stations is enough too. The swept line is straight between stations and goes on straight beyond
    /// its ends; lengths along an offset line are taken at the shorter of both offsets, which is on the safe side.
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

        double[] steps = Steps(stations, swept, budget, curvature);
        for (int j = 0; j + 1 < n; j++)
        {
            if (double.IsNegativeInfinity(swept[j]) || double.IsNegativeInfinity(swept[j + 1]))
            {
                continue;
            }

            double step = steps[j], slope = (swept[j + 1] - swept[j]) / step;
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

        LiftBetween(least, swept, steps, budget);
        return least;
    }

    // Shortest length of a station's spacing along an offset line, for every two stations and all that the disc touches beside them.
    private static double[] Steps(double[] stations, double[] swept, double budget, Func<double, double> curvature)
    {
        double spacing = stations[1] - stations[0];
        var own = new double[stations.Length];
        for (int j = 0; j < own.Length; j++)
        {
            double bend = curvature(stations[j]), at = bend * (bend > 0 ? swept[j] + budget : swept[j]);
            own[j] = double.IsFinite(swept[j]) ? spacing * Math.Clamp(1 - at, LeastStretch, double.MaxValue) : double.PositiveInfinity;
        }

        int beside = (int)Math.Min(own.Length, Math.Ceiling(budget / spacing) + 1);
        var steps = new double[own.Length];
        for (int j = 0; j < steps.Length; j++)
        {
            steps[j] = double.PositiveInfinity;
            for (int i = Math.Max(0, j - beside); i <= Math.Min(own.Length - 1, j + 1 + beside); i++)
            {
                steps[j] = Math.Min(steps[j], own[i]);
            }
        }

        return steps;
    }

    // About a peak of the swept line the disc's own arc bulges over the straight join of two stations. Both are raised by its greatest height over the join,
    // which is where it
    // runs alike: budget × sine of the slope beside the peak. Elsewhere what is needed is straight or hollow and its join is over it.
    private static void LiftBetween(double[] least, double[] swept, double[] steps, double budget)
    {
        var lift = new double[least.Length];
        for (int i = 0; i + 1 < least.Length; i++)
        {
            double slope = (least[i + 1] - least[i]) / steps[i], aside = -budget * slope / Math.Sqrt(1 + (slope * slope));
            int peak = i - (int)Math.Floor(aside / steps[i]);
            if (double.IsFinite(slope) && peak >= 0 && peak < swept.Length)
            {
                double share = (aside / steps[i]) - Math.Floor(aside / steps[i]);
                double over = swept[peak] + Math.Sqrt((budget * budget) - (aside * aside)) - (least[i] + (share * steps[i] * slope));
                (lift[i], lift[i + 1]) = (Math.Max(lift[i], over), Math.Max(lift[i + 1], over));
            }
        }

        for (int i = 0; i < least.Length; i++)
        {
            least[i] += lift[i];
        }
    }

    // A line so near to the track's centre of curvature that it is this much shorter than the track has no chainages to speak of.
    private const double LeastStretch = 0.05;
}
