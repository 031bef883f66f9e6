using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Platforms.OwnTrack;

/// <summary>A place of a platform's outline.</summary>
/// <param name="At">The place in the layout, mm.</param>
/// <param name="Chainage">Its chainage along the platform, mm; that of the end where it lies at an end or beyond.</param>
internal readonly record struct OutlinePlace(Point2 At, double Chainage)
{
    // Places are this far apart, mm, and at every corner: on a radius of 300 mm a track comes nearer to a place between by 0.0004 mm at most.
    private const double Step = 1;

    /// <summary>All round a platform: front, back or the foot of its bank, both ends, and what turns round them.</summary>
    public static List<OutlinePlace> Of(PlatformPlan plan)
    {
        OutlinePlace On(PlanLine line, int i) => new(plan.ToLayout(line.Stations[i], line.Reach[i]), line.Stations[i]);
        IEnumerable<OutlinePlace> Along(PlanLine line) => Enumerable.Range(0, line.Stations.Length).Select(i => On(line, i));
        var places = new List<OutlinePlace>();
        AddRing(places, [.. Along(plan.CopingFront), .. Along(plan.Outer).Reverse()]);
        foreach (var turn in plan.Bank?.Returns ?? [])
        {
            double end = turn.IsAtEnd ? plan.Stations[^1] : plan.Stations[0];
            AddRing(places, [new(turn.Corner, end), .. turn.Toe.Select(p => new OutlinePlace(p, end))]);
        }

        return places;
    }

    private static void AddRing(List<OutlinePlace> places, OutlinePlace[] ring)
    {
        for (int i = 0; i < ring.Length; i++)
        {
            OutlinePlace a = ring[i], b = ring[(i + 1) % ring.Length];
            int steps = Math.Max(1, (int)Math.Ceiling((b.At - a.At).Length / Step));
            for (int k = 0; k < steps; k++)
            {
                double share = (double)k / steps;
                places.Add(new(a.At + ((b.At - a.At) * share), a.Chainage + ((b.Chainage - a.Chainage) * share)));
            }
        }
    }
}
