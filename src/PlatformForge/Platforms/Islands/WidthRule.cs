using PlatformForge.Units;

namespace PlatformForge.Platforms.Islands;

/// <summary>Where an island is narrowest, and whether that is enough.</summary>
internal static class WidthRule
{
    /// <summary>Least width of an island, full-size mm: 12 ft, which leaves 6 ft from either edge to what stands in the middle (quoted for the requirements of 1950; common practice).</summary>
    public const double LeastWidth = 12 * FullSize.Foot;

    // Between the walls of both faces something has to be left to print and to join, mm.
    private const double LeastHollow = 2;

    /// <summary>The spec with the least width found as its deck's width; what is wrong with it among the findings.</summary>
    public static PlatformSpec Check(PlatformSpec spec, PlatformSite site, Waist waist, List<Finding> findings)
    {
        double copings = 2 * spec.Coping.Width, walls = (2 * (spec.Coping.Overhang + spec.Walls.FrontThickness)) + LeastHollow;
        double needed = Math.Max(copings, walls), published = site.Scale.ToModel(LeastWidth);
        if (waist.Width < needed)
        {
            double coping = Math.Floor(waist.Width / 2 * 100) / 100;
            bool narrower = waist.Width >= walls && coping > spec.Coping.Overhang + spec.Walls.FrontThickness;
            findings.Add(IslandFindings.TooNarrow(spec, waist, needed, copings >= walls ? "two copings" : "both walls with their overhangs", narrower ? coping : null));
        }
        else if (waist.Width < published)
        {
            findings.Add(IslandFindings.Narrow(spec, waist, published));
        }
        else
        {
            findings.Add(IslandFindings.Told(spec, waist));
        }

        return spec with { Deck = spec.Deck with { Width = Math.Max(1, waist.Width) } };
    }
}

/// <summary>The narrowest place of an island.</summary>
/// <param name="Width">Shortest distance there from one coping edge to the other, mm.</param>
/// <param name="First">Chainage of it on the first face's track, mm.</param>
/// <param name="Second">Chainage of it on the second face's track, mm.</param>
public sealed record Waist(double Width, double First, double Second)
{
    // Edges are held against each other at steps of this, mm, and at every corner.
    private const double Step = 1;

    /// <summary>
    /// The shortest distance from the first edge to the second, in any direction: for every place of the first, that to the second's chords. Where the edges
    /// cross, the distance counts below nil.
    /// </summary>
    internal static Waist Of(FacePlan near, FacePlan far, BodyPlan body)
    {
        var edge = far.CopingFront.Stations.Select((s, i) => far.ToLayout(s, far.CopingFront.Reach[i])).ToArray();
        var places = body.Stations.Zip(body.Stations.Skip(1)).SelectMany(p => Enumerable.Range(0, Math.Max(1, (int)Math.Ceiling((p.Second - p.First) / Step)))
            .Select(k => p.First + ((p.Second - p.First) * k / Math.Max(1, (int)Math.Ceiling((p.Second - p.First) / Step))))).Append(body.Stations[^1]);
        Waist? least = null;
        foreach (double s in places)
        {
            double width = body.WidthAt(s);
            if (least is not null && width > 1.5 * Math.Abs(least.Width) + Step)
            {
                continue; // a place so wide straight across is not the narrowest in any other direction, the edges being nearly parallel
            }

            var (distance, second) = Nearest(near.ToLayout(s, body.CopingFront.At(s)), edge, far.CopingFront.Stations);
            double signed = width < 0 ? -distance : distance;
            least = least is null || signed < least.Width ? new(signed, s, second) : least;
        }

        return least!;
    }

    private static (double Distance, double Chainage) Nearest(Geometry.Point2 from, Geometry.Point2[] edge, double[] stations)
    {
        double best = double.PositiveInfinity, at = 0;
        for (int i = 0; i + 1 < edge.Length; i++)
        {
            var chord = edge[i + 1] - edge[i];
            double share = Math.Clamp(Geometry.Point2.Dot(from - edge[i], chord) / Geometry.Point2.Dot(chord, chord), 0, 1);
            double distance = (edge[i] + (chord * share) - from).Length;
            (best, at) = distance < best ? (distance, stations[i] + (share * (stations[i + 1] - stations[i]))) : (best, at);
        }

        return (best, at);
    }
}
