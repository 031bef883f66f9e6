using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Specs;

/// <summary>What the edge course is made of.</summary>
public enum CopingKind
{
    /// <summary>Slabs of stone or concrete.</summary>
    Slabs,

    /// <summary>Bricks side by side, headers to the track, so many to a slab's length.</summary>
    Bricks,

    /// <summary>Baulks of timber.</summary>
    Timber,
}

/// <summary>How the front upper edge of a coping is worked.</summary>
public enum Nosing
{
    Chamfered,

    /// <summary>Rounded off, as bullnosed bricks are.</summary>
    Rounded,
}

/// <summary>At which ends of its platform a coping goes on round the corner.</summary>
public enum CopingReturns
{
    /// <summary>At none: it stops square to the edge.</summary>
    None,

    /// <summary>Where the platform starts.</summary>
    Start,

    /// <summary>Where it ends.</summary>
    End,

    /// <summary>At both.</summary>
    Both,
}

/// <summary>The edge course. Lengths in mm of the model; the defaults are for 4 mm scale.</summary>
public sealed record CopingSpec
{
    // Full-size: a published flag, a brick with its joint (BS EN 771), a baulk 12 in wide and 12 ft long (common practice, no source).
    private static readonly Dictionary<CopingKind, (double Width, double Length)> FullSizeOf = new()
    {
        [CopingKind.Slabs] = (600, 900),
        [CopingKind.Bricks] = (225, 8 * 112.5),
        [CopingKind.Timber] = (FullSize.Foot, 12 * FullSize.Foot),
    };

    // Of a bullnosed brick, mm at full size: from memory, no source.
    private const double BullnoseRadius = 51;

    // Projection over the wall, mm at full size: 3 in, card and pencil practice in 4 mm scale.
    private const double FullSizeOverhang = 76.2;

    // Width of a brick laid as a header, with its joint, mm at full size (BS EN 771).
    private const double FullSizeBrick = 112.5;

    private readonly double? width, slab, arris, overhang;

    private readonly Nosing? nosing;

    public CopingKind Kind { get; init; } = CopingKind.Slabs;

    /// <summary>The scale that its sizes are drawn at where they are not stated.</summary>
    public ModelScale Scale { get; init; } = new(76.2);

    /// <summary>Depth from front edge to back. Default 7.9 for slabs (600 mm, a published flag size), 2.95 for bricks (225 mm), 4 for timber (12 in); wider
    /// where it could then not lie on the whole of its wall.</summary>
    public double Width
    {
        get => width ?? Math.Max(Scale.ToModel(FullSizeOf[Kind].Width), Seat > 0 ? Seat + (overhang ?? 0) : 0);
        init => width = value;
    }

    /// <summary>Thickness. Default 1.2, six layers of 0.2 mm.</summary>
    public double Thickness { get; init; } = 1.2;

    /// <summary>Depth of the wall that it lies on, mm; 0 where that is not known.</summary>
    public double Seat { get; init; }

    /// <summary>How far the coping projects over the wall below. Default 1 (card and pencil practice in 4 mm scale), and less where a narrow coping could then
    /// not lie on the whole of its wall.</summary>
    public double Overhang
    {
        get => overhang ?? Math.Clamp(Seat > 0 ? Width - Seat : double.PositiveInfinity, 0, Scale.ToModel(FullSizeOverhang));
        init => overhang = value;
    }

    /// <summary>Length of a slab or baulk aimed at, of eight bricks for bricks; joints are spaced evenly near it, and cuts are made at them. 0 makes no joints.
    /// Default 11.8 for slabs and bricks (900 mm, a published flag size, and eight bricks), 48 for timber (12 ft).</summary>
    public double SlabLength
    {
        get => slab ?? Scale.ToModel(FullSizeOf[Kind].Length);
        init => slab = value;
    }

    /// <summary>Width of the groove at a joint. Default 0.4, one printed line.</summary>
    public double JointWidth { get; init; } = 0.4;

    /// <summary>Depth of the groove at a joint. Default 0.3; 0 leaves the joints to paint, and they still serve as cut stations.</summary>
    public double JointDepth { get; init; } = 0.3;

    /// <summary>How the front upper arris is worked; rounded for bricks unless stated.</summary>
    public Nosing Nosing
    {
        get => nosing ?? (Kind == CopingKind.Bricks ? Nosing.Rounded : Nosing.Chamfered);
        init => nosing = value;
    }

    /// <summary>Chamfer on the front upper arris, measured along both faces, or the radius where it is rounded. Default 0.3: takes up the squashed first layer
    /// of a print laid deck down; for bricks 51 mm at scale (from memory, no source), half their thickness at most.</summary>
    public double ArrisChamfer
    {
        get => arris ?? (Kind == CopingKind.Bricks ? Math.Min(Scale.ToModel(BullnoseRadius), Math.Min(Thickness, Width) / 2) : 0.3);
        init => arris = value;
    }

    /// <summary>Width of the tooled margin round each slab, told from its middle by a line; 0 makes none.</summary>
    public double Margin { get; init; }

    /// <summary>Depth of that line. Default 0.2, one layer (common practice, no source).</summary>
    public double MarginDepth { get; init; } = 0.2;

    /// <summary>At which ends it goes on round the corner, along the end wall to the back.</summary>
    public CopingReturns Returns { get; init; }

    /// <summary>Whether it goes on round the corner at an end.</summary>
    public bool IsReturned(bool atEnd) => Returns == CopingReturns.Both || Returns == (atEnd ? CopingReturns.End : CopingReturns.Start);

    /// <summary>How far it projects over the wall at an end, mm: as over the front where it turns the corner, else nothing.</summary>
    public double EndOverhang(bool atEnd) => IsReturned(atEnd) ? Overhang : 0;

    /// <summary>The lines beside tooled margins that run along the edge; null where there are none.</summary>
    internal MarginLines? Margins =>
        Kind == CopingKind.Slabs && Margin > 0 && MarginDepth > 0 && JointWidth > 0 ? new(Margin, Width - Margin, JointWidth / 2) : null;

    /// <summary>Width of a brick with its joint, mm.</summary>
    public double BrickPitch => Scale.ToModel(FullSizeBrick);

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<CopingSpec> Keys { get; } = new SpecKeys<CopingSpec>(For)
        .Choice(
            "kind",
            "What the edge course is made of.",
            c => c.Kind,
            (c, v) => c with { Kind = v },
            [("slabs", CopingKind.Slabs), ("bricks", CopingKind.Bricks), ("timber", CopingKind.Timber)])
        .Length("width", NumberRange.From(0.5, 200), "From front edge to back.", c => c.Width, (c, v) => c with { Width = v })
        .Length("thickness", NumberRange.From(0.2, 50), "Thickness of the slabs.", c => c.Thickness, (c, v) => c with { Thickness = v })
        .Length("overhang", NumberRange.From(0, 50), "How far the coping projects over the wall.", c => c.Overhang, (c, v) => c with { Overhang = v })
        .Length(
            "slab_length",
            NumberRange.NoneOr(2, 1000),
            "Length of a slab; joints are spaced evenly near it; 0 makes none.",
            c => c.SlabLength,
            (c, v) => c with { SlabLength = v })
        .Length("joint_width", NumberRange.From(0, 5), "Width of the groove between two slabs.", c => c.JointWidth, (c, v) => c with { JointWidth = v })
        .Length("joint_depth", NumberRange.From(0, 20), "Depth of that groove; 0 leaves it to paint.", c => c.JointDepth, (c, v) => c with { JointDepth = v })
        .Choice(
            "nosing",
            "How the front upper edge is worked.",
            c => c.Nosing,
            (c, v) => c with { Nosing = v },
            [("chamfered", Nosing.Chamfered), ("rounded", Nosing.Rounded)])
        .Length(
            "arris_chamfer",
            NumberRange.From(0, 10),
            "Chamfer on the front upper edge, or its radius.",
            c => c.ArrisChamfer,
            (c, v) => c with { ArrisChamfer = v })
        .Choice(
            "returns",
            "At which ends it turns the corner and goes on along the end wall.",
            c => c.Returns,
            (c, v) => c with { Returns = v },
            [("none", CopingReturns.None), ("start", CopingReturns.Start), ("end", CopingReturns.End), ("both", CopingReturns.Both)])
        .Length("margin", NumberRange.NoneOr(0.4, 50), "Width of a tooled margin round each slab; 0 makes none.", c => c.Margin, (c,
            v) => c with { Margin = v })
        .Length("margin_depth", NumberRange.From(0.05, 5), "Depth of the line beside it.", c => c.MarginDepth, (c, v) => c with { MarginDepth = v })
        .Check((c, key) => c.Margin <= 0 || c.Kind == CopingKind.Slabs ? null : new(
            "margin",
            "Slabs alone have tooled margins.",
            "Leave margin out, or give kind = \"slabs\".",
            Cure.LeaveOut(key + ".margin")));

    /// <summary>
    /// The worked arris: from the front face to the top, how far inward and how far below the top each corner of it lies, mm. A rounded one is drawn by chords
    /// between points on its arc, which take off at most <see cref="ChordOff"/> more than the arc does.
    /// </summary>
    public IReadOnlyList<(double Inward, double Drop)> Arris()
    {
        double r = ArrisChamfer;
        int chords = Nosing == Nosing.Rounded && r > ChordOff ? (int)Math.Ceiling(Math.PI / 4 / Math.Acos(1 - (ChordOff / r))) : 1;
        return r <= 0 ? [] : [.. Enumerable.Range(0, chords + 1).Select(i =>
        {
            double turn = Math.PI / 2 * i / chords;
            return (i == chords ? r : i == 0 ? 0 : r * (1 - Math.Cos(turn)), i == chords ? 0 : i == 0 ? r : r * (1 - Math.Sin(turn)));
        })];
    }

    /// <summary>The ends that it turns: the start, then the end (true).</summary>
    internal IEnumerable<bool> ReturnedEnds => BothEnds.Where(IsReturned);

    private static readonly bool[] BothEnds = [false, true];

    /// <summary>How far in mm a chord of a rounded arris leaves its arc at most.</summary>
    public const double ChordOff = 0.02;

    /// <summary>The defaults for a scale: slab sizes and overhang (1 mm at 4 mm scale) scale; what a printer needs does not.</summary>
    public static CopingSpec For(ModelScale scale) => new() { Scale = scale };
}
