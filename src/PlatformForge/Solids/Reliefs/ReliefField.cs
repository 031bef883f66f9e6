using PlatformForge.Geometry;

namespace PlatformForge.Solids.Reliefs;

/// <summary>
/// A polygon of a wall panel, unrolled, that stands out of the wall or is sunk into it; its sides are square to the wall. It may turn back on itself, but not
/// cross or touch itself.
/// </summary>
/// <param name="Outline">Its corners, counter-clockwise seen from outside: mm along the panel from its left end, and mm of height over the baseboard.</param>
/// <param name="Out">How far it stands out, mm; sunk when negative; never nought.</param>
public sealed record ReliefField(IReadOnlyList<Point2> Outline, double Out)
{
    /// <summary>A rectangle.</summary>
    /// <param name="from">Start along the panel, mm, from the left seen from outside.</param>
    /// <param name="to">End along the panel, mm.</param>
    /// <param name="low">Lower side, height over the baseboard, mm.</param>
    /// <param name="high">Upper side, height over the baseboard, mm.</param>
    /// <param name="depth">How far it stands out, mm; sunk when negative.</param>
    public ReliefField(double from, double to, double low, double high, double depth)
        : this([new(from, low), new(to, low), new(to, high), new(from, high)], depth)
    {
    }

    /// <summary>Name of the wall face behind the wall in which it comes out, so that it has no floor: a flat one, in one piece, whose relief is told last
    /// (<see cref="IWallRelief.IsBehind"/>). Null where it has a floor.</summary>
    public string? Behind { get; init; }

    /// <summary>What it shows, as meshes number it; null where that is what its wall's fields do.</summary>
    public byte? Paint { get; init; }

    /// <summary>Its area on the wall, mm²; below nought for a clockwise outline.</summary>
    public double Area
    {
        get
        {
            double twice = 0;
            for (int i = 0; i < Outline.Count; i++)
            {
                twice += Point2.Cross(Outline[i], Outline[(i + 1) % Outline.Count]);
            }

            return twice / 2;
        }
    }
}
