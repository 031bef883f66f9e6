using PlatformForge.Masonry;

namespace PlatformForge.Platforms.Plans.Fittings;

/// <summary>An opening of a wall, in the spine's chainage, mm.</summary>
/// <param name="Spec">What was asked for.</param>
/// <param name="IsFar">Whether it is in the far wall.</param>
/// <param name="Chainage">Chainage of its middle.</param>
public sealed record PlannedOpening(OpeningSpec Spec, bool IsFar, double Chainage);
