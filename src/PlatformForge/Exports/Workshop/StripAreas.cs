using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Exports.Workshop;

/// <summary>
/// What is seen of walls and kerbs that stand in a rebate along the back, and so is painted: over the deck the face towards the track and the free ends, the
/// tops of plinth and coping, and of a kerb its back. The ground that a retaining wall holds lies against its back.
/// </summary>
internal static class StripAreas
{
    // A strip's end stands off its band's by its fit and by what sections are trimmed by, mm: less than a brick is long.
    private const double AtEnd = 0.5;

    // Ends of bands at one chainage meet, mm.
    private const double Same = Tolerances.SameLength;

    /// <summary>Rings in plan of the deck between two chainages that such a strip covers.</summary>
    public static Point2[][] Covered(PlatformPlan plan, double from, double to)
    {
        var chart = new FacetedPlan(plan);
        return [.. plan.Body.Lines.Where(Stands).Select(l => (Line: l, From: Math.Max(from, l.From), To: Math.Min(to, l.To))).Where(l => l.From < l.To)
            .Select(l => chart.Ring(l.Line.Near, l.Line.Far, chart.Chainages(l.From, l.To)))];
    }

    /// <summary>Adds what is seen of all such strips, mm², to the areas by paint.</summary>
    public static void Add(SectionSet set, double[] areas)
    {
        foreach (var piece in set.Lines.Pieces.Where(p => p.Line <= set.Plan.Body.Lines.Count && Stands(set.Plan.Body.Lines[p.Line - 1])))
        {
            var (band, section) = (set.Plan.Body.Lines[piece.Line - 1], set.Sections.First(s => s.Number == piece.Section));
            OuterSide[] sides = [.. Sides(set.Plan, band, Math.Max(section.From, band.From), Math.Min(section.To, band.To))];
            var deck = set.Plan.Surface.At((Math.Max(section.From, band.From) + Math.Min(section.To, band.To)) / 2);
            var mesh = piece.Solid.Mesh;
            for (int i = 0; i < mesh.TriangleCount; i++)
            {
                Point3[] corners = [.. Enumerable.Range(3 * i, 3).Select(k => mesh.Vertices[mesh.Triangles[k]])];
                areas[mesh.Paints[i]] += Seen(corners, deck, band.Made, sides);
            }
        }
    }

    // What stands over the deck and is no inlay or strip of its own colour.
    private static bool Stands(LineBand line) => line.Made.Name is LineMake.Retaining or LineMake.Kerb;

    private static double Seen(Point3[] corners, HeightPlane deck, LineMake made, OuterSide[] sides)
    {
        var normal = Point3.Cross(corners[1] - corners[0], corners[2] - corners[0]);
        if (normal.Length <= 0)
        {
            return 0;
        }

        var (way, middle) = (normal * (1 / normal.Length), (corners[0] + corners[1] + corners[2]) * (1.0 / 3));
        var p = new Point2(middle.X, middle.Y);
        if (way.Z > SurfaceAreas.Level)
        {
            double over = middle.Z - deck.At(p);
            bool top = made.Wall?.LevelTop is { } level ? Math.Abs(middle.Z - level) < OuterSide.Hair : Math.Abs(over - made.Rise) < OuterSide.Hair;
            return top || Math.Abs(over - (made.Wall?.Plinth ?? made.Rise)) < OuterSide.Hair ? normal.Length / 2 : 0;
        }

        return Math.Abs(way.Z) < SurfaceAreas.Upright && sides.Any(s => s.Share(corners, p, new(way.X, way.Y)) > 0)
            ? normal.Length / 2 * Over(corners, deck) : 0;
    }

    // How much of a triangle is over the deck, as a share.
    private static double Over(Point3[] corners, HeightPlane deck)
    {
        double[] up = Array.ConvertAll(corners, c => c.Z - deck.At(new(c.X, c.Y)));
        int above = up.Count(u => u > 0);
        if (above is 0 or 3)
        {
            return above / 3.0;
        }

        // The corner that is alone on its side cuts off a triangle with two of the sides.
        int alone = Array.FindIndex(up, u => u > 0 == (above == 1));
        double Cut(int other) => up[alone] / (up[alone] - up[other]);
        double tip = Cut((alone + 1) % 3) * Cut((alone + 2) % 3);
        return above == 1 ? tip : 1 - tip;
    }

    // The face towards the track, a kerb's back, and the ends where no other strip goes on.
    private static IEnumerable<OuterSide> Sides(PlatformPlan plan, LineBand band, double from, double to)
    {
        double inward = plan.Side.Outward(1), fit = band.Made.Fit;
        double deep = OuterSide.Hair + (band.Made.Wall is { } wall ? wall.Oversail + (plan.Spec.Facing?.FaceDepth(false) ?? 0) : 0);
        var chart = new FacetedPlan(plan);
        double[] stations = [.. chart.Chainages(from, to)];
        OuterSide Along(PlanLine line, double a, double b, double turn) => OuterSide.Of(chart.On(line, a), chart.On(line, b), turn) with { Near = deep };
        foreach (var (a, b) in stations.Zip(stations.Skip(1)))
        {
            yield return Along(band.Near.Shifted(fit), a, b, -inward);
            if (band.Made.Wall is null)
            {
                yield return Along(band.Far.Shifted(-fit), a, b, inward);
            }
        }

        foreach (var (s, ahead) in new[] { (band.From, -1), (band.To, 1) }.Where(e => e.Item1 >= from - Same && e.Item1 <= to + Same))
        {
            if (!plan.Body.Lines.Any(l => l.Made.Name == band.Made.Name && Math.Abs((ahead < 0 ? l.To : l.From) - s) < Same))
            {
                yield return OuterSide.Of(chart.On(band.Near, s), chart.On(band.Far, s), -ahead * inward) with { Near = AtEnd };
            }
        }
    }
}
