using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Sections.Forms;

/// <summary>Everything that is printed for a platform: its sections by increasing chainage, the beds they are printed on, the dowels to cut.</summary>
/// <param name="Platform">Name of the platform.</param>
/// <param name="Sections">Sections, number 1 first.</param>
/// <param name="Plates">Beds, fullest first.</param>
/// <param name="Cuts">Chainages of the cuts between sections, mm, rising.</param>
/// <param name="Dowels">Loose parts to cut or print, one line a kind.</param>
/// <param name="Estimate">All sections together.</param>
public sealed record SectionSet(
    string Platform,
    IReadOnlyList<PlatformSection> Sections,
    IReadOnlyList<Plate> Plates,
    IReadOnlyList<double> Cuts,
    IReadOnlyList<DowelCut> Dowels,
    PrintEstimate Estimate)
{
    /// <summary>The plan they are made from, its ribs divided between the cuts and its walking surface hinged at them.</summary>
    public required PlatformPlan Plan { get; init; }

    /// <summary>What its walls are faced with, as printed; null where they are plain.</summary>
    public PrintedFacing? Facing { get; init; }

    /// <summary>Lines and strips that are prints of their own.</summary>
    public LineSet Lines { get; init; } = LineSet.None;

    /// <summary>How its sections are held together.</summary>
    public JointSpec Joint { get; init; } = new();

    /// <summary>Fewest sections that the bed allows, and why, in words for a report.</summary>
    public string CountReason { get; init; } = "";
}

/// <summary>A print bed's worth.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Sections">What stands on it and where.</param>
/// <param name="Estimate">All that stands on it together.</param>
public sealed record Plate(int Number, IReadOnlyList<PlacedSection> Sections, PrintEstimate Estimate);

/// <summary>A section on a bed.</summary>
/// <param name="Section">The section.</param>
/// <param name="ToBed">From the section's file coordinates to the bed's: a turn about z and a level shift.</param>
public sealed record PlacedSection(PlatformSection Section, RigidTransform ToBed);

/// <summary>A line of the cutting list.</summary>
/// <param name="What">What to cut, such as dowel from 1.75 mm filament.</param>
/// <param name="Diameter">mm.</param>
/// <param name="Length">Length of one, mm.</param>
/// <param name="Count">How many.</param>
public sealed record DowelCut(string What, double Diameter, double Length, int Count);
