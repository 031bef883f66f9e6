using PlatformForge.Exports.Drawings.Ink;

namespace PlatformForge.Exports.Drawings.Painting;

/// <summary>The stripes that areas are filled with: the same as those of <see cref="SvgWriter"/>, which come round every 3 mm.</summary>
internal static class Stripes
{
    private const double Pen = 0.35, Dot = 0.8, Tile = 3, Half = Tile / 2;

    /// <summary>How much ink lies at a place of a tile.</summary>
    /// <param name="pattern">Which stripes.</param>
    /// <param name="x">Place in the tile, mm.</param>
    /// <param name="y">Place in the tile, mm.</param>
    /// <param name="scale">Pixels to a mm, for soft rims.</param>
    public static double Ink(Pattern pattern, double x, double y, double scale)
    {
        double Line(double distance) => Math.Clamp((((Pen / 2) - Math.Abs(distance)) * scale) + 0.5, 0, 1);
        double Wrapped(double d) => Math.Abs(d - (Tile * Math.Round(d / Tile)));
        double diagonal = 1 / Math.Sqrt(2);
        return pattern switch
        {
            Pattern.Rising => Line(Wrapped(x + y) * diagonal),
            Pattern.Falling => Line(Wrapped(x - y) * diagonal),
            Pattern.Upright => Line(x - Half),
            Pattern.Level => Line(y - Half),
            Pattern.Crossed => Math.Max(Line(Wrapped(x + y) * diagonal), Line(Wrapped(x - y) * diagonal)),
            Pattern.Dots => Math.Clamp((((Dot / 2) - Far(x, y)) * scale) + 0.5, 0, 1),
            _ => 1,
        };
    }

    private static double Far(double x, double y)
    {
        double near = Math.Sqrt(((x - (Half / 2)) * (x - (Half / 2))) + ((y - (Half / 2)) * (y - (Half / 2)))), other = 3 * Half / 2;
        return Math.Min(near, Math.Sqrt(((x - other) * (x - other)) + ((y - other) * (y - other))));
    }
}
