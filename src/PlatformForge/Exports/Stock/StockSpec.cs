using PlatformForge.Geometry;

namespace PlatformForge.Exports.Stock;

/// <summary>The sheet material that a platform is cut from by those who build in card, plastic or ply. Lengths in mm.</summary>
public sealed record StockSpec
{
    /// <summary>
    /// Thickness of what deck, ribs and end walls are cut from. Default 2: greyboard or plastic sheet of that size (common practice, no source).
    /// </summary>
    public double Thickness { get; init; } = 2;

    /// <summary>Thickness of the strips that walls are bent from. Default 1 (common practice, no source).</summary>
    public double WallThickness { get; init; } = 1;

    /// <summary>Width and height of a sheet. Default 297 by 210, the A4 of ISO 216, lying.</summary>
    public Point2 Size { get; init; } = new(297, 210);

    /// <summary>Strip along a sheet's edges that is left.</summary>
    public double Margin { get; init; } = 5;

    /// <summary>Between two parts.</summary>
    public double Gap { get; init; } = 3;

    /// <summary>Width of a relief slot on the inner face of a strip that is bent; the blade or the saw makes it.</summary>
    public double Slot { get; init; } = 0.8;

    /// <summary>
    /// Between two relief slots a strip stays flat: the wall's true line rises over that flat by this versine at most. Default 0.2, which a coat of paint and
    /// a rub with a file hide (common practice, no source).
    /// </summary>
    public double Versine { get; init; } = 0.2;

    /// <summary>A halving slot is wider than the material by this.</summary>
    public double Fit { get; init; } = 0.1;

    /// <summary>Key of the material in the project file, for findings.</summary>
    public string Key { get; init; } = "sheet";
}
