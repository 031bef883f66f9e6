using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>What the report says of lines and strips.</summary>
internal static class LineWords
{
    /// <param name="to">Where it is said.</param>
    /// <param name="set">The sections.</param>
    /// <param name="layer">Layer height, mm.</param>
    public static void Say(DocumentBuilder to, SectionSet set, double layer)
    {
        LineMake[] printed = [.. set.Plan.Body.Lines.Select(l => l.Made).Where(m => m.IsPrinted).DistinctBy(m => m.Name)];
        bool hasBank = set.Plan.Bank is { IsApart: true };
        if (printed.Length == 0 && !hasBank)
        {
            return;
        }

        to.Title("Lines and strips");
        foreach (var made in printed)
        {
            to.Say(made.Form == LineForm.Inlay ? Inlay(made, layer) : Strip(made));
        }

        if (printed.Length > 0)
        {
            to.Say(Ends(set));
        }

        if (hasBank)
        {
            to.Say("The bank is printed by itself, right way up, a piece behind each section.");
        }

        to.Table(
            "Lines and strips", ["section", "what", "made as", "size", "g", "printed with"],
            set.Lines.Pieces.Select(p => (IReadOnlyList<string>)
                [
                    Invariant($"{p.Section}"), p.Made.Name, p.IsInlay ? "inlay" : "strip",
                    Invariant($"{Figures.Mm(p.Size.X)} x {Figures.Mm(p.Size.Y)} x {Figures.Fine(p.Size.Z)}"), Figures.Fixed(p.Estimate.Grams, 1),
                    p.IsInlay ? "its section" : Invariant($"strips, plate {set.Lines.Plates.First(b => b.Pieces.Any(q => q.Piece == p)).Number}"),
                ]),
            "sizes as they lie on the bed, from the solids");
    }

    private static string Ends(SectionSet set)
    {
        var profile = set.Plan.Profile;
        bool alongRamps = set.Plan.Body.Lines.Any(l => l.From < profile.StartHead || l.To > profile.EndHead);
        return (alongRamps ? "What stands along the back goes on beside the ramps, in pieces of their own; all else ends" : "They end")
            + " at the tops of the ramps, and at each cut, so that sections come apart.";
    }

    private static string Inlay(LineMake made, double layer) =>
        Invariant($"The {made.Name} is inlaid, {Figures.Fine(made.Depth)} mm or {Figures.Short(made.Depth / layer)} layers deep and flush with the deck, so ")
            + "that both "
        + "lie on the bed. In the 3MF file it is a body of its section: give it a colour of its own. With one extruder print the inlays first, from their STL "
        + "files in the places they have there, leave them on the bed, change the filament and print the sections over them.";

    private static string Strip(LineMake made)
    {
        string way = made.Wall is null ? "right way up" : "on its coping";
        string what = Invariant($"The {made.Name} is a strip by itself, printed {way} and laid into a rebate {Figures.Fine(made.Depth)} mm deep with ")
            + Invariant($"{Figures.Fine(made.Fit)} mm of air on either side");
        return made.Rise <= 0 ? what + "; its top is flush with the deck."
            : what + Invariant($"; {Standing(made)} {Figures.Fine(made.Rise)} mm over the deck, which is why it cannot be printed with it, face down.");
    }

    private static string Standing(LineMake made) => made.Pattern switch
    {
        StripPattern.Studs => Invariant($"studs {Figures.Fine(made.Stud)} mm wide, at {Figures.Fine(made.Pitch)}, stand"),
        StripPattern.Ribs => Invariant($"ribs {Figures.Fine(made.Stud)} mm wide, at {Figures.Fine(made.Pitch)}, stand"),
        _ => "it stands",
    };
}
