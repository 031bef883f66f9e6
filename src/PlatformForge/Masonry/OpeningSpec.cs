using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Masonry;

/// <summary>
/// Openings of one kind in a platform's faced walls: recesses, as deep as the wall allows, that read as holes, or holes right through into the hollow
/// behind. Lengths in mm of the model; unasked they follow from the kind at scale, all common practice without a source.
/// </summary>
public sealed record OpeningSpec
{
    // How deep a recess is unasked, mm behind the faces of the bricks: a line of a nozzle of 0.4 behind joints of a quarter of a mm.
    private const double UsualDepth = 0.65;

    private readonly double? pitch, width, height, sill, depth;
    private readonly OpeningHead? head;

    public OpeningKind Kind { get; init; } = OpeningKind.Refuge;

    /// <summary>Whether they are in the back and not under the copings.</summary>
    public bool IsBack { get; init; }

    /// <summary>Chainages of their middles; none spreads them.</summary>
    public IReadOnlyList<double> At { get; init; } = [];

    /// <summary>From the middle of one to the next, about; between piers there is one at least to a panel.</summary>
    public double Pitch { get => pitch ?? Usual.Pitch / Ratio; init => pitch = value; }

    public double Width { get => width ?? Math.Max(LeastSize, Usual.Width / Ratio); init => width = value; }

    /// <summary>None is narrower or lower unasked, mm: two lines of the nozzle, which it stays open in.</summary>
    public double LeastSize { get; init; }

    /// <summary>From sill to crown.</summary>
    public double Height { get => height ?? Math.Max(LeastSize, Usual.Height / Ratio); init => height = value; }

    /// <summary>Height of their lower edge over the baseboard.</summary>
    public double Sill { get => sill ?? Usual.Sill / Ratio; init => sill = value; }

    /// <summary>Whether their height and their sill are stated; otherwise they yield to what else is in the wall.</summary>
    public (bool Height, bool Sill) States => (height is not null, sill is not null);

    /// <summary>Whether their width is stated.</summary>
    public bool StatesWidth => width is not null;

    /// <summary>Whether their upper edge is stated.</summary>
    public bool StatesHead => head is not null;

    /// <summary>How far their floor lies behind what is laid beside them; nothing for what goes through.</summary>
    public double Depth { get => depth ?? UnaskedDepth; init => depth = value; }

    /// <summary>How deep it goes into its wall where that is not stated, mm: the wall has to be as thick.</summary>
    internal double Cut => IsThrough || depth is not null ? 0 : UnaskedDepth;

    /// <summary>How deep it is where that is not stated, mm.</summary>
    public double UnaskedDepth { get; init; } = UsualDepth;

    /// <summary>The opening in a wall that takes a recess so deep, mm: unasked it is no deeper, as long as it is deeper than the joints.</summary>
    public OpeningSpec Printed(double deepest, double joints)
    {
        double room = Math.Floor((deepest + Tolerances.Rounding) * 100) / 100;
        return room > joints && room < UnaskedDepth ? this with { UnaskedDepth = room } : this;
    }

    /// <summary>Whether they go right through the wall into the hollow behind, where a pad thickens it.</summary>
    public bool IsThrough { get; init; }

    /// <summary>How far the pad behind an opening right through stands out of the wall's inner face, mm: a line of the usual nozzle.</summary>
    public const double PadDepth = 0.4;

    /// <summary>Half the length of that pad along the wall, mm: the opening, which goes to the nearest piece that is laid, with wall on either side.</summary>
    public double PadHalf => (Width / 2) + (PadBeside / Ratio) + LeastBeside;

    // Pad kept beside what is asked for: three quarters of a brick at full size, and two lines of the usual nozzle, mm.
    private const double PadBeside = 169, LeastBeside = 0.8;

    public OpeningHead Head { get => head ?? (Kind == OpeningKind.Refuge ? OpeningHead.Semicircular : OpeningHead.Flat); init => head = value; }

    /// <summary>Full size over model size, for what is not stated.</summary>
    public double Ratio { get; init; } = 76.2;

    /// <summary>Rise of the head from springing to crown, mm: half the width of a semicircle, a sixth of it of a segmental arch (common practice, no
    /// source).</summary>
    public double Rise => Head switch { OpeningHead.Semicircular => Width / 2, OpeningHead.Segmental => Width / 6, _ => 0 };

    private (double Pitch, double Width, double Height, double Sill) Usual => Kind switch
    {
        OpeningKind.Cable => (6096, 225, 150, 675),
        OpeningKind.Weep => (1800, 75, 75, 300),
        _ => (3048, 900, 750, 225),
    };

    /// <summary>How far the lintel over a flat head lies on the wall on either side, mm: 150 mm at full size (common practice, no source). A weep hole has
    /// none: the course over it bridges it.</summary>
    public double Bearing => Rise <= 0 && Kind != OpeningKind.Weep ? 150 / Ratio : 0;

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<OpeningSpec> Keys { get; } = new SpecKeys<OpeningSpec>(For)
        .Choice("kind", "What they are: arched refuges, openings for cables, or weep holes.", o => o.Kind, (o, v) => o with { Kind = v },
            [("refuge", OpeningKind.Refuge), ("cable", OpeningKind.Cable), ("weep", OpeningKind.Weep)])
        .Choice("on", "Wall that they are in.", o => o.IsBack, (o, v) => o with { IsBack = v }, [("front", false), ("back", true)])
        .Lengths("at", NumberRange.Anywhere, "Distances along the track of their middles; left out, they are spread by their pitch.", o => o.At, (o, v) =>
            o with { At = v })
        .Example("[330, 420]")
        .Length("pitch", NumberRange.From(1, 2000), "From one to the next, about; between piers one at least to a panel.", o => o.Pitch, (o, v) =>
            o with { Pitch = v })
        .Length("width", Sizes, "Width, drawn to whole quarters of bricks.", o => o.Width, (o, v) => o with { Width = v })
        .Length("height", Sizes, "Height from sill to crown.", o => o.Height, (o, v) => o with { Height = v })
        .Length("sill", NumberRange.From(0.2, 300), "Height of the lower edge over the baseboard; it lies on a course.", o => o.Sill, (o, v) =>
            o with { Sill = v })
        .Length("depth", NumberRange.From(0.1, 20), "How far a recess goes in behind the bricks.", o => o.Depth, (o, v) => o with { Depth = v })
        .Flag("through", "Whether they go right through the wall into the hollow behind.", o => o.IsThrough, (o, v) => o with { IsThrough = v })
        .Choice("head", "Upper edge.", o => o.Head, (o, v) => o with { Head = v },
            [("flat", OpeningHead.Flat), ("segmental", OpeningHead.Segmental), ("semicircular", OpeningHead.Semicircular)]);

    private static NumberRange Sizes => NumberRange.From(0.2, 200);

    /// <summary>The name of a kind in the project file.</summary>
    public static string Name(OpeningKind kind) => kind switch { OpeningKind.Cable => "cable", OpeningKind.Weep => "weep", _ => "refuge" };

    /// <summary>The defaults for a scale.</summary>
    public static OpeningSpec For(ModelScale scale) => new() { Ratio = scale.ToFullSize(1) };
}

/// <summary>What an opening in a wall is.</summary>
public enum OpeningKind
{
    /// <summary>An arched recess to step into, or the mouth of a cellar.</summary>
    Refuge,

    /// <summary>A small oblong for cables.</summary>
    Cable,

    /// <summary>A hole that lets water out.</summary>
    Weep,
}

/// <summary>Upper edge of an opening.</summary>
public enum OpeningHead
{
    /// <summary>Level.</summary>
    Flat,

    /// <summary>A low arch.</summary>
    Segmental,

    /// <summary>A half circle.</summary>
    Semicircular,
}
