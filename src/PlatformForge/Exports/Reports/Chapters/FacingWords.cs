using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Chapters;

/// <summary>What the report says of faced walls.</summary>
internal static class FacingWords
{
    public static void Say(DocumentBuilder to, SectionSet set, double layer)
    {
        if (FacingReport.Of(set) is not { } facing)
        {
            if (set.Plan.Spec.Facing?.Front == WallFinish.Plain)
            {
                to.Title("Facing of walls");
                to.Say(Smooth);
            }

            Parts(to, set);
            return;
        }

        to.Title(facing.Brickwork is not null && facing.Finishes.Count == 1 ? "Brickwork" : "Facing of walls");
        foreach (var finish in set.Facing!.Finishes)
        {
            to.Say(finish.Work is BrickworkSpec ? Bricks(facing.Brickwork!, layer) : Words(finish.Work));
        }

        if (set.Facing.Finishes.All(f => f.Work is PlainSpec))
        {
            Parts(to, set);
            FittingSentences.SayHoles(to, set);
            return;
        }

        if (set.Facing.Finishes.All(f => f.Work is SheetSpec))
        {
            Table(to, facing);
            return;
        }

        Joints(to, set, facing);
        Parts(to, set);
        FittingSentences.SayHoles(to, set);
        Table(to, facing);
    }

    // What stands out of walls, or before them.
    private static void Parts(DocumentBuilder to, SectionSet set)
    {
        ProfileWords.Say(to, set);
        FittingSentences.Say(to, set);
    }

    private static void Joints(DocumentBuilder to, SectionSet set, FacingReport facing)
    {
        to.Say(Invariant($"Joints are {Figures.Fine(facing.Joint)} mm wide and stand back {Figures.Fine(facing.Depth)}; ")
            + "what is laid stands where a smooth wall would, so no clearance is lost.");
        to.Say("Courses are level, and whole ones lie between the baseboard and the deck's underside at the front"
            + (set.Facing!.Brickwork is { } bricks && bricks.Course / bricks.Module.Course is var drawn && drawn > 1 + Told
                ? Invariant($", drawn out by {Figures.Fixed(100 * (drawn - 1), 1)} % for that") : "")
            + ": a slope over them and the fall of the deck cut them, and nothing else does; "
            + "under a level edge half of a course is left at least, or none of it. "
            + (set.Cuts.Count > 0
                ? FittingSentences.Hiding(set) is { } beside
                    ? $"Between two sections there is a straight joint, with closers on either side; {beside.Plural} stand beside it."
                    : "Between two sections there is a straight joint, with closers beside the last bricks on either side as at an end: "
                    + "it shows as an upright line at each cut."
                : "No cut shows in them."));
    }

    // Courses drawn out by less than this share are told as they are.
    private const double Told = 5e-4;

    private static void Table(DocumentBuilder to, FacingReport facing) => to.Table(
            "Faced walls", ["section", "finish", "walls", "length", "courses", "pieces", "drawn out by at most", "their faces, cm²"],
            facing.Walls.Select(w => (IReadOnlyList<string>)
                [
                    Invariant($"{w.Section}"), w.Finish, string.Join(", ", w.Faces), Figures.Mm(w.Length), w.Courses > 0 ? Invariant($"{w.Courses}") : "",
                    Invariant($"{w.Pieces}"), Invariant($"{Figures.Fixed(100 * w.Draw, 1)} %"), Figures.Fixed(w.Area / 100, 1),
                ]),
            "the walls as made, laid flat; bricks and upright planks are drawn out, never shortened, so that whole ones fill a wall; "
                + "what is laid level of timber is cut at its ends");

    /// <summary>What the report says of the deck.</summary>
    public static void Paving(DocumentBuilder to, SectionSet set)
    {
        if (set.Plan.Spec.Deck.Paving is not { } paving || PavingLayout.Of(set.Plan) is not { } layout)
        {
            return;
        }

        to.Title("Paving");
        string across = paving.Kind == PavingKind.Planks ? Invariant($"Planks across the platform, about {Figures.Fine(layout.Width)} mm wide")
            : Invariant($"{char.ToUpperInvariant(PavingSpec.Name(paving.Kind)[0])}{PavingSpec.Name(paving.Kind)[1..]}, about ")
                + Invariant($"{Figures.Fine(layout.Length)} by {Figures.Fine(layout.Width)} mm with their joints, in courses ")
                + (paving.Courses == PavingCourses.Across ? "square to the edge" : "along the edge, stretcher-wise");
        to.Say(across + Invariant($". Joints are {Figures.Fine(paving.Joint)} mm wide and engraved {Figures.Fine(paving.Depth)} deep; ")
            + "they turn with the curve and go on over the joints between sections. The first layer holds but for them.");
    }

    private static string Bricks(BrickworkReport b, double layer) =>
        Invariant($"{Name(b.Bond)} bond{(b.Perpends ? "" : ", bed joints alone")}: with its joint a stretcher is {Figures.Fine(b.Stretcher)} mm long, ")
        + Invariant($"a header {Figures.Fine(b.Header)}, a course {Figures.Fine(b.Course)} high, ")
        + Invariant($"{Figures.Short(b.Course / layer)} layers of {Figures.Fine(layer)}.");

    private static string Words(WallWork work) => work switch
    {
        StoneworkSpec s => Invariant($"Coursed stone: courses of {Figures.Fine(StoneworkSpec.LeastCourse * s.Course)} to {Figures.Fine(1.25 * s.Course)} mm, ")
            + Invariant($"stones of about {Figures.Fine(s.Length)}, long and short ones in turn at corners and cuts; ")
            + Invariant($"drawn by seed {s.Seed}, the same for the same seed always."),
        RubbleSpec r => Invariant($"Random rubble: stones of about {Figures.Fine(RubbleSpec.Aspect * r.Size)} by {Figures.Fine(r.Size)} mm, ")
            + Invariant($"which turn the corners; drawn by seed {r.Seed}, the same for the same seed always."),
        LevelTimberSpec t => Invariant($"{(t.Finish == WallFinish.Sleepers ? "Sleepers on edge" : "Planks laid level")}, {Figures.Fine(t.Width)} mm wide ")
            + Invariant($"and {Figures.Fine(t.Length)} long with their gaps, each course half a length over the next; ")
            + "what is left over is cut at a wall's end.",
        UprightPlankSpec u => Invariant($"Upright planks, {Figures.Fine(u.Width)} mm wide with their gaps."),
        PanelSpec p => Invariant($"Precast panels {Figures.Fine(p.Panel)} mm high ")
            + Invariant($"between posts {Figures.Fine(p.Post)} wide, about {Figures.Fine(p.Bay)} apart."),
        SheetSpec s => Invariant($"A rebate {Figures.Fine(s.Laying.Depth)} mm deep for bought sheet, brick paper or embossed plastic: ")
            + "no thicker than that, it stands no farther out than a smooth wall would, and no clearance is lost. The drawing of strips has its pieces at full "
            + "size.",
        PlainSpec => Smooth,
        _ => "",
    };

    private const string Smooth = "Walls are left smooth, as render is; pictures show them in its colour, and the table of paints has its mix.";

    private static string Name(string bond) => string.Concat(bond[..1].ToUpperInvariant(), bond[1..]).Replace('-', ' ');
}
