using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings;
using PlatformForge.Exports.Proving;
using PlatformForge.Proofs;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports;

/// <summary>The chapter on what is printed before the platform is: gauges, slices, coupons, with what each shows and how it is used.</summary>
internal static class ProofChapter
{
    public static void Of(DocumentBuilder to, Dossier dossier)
    {
        if (dossier.Proofs is not { } set)
        {
            return;
        }

        to.Heading(2, "Gauges and proofs");
        to.Say(Invariant($"Printed before the platform is: {Figures.Fixed(set.Proofs.Sum(p => p.Estimate.Grams), 0)} g and ")
            + Invariant($"{Figures.Time(set.Proofs.Sum(p => p.Estimate.Hours))} for all of them; each can be printed alone."));
        to.List(set.Proofs.DistinctBy(p => p.Use).Select(p => Invariant($"{Sentence(ProofTables.Word(p.Kind))}: {p.Use}")));
        to.Table(
            "What is printed", ["what", "size on the bed", "g", "min", "bed"],
            from plate in set.Plates
            from placed in plate.Proofs
            let p = placed.Proof
            select (IReadOnlyList<string>)
            [
                p.Name, Invariant($"{Figures.Mm(p.Size.X)} x {Figures.Mm(p.Size.Y)} x {Figures.Mm(p.Size.Z)}"), Figures.Fixed(p.Estimate.Grams, 1),
                Figures.Fixed(p.Estimate.Hours * 60, 0), Invariant($"{plate.Group} {plate.Number}"),
            ],
            "sizes from the solids; grams and time as those of the sections");
        to.Table(
            "What slide gauges show", ["gauge", "figure", "mm"],
            from p in set.Proofs
            where p.Kind == ProofKind.SlideGauge
            from f in p.Figures
            select (IReadOnlyList<string>)[p.Name, f.What, Figures.Fine(f.Value)],
            "the platform's edge where it crosses the gauge's place, square to the track as it is ridden", "gauges/figures.csv");
    }

    private static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
