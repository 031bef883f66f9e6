using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Specs;

/// <summary>
/// Bents that carry the deck in place of walls and ribs: posts with a cap across them and braces between them, bearers along the platform over the caps.
/// Lengths in mm of the model. What is not stated follows its kind and scale; all of these figures are common practice, no source.
/// </summary>
public sealed record TrestleSpec
{
    // Full size, mm: bents 8 ft apart of timber and 10 ft of concrete, posts and caps 12 in square, bearers 9 in and 12 in deep, braces 3 in thick, rows of
    // posts 6 ft apart at most, planks 9 in wide, knee braces 2 ft long.
    private const double TimberPitch = 8 * FullSize.Foot, ConcretePitch = 10 * FullSize.Foot, FullPost = FullSize.Foot, FullCap = FullSize.Foot,
        TimberBearer = 0.75 * FullSize.Foot, ConcreteBearer = FullSize.Foot, FullBrace = FullSize.Foot / 4, FullRows = 6 * FullSize.Foot,
        FullPlank = 0.75 * FullSize.Foot, FullKnee = 2 * FullSize.Foot;

    // Two lines of the usual nozzle, mm, and those with a joint engraved in front of them: nothing is thinner unasked.
    private const double UsualLines = 0.8, Joint = 0.3;

    /// <summary>Room under the cap, mm, below which a ramp stands on a solid foot: there is nothing to see through.</summary>
    public const double LeastPost = 2;

    private readonly double? pitch, bearer, brace, post, cap, plank, knee, boards;
    private readonly BraceForm? braces;

    public TrestleKind Kind { get; init; }

    /// <summary>Greatest distance between the middles of bents. Default 32 (8 ft), of concrete 40 (10 ft).</summary>
    public double Pitch
    {
        get => pitch ?? (Kind == TrestleKind.Timber ? TimberPitch : ConcretePitch) / Ratio;
        init => pitch = value;
    }

    /// <summary>Side of a post, which is square; caps are as wide. Default 4 (12 in).</summary>
    public double Post
    {
        get => post ?? Math.Max(Lines, FullPost / Ratio);
        init => post = value;
    }

    /// <summary>Rows of posts from front to back; null sets them 6 ft apart at most.</summary>
    public int? Posts { get; init; }

    /// <summary>Depth of a cap under the deck. Default 4 (12 in).</summary>
    public double Cap
    {
        get => cap ?? Math.Max(Lines, FullCap / Ratio);
        init => cap = value;
    }

    /// <summary>Depth of the bearers under the deck, one over each row of posts. Default 3 (9 in), of concrete 4 (12 in).</summary>
    public double Bearer
    {
        get => bearer ?? (Kind == TrestleKind.Timber ? TimberBearer : ConcreteBearer) / Ratio;
        init => bearer = value;
    }

    /// <summary>Thickness of a brace, or of a web. Default 1 (3 in), two lines of the nozzle at least.</summary>
    public double Brace
    {
        get => brace ?? Math.Max(Lines, FullBrace / Ratio);
        init => brace = value;
    }

    /// <summary>What stiffens a bent between its posts. Default: crossed braces of timber, nothing of concrete.</summary>
    public BraceForm Braces
    {
        get => braces ?? (Kind == TrestleKind.Timber ? BraceForm.Cross : BraceForm.None);
        init => braces = value;
    }

    /// <summary>Braces along the platform, in the plane of its posts, between neighbouring bents. Default: none.</summary>
    public LongitudinalForm Longitudinal { get; init; }

    /// <summary>Rows of posts that have such braces.</summary>
    public BracedRows Braced { get; init; }

    /// <summary>How far from its post a knee brace reaches along its bearer, and as far down. Default 8 (2 ft).</summary>
    public double Knee
    {
        get => knee ?? Math.Max(2 * Lines, FullKnee / Ratio);
        init => knee = value;
    }

    /// <summary>Whether it has a brace of any kind, or a web.</summary>
    public bool HasBraces => Braces != BraceForm.None || Longitudinal != LongitudinalForm.None;

    /// <summary>Height of a sill under the posts of a bent; 0 makes none.</summary>
    public double Sill { get; init; }

    /// <summary>How far a pad stands out round the foot of each post; 0 makes none.</summary>
    public double Pad { get; init; }

    /// <summary>Height of such a pad. Default 1.</summary>
    public double PadHeight { get; init; } = 1;

    /// <summary>What carries the ramps.</summary>
    public TrestleRamps Ramps { get; init; }

    /// <summary>Sides that are boarded between the posts.</summary>
    public BoardedSides Boarded { get; init; }

    /// <summary>Thickness of the boarding. Default 1.1: two lines of the nozzle behind joints of 0.3.</summary>
    public double Boards
    {
        get => boards ?? Lines + Joint;
        init => boards = value;
    }

    /// <summary>Height of a plank of the boarding. Default 3 (9 in).</summary>
    public double Plank
    {
        get => plank ?? Math.Max(Lines, FullPlank / Ratio);
        init => plank = value;
    }

    /// <summary>Greatest distance between rows of posts that are not stated, mm.</summary>
    public double Rows => FullRows / Ratio;

    private double Ratio { get; init; } = 76.2;

    // Nothing is thinner unasked, mm.
    private double Lines { get; init; } = UsualLines;

    /// <summary>The trestle for a nozzle so wide, mm: nothing of it is thinner than two lines unasked.</summary>
    public TrestleSpec Printed(double nozzle) => this with { Lines = Math.Max(UsualLines, PrintedLines.Two(nozzle)) };

    /// <summary>Least room between baseboard and deck in which a bent stands, mm.</summary>
    public double LeastHeight => Cap + Sill + LeastPost;

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<TrestleSpec> Keys { get; } = new SpecKeys<TrestleSpec>(For)
        .Choice("kind", "What it is built of.", t => t.Kind, (t, v) => t with { Kind = v },
            [("timber", TrestleKind.Timber), ("concrete", TrestleKind.Concrete)])
        .Length("pitch", NumberRange.From(2, 1000), "Greatest distance between bents.", t => t.Pitch, (t, v) => t with { Pitch = v })
        .Length("post", Sizes, "Side of a post, which is square; caps and the outer bearers are as wide.", t => t.Post, (t, v) => t with { Post = v })
        .Number("posts", NumberRange.From(2, 20), "", "Rows of posts; left out, as many as stand 6 ft apart at most.", t => t.Posts,
            (t, v) => t with { Posts = (int)v }, whole: true)
        .Example("3")
        .Length("cap", Sizes, "Depth of the cap across the posts, under the deck.", t => t.Cap, (t, v) => t with { Cap = v })
        .Length("bearer", Sizes, "Depth of the bearers along the platform, under the deck.", t => t.Bearer, (t, v) => t with { Bearer = v })
        .Length("brace", Sizes, "Thickness of braces, or of webs.", t => t.Brace, (t, v) => t with { Brace = v })
        .Choice("braces", "What stiffens a bent between its posts.", t => t.Braces, (t, v) => t with { Braces = v },
            [("cross", BraceForm.Cross), ("single", BraceForm.Single), ("web", BraceForm.Web), ("none", BraceForm.None)])
        .Choice("longitudinal", "Braces along the platform, in the plane of its posts, from bent to bent.", t => t.Longitudinal,
            (t, v) => t with { Longitudinal = v },
            [("none", LongitudinalForm.None), ("cross", LongitudinalForm.Cross), ("raking", LongitudinalForm.Raking), ("knee", LongitudinalForm.Knee)])
        .Choice("braced", "Rows of posts that have such braces.", t => t.Braced, (t, v) => t with { Braced = v },
            [("both", BracedRows.Both), ("front", BracedRows.Front), ("back", BracedRows.Back), ("all", BracedRows.All)])
        .Length("knee", NumberRange.From(0.5, 200), "How far from its post a knee brace reaches along its bearer, and as far down.", t => t.Knee,
            (t, v) => t with { Knee = v })
        .Length("sill", NumberRange.NoneOr(0.2, 50), "Height of a sill under the posts of a bent; 0 makes none.", t => t.Sill, (t, v) => t with { Sill = v })
        .Length("pad", NumberRange.NoneOr(0.1, 20), "How far a pad stands out round the foot of each post; 0 makes none.", t => t.Pad,
            (t, v) => t with { Pad = v })
        .Length("pad_height", Sizes, "Height of such a pad.", t => t.PadHeight, (t, v) => t with { PadHeight = v })
        .Choice("ramps", "What carries the ramps: bents, and a solid foot where they are too low, or walls and ribs.", t => t.Ramps,
            (t, v) => t with { Ramps = v },
            [("bents", TrestleRamps.Bents), ("walls", TrestleRamps.Walls)])
        .Choice("boarded", "Sides that are boarded between the posts.", t => t.Boarded, (t, v) => t with { Boarded = v },
            [("none", BoardedSides.None), ("front", BoardedSides.Front), ("back", BoardedSides.Back), ("both", BoardedSides.Both)])
        .Length("boards", Sizes, "Thickness of the boarding.", t => t.Boards, (t, v) => t with { Boards = v })
        .Length("plank", Sizes, "Height of a plank of the boarding.", t => t.Plank, (t, v) => t with { Plank = v });

    private static NumberRange Sizes => NumberRange.From(0.2, 100);

    /// <summary>The defaults for a scale; what is thinner than two lines of the usual nozzle at scale is two lines.</summary>
    public static TrestleSpec For(ModelScale scale) => new() { Ratio = scale.Ratio };
}

/// <summary>What a trestle is built of.</summary>
public enum TrestleKind
{
    Timber,

    /// <summary>Precast.</summary>
    Concrete,
}

/// <summary>What stiffens a bent between its posts.</summary>
public enum BraceForm
{
    /// <summary>Two braces between neighbouring posts, across one another where they meet.</summary>
    Cross,

    /// <summary>One brace between neighbouring posts, rising by turns to either side.</summary>
    Single,

    /// <summary>A web that fills the bent.</summary>
    Web,

    None,
}

/// <summary>Braces along a trestle.</summary>
public enum LongitudinalForm
{
    None,

    /// <summary>Two in each bay, from the foot of either post towards the other: across one another where they meet.</summary>
    Cross,

    /// <summary>One in each bay, rising by turns to either side.</summary>
    Raking,

    /// <summary>Short ones on either side of each post, up to the bearer.</summary>
    Knee,
}

/// <summary>Rows of posts that are braced along a trestle.</summary>
public enum BracedRows
{
    /// <summary>The front row and the back row; of an island, those under both faces.</summary>
    Both,
    Front,
    Back,

    /// <summary>Every row.</summary>
    All,
}

/// <summary>What carries the ramps of a trestle.</summary>
public enum TrestleRamps
{
    /// <summary>Bents of falling height, and a solid foot where they would be too low.</summary>
    Bents,

    /// <summary>Walls and ribs, as without a trestle.</summary>
    Walls,
}

/// <summary>Sides that are boarded.</summary>
public enum BoardedSides
{
    None,
    Front,
    Back,
    Both,
}
