namespace PlatformForge.Platforms.Plans.Fittings;

/// <summary>A downpipe before a wall, in the spine's chainage, mm.</summary>
/// <param name="Number">From 1 along its wall.</param>
/// <param name="IsFar">Whether it stands before the far wall.</param>
/// <param name="Middle">Chainage of its middle.</param>
/// <param name="From">Chainage at which what belongs to it begins.</param>
/// <param name="To">Chainage at which it ends.</param>
/// <param name="Under">Height of the underside that it ends under, mm over the baseboard.</param>
/// <param name="Cut">The cut that lies beside it; null for none.</param>
public sealed record PlannedDownpipe(int Number, bool IsFar, double Middle, double From, double To, double Under, double? Cut = null);
