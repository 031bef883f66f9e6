namespace PlatformForge.Solids.Reliefs;

/// <summary>A flat wall that has nothing of its own, in which fields of a wall before it come out.</summary>
internal sealed class WallBehind : IWallRelief
{
    public bool IsBehind => true;

    public IEnumerable<ReliefField> Fields(WallPanel panel) => [];
}
