namespace PlatformForge.Platforms.Plans;

/// <summary>What stays off a place.</summary>
[Flags]
public enum KeptOff
{
    None = 0,

    /// <summary>Ribs across the platform.</summary>
    RibsAcross = 1,

    /// <summary>Ribs along the platform.</summary>
    RibsAlong = 2,

    /// <summary>Cuts between sections.</summary>
    Cuts = 4,

    /// <summary>What is engraved underneath.</summary>
    Lettering = 8,

    /// <summary>Other features.</summary>
    Features = 16,

    /// <summary>What joins the sections: a cut keeps as far as its joint is deep.</summary>
    Joints = 32,

    /// <summary>Ribs of both kinds.</summary>
    Ribs = RibsAcross | RibsAlong,
}

/// <summary>A place that something stays off: a feature with what surrounds it, in plan, mm.</summary>
/// <param name="Name">What it is, for messages.</param>
/// <param name="Key">Its key in the project file.</param>
/// <param name="From">First chainage.</param>
/// <param name="To">Last chainage.</param>
/// <param name="Near">Nearest reach.</param>
/// <param name="Far">Farthest reach.</param>
public sealed record Keepout(string Name, string Key, double From, double To, double Near, double Far)
{
    /// <summary>Distance in mm that a cut keeps from furniture and end walls: room for the wall and the dowels that a joint brings.</summary>
    public const double UsualCutClear = 3;

    /// <summary>What stays off it.</summary>
    public KeptOff By { get; init; } = KeptOff.Ribs | KeptOff.Cuts | KeptOff.Lettering | KeptOff.Features;

    /// <summary>It has a floor of its own below the deck: a rib that finds no other place may stand under that.</summary>
    public bool IsFloored { get; init; }

    /// <summary>How far a cut keeps from it, mm.</summary>
    public double CutClear { get; init; } = UsualCutClear;

    /// <summary>How much of it, mm, a clearance that is asked of cuts may take in: a boss that runs into a section's end wall.</summary>
    public double CutInto { get; init; }

    /// <summary>Key of its chainage; null when it is set by others of its row.</summary>
    public string? Place { get; init; }

    /// <summary>Whether it may run into others of which the same is said, such as one channel for wires into another.</summary>
    public bool MayMeet { get; init; }

    /// <summary>Chainage of its middle.</summary>
    public double Middle => (From + To) / 2;

    /// <summary>Whether something stays off it.</summary>
    public bool Holds(KeptOff who) => (By & who) != KeptOff.None;

    /// <summary>Whether two features stand in one another.</summary>
    public bool Overlaps(Keepout other) => From < other.To && other.From < To && Near < other.Far && other.Near < Far;
}
