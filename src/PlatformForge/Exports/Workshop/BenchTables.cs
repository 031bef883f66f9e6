using PlatformForge.Exports.Files;
using PlatformForge.Proofs;
namespace PlatformForge.Exports.Workshop;

/// <summary>All tables for the workbench of one platform, and its masks, each worked out once for whatever it is written as.</summary>
internal sealed class BenchTables
{
    private BenchTables(IReadOnlyList<WorkTable> all, IReadOnlyList<MaskPiece> masks)
    {
        All = all;
        Masks = masks;
    }

    /// <summary>The tables that have rows.</summary>
    public IReadOnlyList<WorkTable> All { get; }

    public IReadOnlyList<MaskPiece> Masks { get; }

    /// <param name="dossier">Everything known.</param>
    /// <param name="platform">The platform.</param>
    /// <param name="name">Its name for files.</param>
    public static BenchTables Of(Dossier dossier, PlatformDossier platform, string name)
    {
        double[] areas = SurfaceAreas.Of(platform.Sections);
        var masks = MaskPiece.Of(platform.Sections);
        WorkTable dowels = CutTables.DowelsAndRods(platform), posts = CutTables.PostsAndPanels(platform), wires = CutTables.Wires(platform),
            paint = PaintTables.Amounts(areas, platform.Plan.Fittings);
        WorkTable[] all =
        [
            PartsList.Of(platform, name, dowels, posts, wires, paint), dowels, posts, wires, DrillingLists.Deck(platform), DrillingLists.Board(dossier,
                platform), paint, PaintTables.Mixes(areas, platform.Plan.Fittings),
            MaskFiles.Table(masks), WallPlaces.Table(platform.Sections), WorkList.Table(dossier, platform),
        ];
        return new([.. all.Where(t => t.Rows.Count > 0)], masks);
    }

    /// <summary>A table by its name; null where it has no rows.</summary>
    public WorkTable? this[string name] => All.FirstOrDefault(t => t.Name == name);
}
