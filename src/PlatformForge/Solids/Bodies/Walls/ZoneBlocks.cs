using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Solids.Bodies.Copings;
using PlatformForge.Solids.Bodies.Layers;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>
/// What stands out of the walls along a part of their height, all round the platform: a plinth's steps, corbelled courses. Each is a ring before the walls
/// that reaches into them, with faces of its own.
/// </summary>
internal static class ZoneBlocks
{
    public static void Add(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        foreach (var zone in chart.Profile.Standing)
        {
            foreach (var strip in Strips(chart, zone))
            {
                foreach (var piece in top.Cover(strip.Near, strip.Far, Math.Max(from, strip.From), Math.Min(to, strip.To)))
                {
                    Stand(chart.Plan, zone, piece, WallNames.OfZone(chart, zone, piece, strip.Outer, strip.Whole), blocks);
                }
            }
        }
    }

    /// <summary>Stands a piece on the baseboard up to its zone's head, cut by what slopes over it; or hangs it under the deck from its zone's foot, with a
    /// cap as high as the
    /// deck's edge.</summary>
    public static void Stand(PlatformPlan plan, in WallZone zone, in TopPiece piece, IReadOnlyList<string?> names, List<ColumnBlock> blocks)
    {
        double deck = plan.Spec.Deck.Thickness, within = Math.Min(deck, plan.Spec.Coping.Thickness) / 2;
        HeightPlane over = piece.Top.Raised(-within), under = piece.Top.Raised(-deck);
        if (zone.IsFoot)
        {
            double head = zone.High;
            blocks.Add(Layer.Added(piece.Ring, Layer.Baseboard, new(head), Paint.Wall) with { WallFaces = names });
            if (Array.Exists(piece.Ring, p => over.At(p) < head))
            {
                blocks.Add(Layer.Removed(piece.Ring, over, new(head + Layer.Above), Paint.Wall));
            }

            return;
        }

        double foot = zone.Low;
        if (zone.IsDeepest || Array.Exists(piece.Ring, p => under.At(p) > foot))
        {
            blocks.Add(Layer.Added(piece.Ring, zone.IsDeepest ? Layer.Baseboard : new(foot), under, Paint.Wall) with { WallFaces = names });
        }

        if (zone.IsDeepest || double.IsPositiveInfinity(zone.High))
        {
            blocks.Add(Layer.Added(piece.Ring, under, over, CopingGrooves.PaintOf(plan)));
        }
    }

    /// <summary>Area of a plinth's steps, mm², which look up and are no part of a walking surface: about that of its strips along the walls.</summary>
    public static double Ledges(FacetedPlan chart, double from, double to)
    {
        var plan = chart.Plan;
        double ends = (from == plan.Stations[0] ? plan.Body.WidthAt(from) : 0) + (to == plan.Stations[^1] ? plan.Body.WidthAt(to) : 0);
        return chart.Profile.Zones[0].IsFoot ? chart.Profile.FootOut * ((2 * (to - from)) + ends) : 0;
    }

    // Along the near wall, along the far one, and across both ends.
    private static IEnumerable<ZoneStrip> Strips(FacetedPlan chart, WallZone zone)
    {
        var (plan, body) = (chart.Plan, chart.Plan.Body);
        var (from, to) = Ends(plan, zone.Out);
        bool hasFar = plan.Spec.IsIsland || plan.Spec.Back.ShowsWall;
        PlanLine near = plan.Spine.Aside(body.WallLine, -zone.Out), far = hasFar ? plan.Spine.Aside(body.FarWallLine, zone.Out) : body.FarWallLine;
        double end = plan.Spec.Walls.EndThickness / 2;
        yield return new(near, body.WallLine.Shifted(plan.Spec.Walls.FrontThickness / 2), from, to, (true, false), (from, to));
        if (hasFar)
        {
            yield return new(body.FarWallLine.Shifted(-FarThickness(plan) / 2), far, from, to, (false, true), (from, to));
        }

        yield return new(near, far, from, body.WallsFrom + end, (true, hasFar), (from, to));
        yield return new(near, far, body.WallsTo - end, to, (true, hasFar), (from, to));
    }

    /// <summary>Thickness of the wall on the far side, mm.</summary>
    public static double FarThickness(PlatformPlan plan) => plan.Spec.IsIsland ? plan.Spec.Walls.FrontThickness : plan.Spec.Walls.BackThickness;

    // Chainages at which a part of the walls begins and ends that stands so far before the deepest one.
    private static (double From, double To) Ends(PlatformPlan plan, double before)
    {
        double back = plan.Spec.Facing!.EndsBack, first = plan.Stations[0], last = plan.Stations[^1];
        double Share(bool atEnd) => before / (back + plan.Spec.Coping.EndOverhang(atEnd));
        double from = plan.Body.WallsFrom - (Share(false) * (plan.Body.WallsFrom - first)), to = plan.Body.WallsTo + (Share(true) * (last - plan.Body.WallsTo));
        return (Math.Max(first, from), Math.Min(last, to));
    }

    private readonly record struct ZoneStrip(PlanLine Near, PlanLine Far, double From, double To, (bool Near, bool Far) Outer, (double From, double To) Whole);
}
