namespace PlatformForge.Masonry;

/// <summary>How the bricks of neighbouring courses lie over one another.</summary>
public enum Bond
{
    /// <summary>Courses of headers and of stretchers in turn.</summary>
    English,

    /// <summary>Headers and stretchers in turn within each course.</summary>
    Flemish,

    /// <summary>Stretchers alone, each half over the next: the face of a wall half a brick thick.</summary>
    Stretcher,

    /// <summary>A course of headers to several of stretchers.</summary>
    EnglishGardenWall,
}

/// <summary>Which bricks a wall is built of.</summary>
public enum BrickGauge
{
    /// <summary>215 by 102.5 by 65 mm with joints of 10: four courses to 300 mm (BS EN 771 work size).</summary>
    Metric,

    /// <summary>9 by 4½ by 3 in with their joints: four courses to a foot (from memory, no source).</summary>
    Imperial,
}

/// <summary>What the outer face of a wall shows.</summary>
public enum WallFinish
{
    /// <summary>Smooth.</summary>
    Plain,

    /// <summary>Brickwork in relief.</summary>
    Brick,

    /// <summary>Squared stone in courses.</summary>
    Stone,

    /// <summary>Stones as they come, without courses.</summary>
    Rubble,

    /// <summary>Planks laid level.</summary>
    Planks,

    /// <summary>Planks side by side.</summary>
    UprightPlanks,

    /// <summary>Sleepers on edge, laid level.</summary>
    Sleepers,

    /// <summary>Precast panels between posts.</summary>
    Panels,

    /// <summary>A rebate for bought sheet: brick paper, or embossed plastic.</summary>
    Sheet,
}
