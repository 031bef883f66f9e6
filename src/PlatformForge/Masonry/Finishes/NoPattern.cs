namespace PlatformForge.Masonry.Finishes;

/// <summary>Nothing: the wall alone.</summary>
internal sealed class NoPattern : IWallPattern
{
    public static NoPattern Only { get; } = new();

    public double GreatestDraw => 0;

    public IEnumerable<WallRegion> Regions() => [];
}
