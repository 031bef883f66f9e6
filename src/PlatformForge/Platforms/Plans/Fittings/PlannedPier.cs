namespace PlatformForge.Platforms.Plans.Fittings;

/// <summary>A pier of a wall, in the spine's chainage, mm.</summary>
/// <param name="Number">From 1 along its wall.</param>
/// <param name="IsFar">Whether it stands in the far wall.</param>
/// <param name="From">Chainage at which it begins: of the ground that its facing stands on.</param>
/// <param name="To">Chainage at which it ends.</param>
/// <param name="Cut">The cut that lies in the angle beside it; null for none.</param>
public sealed record PlannedPier(int Number, bool IsFar, double From, double To, double? Cut = null)
{
    /// <summary>Chainage of its middle.</summary>
    public double Middle => (From + To) / 2;
}
