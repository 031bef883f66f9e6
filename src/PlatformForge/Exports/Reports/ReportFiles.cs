using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Exports.Workshop;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports;

/// <summary>The report of a run and what belongs to it: figures for programs, words and pictures for people, tables and masks for the workbench.</summary>
internal static class ReportFiles
{
    public const string Page = "report.html";
    public const string Words = "report.md";
    public const string Data = "report.json";

    /// <summary>What there is to make of it.</summary>
    /// <param name="dossier">Everything known, the verdict too.</param>
    /// <param name="choice">What is wanted.</param>
    /// <param name="images">Drawings and pictures of each platform, in the platforms' order, by the paths they have as files.</param>
    /// <param name="written">Paths of what is written as a file.</param>
    public static IEnumerable<FileWork> Of(Dossier dossier, OutputChoice choice, IReadOnlyList<IReadOnlyList<OutputFile>> images,
        IReadOnlySet<string> written)
    {
        var names = OutputFiles.Names(dossier);
        BenchTables[] bench = [.. dossier.Platforms.Select((p, i) => BenchTables.Of(dossier, p, names[i]))];
        ReportSource[] sources = [.. dossier.Platforms.Select((p, i) => new ReportSource(
            dossier, p, names[i], bench[i], new(i < images.Count ? images[i] : [], written.Contains), choice.Tables, choice.Masks
                && bench[i].Masks.Count > 0))];
        foreach (var source in sources)
        {
            foreach (var file in Bench(source, choice))
            {
                yield return file;
            }
        }

        yield return new(Data, () => JsonForms.ToBytes(ReportDocument.Of(dossier, [.. sources.Select(s => s.Bench)]), ReportJson.Forms.ReportDocument));
        var document = new Lazy<Document>(() => ReportBook.Of(dossier, sources, written));
        yield return new(Words, () => MarkdownPage.ToBytes(document.Value));
        if (choice.Report)
        {
            yield return new(Page, (Stream to) => HtmlPage.Write(to, document.Value));
        }
    }

    private static IEnumerable<FileWork> Bench(ReportSource source, OutputChoice choice)
    {
        if (choice.Tables)
        {
            foreach (var table in source.Bench.All)
            {
                yield return new(Invariant($"tables/{source.Name}-{table.Name}.csv"), table.ToCsv);
            }
        }

        if (source.HasMasks)
        {
            yield return new(Invariant($"masks/{source.Name}-masks.svg"), () => MaskFiles.Svg(source.Dossier, source.Platform, source.Bench.Masks));
            yield return new(Invariant($"masks/{source.Name}-masks.dxf"), () => MaskFiles.Dxf(source.Dossier, source.Platform, source.Bench.Masks));
        }
    }
}
