using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Proving;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Proofs;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>The chapter on what is printed before the platform is: gauges, slices, coupons, with what each shows and how it is used.</summary>
internal static class ProofChapter
{
    /// <summary>Writes it.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="dossier">Everything known.</param>
    /// <param name="set">The gauges and proofs.</param>
    /// <param name="images">Pictures of them.</param>
    /// <param name="written">Paths of what is written as a file.</param>
    public static void Of(DocumentBuilder to, Dossier dossier, ProofSet set, ReportImages images, IReadOnlySet<string> written)
    {
        to.Heading(3, "Gauges and proofs");
        to.Say(Invariant($"{Figures.Fixed(set.Proofs.Sum(p => p.Estimate.Grams), 0)} g and ")
            + Invariant($"{Figures.Time(set.Proofs.Sum(p => p.Estimate.Hours))} for all of them; each can be printed alone."));
        to.List(set.Proofs.DistinctBy(p => p.Kind).Select(p => Invariant($"{Sentence(ProofTables.Word(p.Kind))}: {Use(p)}")));
        to.Table(
            "What to print first", ["mark", "what", "size on the bed", "g", "min", "bed"],
            from plate in set.Plates
            from placed in plate.Proofs
            let p = placed.Proof
            select (IReadOnlyList<string>)
            [
                p.Mark, p.Name, Invariant($"{Figures.Mm(p.Size.X)} x {Figures.Mm(p.Size.Y)} x {Figures.Mm(p.Size.Z)}"), Figures.Fixed(p.Estimate.Grams, 1),
                Figures.Fixed(p.Estimate.Hours * 60, 0), Invariant($"{plate.Group} {plate.Number}"),
            ],
            "marks as they are cut into each; sizes from the solids; grams and time as those of the sections");
        Shown(to, set, File(written, "figures.csv"));
        foreach (var (path, title) in ProofFiles.Pictures(dossier).Where(p => written.Contains(p.Path)))
        {
            to.Add(images.Figure(path, title, "the gauges' solids, on the bed or on the rails where they are used", title));
        }

        to.Say("The beds, with each piece as an STL of its own in the same folder:");
        to.Files(written.Where(p => p.StartsWith(ProofFiles.Folder + "/", StringComparison.Ordinal) && p.EndsWith(".3mf", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal).Select(p => (p, "")));
    }

    // A gauge a row, a figure a column.
    private static void Shown(DocumentBuilder to, ProofSet set, string? file)
    {
        var gauges = set.Proofs.Where(p => p.Kind == ProofKind.SlideGauge).ToArray();
        string[] figures = [.. gauges.SelectMany(p => p.Figures).Select(f => f.What).Distinct()];
        to.Table(
            "What slide gauges show", ["mark", .. figures],
            gauges.Select(p => (IReadOnlyList<string>)
                [p.Mark, .. figures.Select(w => p.Figures.FirstOrDefault(f => f.What == w) is { } f ? Figures.Fine(f.Value) : "")]),
            "the platform's edge where it crosses the gauge's place, square to the track as it is ridden", file);
    }

    private static string? File(IReadOnlySet<string> written, string name) =>
        Invariant($"{ProofFiles.Folder}/{name}") is var path && written.Contains(path) ? path : null;

    // One sentence for all gauges of a kind: each says its own chainage in the table.
    private static string Use(Proof proof) => proof.Rides is { } ride
        ? proof.Use.Replace(Invariant($"at chainage {ride.Chainage:0.##}"), "at its chainage", StringComparison.Ordinal) : proof.Use;

    private static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
