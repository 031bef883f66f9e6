using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Gltf;
using PlatformForge.Exports.Paper;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Exports.Stock;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>The part on what comes before a section is printed: paper at full size, gauges, and lines to cut card by; or how they are had.</summary>
internal static class BeforeChapter
{
    /// <summary>Writes it.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="dossier">Everything known.</param>
    /// <param name="images">Pictures of gauges.</param>
    /// <param name="written">Paths of what is written as a file.</param>
    public static void Of(DocumentBuilder to, Dossier dossier, ReportImages images, IReadOnlySet<string> written)
    {
        string[] paper = In(written, PaperSet.Folder), sheet = In(written, StockSet.Folder);
        to.Heading(2, "Before you print");
        if (Missing(paper.Length > 0, dossier.Proofs is not null, sheet.Length > 0, written.Contains(SceneFile.Name)) is { Length: > 0 } missing)
        {
            to.Say(missing);
        }

        if (written.Contains(SceneFile.Name))
        {
            to.Heading(3, "From all sides");
            to.Say("The finished layout in colours, with track and vehicles, for any viewer of glTF: turn it about, and hide what is not printed.");
            to.Files([(SceneFile.Name, "for viewers; print from the STL and 3MF files")]);
        }

        if (paper.Length > 0)
        {
            to.Heading(3, "Full-size paper");
            to.Say("Print at 100 %, not fitted to the page, and measure both bars of the key between their ticks; then lay the sheets over the track, rails on "
                + "rails, and push the longest and the widest vehicle past.");
            to.Files(paper.Where(p => p.EndsWith(".pdf", StringComparison.Ordinal)).Select(p => (p, Sheets(paper, p))));
        }

        if (dossier.Proofs is { } proofs)
        {
            ProofChapter.Of(to, dossier, proofs, images, written);
        }

        if (sheet.Length > 0)
        {
            to.Heading(3, "Cut lines for sheet");
            to.Say("For a mock-up of the edge in card, or for the whole platform in card, plastic or ply instead of print. "
                + "Red lines are cut, blue ones scored, green ones drawn; one unit is one mm.");
            to.Say("Each sheet is an SVG, with the same as DXF beside it:");
            to.Files(sheet.Where(p => !p.EndsWith(".dxf", StringComparison.Ordinal)).OrderBy(p => !p.EndsWith(".csv", StringComparison.Ordinal))
                .Select(p => (p, p.EndsWith(".csv", StringComparison.Ordinal) ? "the parts, with the sheet that each is on" : "")));
        }
    }

    private static string[] In(IReadOnlySet<string> written, string folder) =>
        [.. written.Where(p => p.StartsWith(folder + "/", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    // Sheets of a PDF: the SVG files of its name, of which one is the key.
    private static string Sheets(string[] paper, string pdf)
    {
        string stem = pdf[..^".pdf".Length] + "-";
        int count = paper.Count(p => p.StartsWith(stem, StringComparison.Ordinal) && p[stem.Length..] is [>= '0' and <= '9', ..]);
        return count == 1 ? "a key and one sheet; each is an SVG too" : Invariant($"a key and {count} sheets; each is an SVG too");
    }

    private static string Missing(bool hasPaper, bool hasGauges, bool hasSheet, bool hasScene)
    {
        string[] sets = [.. new[] { hasPaper ? "" : "full-size paper (platformforge paper)", hasGauges ? "" : "gauges and a test slice (platformforge gauges)",
            hasSheet ? "" : "cut lines for card (platformforge build --sets sheet)",
            hasScene ? "" : "a scene for viewers (platformforge build --sets scene)" }.Where(s => s.Length > 0)];
        return sets.Length == 0 ? "" : Invariant($"Made on request: {string.Join(", ", sets)}. With --sets all a build has everything.");
    }
}
