namespace PlatformForge.Masonry.Finishes;

/// <summary>Coursed stone: squared stones of random lengths in level courses that differ in height. All figures in mm of the model.</summary>
/// <param name="Course">Mean height of a course with its bed; courses have three quarters of it, all of it or a quarter more.</param>
/// <param name="Length">Mean length of a stone with its joint.</param>
/// <param name="Seed">Of the stones' lengths and the courses' heights: the same seed, the same wall.</param>
/// <param name="Laying">What all finishes have in common.</param>
public sealed record StoneworkSpec(double Course, double Length, int Seed, WallLaying Laying) : WallWork(Laying)
{
    /// <summary>Height of the lowest courses as a share of the mean one.</summary>
    public const double LeastCourse = 0.75;

    /// <summary>Length of the shortest and of the longest stone as shares of the mean one.</summary>
    public const double LeastStone = 0.6, LongestStone = 1.6;

    /// <summary>Least distance of a perpend from those of the courses above and below, as a share of a stone's mean length.</summary>
    public const double Lap = 0.2;

    public override WallFinish Finish => WallFinish.Stone;

    public override IWallPattern On(FlatWall wall) => new StonePattern(this, wall);
}

/// <summary>Random rubble: stones as they come, each a cell round a place of its own. All figures in mm of the model.</summary>
/// <param name="Size">Mean height of a stone with its joint; they are a third longer than they are high.</param>
/// <param name="Seed">Of the stones' places: the same seed, the same wall.</param>
/// <param name="Laying">What all finishes have in common.</param>
public sealed record RubbleSpec(double Size, int Seed, WallLaying Laying) : WallWork(Laying)
{
    /// <summary>How much longer than high stones are.</summary>
    public const double Aspect = 1.35;

    /// <summary>Width of the narrowest stone as a share of its size, wherever it is measured narrowest: less is a pinning, which a model does not show (common
    /// practice, no source).</summary>
    public const double Narrowest = 0.3;

    public override WallFinish Finish => WallFinish.Rubble;

    public override IWallPattern On(FlatWall wall) => new RubblePattern(this, wall);
}

/// <summary>Timber laid level: planks, or sleepers on edge. All figures in mm of the model.</summary>
/// <param name="Finish">Planks or sleepers.</param>
/// <param name="Width">Height of one with its gap.</param>
/// <param name="Length">Length of one with its gap; what whole ones and halves do not fill is cut.</param>
/// <param name="Shortest">Length of the shortest cut one with its gap.</param>
/// <param name="Laying">What all finishes have in common.</param>
public sealed record LevelTimberSpec(WallFinish Finish, double Width, double Length, double Shortest, WallLaying Laying) : WallWork(Laying)
{
    /// <summary>Share by which they may be drawn out so that whole ones and halves fill a wall, and none is cut: a board of 12 ft by 4 in, which nobody
    /// sees.</summary>
    public const double MostDrawn = 0.03;

    public override WallFinish Finish { get; } = Finish;

    public override IWallPattern On(FlatWall wall) => new LevelTimberPattern(this, wall);
}

/// <summary>Planks that stand upright side by side. All figures in mm of the model.</summary>
/// <param name="Width">Width of one with its gap; they are drawn out so that whole ones fill a wall.</param>
/// <param name="Laying">What all finishes have in common.</param>
public sealed record UprightPlankSpec(double Width, WallLaying Laying) : WallWork(Laying)
{
    public override WallFinish Finish => WallFinish.UprightPlanks;

    public override IWallPattern On(FlatWall wall) => new UprightPlankPattern(this, wall);
}

/// <summary>Precast panels laid between posts, which stand before them. All figures in mm of the model.</summary>
/// <param name="Bay">From post to post; drawn out or in so that whole bays fill a wall.</param>
/// <param name="Post">Width of a post.</param>
/// <param name="Panel">Height of a panel with its joint.</param>
/// <param name="Laying">What all finishes have in common.</param>
public sealed record PanelSpec(double Bay, double Post, double Panel, WallLaying Laying) : WallWork(Laying)
{
    /// <summary>How far panels stand out, as a share of what posts do.</summary>
    public const double Back = 0.4;

    public override WallFinish Finish => WallFinish.Panels;

    public override IWallPattern On(FlatWall wall) => new PanelPattern(this, wall);
}
