namespace PlatformForge.Platforms.Plans;

/// <summary>The narrowest place of an island.</summary>
/// <param name="Width">Shortest distance there from one coping edge to the other, mm.</param>
/// <param name="First">Chainage of it on the first face's track, mm.</param>
/// <param name="Second">Chainage of it on the second face's track, mm.</param>
public sealed record Waist(double Width, double First, double Second);
