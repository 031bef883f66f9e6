using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.WallFittings;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Exports.Workshop;

/// <summary>What is in and before faced walls, place by place.</summary>
internal static class WallPlaces
{
    public static WorkTable Table(SectionSet set) => new(
        "wall-places", FittingKinds.Title,
        [
            new("what", "what"), new("wall", "wall"), new("section", "section"), new("its middle at", "at_mm"), new("wide", "width_mm"),
            new("high", "height_mm"), new("sill over the baseboard", "sill_mm"), new("deep", "depth_mm"), new("right through", "through"),
            new("asked for at", "asked_at_mm"), new("asked width", "asked_width_mm"),
            new("asked height", "asked_height_mm"), new("asked sill", "asked_sill_mm"),
        ],
        [
            .. HoleReport.Of(set).Select(o => (IReadOnlyList<TableCell>)
                [
                    o.Kind, o.Face, TableCell.Of(o.Section, 0), TableCell.Of(o.At, 2), TableCell.Of(o.Width, 2), TableCell.Of(o.Height, 2),
                    TableCell.Of(o.Sill, 2), TableCell.Of(o.Depth, 2), o.Through ? "yes" : "no",
                    TableCell.Of(o.Asked?.At, 2), TableCell.Of(o.Asked?.Width, 2), TableCell.Of(o.Asked?.Height, 2), TableCell.Of(o.Asked?.Sill, 2),
                ]),

            // What is least comes first: holes, what stands before the walls, what of these steps out.
            .. set.Plan.Fittings.Reverse().SelectMany(row => FittingReport.Of(set, row).Select(p => (IReadOnlyList<TableCell>)
                [
                    row.Name, p.Face, TableCell.Of(p.Section, 0), TableCell.Of((p.From + p.To) / 2, 2),
                    TableCell.Of(row.Places[0].Width, 2), "", "", "", "", "", "", "", "",
                ])),
        ],
        "as laid, places along the first face's track; "
            + "openings are drawn to pieces and courses of the facing, and what was asked for is told where that differs")
    { FileOnly = true };
}
