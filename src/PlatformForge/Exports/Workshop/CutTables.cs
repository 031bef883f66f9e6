using PlatformForge.Exports.Files;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Workshop;

/// <summary>What is cut to length beside the prints: dowels, rods, posts, panels, wires.</summary>
internal static class CutTables
{
    // Left over below the board for a connection, mm.
    private const double Tail = 100;

    // One there and one back.
    private const int WiresEach = 2;

    /// <summary>Dowels or plates of the joints, and round rod for what is let into the deck.</summary>
    public static WorkTable DowelsAndRods(PlatformDossier platform)
    {
        var (set, joint) = (platform.Sections, platform.Sections.Joint);
        bool plates = joint.Kind == JointKind.Plate;
        var rows = set.Dowels.Select(d => (IReadOnlyList<TableCell>)
            [
                d.What, TableCell.Of(d.Count, 0), TableCell.Of(d.Diameter, 2), TableCell.Of(d.Length, 1), TableCell.Of(d.Count * d.Length, 1),
                TableCell.Of(plates ? joint.PocketWidth : joint.BoreDiameter, 2), TableCell.Of(joint.BoreDepth, 2),
            ]);
        return new(
            "dowels-and-rods", "Dowels and rods",
            [
                new("what", "what"), new("count", "count"), new("diameter or width", "diameter_or_width_mm"), new("length of one", "length_mm"),
                    new("length of all", "total_length_mm"),
                new("goes into", "goes_into_mm"), new("depth in each section", "depth_mm"),
            ],
            [.. rows], "the joints of the sections: two to a joint, none at a baseboard joint; depth is from the end face as printed");
    }

    /// <summary>Posts and what stands between them, pieces of one size together.</summary>
    public static WorkTable PostsAndPanels(PlatformDossier platform)
    {
        var parts = platform.Sections.Plan.Features.SelectMany(f => f.Parts)
            .GroupBy(p => p with { Count = 0, Length = p.Length is { } length ? Math.Round(length, 2) : null }).Select(g
                => g.Key with { Count = g.Sum(p => p.Count) });
        return new(
            "posts-and-panels", "Posts and panels",
            [new("what", "what"), new("count", "count"), new("diameter", "diameter_mm"), new("along the track", "along_mm"), new("across", "across_mm"),
                new("length of one", "length_mm"), new("length of all", "total_length_mm")],
            [
                .. parts.Select(p => (IReadOnlyList<TableCell>)
                    [
                        p.What, TableCell.Of(p.Count, 0), TableCell.Of(p.Diameter, 2), TableCell.Of(p.Section?.X, 2), TableCell.Of(p.Section?.Y, 2),
                        TableCell.Of(p.Length, 2), TableCell.Of(p.Count * p.Length, 1),
                    ]),
            ],
            "the plan's features: panels are told straight from the middle of a post to the middle of the next, where they stand");
    }

    /// <summary>Wires from the deck's top down to the baseboard and a tail below it.</summary>
    public static WorkTable Wires(PlatformDossier platform)
    {
        var plan = platform.Sections.Plan;
        var rows = new List<IReadOnlyList<TableCell>>();
        foreach (var run in plan.Features.SelectMany(f => f.Wires).OrderBy(w => w.From.Chainage))
        {
            var (from, to) = (plan.ToLayout(run.From.Chainage, run.From.Reach), plan.ToLayout(run.To.Chainage, run.To.Reach));
            double along = (to - from).Length, down = plan.TopAt(run.To.Chainage, run.To.Reach) - run.Dip, one = run.Dip + along + down + Tail;
            rows.Add(
            [
                run.Name, TableCell.Of(run.From.Chainage, 1), TableCell.Of(run.Dip, 1), TableCell.Of(along, 1), TableCell.Of(down, 1),
                    TableCell.Of(Tail, 0), TableCell.Of(Math.Ceiling(one), 0),
                TableCell.Of(WiresEach, 0), TableCell.Of(WiresEach * Math.Ceiling(one), 0),
            ]);
        }

        return new(
            "wires", "Wire lengths",
            [
                new("for", "for"), new("chainage", "chainage_mm"), new("down through the deck", "through_deck_mm"), new("along the channel",
                    "along_channel_mm"), new("down to the baseboard", "to_baseboard_mm"),
                new("below it", "below_mm"), new("one wire from the deck's top", "length_mm"), new("wires", "count"), new("all", "total_length_mm"),
            ],
            rows, Invariant($"the plan's channels; {Tail:0} mm below the board and {WiresEach} wires to a light are common practice, no source; the ")
                + "height of the post itself comes on top");
    }
}
