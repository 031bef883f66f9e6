using PlatformForge.Platforms.Specs;

namespace PlatformForge.Platforms.Plans;

/// <summary>
/// The stepping limit that gaps are set beside: 275 mm horizontal, 230 mm vertical, 350 mm diagonal at full size (the three are independent). Common practice
/// of modern British platforms, no source: railway group guidance on stepping distances exists (GE/GN8501, 1998), but its text was not to be had, so it is not
/// quoted as the origin of these figures. Models on sharp curves rarely meet it.
/// </summary>
public static class SteppingLimit
{
    /// <summary>Where the three come from.</summary>
    public const string Source = "common practice of modern British platforms, no source";

    public const double Horizontal = 275;
    public const double Vertical = 230;
    public const double Diagonal = 350;
}

/// <summary>
/// Gap from the coping edge to the door sills of one vehicle with one style of edge, in mm of the model. Along the level part only.
/// </summary>
/// <param name="Style">Style of edge.</param>
/// <param name="Vehicle">Name of the vehicle.</param>
/// <param name="Least">Smallest horizontal gap of any door at any place.</param>
/// <param name="LeastAt">Chainage of the smallest gap.</param>
/// <param name="Mean">Mean horizontal gap over all doors and places.</param>
/// <param name="Largest">Largest horizontal gap.</param>
/// <param name="LargestAt">Chainage of the largest gap.</param>
/// <param name="Step">Height of the sill above the coping, negative below it.</param>
/// <param name="Ratio">Scale ratio, for the full-size figures.</param>
public sealed record GapRow(
    EdgeStyle Style,
    string Vehicle,
    double Least,
    double LeastAt,
    double Mean,
    double Largest,
    double LargestAt,
    double Step,
    double Ratio)
{
    /// <summary>Diagonal from coping to sill at the largest gap, mm of the model.</summary>
    public double Diagonal => Math.Sqrt((Largest * Largest) + (Step * Step));

    public bool HorizontalWithinLimit => Largest * Ratio <= SteppingLimit.Horizontal;

    public bool VerticalWithinLimit => Math.Abs(Step) * Ratio <= SteppingLimit.Vertical;

    public bool DiagonalWithinLimit => Diagonal * Ratio <= SteppingLimit.Diagonal;

    /// <summary>Whether all three figures keep the published limit.</summary>
    public bool WithinLimit => HorizontalWithinLimit && VerticalWithinLimit && DiagonalWithinLimit;
}

/// <summary>Gap of one vehicle's door sills along the chosen edge, per station, mm; NaN where no door comes.</summary>
/// <param name="Vehicle">Name of the vehicle.</param>
/// <param name="Stations">Chainages in mm.</param>
/// <param name="Nearest">Smallest gap at each.</param>
/// <param name="Farthest">Largest gap at each.</param>
public sealed record GapTrace(string Vehicle, double[] Stations, double[] Nearest, double[] Farthest);

/// <summary>All gaps of a platform.</summary>
/// <param name="Rows">Per style and vehicle with a door sill, in the order of styles and of vehicles.</param>
/// <param name="Traces">Along the chosen edge, per vehicle.</param>
public sealed record GapTable(IReadOnlyList<GapRow> Rows, IReadOnlyList<GapTrace> Traces);
