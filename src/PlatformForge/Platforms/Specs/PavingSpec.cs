using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Specs;

/// <summary>What a deck is paved with.</summary>
public enum PavingKind
{
    /// <summary>Flags of stone or concrete.</summary>
    Flags,

    /// <summary>Setts of stone.</summary>
    Setts,

    /// <summary>Planks across the platform.</summary>
    Planks,

    /// <summary>Paving bricks.</summary>
    Bricks,
}

/// <summary>How the courses of a paving run.</summary>
public enum PavingCourses
{
    /// <summary>Square to the edge, from coping to back, with joints broken from course to course.</summary>
    Across,

    /// <summary>Along the edge, stretcher-wise.</summary>
    Along,
}

/// <summary>A paving engraved in the deck. Lengths in mm of the model; the defaults are for 4 mm scale.</summary>
public sealed record PavingSpec
{
    private const double Inch = 25.4;

    private readonly PavingCourses? courses;

    // Depth of joints, mm, and the least that shows in print: common practice, no source.
    private const double UsualDepth = 0.3, LeastDepth = 0.1;

    private readonly double? length, width, depth;

    public PavingKind Kind { get; init; } = PavingKind.Flags;

    /// <summary>How courses run; unless stated along the edge for bricks, across for others.</summary>
    public PavingCourses Courses
    {
        get => courses ?? (Kind == PavingKind.Bricks ? PavingCourses.Along : PavingCourses.Across);
        init => courses = value;
    }

    /// <summary>Of a piece, along its course, with its joint. Default 11.8 for flags (900 mm, a published size), 3.3 for setts (250 mm), 2.95 for bricks
    /// (225 mm).</summary>
    public double Length
    {
        get => length ?? Math.Max(LeastPiece, Scale.ToModel(FullSizeOf(Kind).Length));
        init => length = value;
    }

    /// <summary>Of a piece, across its course, with its joint. Default 7.9 for flags (600 mm, a published size), 1.97 for setts (150 mm), 2.31 for planks (7
    /// in and a gap), 1.48 for bricks
    /// (112.5 mm).</summary>
    public double Width
    {
        get => width ?? Math.Max(LeastPiece, Scale.ToModel(FullSizeOf(Kind).Width));
        init => width = value;
    }

    /// <summary>Width of the joints. Default 0.4, one printed line (common practice, no source).</summary>
    public double Joint { get; init; } = 0.4;

    /// <summary>Depth of the joints. Default 0.3 (common practice, no source).</summary>
    public double Depth
    {
        get => depth ?? UnaskedDepth;
        init => depth = value;
    }

    /// <summary>Depth of joints where it is not stated, mm.</summary>
    public double UnaskedDepth { get; init; } = UsualDepth;

    /// <summary>Whether that depth is stated.</summary>
    public bool StatesDepth => depth is not null;

    /// <summary>No piece is smaller unasked, mm.</summary>
    public double LeastPiece { get; init; }

    /// <summary>Pieces are drawn in to whole ones: of what is asked so much is left at least.</summary>
    public const double Drawn = 0.75;

    /// <summary>The paving for a nozzle: unasked two lines of a piece are left beside its joints, and two lines of the deck under them as long as joints so
    /// shallow show.</summary>
    /// <param name="nozzle">Width of a line, mm.</param>
    /// <param name="deck">Thickness of the deck, mm.</param>
    public PavingSpec Printed(double nozzle, double deck)
    {
        double room = Math.Floor(((deck - PrintedLines.Two(nozzle)) * 100) + Tolerances.Rounding) / 100;
        return this with
        {
            LeastPiece = Math.Ceiling((PrintedLines.Two(nozzle, Joint) / Drawn * 100) - Tolerances.Rounding) / 100,
            UnaskedDepth = room >= LeastDepth ? Math.Min(UsualDepth, room) : UsualDepth,
        };
    }

    /// <summary>The scale that its sizes are drawn at where they are not stated.</summary>
    public ModelScale Scale { get; init; } = new(76.2);

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<PavingSpec> Keys { get; } = new SpecKeys<PavingSpec>(For)
        .Choice("kind", "What the deck is paved with.", p => p.Kind, (p, v) => p with { Kind = v }, Kinds)
        .Choice("courses", "How courses run: across, square to the edge, or along it, stretcher-wise.", p => p.Courses, (p, v) => p with { Courses = v }, Ways)
        .Length("length", Sizes, "Length of a piece along its course, with its joint.", p => p.Length, (p, v) => p with { Length = v })
        .Length("width", Sizes, "Width of a piece across its course, with its joint.", p => p.Width, (p, v) => p with { Width = v })
        .Length("joint", NumberRange.From(0.05, 5), "Width of the joints.", p => p.Joint, (p, v) => p with { Joint = v })
        .Length("depth", NumberRange.From(0.05, 5), "Depth of the joints, which are engraved.", p => p.Depth, (p, v) => p with { Depth = v });

    private static NumberRange Sizes => NumberRange.From(0.2, 500);

    private static (string Name, PavingKind Value)[] Kinds =>
        [("flags", PavingKind.Flags), ("setts", PavingKind.Setts), ("planks", PavingKind.Planks), ("bricks", PavingKind.Bricks)];

    private static (string Name, PavingCourses Value)[] Ways => [("across", PavingCourses.Across), ("along", PavingCourses.Along)];

    public static PavingSpec For(ModelScale scale) => new() { Scale = scale };

    /// <summary>The name of a kind in the project file.</summary>
    public static string Name(PavingKind kind) => Kinds.First(k => k.Value == kind).Name;

    // Flags 600 by 900: a designated size of BS 7263-1 (from memory, within the published range); bricks: coordinating sizes (BS EN 771); setts and planks:
    // common practice, no
    // source. Planks go right across.
    private static (double Length, double Width) FullSizeOf(PavingKind kind) => kind switch
    {
        PavingKind.Flags => (900, 600),
        PavingKind.Setts => (250, 150),
        PavingKind.Planks => (12 * 12 * Inch, 176),
        _ => (225, 112.5),
    };
}
