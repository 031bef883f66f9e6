namespace PlatformForge.Solids.Bodies;

/// <summary>
/// The blocks of a stretch of platform: first all that is put in place, then all that is taken out. What a section adds
/// of its own (end walls, bosses) belongs between the two.
/// </summary>
public sealed record BodyBlocks(IReadOnlyList<ColumnBlock> Added, IReadOnlyList<ColumnBlock> Removed)
{
    /// <summary>Area of what is engraved in the deck, mm²: it looks up, and is no part of what lies on the bed.</summary>
    public double Engraved { get; init; }

    /// <summary>All in the kernel's order.</summary>
    public IReadOnlyList<ColumnBlock> All => [.. Added, .. Removed];
}
