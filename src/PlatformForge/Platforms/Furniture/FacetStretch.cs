using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Platforms.Furniture;

/// <summary>
/// How long a millimetre of chainage is in the layout where a body is laid by facets. Between two stations every line is a chord and the lines across turn
/// evenly, so a facet in which a curve begins is shorter all over than the track is before the curve.
/// </summary>
internal sealed class FacetStretch
{
    private readonly double[] stations;
    private readonly double[] least;

    /// <param name="spine">What carries the body's coordinates.</param>
    /// <param name="lines">Lines of one body, between which something stands.</param>
    public FacetStretch(Spine spine, params ReadOnlySpan<PlanLine> lines)
    {
        stations = lines[0].Stations;
        least = new double[stations.Length - 1];
        Array.Fill(least, double.PositiveInfinity);
        Point2[] forward = Array.ConvertAll(stations, spine.Tangent);
        foreach (var line in lines)
        {
            Point2 before = spine.ToLayout(stations[0], line.Reach[0]);
            for (int i = 0; i < least.Length; i++)
            {
                Point2 after = spine.ToLayout(stations[i + 1], line.Reach[i + 1]), chord = after - before;
                double square = Math.Min(Point2.Dot(chord, forward[i]), Point2.Dot(chord, forward[i + 1]));
                least[i] = Math.Min(least[i], square / (stations[i + 1] - stations[i]));
                least[i] = Math.Min(least[i], Math.Min(Smooth(spine, stations[i], line.Reach[i]), Smooth(spine, stations[i + 1], line.Reach[i + 1])));
                before = after;
            }
        }
    }

    // The same of the smooth line about a station: no rib is thinner by either measure.
    private static double Smooth(Spine spine, double s, double reach) => (spine.ToLayout(s + 0.5, reach) - spine.ToLayout(s - 0.5, reach)).Length;

    /// <summary>The least length, square to the lines across, for a millimetre of chainage, of the facets that a stretch touches.</summary>
    /// <param name="from">Chainage, mm; beyond the ends the outermost facet goes on.</param>
    /// <param name="to">Chainage, mm, not before <paramref name="from"/>.</param>
    public double Least(double from, double to)
    {
        double found = double.PositiveInfinity;
        for (int i = FacetAt(from); i < least.Length && (double.IsPositiveInfinity(found) || stations[i] < to); i++)
        {
            found = Math.Min(found, least[i]);
        }

        return found;
    }

    private int FacetAt(double chainage)
    {
        int found = Array.BinarySearch(stations, chainage);
        return Math.Clamp(found >= 0 ? found : ~found - 1, 0, least.Length - 1);
    }
}
