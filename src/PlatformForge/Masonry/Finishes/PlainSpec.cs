namespace PlatformForge.Masonry.Finishes;

/// <summary>A wall that nothing is laid on, as smooth as it is printed.</summary>
public sealed record PlainSpec() : WallWork(new WallLaying(0, 0, 0, 0, 0, 0))
{
    public override WallFinish Finish => WallFinish.Plain;

    public override IWallPattern On(FlatWall wall) => NoPattern.Only;
}
