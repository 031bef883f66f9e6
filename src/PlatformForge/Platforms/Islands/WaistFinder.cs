using PlatformForge.Platforms.Plans;

namespace PlatformForge.Platforms.Islands;

/// <summary>Finds where an island is narrowest.</summary>
internal static class WaistFinder
{
    // Edges are held against each other at steps of this, mm, and at every corner.
    private const double Step = 1;

    /// <summary>
    /// The shortest distance from the first edge to the second, in any direction: for every place of the first, that to the second's chords. Where the edges
    /// cross, the distance counts below nil.
    /// </summary>
    public static Waist Of(FacePlan near, FacePlan far, BodyPlan body)
    {
        var edge = far.CopingFront.Stations.Select((s, i) => far.ToLayout(s, far.CopingFront.Reach[i])).ToArray();
        var places = body.Stations.Zip(body.Stations.Skip(1)).SelectMany(p => Enumerable.Range(0, Math.Max(1, (int)Math.Ceiling((p.Second - p.First) / Step)))
            .Select(k => p.First + ((p.Second - p.First) * k / Math.Max(1, (int)Math.Ceiling((p.Second - p.First) / Step))))).Append(body.Stations[^1]);
        var spine = new Spine(near.Chart, near.Side, body.Across);
        Waist? least = null;
        foreach (double s in places)
        {
            double width = body.WidthAt(s);
            if (least is not null && width > 1.5 * Math.Abs(least.Width) + Step)
            {
                continue; // a place so wide straight across is not the narrowest in any other direction, the edges being nearly parallel
            }

            var (distance, second) = Nearest(spine.ToLayout(s, body.CopingFront.At(s)), edge, far.CopingFront.Stations);
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
