using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Exports.Paper.FullSize;

/// <summary>Lines of tracks as short straights, and what lies along them.</summary>
internal static class LineFacets
{
    /// <summary>How long a facet is at most, mm.</summary>
    public const double Longest = 20;

    // How far a rail's curve leaves its facets, mm.
    private const double FacetVersine = 0.002;

    /// <summary>Chainages of a line's facets, mm: as long as leaves the line by no more than is drawn.</summary>
    public static IEnumerable<double> Steps(Centreline line, double from, double to)
    {
        for (double s = from; s < to;)
        {
            yield return s;
            double bend = Math.Max(Math.Abs(line.At(s).Curvature), Math.Abs(line.At(Math.Min(to, s + Longest)).Curvature));
            s += Math.Clamp(Math.Sqrt(8 * FacetVersine / bend), 0.5, Longest);
        }

        yield return to;
    }

    /// <summary>The ends of sleepers on both sides, each as four points from inside to inside.</summary>
    /// <param name="line">The track's line.</param>
    /// <param name="from">First chainage, mm.</param>
    /// <param name="to">Last chainage, mm.</param>
    /// <param name="along">Distance of sleepers and half their width, mm.</param>
    /// <param name="across">Half a sleeper's length, and how much of it is drawn, mm.</param>
    public static IEnumerable<Point2[]> SleeperEnds(
        Centreline line, double from, double to, (double Pitch, double Half) along, (double Half, double Drawn) across)
    {
        for (double s = from + (along.Pitch / 2); s < to - along.Half; s += along.Pitch)
        {
            foreach (double side in (double[])[1, -1])
            {
                double outer = side * across.Half, inner = side * (across.Half - across.Drawn), a = s - along.Half, b = s + along.Half;
                yield return [line.PointAt(a, inner), line.PointAt(a, outer), line.PointAt(b, outer), line.PointAt(b, inner)];
            }
        }
    }
}
