using PlatformForge.Exports.Files;
using PlatformForge.Platforms.Plans;
using static System.FormattableString;

namespace PlatformForge.Exports.Workshop;

/// <summary>Everything the platform is put together from: what is printed, what is cut, what is bought.</summary>
internal static class PartsList
{
    public static WorkTable Of(PlatformDossier platform, string name, WorkTable dowels, WorkTable posts, WorkTable wires, WorkTable paint)
    {
        var rows = new List<IReadOnlyList<TableCell>>();
        foreach (var section in platform.Sections.Sections)
        {
            rows.Add([Invariant($"section {section.Number}"), "printed", TableCell.Of(1, 0),
                Invariant($"{section.Size.X:0.0} x {section.Size.Y:0.0} x {section.Size.Z:0.0} mm"), FileNames.Section(name, section.Number)]);
        }

        rows.AddRange(dowels.Rows.Select(d => (IReadOnlyList<TableCell>)[d[0], "cut", d[1], Invariant($"{WorkTable.Text(d[3])} mm long"), "dowels-and-rods"]));
        rows.AddRange(posts.Rows.Select(p => (IReadOnlyList<TableCell>)[p[0], "bought or made", p[1], Size(p), "posts-and-panels"]));
        if (wires.Rows.Count > 0)
        {
            double metres = wires.Rows.Sum(w => w[^1].Figure ?? 0) / 1000;
            rows.Add(["thin insulated wire", "bought", "", Invariant($"{metres:0.0} m"), "wires"]);
        }

        var estimate = platform.Sections.Estimate;
        rows.Add(["filament", "bought", "", Invariant($"{estimate.Grams:0} g, {estimate.Metres:0.0} m"), "sections"]);
        rows.AddRange(paint.Rows.Select(p => (IReadOnlyList<TableCell>)[Invariant($"paint: {p[0].Words}"), "bought", "",
            Invariant($"{WorkTable.Text(p[^1])} ml"), "paint"]));
        return new(
            "parts", "Parts list",
            [new("what", "what"), new("how it comes", "how"), new("count", "count"), new("size or amount", "size"), new("file or table", "file_or_table")],
            rows, "the sections as printed, and the tables named in the last column");
    }

    private static string Size(IReadOnlyList<TableCell> post) => string.Join(", ", new[]
    {
        post[2].Figure is null ? "" : Invariant($"{WorkTable.Text(post[2])} mm round"),
        post[3].Figure is null ? "" : Invariant($"{WorkTable.Text(post[3])} x {WorkTable.Text(post[4])} mm"),
        post[5].Figure is null ? "" : Invariant($"{WorkTable.Text(post[5])} mm long"),
    }.Where(s => s.Length > 0));
}
