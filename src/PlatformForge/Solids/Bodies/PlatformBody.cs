using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Trestles;
using PlatformForge.Solids.Bodies.Walls;

namespace PlatformForge.Solids.Bodies;

/// <summary>Front door of the folder: turns a platform's plan into blocks for the kernel.</summary>
public static class PlatformBody
{
    /// <summary>The whole platform, in one piece.</summary>
    public static BodyBlocks Blocks(PlatformPlan plan) => Blocks(new FacetedPlan(plan), plan.Stations[0], plan.Stations[^1]);

    /// <summary>
    /// The platform between two chainages in mm, cut along the straight lines across at both. Stretches that meet at a
    /// station of the plan share their boundary exactly, so that their volumes add up.
    /// </summary>
    public static BodyBlocks Blocks(FacetedPlan chart, double from, double to)
    {
        var top = new TopSurface(chart);
        List<ColumnBlock> added = [], removed = [];
        WallBlocks.Add(chart, top, from, to, added);
        BankBlocks.Add(chart, top, from, to, added);
        FeatureBlocks.Add(chart, top, from, to, PrismOrder.UnderDeck, added);
        DeckBlocks.Add(chart, top, from, to, added, out double engraved);
        FeatureBlocks.Add(chart, top, from, to, PrismOrder.OnDeck, added);
        DeckBlocks.Remove(chart, top, from, to, removed);
        FeatureBlocks.Remove(chart, top, from, to, removed);
        BankBlocks.Remove(chart, from, to, removed);
        WallBlocks.RemoveBelowBaseboard(chart, from, to, removed);
        double ledges = ZoneBlocks.Ledges(chart, from, to) + TrestleBlocks.Ledges(chart, from, to);
        return new(added, removed) { Engraved = engraved + FeatureBlocks.Engraved(chart.Plan, from, to) + ledges };
    }
}
