using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Trestles;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Forms;

/// <summary>
/// The trestle of a platform: its kind by its name in the project file, the chainages between which it carries the deck, the greatest distance between bents
/// that was asked and the least and greatest that were found, how many bents, rows and posts there are, the side of a post, the depth of caps and bearers, and
/// what stiffens bents with its thickness; what braces them along the platform, in how many places, and how many of these were left out.
/// All lengths in mm of the model.
/// </summary>
public sealed record TrestleReport(
    string Kind, double From, double To, double PitchAsked, double PitchLeast, double PitchGreatest, int Bents, int Rows, int Posts, double Post, double Cap,
    double Bearer, string Braces, double? Brace, string Longitudinal, int LongitudinalBraces, int LongitudinalLeftOut)
{
    internal static TrestleReport? Of(SectionSet set)
    {
        if (set.Plan is not { Trestle: { } trestle, Spec.Trestle: { } spec })
        {
            return null;
        }

        int along = PlatformForge.Solids.Bodies.Trestles.LongitudinalBraces.Of(new(set.Plan), out int leftOut).Count;
        int bents = trestle.Bents.Count, rows = trestle.Rows.Count;
        return new(
            spec.Kind == TrestleKind.Timber ? "timber" : "concrete", trestle.Stretch.From, trestle.Stretch.To, spec.Pitch, trestle.Pitch.Least,
            trestle.Pitch.Greatest, bents, rows, bents * rows, spec.Post, spec.Cap, spec.Bearer, spec.Braces.ToString().ToLowerInvariant(),
            spec.HasBraces ? spec.Brace : null, spec.Longitudinal.ToString().ToLowerInvariant(), along, leftOut);
    }

    internal static void Say(DocumentBuilder to, SectionSet set)
    {
        if (Of(set) is not { } made)
        {
            return;
        }

        to.Title("Trestle");
        to.Say(Invariant($"From chainage {Figures.Mm(made.From)} to {Figures.Mm(made.To)} mm the deck stands on {made.Bents} bents of {made.Kind}, ")
            + Invariant($"{made.Rows} posts {Figures.Fine(made.Post)} mm square in each, under caps {Figures.Fine(made.Cap)} and bearers ")
            + Invariant($"{Figures.Fine(made.Bearer)} mm deep{Between(made)}.{Along(made, set.Plan)} ")
            + "A pair of bents stands at each joint between sections; dowels under the deck hold the two in line. "
            + "Print these sections deck down. Until they are on the layout lay them on their decks: posts break.");
    }

    private static string Along(TrestleReport made, PlatformPlan plan) => made.LongitudinalBraces == 0 ? ""
        : Invariant($" Along the platform {made.LongitudinalBraces} {LongitudinalWords.Of(plan.Spec.Trestle!)}, {Figures.Fine(made.Brace!.Value)} mm thick, ")
            + Invariant($"stiffen it {LongitudinalWords.Where(plan.Spec.Trestle!, plan.Spec.IsIsland)}.");

    private static string Between(TrestleReport made) => made.Braces switch
    {
        "none" => "",
        "web" => Invariant($", with webs {Figures.Fine(made.Brace!.Value)} mm thick"),
        _ => Invariant($", with braces {Figures.Fine(made.Brace!.Value)} mm thick"),
    };
}
