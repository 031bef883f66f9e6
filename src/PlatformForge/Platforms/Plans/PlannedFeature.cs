using PlatformForge.Geometry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Plans;

/// <summary>
/// What something that stands on a platform, or is let into it, comes to: figures only. Rooms after this one know nothing else of it: solids are made from
/// <see cref="Prisms"/>, ribs, cuts and lettering keep off <see cref="Keepouts"/>, drawings show <see cref="Marks"/>, rules hold <see cref="Stands"/> and
/// <see cref="Openings"/>, tables and reports list <see cref="Parts"/>, <see cref="Made"/> and <see cref="Tables"/>, pictures show <see cref="Shown"/>.
/// </summary>
/// <param name="Name">What it is, in words.</param>
/// <param name="Key">Its key in the project file, in the words of the rooms.</param>
public sealed record PlannedFeature(string Name, string Key)
{
    /// <summary>Places that something stays off.</summary>
    public IReadOnlyList<Keepout> Keepouts { get; init; } = [];

    /// <summary>What is added to the body and taken out of it.</summary>
    public IReadOnlyList<Prism> Prisms { get; init; } = [];

    /// <summary>What is open in the walking surface.</summary>
    public IReadOnlyList<Opening> Openings { get; init; } = [];

    /// <summary>What a plan shows of it.</summary>
    public IReadOnlyList<PlanMark> Marks { get; init; } = [];

    /// <summary>What stands there: held against vehicles.</summary>
    public IReadOnlyList<Standing> Stands { get; init; } = [];

    /// <summary>What pictures show of it: never made from.</summary>
    public IReadOnlyList<ShownBody> Shown { get; init; } = [];

    /// <summary>What is bought or cut for it.</summary>
    public IReadOnlyList<PartLine> Parts { get; init; } = [];

    /// <summary>Wires of it, from the deck's top down to the baseboard.</summary>
    public IReadOnlyList<WireRun> Wires { get; init; } = [];

    /// <summary>Where the baseboard is drilled for it.</summary>
    public IReadOnlyList<BoardHole> BoardHoles { get; init; } = [];

    /// <summary>What was asked and what was found, for reports.</summary>
    public IReadOnlyList<MadeLine> Made { get; init; } = [];

    /// <summary>Places worth setting out on the layout.</summary>
    public IReadOnlyList<SetOutPlace> SetOuts { get; init; } = [];

    /// <summary>Tables of its own.</summary>
    public IReadOnlyList<FeatureTable> Tables { get; init; } = [];

    /// <summary>Faults and remarks.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];
}

/// <summary>A place in the plan coordinates of the face a feature stands at, mm.</summary>
/// <param name="Chainage">Along the track.</param>
/// <param name="Reach">From the track's middle towards the platform.</param>
public readonly record struct PlanPlace(double Chainage, double Reach);

/// <summary>Something open in the walking surface: a round hole, or an oblong recess whose sides lie along and square to the track. All mm.</summary>
/// <param name="Name">What goes in.</param>
/// <param name="Middle">Its middle.</param>
/// <param name="Along">Size along the track, what was added so that it goes in included.</param>
/// <param name="Across">Size square to the track; of a round one the same, its diameter.</param>
/// <param name="IsRound">Whether it is round.</param>
/// <param name="Depth">Below the top at its middle; null right through the deck.</param>
/// <param name="BossWall">Material round it below the deck and under its floor; 0 where the deck alone is deep enough, or it goes right through.</param>
public sealed record Opening(string Name, PlanPlace Middle, double Along, double Across, bool IsRound, double? Depth, double BossWall)
{
    /// <summary>Key of the smaller of the sizes of what goes in, how a finding begins that speaks of its width, and how much was added to that size.</summary>
    public (string Key, string Told, double Fit) Narrowest { get; init; } = ("", "", 0);
}

/// <summary>Something upright on the deck: its extent in plan with what it needs round it, mm.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Key">Its key.</param>
/// <param name="From">First chainage.</param>
/// <param name="To">Last chainage.</param>
/// <param name="Near">Nearest reach of what stands above the deck.</param>
/// <param name="Height">How high it stands over the deck where that is stated; null for any height.</param>
public sealed record Standing(string Name, string Key, double From, double To, double Near, double? Height = null)
{
    /// <summary>Key of its inset in the project file, the inset in mm and what it is measured from; null where it has none.</summary>
    public (string Key, double Mm, InsetFrom From)? Inset { get; init; }

    /// <summary>Chainage of its middle.</summary>
    public double Middle => (From + To) / 2;
}

/// <summary>A line of the list of what is bought or cut: lengths in mm, null where there is nothing to measure.</summary>
public sealed record PartLine(string What, int Count, double? Diameter = null, double? Length = null)
{
    /// <summary>Along and across, mm, of what is not round; null where that is not so or not known.</summary>
    public Point2? Section { get; init; }
}

/// <summary>Wires that are led below the deck: down through it, level to another place, and down to the baseboard there. All mm.</summary>
/// <param name="Name">What they lead to.</param>
/// <param name="From">Where they go down through the deck.</param>
/// <param name="To">Where they go down to the baseboard; the same where they go straight down.</param>
/// <param name="Dip">How far below the deck's top they run between the two places.</param>
public sealed record WireRun(string Name, PlanPlace From, PlanPlace To, double Dip);

/// <summary>A hole in the baseboard.</summary>
/// <param name="Name">What goes through it.</param>
/// <param name="Place">Its middle.</param>
/// <param name="Diameter">mm.</param>
public sealed record BoardHole(string Name, PlanPlace Place, double Diameter);

/// <summary>A line of what was asked and what was found.</summary>
public sealed record MadeLine(string What, string Asked, string Found, int Count);

/// <summary>A chainage in mm worth setting out, and what is there.</summary>
public sealed record SetOutPlace(double Chainage, string Note);

/// <summary>A table of a feature's own, written as a CSV file under its name; tables of one name are one file.</summary>
/// <param name="Name">Short name, part of the file's name.</param>
/// <param name="Headings">One a column.</param>
/// <param name="Rows">Cells in the order of the headings.</param>
public sealed record FeatureTable(string Name, IReadOnlyList<string> Headings, IReadOnlyList<IReadOnlyList<TableCell>> Rows);

/// <summary>A cell: a figure with so many digits after the point, or words.</summary>
public readonly record struct TableCell(double? Figure, int Digits, string Words)
{
    public static implicit operator TableCell(string words) => new(null, 0, words);

    /// <summary>A figure; an empty cell for none.</summary>
    public static TableCell Of(double? figure, int digits) => new(figure, digits, "");
}
