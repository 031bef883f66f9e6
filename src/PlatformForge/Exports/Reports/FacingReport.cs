using PlatformForge.Masonry;
using PlatformForge.Sections;
using PlatformForge.Solids.Bodies;

namespace PlatformForge.Exports.Reports;

/// <summary>Brickwork on a platform's walls: sizes with their joints in mm of the model, and each stretch of wall between two stops.</summary>
public sealed record FacingReport(
    string Bond, double Stretcher, double Header, double Course, double Joint, double Depth, bool Perpends, IReadOnlyList<FacedWallReport> Walls)
{
    internal static FacingReport? Of(SectionSet set) => set.Facing?.Brickwork is not { } b ? null : new(
        FacingSpec.Name(b.Bond), b.Module.Stretcher, b.Module.Header, b.Module.Course, b.Joint, b.Depth, b.Perpends,
        [.. set.Sections.SelectMany(s => s.Faced.Select(w => FacedWallReport.Of(s.Number, w)))]);
}

/// <summary>A faced wall of a section: the faces that it runs over, its length laid flat in mm, its courses and bricks, how much longer than their
/// gauge these are at most
/// (a share), and what they cover in mm².</summary>
public sealed record FacedWallReport(int Section, IReadOnlyList<string> Faces, double Length, int Courses, int Bricks, double Draw, double Area)
{
    // Courses that differ by less than this, mm, in the height of their tops are one, cut or not.
    private const int Decimals = 3;

    internal static FacedWallReport Of(int section, FacedWall wall) => new(
        section, [.. wall.Stretches.Select(s => s.Face)], wall.Wall.Length,
        wall.Regions.Select(r => Math.Round(r.Outline.Min(p => p.Y), Decimals)).Distinct().Count(), wall.Regions.Count, wall.Draw, wall.Area);
}
