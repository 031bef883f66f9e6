namespace PlatformForge.Track;

/// <summary>A sudden change of direction, as sectional track has at a badly made joint.</summary>
/// <param name="Chainage">Where, mm.</param>
/// <param name="Turn">By how much, radians, left positive.</param>
public sealed record Kink(double Chainage, double Turn);
