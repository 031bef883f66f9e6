using PlatformForge.Geometry;

namespace PlatformForge.Sections;

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

    /// <summary>Steady flow of plastic, mm³/s, on which print times rest.</summary>
    public double Flow { get; init; } = 8;

    public FilamentSpec Filament { get; init; } = new();

    /// <summary>Key of the printer in the project file, for findings.</summary>
    public string Key { get; init; } = "printer";

    /// <summary>Least wall that prints: two lines of the nozzle.</summary>
    public double LeastWall => 2 * Nozzle;

    /// <summary>A printer with an oblong bed whose corner is the origin.</summary>
    public static PrinterSpec Oblong(double width, double depth, double height) =>
        new([new(0, 0), new(width, 0), new(width, depth), new(0, depth)], height);
}
