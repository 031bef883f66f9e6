using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings;
using PlatformForge.Sections;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports;

/// <summary>What the report says of faced walls.</summary>
internal static class FacingWords
{
    public static void Say(DocumentBuilder to, SectionSet set, double layer)
    {
        if (FacingReport.Of(set) is not { } facing)
        {
            return;
        }

        to.Title("Brickwork");
        string beds = facing.Perpends ? "" : ", bed joints alone";
        to.Say(Invariant($"{Name(facing.Bond)} bond{beds}: with its joint a stretcher is {Figures.Fine(facing.Stretcher)} mm long, ")
            + Invariant($"a header {Figures.Fine(facing.Header)}, a course {Figures.Fine(facing.Course)} high, ")
            + Invariant($"{Figures.Short(facing.Course / layer)} layers of {Figures.Fine(layer)}. Joints are {Figures.Fine(facing.Joint)} mm wide ")
            + Invariant($"and stand back {Figures.Fine(facing.Depth)}; bricks stand where a smooth wall would, so no clearance is lost."));
        to.Say("Courses are level and hang from the deck's underside at the front: a slope over them, the fall of the deck and the baseboard "
            + "cut them, and nothing else does. "
            + (set.Cuts.Count > 0
                ? "Between two sections there is a straight joint, with closers beside the last bricks on either side as at an end: "
                    + "it shows as an upright line at each cut."
                : "No cut shows in them."));
        to.Table(
            "Faced walls", ["section", "walls", "length", "courses", "bricks", "drawn out by at most", "bricks' faces, cm²"],
            facing.Walls.Select(w => (IReadOnlyList<string>)
                [
                    Invariant($"{w.Section}"), string.Join(", ", w.Faces), Figures.Mm(w.Length), Invariant($"{w.Courses}"), Invariant($"{w.Bricks}"),
                    Invariant($"{Figures.Fixed(100 * w.Draw, 1)} %"), Figures.Fixed(w.Area / 100, 1),
                ]),
            "the walls as made, laid flat; bricks are drawn out, never shortened, so that whole ones fill a wall");
    }

    private static string Name(string bond) => string.Concat(bond[..1].ToUpperInvariant(), bond[1..]).Replace('-', ' ');
}
