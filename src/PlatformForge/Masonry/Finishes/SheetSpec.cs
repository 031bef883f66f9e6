namespace PlatformForge.Masonry.Finishes;

/// <summary>A rebate for bought sheet: the ground alone, as deep as joints are, and nothing stands out of it.</summary>
/// <param name="Laying">What all finishes have in common.</param>
public sealed record SheetSpec(WallLaying Laying) : WallWork(Laying)
{
    public override WallFinish Finish => WallFinish.Sheet;

    public override IWallPattern On(FlatWall wall) => new SmoothPattern(wall with { Openings = [] }, Laying.LeastPiece);
}
