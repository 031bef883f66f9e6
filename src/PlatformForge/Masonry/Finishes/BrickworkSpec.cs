namespace PlatformForge.Masonry.Finishes;

/// <summary>Brickwork as it is laid on a wall: all figures in mm of the model.</summary>
/// <param name="Bond">How courses lie over one another.</param>
/// <param name="StretcherCourses">Courses of stretchers to one of headers in English garden wall bond.</param>
/// <param name="Module">Bricks with their joints; none is smaller, they are drawn out so that whole ones fill a wall.</param>
/// <param name="Perpends">Whether upright joints are laid; otherwise bed joints alone.</param>
/// <param name="Laying">What all finishes have in common.</param>
public sealed record BrickworkSpec(Bond Bond, int StretcherCourses, BrickModule Module, bool Perpends, WallLaying Laying) : WallWork(Laying)
{
    public override WallFinish Finish => WallFinish.Brick;

    /// <summary>Height of a course with its bed as it is laid, mm: drawn out, so that whole ones fill the wall.</summary>
    public double Course => Coursing.Even(Module.Course, Laying.Room);

    public override IWallPattern On(FlatWall wall) => new BrickPattern(this, wall);
}
