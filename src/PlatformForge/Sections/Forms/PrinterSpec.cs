using PlatformForge.Geometry;

namespace PlatformForge.Sections.Forms;

/// <summary>The printer that the sections have to fit, lengths in mm.</summary>
/// <param name="Bed">Simple ring of the printable area, counter-clockwise, in the bed's own coordinates.</param>
/// <param name="Height">Tallest print.</param>
public sealed record PrinterSpec(IReadOnlyList<Point2> Bed, double Height)
{
    /// <summary>What the user calls it.</summary>
    public string Name { get; init; } = "printer";

    /// <summary>Bore of the nozzle. Two of its widths are the least wall that prints (two lines).</summary>
    public double Nozzle { get; init; } = 0.4;

    /// <summary>Layer height.</summary>
    public double Layer { get; init; } = 0.2;

    /// <summary>Strip along the bed's edge that is kept free.</summary>
    public double Margin { get; init; } = 8;

    /// <summary>Space kept between two sections on one bed.</summary>
    public double Spacing { get; init; } = 4;

    /// <summary>Longest gap between two standing walls that is crossed without support.</summary>
    public double LongestBridge { get; init; } = 20;

    /// <summary>Height of the first layer; null for that of the others.</summary>
    public double? FirstLayer { get; init; }

    /// <summary>Lines round every outline.</summary>
    public int Walls { get; init; } = 3;

    /// <summary>Solid layers under and over all that lies open.</summary>
    public int SolidLayers { get; init; } = 3;

    /// <summary>Share of plastic in the filling between them.</summary>
    public double Infill { get; init; } = 0.2;

    /// <summary>Kind of printer that <see cref="Speeds"/> began as.</summary>
    public PrintPace Pace { get; init; } = PrintPace.Ordinary;

    /// <summary>Speeds and accelerations, on which print times rest.</summary>
    public PrintSpeeds Speeds { get; init; } = new();

    public FilamentSpec Filament { get; init; } = new();

    /// <summary>Length of the strip that proves the printer's size, and what it may measure: beyond that the figure is no measurement of it, mm.</summary>
    public const double StripLength = 100, LeastStrip = 97, MostStrip = 103;

    /// <summary>What a strip of <see cref="StripLength"/> measured along the bed's x and along its y, printed without this correction, mm; null without
    /// one.</summary>
    public Point2? MeasuredStrip { get; init; }

    /// <summary>By how much every piece is written longer along the bed's x and y, so that it comes out true.</summary>
    public Point2 Stretch => MeasuredStrip is { } strip ? new(StripLength / strip.X, StripLength / strip.Y) : new(1, 1);

    /// <summary>Whether pieces are written longer or shorter than they are to come out.</summary>
    public bool IsCorrected => MeasuredStrip is not null;

    /// <summary>The same printer in millimetres as they come out: a printer that prints 100 mm as 99.6 has a bed that is as much smaller than it
    /// says.</summary>
    internal PrinterSpec InTrueSize()
    {
        var by = Stretch;
        double least = Math.Min(by.X, by.Y);
        return IsCorrected ? this with { Bed = [.. Bed.Select(p => new Point2(p.X / by.X, p.Y / by.Y))], Margin = Margin / least, Spacing = Spacing / least }
            : this;
    }

    /// <summary>Key of the printer in the project file, for findings.</summary>
    public string Key { get; init; } = "printer";

    /// <summary>Height of the first layer.</summary>
    public double FirstLayerHeight => FirstLayer ?? Layer;

    /// <summary>
    /// Distance between the middles of neighbouring lines: a line an eighth wider than the nozzle, its sides half round (width less height times
    /// 1 - π/4, by geometry; the eighth is common practice, no source).
    /// </summary>
    public double LineSpacing => (1.125 * Nozzle) - (Layer * (1 - (Math.PI / 4)));

    /// <summary>Least wall that prints: two lines of the nozzle.</summary>
    public double LeastWall => 2 * Nozzle;

    /// <summary>A printer with an oblong bed whose corner is the origin.</summary>
    public static PrinterSpec Oblong(double width, double depth, double height) =>
        new([new(0, 0), new(width, 0), new(width, depth), new(0, depth)], height);
}
