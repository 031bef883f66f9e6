using PlatformForge.Geometry;

namespace PlatformForge.Exports.Paper;

/// <summary>How a plan is divided over sheets.</summary>
public enum PaperLayout
{
    /// <summary>One sheet after another along the track, each turned to it: fewest sheets.</summary>
    Track,

    /// <summary>Rows and columns of one large page, all turned alike: sheets are joined edge to edge.</summary>
    Page,
}

/// <summary>Which way a sheet lies.</summary>
public enum PaperTurn
{
    /// <summary>Whichever takes fewer sheets.</summary>
    Automatic,
    Upright,
    Lying,
}

/// <summary>The paper that full-size sheets are printed on. Lengths in mm.</summary>
public sealed record PaperSpec
{
    /// <summary>What a printed bar of <see cref="BarLength"/> may measure: beyond it the figure is no measurement of it, but a slip or a page fitted to the
    /// paper.</summary>
    public const double LeastBar = 90, MostBar = 110;

    /// <summary>Shortest side on which a plan has room beside its bars, mm, where no margin is kept.</summary>
    public const double LeastSide = SheetRoom.LeastWindow + SheetRoom.FootStrip;

    /// <summary>Length of the bars that are measured.</summary>
    public const double BarLength = 100;

    /// <summary>Name of the size, or empty for one that is stated.</summary>
    public string SizeName { get; init; } = "A4";

    /// <summary>Shorter and longer side of the paper.</summary>
    public Point2 Size { get; init; } = new(210, 297);

    public PaperLayout Layout { get; init; } = PaperLayout.Track;

    public PaperTurn Turn { get; init; } = PaperTurn.Automatic;

    /// <summary>Strip along the paper's edges that a printer leaves white. Default 8: few need more than 6 (common practice, no source).</summary>
    public double Margin { get; init; } = 8;

    /// <summary>Width that two neighbouring sheets both show.</summary>
    public double Overlap { get; init; } = 12;

    /// <summary>What the bars of 100 mm measured across the sheet and up it on an earlier print made without a correction; null without one.</summary>
    public Point2? MeasuredBars { get; init; }

    /// <summary>By how much everything is drawn larger, across and up, so that it is printed true.</summary>
    public Point2 Stretch => MeasuredBars is { } bars ? new(BarLength / bars.X, BarLength / bars.Y) : new(1, 1);

    /// <summary>The size in words: "A4", or "300 x 900 mm".</summary>
    public string SizeInWords => SizeName.Length > 0 ? SizeName : FormattableString.Invariant($"{Size.X:0.###} x {Size.Y:0.###} mm");

    /// <summary>Key of the paper in the project file, for findings.</summary>
    public string Key { get; init; } = "paper";
}

/// <summary>Sizes of paper by name: ISO 216, and the North American ones of ANSI/ASME Y14.1 and common office use.</summary>
public static class PaperSizes
{
    /// <summary>Name, shorter and longer side, mm.</summary>
    public static IReadOnlyList<(string Name, Point2 Size)> All { get; } =
    [
        ("A4", new(210, 297)), ("A3", new(297, 420)), ("Letter", new(215.9, 279.4)), ("Legal", new(215.9, 355.6)), ("Tabloid", new(279.4, 431.8)),
        ("A5", new(148, 210)), ("A2", new(420, 594)), ("A1", new(594, 841)), ("A0", new(841, 1189)),
    ];

    public static Point2? Of(string name) => All.Where(s => string.Equals(
        s.Name,
        name,
        StringComparison.OrdinalIgnoreCase)).Select(s => (Point2?)s.Size).FirstOrDefault();
}
