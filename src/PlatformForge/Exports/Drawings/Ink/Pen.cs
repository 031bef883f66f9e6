using PlatformForge.Exports.Looks;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>A line's look.</summary>
/// <param name="Width">Width, mm.</param>
/// <param name="Colour">Colour.</param>
/// <param name="Dashes">Lengths drawn and left out in turn, mm; empty for an unbroken line.</param>
public sealed record Pen(double Width, Rgb Colour, params IReadOnlyList<double> Dashes);

/// <summary>An area's look: a plain colour, or stripes of it over nothing, so that areas differ without colour too.</summary>
/// <param name="Colour">Colour.</param>
/// <param name="Opacity">0 to 1.</param>
/// <param name="Pattern">Plain, or what kind of stripes.</param>
public sealed record Fill(Rgb Colour, double Opacity = 1, Pattern Pattern = Pattern.Plain);

/// <summary>How an area is filled.</summary>
public enum Pattern
{
    Plain,
    Rising,
    Falling,
    Dots,
    Upright,
    Level,
    Crossed,
}
