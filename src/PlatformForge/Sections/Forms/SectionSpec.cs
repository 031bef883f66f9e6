namespace PlatformForge.Sections.Forms;

/// <summary>How a section stands on the bed.</summary>
public enum PrintPose
{
    /// <summary>Deck down where the deck is flat, on its slope where it is a ramp, otherwise upright.</summary>
    Automatic,

    /// <summary>The deck, or the slope of a ramp, on the bed.</summary>
    DeckDown,

    /// <summary>As it stands on the layout.</summary>
    Upright,
}

/// <summary>How a platform is cut into sections, mm.</summary>
public sealed record SectionSpec
{
    public JointSpec Joint { get; init; } = new();

    public PrintPose Pose { get; init; } = PrintPose.Automatic;

    /// <summary>Name of the platform as it is engraved and printed in lists; empty takes the plan's name.</summary>
    public string ShortName { get; init; } = "";

    /// <summary>Longest section wanted, along the chainage; null leaves it to the bed.</summary>
    public double? LongestSection { get; init; }

    /// <summary>Least distance along the chainage from a cut to a socket, hole or rib, over and above what the plan keeps.</summary>
    public double CutClearance { get; init; } = 2;

    /// <summary>Whether number, name and arrow are engraved underneath.</summary>
    public bool Engrave { get; init; } = true;

    /// <summary>Depth of the engraving.</summary>
    public double EngravingDepth { get; init; } = 0.4;

    /// <summary>Cap height of the engraving.</summary>
    public double EngravingHeight { get; init; } = 7;

    /// <summary>Key of the sections in the project file, for findings.</summary>
    public string Key { get; init; } = "sections";
}
