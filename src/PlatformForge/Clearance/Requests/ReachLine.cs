using PlatformForge.Track;

namespace PlatformForge.Clearance.Requests;

/// <summary>
/// The greatest reach on one side over a band of heights, station by station. The straight join of neighbouring stations
/// is nowhere less than the true reach.
/// </summary>
/// <param name="Side">Side of the chart line.</param>
/// <param name="From">Chart chainage of the first station, mm.</param>
/// <param name="Spacing">Distance between stations, mm.</param>
/// <param name="Reach">Reach from the chart line, mm, positive to <paramref name="Side"/>; negative infinity where nothing comes.</param>
/// <param name="Governing">Index into <see cref="SweptEnvelope.Parts"/> of the part that reaches farthest; −1 where nothing comes.</param>
public sealed record ReachLine(Side Side, double From, double Spacing, double[] Reach, int[] Governing)
{
    public int Count => Reach.Length;

    public double To => ChainageOf(Count - 1);

    /// <summary>Chart chainage in mm of a station.</summary>
    public double ChainageOf(int station) => From + (station * Spacing);

    /// <summary>Reach in mm at a chainage on the straight join of stations; chainages outside are taken at the nearer end.</summary>
    public double At(double chainage)
    {
        double place = Math.Clamp((chainage - From) / Spacing, 0, Count - 1);
        int i = Math.Min((int)place, Count - 2);
        double share = place - i;
        return share <= 0 ? Reach[i] : share >= 1 ? Reach[i + 1] : Reach[i] + ((Reach[i + 1] - Reach[i]) * share);
    }
}
