using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Pdf;
using static System.FormattableString;

namespace PlatformForge.Exports.Paper;

/// <summary>The full-size sheets of one platform, drawn before it is known what the verdict on its prints is: that stands on their key alone.</summary>
/// <param name="dossier">All that is known.</param>
/// <param name="platform">Name of the platform, by its face.</param>
/// <param name="name">What its files' names begin with.</param>
/// <param name="paper">The paper.</param>
/// <param name="key">Draws the key with a verdict's line.</param>
/// <param name="sheets">The sheets in order.</param>
/// <param name="places">Where each lies on the layout.</param>
internal sealed class LaidPaper(
    Dossier dossier, string platform, string name, PaperSpec paper, Func<string, Sheet> key, IReadOnlyList<Sheet> sheets, IReadOnlyList<SheetPlace> places)
{
    /// <summary>Elevations of its walls and ends; empty where it stands on bents alone.</summary>
    public IReadOnlyList<Sheet> Elevations { get; init; } = [];

    /// <summary>Its trestle's front and bents; empty where it stands on walls.</summary>
    public IReadOnlyList<Sheet> Trestle { get; init; } = [];

    /// <summary>The whole set.</summary>
    public PlatformPaper With(string verdict) => new(platform, key(verdict), sheets, places) { Elevations = Elevations, Trestle = Trestle };

    /// <summary>Each sheet as SVG.</summary>
    public IEnumerable<FileWork> Sheets() => Numbered(sheets, "").Concat(Numbered(Elevations, "elevation-")).Concat(Numbered(Trestle, "trestle-"));

    private IEnumerable<FileWork> Numbered(IReadOnlyList<Sheet> drawn, string kind) =>
        drawn.Select((sheet, i) => new FileWork(Invariant($"{PaperSet.Folder}/{name}-{kind}{i + 1:D2}.svg"), (Stream to) => SvgWriter.Write(to, sheet)));

    /// <summary>What waits for the verdict: the PDF, its key as SVG, and the list of places.</summary>
    public IEnumerable<FileWork> Bound(string verdict)
    {
        var set = With(verdict);
        var plan = new PdfChapter(platform, platform, [set.Key, .. sheets]) { FirstLabel = "key" };
        var book = new PdfBook(
            Invariant($"{dossier.Project}: {platform}, full size"),
            "PlatformForge " + dossier.Version,
            [
                plan, .. Elevations.Count == 0 ? Array.Empty<PdfChapter>() : [new(platform + ": elevations", "elevation", Elevations)],
                .. Trestle.Count == 0 ? Array.Empty<PdfChapter>() : [new(platform + ": trestle", "trestle", Trestle)],
            ])
        { IsTrueSize = true };
        yield return new(Invariant($"{PaperSet.Folder}/{name}.pdf"), () => PdfWriter.ToBytes(book));
        yield return new(Invariant($"{PaperSet.Folder}/{name}-key.svg"), () => SvgWriter.ToBytes(set.Key));
        yield return new(Invariant($"{PaperSet.Folder}/{name}.json"), () => JsonForms.ToBytes(PaperDocument.Of(paper, set), PaperJson.Forms.PaperDocument));
    }
}
