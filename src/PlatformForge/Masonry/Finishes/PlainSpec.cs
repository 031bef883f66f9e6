namespace PlatformForge.Masonry.Finishes;

/// <summary>A wall that nothing is laid on, as smooth as it is printed; openings are cut into it where they are asked for.</summary>
/// <param name="Laying">What all finishes have in common; a smooth wall has no joints.</param>
public sealed record PlainSpec(WallLaying Laying) : WallWork(Laying)
{
    /// <summary>A wall without anything.</summary>
    public PlainSpec()
        : this(new WallLaying(0, 0, 0, 0, 0, 0))
    {
    }

    public override WallFinish Finish => WallFinish.Plain;

    public override IWallPattern On(FlatWall wall) => new SmoothPattern(wall, Laying.LeastPiece);
}
