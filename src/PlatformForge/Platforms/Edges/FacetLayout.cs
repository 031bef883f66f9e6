using PlatformForge.Platforms.Requests;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Edges;

/// <summary>
/// Facet stations of an edge and what it needs at each: if every vertex has at least its required reach, every straight chord in the layout
/// between neighbouring vertices is at least as far from the centreline as required.
/// </summary>
/// <param name="Stations">Chainages in mm.</param>
/// <param name="Required">Least reach of the edge at each, mm.</param>
internal sealed record EdgeVertices(double[] Stations, double[] Required);

/// <summary>
/// Chooses facet stations between given break points, evenly between each two, as few as keep chords within
/// <see cref="Tolerances.FacetVersine"/> of the true curves.
/// </summary>
/// <remarks>
/// On the outside of a curve the chord of two points at reach t lies nearer to the track than the arc, by at most
/// |κ|·(1+|κ|t)·h²·u(1−u)/2 at the share u of a facet h long in chainage (versine of a chord, STANDARDS F6, F7, at the arc's own radius).
/// That is added to what is required before the vertices are lifted. On the inside the chord lies farther away and nothing is added.
/// </remarks>
internal sealed class FacetLayout(Centreline chart, Side side, RequirementTrace trace, double width)
{
    // The versine formula is parabolic; its error and that of unequal reaches at both ends is below 5 % of it on facets of some degrees.
    private const double VersineAllowance = 1.05;

    // Covers the slant of chords between vertices of unequal reach, mm: ΔT·h·u(1−u)·t'/ρ is below 2e-5 for tapers to 1 in 10.
    private const double SlantAllowance = 5e-5;

    // No facet is made shorter than this, mm, however the requirement jumps.
    private const double ShortestFacet = 0.5;

    // Straight edges are still cut into facets of this length, mm, so that ramps and traces have something to hold on to.
    private const double LongestFacet = 60;

    /// <param name="breaks">Chainages that must be stations, increasing, the platform's ends first and last.</param>
    public EdgeVertices Choose(IReadOnlyList<double> breaks)
    {
        var stations = new List<double> { breaks[0] };
        for (int i = 1; i < breaks.Count; i++)
        {
            double a = breaks[i - 1], length = breaks[i] - a;
            int most = Math.Max(1, (int)(length / ShortestFacet));
            int facets = Math.Clamp(LeastFacets(a, breaks[i]), 1, most);
            while (facets < most && !Close(a, length, facets))
            {
                facets = Math.Min(most, Math.Max(facets + 1, facets * 5 / 4));
            }

            for (int f = 1; f <= facets; f++)
            {
                stations.Add(f == facets ? breaks[i] : a + (length * f / facets));
            }
        }

        return new([.. stations], Lifted([.. stations]));
    }

    /// <summary>Required reach at a chainage, budget included, mm.</summary>
    public double RequiredAt(double chainage)
    {
        double place = Math.Clamp((chainage - trace.Stations[0]) / Spacing, 0, trace.Stations.Length - 1);
        int i = Math.Min((int)place, trace.Stations.Length - 2);
        return trace.Required(i) + ((place - i) * (trace.Required(i + 1) - trace.Required(i)));
    }

    private double Spacing => trace.Stations[1] - trace.Stations[0];

    // Facets enough for the versine alone, on the coping and on the back.
    private int LeastFacets(double a, double b)
    {
        double most = 0;
        foreach (double s in Samples(a, b))
        {
            double curvature = Math.Abs(chart.CurvatureAt(s)), near = RequiredAt(s);
            double outer = 1 - (side.Bend(chart.CurvatureAt(s)) * near), back = 1 - (side.Bend(chart.CurvatureAt(s)) * (near + width));
            most = Math.Max(most, curvature * Math.Max(outer, back));
        }

        double facet = most > 0 ? Math.Sqrt(8 * Tolerances.FacetVersine / most) : LongestFacet;
        return (int)Math.Ceiling((b - a) / Math.Min(facet, LongestFacet));
    }

    // Whether chords over the required reach itself stay within the versine of it, above and below.
    private bool Close(double a, double length, int facets)
    {
        for (int f = 0; f < facets; f++)
        {
            double from = a + (length * f / facets), to = a + (length * (f + 1) / facets);
            var (under, over) = Deviation(from, to);
            // The bulge of a curve is the versine again and has its own limit above.
            if (under > 2 * Tolerances.FacetVersine || over > Tolerances.FacetVersine)
            {
                return false;
            }
        }

        return true;
    }

    private double[] Lifted(double[] stations)
    {
        var lift = new double[stations.Length];
        for (int j = 0; j + 1 < stations.Length; j++)
        {
            double under = Deviation(stations[j], stations[j + 1]).Under;
            lift[j] = Math.Max(lift[j], under);
            lift[j + 1] = Math.Max(lift[j + 1], under);
        }

        return [.. stations.Select((s, j) => RequiredAt(s) + lift[j] + SlantAllowance)];
    }

    /// <summary>
    /// By how much the chord over the required reach at both ends falls short of what is required between them, and by how much it
    /// exceeds it, mm; neither below nil.
    /// </summary>
    private (double Under, double Over) Deviation(double from, double to)
    {
        double r0 = RequiredAt(from), r1 = RequiredAt(to), h = to - from, under = 0, over = 0;
        double bulge = 0;
        foreach (double s in Samples(from, to))
        {
            double curvature = chart.CurvatureAt(s);
            if (side.Bend(curvature) < 0)
            {
                bulge = Math.Max(bulge, Math.Abs(curvature) * (1 + (Math.Abs(curvature) * Math.Max(r0, r1))));
            }
        }

        bulge *= VersineAllowance;
        foreach (double s in Samples(from, to))
        {
            double u = (s - from) / h, straight = r0 + (u * (r1 - r0)), needed = RequiredAt(s);
            double chordal = bulge * ((h * h * u * (1 - u) / 2) + (Spacing * Spacing / 8));
            under = Math.Max(under, needed + chordal - straight);
            over = Math.Max(over, straight - needed);
        }

        return (under, over);
    }

    // Both ends and every station of the trace between them.
    private IEnumerable<double> Samples(double from, double to)
    {
        yield return from;
        int i = Math.Max(0, (int)Math.Floor((from - trace.Stations[0]) / Spacing) + 1);
        for (; i < trace.Stations.Length && trace.Stations[i] < to; i++)
        {
            yield return trace.Stations[i];
        }

        yield return to;
    }
}
