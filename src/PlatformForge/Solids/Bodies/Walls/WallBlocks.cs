using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Trestles;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>Walls, ribs, and the solid toe of a low ramp: everything between baseboard and deck.</summary>
internal static class WallBlocks
{
    /// <summary>Lowest hollow in mm worth leaving under a deck; below it a ramp is solid.</summary>
    public const double LowestHollow = 2;

    /// <summary>Halvings that find the solid toe's end to far below the plan grid.</summary>
    private const int Halvings = 40;

    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var plan = chart.Plan;
        ZoneBlocks.Add(chart, top, from, to, blocks);
        FrontBlocks.Add(chart, top, from, to, blocks, standing: true);
        (double From, double To)[] walled = plan.Trestle is { Stretch: var bents }
            ? [(from, Math.Min(to, bents.From)), (Math.Max(from, bents.To), to)] : [(from, to)];
        foreach (var (a, b) in walled)
        {
            foreach (var strip in plan.Body.Standing)
            {
                Fill(chart, top, strip.Near, strip.Far, a, b, blocks);
            }
        }

        FrontBlocks.Add(chart, top, from, to, blocks);
        FittingBlocks.Add(chart, top, from, to, blocks);
        PadBlocks.Add(chart, top, from, to, blocks);
        TrestleBlocks.Add(chart, top, from, to, blocks);
        foreach (var rib in plan.Ribs.Where(r => plan.Trestle?.Stretch.Holds((r.From + r.To) / 2) != true))
        {
            Fill(chart, top, rib.Near, rib.Far, Math.Max(from, rib.From), Math.Min(to, rib.To), blocks, rib.Depth);
        }

        var (startToe, endToe) = Toes(plan);
        Fill(chart, top, plan.Body.WallLine, plan.Body.FarWallLine, from, Math.Min(to, startToe), blocks);
        Fill(chart, top, plan.Body.WallLine, plan.Body.FarWallLine, Math.Max(from, endToe), to, blocks);
    }

    /// <summary>
    /// Stands a strip on the baseboard (or hangs it a depth below the deck's underside) and lets it reach into the deck, so that the two are one.
    /// </summary>
    public static void Fill(
        FacetedPlan chart, TopSurface top, PlanLine near, PlanLine far, double from, double to, List<ColumnBlock> blocks, double? depth = null)
    {
        var plan = chart.Plan;
        double deck = plan.Spec.Deck.Thickness;
        foreach (var piece in top.Cover(near, far, Math.Max(from, plan.Body.WallsFrom), Math.Min(to, plan.Body.WallsTo)))
        {
            var foot = depth is { } d ? piece.Top.Raised(-deck - d) : Layer.Baseboard;
            blocks.Add(Layer.Added(piece.Ring, foot, piece.Top.Raised(-deck / 2), PaintOf(plan)) with { WallFaces = WallNames.Of(chart, near, far, piece) });
        }
    }

    // The solid foot of a trestle's ramp, where it is not faced, is of what the trestle is built of.
    private static Paint PaintOf(PlatformPlan plan) =>
        plan.Spec is { Trestle: { Ramps: TrestleRamps.Bents } trestle, Facing: null } ? TrestleBlocks.PaintOf(trestle) : Paint.Wall;

    /// <summary>Takes away what a thin ramp end or a deep rib would put under the baseboard.</summary>
    public static void RemoveBelowBaseboard(FacetedPlan chart, double from, double to, List<ColumnBlock> blocks)
    {
        var plan = chart.Plan;
        double deepest = Math.Max(plan.Spec.Deck.Thickness + (plan.Spec.Ribs.Depth ?? 0), plan.Spec.Coping.Thickness);
        var chainages = chart.Chainages(from, to);
        double lowest = chainages.Min(s => Math.Min(plan.TopAt(s, plan.CopingFront.At(s)), plan.TopAt(s, plan.Back.At(s))));
        if (lowest < deepest)
        {
            var ring = chart.Ring(plan.CopingFront.Shifted(-1), plan.Back.Shifted(1), chainages);
            blocks.Add(Layer.Removed(ring, new(lowest - deepest - Layer.Above), Layer.Baseboard, Paint.Wall));
        }
    }

    /// <summary>Chainages up to which the starting ramp, and from which the ending ramp, is solid; the platform's ends where neither is.</summary>
    public static (double Start, double End) Toes(PlatformPlan plan)
    {
        if (plan is { Trestle.Stretch: var bents, Spec.Trestle.Ramps: TrestleRamps.Bents })
        {
            return (bents.From, bents.To);
        }

        var profile = plan.Profile;
        return (Toe(plan, profile.From, profile.StartHead), Toe(plan, profile.To, profile.EndHead));
    }

    private static double Toe(PlatformPlan plan, double end, double head)
    {
        bool Hollow(double s) =>
            Math.Min(plan.TopAt(s, plan.WallBack.At(s)), plan.TopAt(s, plan.BackWallFace.At(s))) - plan.Spec.Deck.Thickness >= LowestHollow;

        if (head == end || Hollow(end))
        {
            return end;
        }

        double solid = end, hollow = head;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (solid + hollow) / 2;
            (solid, hollow) = Hollow(middle) ? (solid, middle) : (middle, hollow);
        }

        return hollow;
    }
}
