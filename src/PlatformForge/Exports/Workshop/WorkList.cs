using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Workshop;

/// <summary>A stage of the work, in the order in which they follow one another.</summary>
public enum WorkStage
{
    Print,
    Cut,
    SetOut,
    Join,
    Paint,
    Fit,
    Test,
}

/// <summary>What is done, stage by stage, with this platform's own figures.</summary>
internal static class WorkList
{
    /// <summary>What a stage is called.</summary>
    public static string Called(WorkStage stage) => stage switch
    {
        WorkStage.Print => "What to print, and how",
        WorkStage.Cut => "What to cut",
        WorkStage.SetOut => "How to set out",
        WorkStage.Join => "How to join",
        WorkStage.Paint => "How to paint",
        WorkStage.Fit => "How to fit what stands on it",
        _ => "How to test",
    };

    /// <summary>The steps of a stage.</summary>
    public static IReadOnlyList<string> Steps(WorkStage stage, Dossier dossier, PlatformDossier platform)
    {
        var set = platform.Sections;
        return stage switch
        {
            WorkStage.Print => [.. Print(set)],
            WorkStage.Cut => [.. Cut(set)],
            WorkStage.SetOut => [.. SetOut(set)],
            WorkStage.Join => [.. Join(set)],
            WorkStage.Paint => [.. Paint(set)],
            WorkStage.Fit => [.. Fit(set)],
            _ => [.. Test(dossier)],
        };
    }

    /// <summary>Whether anything of a platform has wires.</summary>
    public static bool HasWires(PlatformDossier platform) => platform.Sections.Plan.Features.Any(f => f.Wires.Count > 0);

    /// <summary>All of it as a table: a row a step, cautions with the first of a stage.</summary>
    public static WorkTable Table(Dossier dossier, PlatformDossier platform)
    {
        var rows = new List<IReadOnlyList<TableCell>>();
        foreach (var stage in Enum.GetValues<WorkStage>())
        {
            string caution = string.Join(" ", Cautions.At(stage, HasWires(platform)));
            foreach (var (step, i) in Steps(stage, dossier, platform).Select((s, i) => (s, i)))
            {
                rows.Add([Called(stage), TableCell.Of(i + 1, 0), step, i == 0 ? caution : ""]);
            }
        }

        return new(
            "work-list", "Work list in stages", [new("stage", "stage"), new("step", "step"), new("what", "what"), new("caution", "caution")],
            rows, "the order of the trade (common practice, no source), with this platform's figures")
        { FileOnly = true };
    }

    private static IEnumerable<string> Print(SectionSet set)
    {
        yield return "Lay the full-size paper sheets on the layout and push the longest and the widest vehicle past, before a gram is printed "
            + "(platformforge paper).";
        yield return Invariant($"Print plate 1 first ({Figures.Time(set.Plates[0].Estimate.Hours)}, {set.Plates[0].Estimate.Grams:0} g) and lay its ")
            + "sections on the layout.";
        if (set.Plates.Count > 1)
        {
            yield return Invariant($"Print the other {(set.Plates.Count == 2 ? "plate" : Invariant($"{set.Plates.Count - 1} plates"))}.");
        }

        yield return "Trim what a squashed first layer leaves along the edges of decks and ends; measure a section's length against the table.";
    }

    private static IEnumerable<string> Cut(SectionSet set)
    {
        foreach (var dowel in set.Dowels)
        {
            yield return Invariant($"Cut {dowel.Count} pieces of {Figures.Short(dowel.Length)} mm: {dowel.What}. Break their edges.");
        }

        int stands = set.Plan.Features.SelectMany(f => f.Parts).Sum(p => p.Count);
        if (stands > 0)
        {
            yield return Invariant($"Have ready the {stands} pieces that the parts list calls bought or made; try one post of each size in its hole.");
        }

        if (set.Plan.Features.Any(f => f.Wires.Count > 0))
        {
            yield return "Cut the wires by the table of wire lengths.";
        }

        yield return "Cut the masks from film or low-tack tape along the red lines.";
    }

    private static IEnumerable<string> SetOut(SectionSet set)
    {
        yield return "Mark the wall's foot on the baseboard: from the outer face of the nearer rail, square to the track, at the chainages of the table.";
        yield return "Check with the chords: each mark follows from the one before by two lengths.";
        if (set.Plan.Features.Any(f => f.BoardHoles.Count > 0))
        {
            yield return "Mark and drill the holes of the baseboard's list; look below the board first.";
        }

        yield return "Lay all sections down dry, ends touching, wall's foot on its line.";
    }

    private static IEnumerable<string> Join(SectionSet set)
    {
        if (set.Sections.Count == 1)
        {
            yield return "The platform is one section: there is no joint.";
            yield break;
        }

        yield return Invariant($"Put the sections together dry, 1 to {set.Sections.Count}, by the numbers engraved underneath; a dowel goes into the ")
            + "round bore of one end and the slotted one beside it.";
        if (set.Dowels.Count > 0)
        {
            yield return "Glue the dowels or plates into one section only, let them set, then glue the next section on a flat board, deck down on "
                + "paper that glue does not hold to.";
        }

        yield return Invariant($"Sight along the coping's edge before the glue sets. Each end is {Figures.Fine(set.Joint.EndTrim)} mm short by plan: ")
            + "fill that line, or let it be a joint between slabs.";
        if (set.Plan.Spec.BaseboardJoints.Any(joint => set.Cuts.Any(cut => Math.Abs(cut - joint) < Tolerances.GridStep)))
        {
            yield return "Leave joints over baseboard joints unglued.";
        }
    }

    private static IEnumerable<string> Paint(SectionSet set)
    {
        yield return "Wash off grease, fill, sand wet, and prime all that is seen.";
        yield return "Paint the walls and the coping's edge, then the coping with the deck covered by its mask.";
        if (set.Plan.Spec.Facing is { } facing && ((WallFinish[])[facing.Front, facing.Back, facing.Ends]).Any(HasMortar))
        {
            yield return "Once bricks and stones are dry, let the thinned mix for mortar run into their joints and wipe their faces.";
        }

        yield return (set.Plan.Spec.Deck.Paving is { } paving ? Paved(paving.Kind)
            : "Paint the deck: both greys worked together wet; texture powder in thinned glue hides layer lines (common practice, no source).")
            + " Talc or matt varnish takes the shine off.";
        if (set.Plan.Body.Lines.Any(l => l.Made.IsPainted))
        {
            yield return "Paint the white line last, through its stencil, in thin coats, with the mix of the table: never pure white.";
        }
    }

    private static bool HasMortar(WallFinish finish) => finish is WallFinish.Brick or WallFinish.Stone or WallFinish.Rubble;

    private static string Paved(PavingKind kind) => kind switch
    {
        PavingKind.Flags => "Paint the deck's flags with their mix, some lighter and some darker; a thinned dark wash shows their joints.",
        PavingKind.Setts => "Paint the deck's setts with the mix for stone, some lighter and some darker; a thinned dark wash shows their joints.",
        PavingKind.Planks => "Paint the deck's planks with the mix for timber, along the grain; a thinned dark wash shows their gaps.",
        _ => "Paint the deck's bricks in two or three close colours; a thinned dark wash shows their joints.",
    };

    private static IEnumerable<string> Fit(SectionSet set)
    {
        var plan = set.Plan;
        if (set.Lines.Pieces.Any(p => !p.IsInlay && p.Made.Name != LineMake.Bank))
        {
            yield return "Glue the strips into their rebates when the paint is dry, each into its own section, by their names; they end where sections do, "
                + "so that joints come apart.";
        }

        if (plan.Bank is { IsApart: true })
        {
            yield return "Glue the bank's pieces to the baseboard behind the platform, each behind its own section, when that is fixed.";
        }

        yield return plan.Openings.Any() ? "Clear every hole of the deck's list with a drill of its size turned by hand." : "Nothing is let into the deck.";
        if (plan.Features.Any(f => f.Wires.Count > 0))
        {
            yield return "Lead the wires through deck, channel and baseboard before the platform is fixed, and try each light once.";
        }

        if (plan.Features.Any(f => f.Parts.Count > 0))
        {
            yield return "Set posts upright against a square, dry first; then panels between them from a gate or an end.";
        }

        yield return "Fix the platform so that it comes off again: screws or a few spots of glue.";
    }

    // What a hand takes hold of: a set is coupled up and pushed whole, and a truck goes with the engine that it hangs on.
    private static IEnumerable<string> Pushed(IEnumerable<Vehicle> vehicles) => vehicles.Where(v => v.TruckOf is null).Select(v => v.SetName ?? v.Name)
        .Distinct();

    private static IEnumerable<string> Test(Dossier dossier)
    {
        foreach (var track in dossier.Tracks.Where(t => t.Vehicles.Count > 0))
        {
            yield return Invariant($"Push each of these along {track.Ride.Name} by hand, both ways round and both ways along: ")
                + Invariant($"{string.Join(", ", Pushed(track.Vehicles))}.");
        }

        yield return "Stop where the table says that a vehicle comes nearest, and look along the gap.";
        yield return "Measure the gap in a few places and write them down: platformforge check with --as-built tells what is left.";
        yield return "When a new vehicle is bought: platformforge verify with --with-vehicle, before it runs.";
    }
}
