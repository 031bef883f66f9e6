using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Proofs;

namespace PlatformForge.Exports.Workshop;

/// <summary>Holes in the deck and in the baseboard, each from two edges that a rule can be laid against.</summary>
internal static class DrillingLists
{
    private const string DeckBasis = "the plan's openings, measured on the printed top (along the slope on a ramp) to the coping's front edge by the "
        + "shortest way, "
        + "and square to the end faces as printed, their trim taken off";

    private const string BoardBasis = "the plan, level: to the wall's foot by the shortest way, square to the section's end face, "
        + "and square to the track from the outer face of the nearer rail";

    /// <summary>Everything open in the walking surface: to clean out, to check, or to drill where a deck is made of something else.</summary>
    public static WorkTable Deck(PlatformDossier platform)
    {
        var set = platform.Sections;
        var tops = SectionTop.Of(set);
        var rows = new List<IReadOnlyList<TableCell>>();
        foreach (var (opening, i) in set.Plan.Openings.OrderBy(o => o.Middle.Chainage).Select((o, i) => (o, i)))
        {
            var top = tops.FirstOrDefault(t => t.Holds(opening.Middle)) ?? tops[^1];
            var p = top.At(opening.Middle.Chainage, opening.Middle.Reach);
            rows.Add(
            [
                TableCell.Of(i + 1, 0), opening.Name, TableCell.Of(top.Section.Number, 0), opening.IsRound ? "round" : "oblong",
                TableCell.Of(opening.Along, 2), TableCell.Of(opening.Across, 2), opening.Depth is { } depth ? TableCell.Of(depth, 2) : "through",
                TableCell.Of(top.FromEdge(p), 2), TableCell.Of(top.FromEnd(p, top.From), 2), TableCell.Of(top.FromEnd(p, top.To), 2),
            ]);
        }

        return new(
            "drilling-deck", "Drilling list: the deck",
            [
                new("no.", "number"), new("for", "for"), new("section", "section"), new("shape", "shape"), new("along", "along_mm"),
                new("across", "across_mm"), new("depth", "depth_mm"), new("from coping edge", "from_coping_edge_mm"),
                new("from end at lower chainage", "from_lower_end_mm"), new("from end at higher chainage", "from_higher_end_mm"),
            ],
            rows, DeckBasis);
    }

    /// <summary>Where the baseboard is drilled.</summary>
    public static WorkTable Board(Dossier dossier, PlatformDossier platform)
    {
        var (plan, tops) = (platform.Sections.Plan, SectionTop.Of(platform.Sections));
        double outer = (dossier.Gauge / 2) + dossier.RailHead;
        var rows = new List<IReadOnlyList<TableCell>>();
        foreach (var hole in plan.Features.SelectMany(f => f.BoardHoles).OrderBy(h => h.Place.Chainage))
        {
            var top = tops.FirstOrDefault(t => t.Holds(hole.Place)) ?? tops[^1];
            var (p, told) = (plan.ToLayout(hole.Place.Chainage, hole.Place.Reach), plan.OnTrack(hole.Place));
            Point3 Level(double s, double t) => plan.ToLayout(s, t) is var q ? new(q.X, q.Y, 0) : default;
            double End(double s)
            {
                Point3 a = Level(s, plan.WallFace.At(s)), b = Level(s, plan.Back.At(s));
                return Point3.Cross(b - a, new Point3(p.X, p.Y, 0) - a).Length / (b - a).Length;
            }

            double wall = SectionTop.ToLine(new(p.X, p.Y, 0),
                [.. top.Line(plan.WallFace.Shifted(plan.PanelDepthAt(hole.Place.Chainage))).Select(q => q with { Z = 0 })]);
            rows.Add(
            [
                hole.Name, TableCell.Of(top.Section.Number, 0), TableCell.Of(hole.Diameter, 2), TableCell.Of(wall, 2), TableCell.Of(End(top.From), 2),
                TableCell.Of(told.Reach - outer, 2),
                TableCell.Of(told.Chainage, 1), TableCell.Of(p.X, 2), TableCell.Of(p.Y, 2),
            ]);
        }

        return new(
            "drilling-baseboard", "Drilling list: the baseboard",
            [
                new("for", "for"), new("section", "section"), new("diameter", "diameter_mm"), new("from wall's foot", "from_wall_foot_mm"),
                new("from end at lower chainage", "from_lower_end_mm"),
                new("from nearer rail's outer face", "from_rail_outer_face_mm"), new("chainage", "chainage_mm"), new("x", "x_mm"), new("y", "y_mm"),
            ],
            rows, BoardBasis);
    }
}
