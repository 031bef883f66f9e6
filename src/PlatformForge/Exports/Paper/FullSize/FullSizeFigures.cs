using PlatformForge.Geometry;

namespace PlatformForge.Exports.Paper.FullSize;

/// <summary>What a line on a full-size sheet is. In this order they are drawn.</summary>
internal enum FullSizeLine
{
    Coping,
    SleeperEnd,
    OtherRail,
    Rail,
    Middle,
    Tick,
    Swept,
    PavingJoint,
    SlabJoint,

    /// <summary>Joint of coping bricks, or line beside a tooled margin.</summary>
    CopingLine,
    CopingBack,
    WhiteLine,
    RampHead,
    PostRow,
    Below,
    Fitting,
    WallFoot,
    BackEdge,
    PlatformEnd,
    CopingEdge,
    ElementJoint,
    Arrow,
    Cut,
    BaseboardJoint,
}

/// <summary>A line, or the outline of an area, where it lies on the layout.</summary>
internal sealed record FigureLine(FullSizeLine Kind, Point2[] Points, bool IsArea = false);

/// <summary>A place to drill, or the middle of a recess.</summary>
/// <param name="At">Where.</param>
/// <param name="Diameter">Of the hole, mm; 0 for a recess, whose outline is a line.</param>
internal sealed record FigureMark(Point2 At, double Diameter);

/// <summary>How large words are.</summary>
internal enum FigureType
{
    Small,
    Plain,
    Strong,
    Large,
}

/// <summary>Words that belong to a place.</summary>
/// <param name="Text">The words.</param>
/// <param name="About">What they speak of.</param>
/// <param name="Along">Direction in which they are written, layout.</param>
/// <param name="Outward">Unit direction from there towards where there is room; nil writes them on the place itself.</param>
/// <param name="Type">How large.</param>
internal sealed record FigureWords(string Text, Point2 About, Point2 Along, Point2 Outward, FigureType Type)
{
    /// <summary>Distances from the place at which they may stand, outward, mm; the first free one is taken.</summary>
    public IReadOnlyList<double> Off { get; init; } = [0];

    /// <summary>Whether a stroke leads from the place to the words.</summary>
    public bool IsLed { get; init; }
}

/// <summary>
/// Everything that full-size sheets of a platform show, in the layout frame and in mm, without a word of how a platform is planned: the one thing that
/// sheets are made of.
/// </summary>
internal sealed record FullSizeFigures
{
    /// <summary>Name of the platform.</summary>
    public required string Name { get; init; }

    public required IReadOnlyList<FigureLine> Lines { get; init; }

    public required IReadOnlyList<FigureMark> Marks { get; init; }

    public required IReadOnlyList<FigureWords> Words { get; init; }

    /// <summary>What the map of the sheets shows under its lines: the track between its sleepers' ends, and the platform.</summary>
    public required (Point2[] TrackBed, Point2[] Platform) Ground { get; init; }

    /// <summary>Name of the track that the sheets follow.</summary>
    public required string Track { get; init; }

    /// <summary>Chainages that the sheets have to show, mm.</summary>
    public required (double From, double To) Range { get; init; }

    /// <summary>Place on the layout of a chainage and an offset, mm; left of the track positive.</summary>
    public required Func<double, double, Point2> PlaceOf { get; init; }

    /// <summary>Least and greatest offset that belong on the sheets at a chainage, mm.</summary>
    public required Func<double, (double Least, double Greatest)> Across { get; init; }
}
