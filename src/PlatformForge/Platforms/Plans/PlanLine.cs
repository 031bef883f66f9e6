namespace PlatformForge.Platforms.Plans;

/// <summary>
/// A line along a platform in plan coordinates: a reach in mm at each station, straight between stations.
/// </summary>
/// <param name="Stations">Chainages in mm, increasing; shared by all lines of a plan.</param>
/// <param name="Reach">Distance from the centreline on the platform's side, one a station, mm.</param>
public sealed record PlanLine(double[] Stations, double[] Reach)
{
    /// <summary>Reach in mm at a chainage; beyond the ends, that of the end.</summary>
    public double At(double chainage)
    {
        int found = Array.BinarySearch(Stations, chainage);
        if (found >= 0)
        {
            return Reach[found];
        }

        int next = ~found;
        if (next == 0 || next == Stations.Length)
        {
            return Reach[Math.Min(next, Reach.Length - 1)];
        }

        double share = (chainage - Stations[next - 1]) / (Stations[next] - Stations[next - 1]);
        return Reach[next - 1] + (share * (Reach[next] - Reach[next - 1]));
    }

    /// <summary>The same line a distance in mm farther from the track.</summary>
    public PlanLine Shifted(double by) => new(Stations, Array.ConvertAll(Reach, t => t + by));
}
