using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Solids.Kernel;
using PlatformForge.Solids.Reliefs;

namespace PlatformForge.Sections.Rules;

/// <summary>
/// Walls that nothing is laid on, laid flat as they are made. No file of a print needs them, so they are found when somebody asks: the kernel tells a relief
/// that only looks the panels that it would be given, and meshes nothing.
/// </summary>
public static class PlainWalls
{
    /// <summary>The walls of a section that stand to be seen, part by part of their height: fronts, back, ends, what steps out of them.</summary>
    /// <param name="set">The sections.</param>
    /// <param name="section">One of them.</param>
    public static IReadOnlyList<FacedWall> Of(SectionSet set, PlatformSection section)
    {
        var zones = WallProfiles.Of(set.Plan).Zones;
        string[] plain = [.. Names(set)];
        if (plain.Length == 0)
        {
            return [];
        }

        var (from, to) = section.Trimmed(set.Joint.EndTrim);
        FacingRelief[] looks = [.. zones.Select(z => new FacingRelief(new PlainSpec(), []) { Zone = z })];
        Look([.. PlatformBody.Blocks(new(set.Plan), from, to).All],
            zones.Zip(looks).SelectMany(p => plain.Select(w => (Name: WallNames.OfZone(w, p.First), Look: p.Second))));
        return [.. looks.SelectMany(l => l.Walls).Select(w => w with { Shows = WallNames.ShownBy(set.Plan, w.Stretches[0].Face) })];
    }

    /// <summary>The face of a piece of a retaining wall.</summary>
    /// <param name="set">The sections.</param>
    /// <param name="piece">The piece.</param>
    public static IReadOnlyList<FacedWall> Of(SectionSet set, LinePiece piece)
    {
        var look = new FacingRelief(new PlainSpec(), []);
        var section = set.Sections[piece.Section - 1];
        var (from, to) = section.Trimmed(set.Joint.EndTrim);
        Look([.. LineBlocks.Of(new(set.Plan), set.Plan.Body.Lines.ElementAt(piece.Line - 1), from, to)], [(WallNames.Retaining, look)]);
        return [.. look.Walls.Select(w => w with { Shows = LineBlocks.PaintOf(set.Plan.Body.Lines.ElementAt(piece.Line - 1).Made, set.Plan.Spec) })];
    }

    /// <summary>Names of the walls of a platform that stand to be seen and have no facing.</summary>
    public static IEnumerable<string> Names(SectionSet set)
    {
        var plan = set.Plan;
        var faced = (set.Facing is { } facing ? facing.Finishes.Concat(facing.Standing) : []).SelectMany(f => f.Walls).Select(WallNames.WholeOf).ToHashSet();
        return WallNames.Standing(plan).Where(w => !faced.Contains(w))
            .SelectMany(w => WallNames.OfFronts(plan, w).SelectMany(p => new[] { p.Front, p.Sides }).Prepend(w));
    }

    private static void Look(IReadOnlyList<ColumnBlock> blocks, IEnumerable<(string Name, FacingRelief Look)> looks)
    {
        foreach (var (relief, panel) in SolidRaiser.Panels(blocks, looks.ToDictionary(l => l.Name, l => (IWallRelief)l.Look)))
        {
            relief.Fields(panel);
        }
    }
}
