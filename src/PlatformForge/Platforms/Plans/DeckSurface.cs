using PlatformForge.Geometry;

namespace PlatformForge.Platforms.Plans;

/// <summary>
/// The walking surface, coping included: one plane from each break to the next, and neighbours meet in the straight line across the platform at
/// the break between them. A section whose ends are breaks has one plane on top, so that all of it lies on the bed.
/// </summary>
/// <param name="Breaks">Chainages in mm, rising, from the platform's start to its end; ramp heads are among them.</param>
/// <param name="Planes">Height over the baseboard in the layout frame, one plane from a break to the next.</param>
public sealed record DeckSurface(double[] Breaks, HeightPlane[] Planes)
{
    /// <summary>A surface at nil, for plans that are still being put together.</summary>
    public static DeckSurface None { get; } = new([0, 1], [new(0)]);

    /// <summary>The plane at a chainage in mm; at a break the later one, beyond an end that of the end.</summary>
    public HeightPlane At(double chainage)
    {
        int found = Array.BinarySearch(Breaks, chainage);
        return Planes[Math.Clamp(found >= 0 ? found : ~found - 1, 0, Planes.Length - 1)];
    }
}
