using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Tables;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Stock;

/// <summary>The parts of a platform and the sheets they are cut from.</summary>
/// <param name="Platform">Its name.</param>
/// <param name="Parts">Every part, section by section.</param>
/// <param name="Sheets">The sheets.</param>
public sealed record PlatformStock(string Platform, IReadOnlyList<CutPart> Parts, IReadOnlyList<CutSheet> Sheets);

/// <summary>Front door of the folder: cut lines for those who build in card, plastic or ply.</summary>
public static class StockSet
{
    /// <summary>The folder that the files lie in.</summary>
    public const string Folder = "sheet";

    /// <summary>Why nothing can be cut from such sheets; empty when it can. Told before anything long is done.</summary>
    public static IReadOnlyList<Finding> Objections(StockSpec stock) => StockRule.Check(stock);

    /// <summary>The parts of a platform, nested on sheets.</summary>
    public static Outcome<PlatformStock> Of(PlatformDossier platform, StockSpec stock)
    {
        var plan = platform.Sections.Plan;
        var body = new StockBody(plan, stock);
        if (StockRule.Check(stock).Concat(StockRule.Check(platform.Name, body, platform.Sections)).ToArray() is { Length: > 0 } faults)
        {
            return Outcome.Fault<PlatformStock>(faults);
        }

        var (deck, walls, ribs, edge) = (new DeckParts(body), new WallParts(body), new RibParts(body), new MockUpParts(body));
        IEnumerable<CutPart> PartsOf(PlatformSection s) => [deck.Of(s), .. walls.Of(s), .. ribs.Of(s), .. edge.Of(s)];
        CutPart[] parts = [.. platform.Sections.Sections.SelectMany(PartsOf).Select(MarkRoom.Trimmed)];
        return StockRule.Check(platform.Name, parts, stock) is { } tooLarge
            ? Outcome.Fault<PlatformStock>(tooLarge)
            : Outcome.Of(new PlatformStock(platform.Name, parts, Lettered(StockNesting.Of(parts, stock), stock.Gap)));
    }

    // Words are laid out on the sheet as it is, since they are not turned with their part; numbers are those of the list.
    private static CutSheet[] Lettered(IReadOnlyList<CutSheet> sheets, double gap)
    {
        int number = 0;
        return [.. sheets.Select(sheet => sheet with { Parts = [.. sheet.Parts.Select(p => MarkRoom.Lettered(p, Invariant($"{++number}"), gap))] })];
    }

    /// <summary>The files of all platforms: each sheet as DXF and as SVG, and a list of the parts.</summary>
    public static Outcome<IReadOnlyList<OutputFile>> Files(Dossier dossier, StockSpec stock)
    {
        var work = Work(dossier, stock);
        return work.Value is { } files
            ? Outcome.Of<IReadOnlyList<OutputFile>>([.. files.Select(w => new OutputFile(w.Path, w.Make()))])
            : Outcome.Fault<IReadOnlyList<OutputFile>>(work.Findings);
    }

    /// <summary>The same before they are made.</summary>
    internal static Outcome<IReadOnlyList<FileWork>> Work(Dossier dossier, StockSpec stock)
    {
        var names = OutputFiles.Names(dossier);
        var sets = dossier.Platforms.Select(p => Of(p, stock)).ToArray();
        return sets.SelectMany(s => s.Findings).ToArray() is { Length: > 0 } faults
            ? Outcome.Fault<IReadOnlyList<FileWork>>(faults)
            : Outcome.Of<IReadOnlyList<FileWork>>([.. sets.Zip(names, (set, name) => Files(dossier, stock, set.Value!, name)).SelectMany(f => f)]);
    }

    /// <summary>What sheets of a kind are called in the names of files.</summary>
    public static string NameOf(StockKind kind) => kind switch { StockKind.Frame => "frame", StockKind.Strip => "walls", _ => "edge" };

    private static IEnumerable<FileWork> Files(Dossier dossier, StockSpec stock, PlatformStock set, string name)
    {
        foreach (var sheet in set.Sheets)
        {
            string path = Invariant($"{Folder}/{name}-{NameOf(sheet.Kind)}-{sheet.Number:D2}");
            string title = Invariant($"{dossier.Project}: {set.Platform}, {NameOf(sheet.Kind)} {sheet.Number}");
            yield return new(path + ".dxf", () => StockDxf.ToBytes(sheet, title));
            yield return new(path + ".svg", () => SvgWriter.ToBytes(StockDrawing.Of(sheet, stock.Size, title)));
            if (Outside(sheet, stock) is { Parts.Count: > 0 } other)
            {
                yield return new(path + "-outside.dxf", () => StockDxf.ToBytes(other, title + ", other face"));
                yield return new(path + "-outside.svg", () => SvgWriter.ToBytes(StockDrawing.Of(other, stock.Size, title + ", other face")));
            }
        }

        yield return new(Invariant($"{Folder}/{name}-parts.csv"), () => List(set, stock));
    }

    /// <summary>
    /// What is scored on a sheet's other face before it is turned over, left to right, and cut: mirrored, and the parts'
    /// outlines, drawn only, to see what lies where. They are cut away.
    /// </summary>
    internal static CutSheet Outside(CutSheet sheet, StockSpec stock) => sheet with
    {
        Parts = [.. sheet.Parts.Where(p => p.Outside.Count > 0).Select(p => (p with
        {
            Lines = [.. p.Outside, .. p.Lines.Take(1).Select(l => l with { Layer = CutLayer.Mark })],
            Outside = [],
            Rounds = [],
            Words = [],
        }).Moved(q => new(stock.Size.X - q.X, q.Y)))],
    };

    private static string ThicknessOf(StockKind kind, StockSpec stock) =>
        kind switch { StockKind.Frame => Figures.Short(stock.Thickness), StockKind.Strip => Figures.Short(stock.WallThickness), _ => "" };

    private static byte[] List(PlatformStock set, StockSpec stock)
    {
        var table = new CsvText("number", "written", "part", "sheet", "thickness_mm", "width_mm", "height_mm", "area_mm2", "note");
        int number = 0;
        foreach (var sheet in set.Sheets)
        {
            foreach (var part in sheet.Parts)
            {
                string written = string.Join(" ", part.Words.Select(w => w.Text)), on = Invariant($"{NameOf(sheet.Kind)}-{sheet.Number:D2}");
                var size = CutPart.AtOrigin(part).Size;
                table.Row(Invariant($"{++number}"), written, part.Name, on, ThicknessOf(part.Kind, stock), Figures.Fine(size.X), Figures.Fine(size.Y),
                    Figures.Mm(part.Area), part.Note);
            }
        }

        return table.ToBytes();
    }
}
