using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

/// <summary>Puts single round holes into the deck and says which do not fit.</summary>
internal static class HolePlanner
{
    // A boss may run into the wall that closes a section at a joint: beyond it only a line of plastic is kept, mm.
    private const double BossClear = 0.8;

    // Sums of stated lengths that differ by less than this, mm, are equal.
    private const double Grain = 1e-9;

    /// <summary>Holes with their keys; those that fall off the ends are left out.</summary>
    public static IReadOnlyList<(PlanHole Hole, string Key)> Plan(PlatformSpec spec, PlatformSite site, BodyPlan lines, HeightProfile profile, List<Finding> findings)
    {
        var holes = new List<(PlanHole, string)>();
        for (int i = 0; i < spec.Holes.Count; i++)
        {
            var hole = spec.Holes[i];
            string key = PlatformFindings.Indexed(spec.Key, "holes", i);
            double diameter = hole.Diameter + hole.Fit, s = hole.Chainage, land = SocketPlanner.LeastLand + (diameter / 2);
            if (s < spec.Face.From + land || s > spec.Face.To - land)
            {
                findings.Add(PlatformFindings.OffTheEnds($"{key}.chainage", hole.Name, s, spec.Face.From + land, spec.Face.To - land));
                continue;
            }

            bool fromBack = hole.From == InsetFrom.Back;
            double front = lines.CopingFront.At(s), back = lines.Back.At(s), reach = fromBack ? back - hole.Inset : front + hole.Inset;
            double nearest = Math.Max(lines.CopingBack.At(s) + (diameter / 2), lines.WallFace.At(s) + land), farthest = lines.FarCopingBack is null ? back - land : Math.Min(lines.Farthest(s, 0) - (diameter / 2), lines.FarWallFace.At(s) - land);
            if (nearest > farthest + Grain)
            {
                findings.Add(PlatformFindings.DeckTooNarrowFor(key, hole.Name, spec.Deck.Width, Rules.LeastDeck.ForHole(spec, hole), $"{spec.Key}.deck.width"));
                continue;
            }

            if (reach < nearest - Grain)
            {
                findings.Add(PlatformFindings.ThroughCoping($"{key}.inset", hole.Name, nearest - reach, fromBack ? back - nearest : nearest - front, !fromBack));
            }
            else if (reach > farthest + Grain)
            {
                findings.Add(PlatformFindings.OffTheDeck($"{key}.inset", hole.Name, reach - farthest, fromBack ? back - farthest : farthest - front, fromBack));
            }

            var planned = new PlanHole(hole.Name, s, reach, diameter, hole.Depth, SocketPlanner.Boss(spec, hole.Depth));
            TooDeep($"{key}.depth", [planned], spec, site, lines, profile, findings);
            holes.Add((planned, key));
        }

        return holes;
    }

    /// <summary>Tells of holes with bosses whose floors would lie below the baseboard, by the one with least room.</summary>
    public static void TooDeep(string key, IReadOnlyList<PlanHole> holes, PlatformSpec spec, PlatformSite site, BodyPlan lines, HeightProfile profile, List<Finding> findings)
    {
        double Floor(PlanHole h) => profile.At(h.Chainage) - SocketPlanner.Fall(spec, lines, h.Chainage, h.Reach) - h.Depth!.Value - h.BossWall;
        if (holes.Where(h => h.BossWall > 0).MinBy(Floor) is { } lowest && Floor(lowest) is var floor and < 0)
        {
            findings.Add(PlatformFindings.HoleTooDeep(key, lowest.Name, lowest.Chainage, lowest.Depth!.Value, lowest.Depth.Value + floor, site.RailTop));
        }
    }

    /// <summary>What a hole occupies in plan. One that ends within the deck leaves room for a rib under it; under a boss a rib may stand.</summary>
    public static Keepout Keepout(PlanHole hole, string key, Centreline chart, PlatformSpec spec)
    {
        double radius = (hole.Diameter / 2) + hole.BossWall, along = radius / SocketPlanner.Stretch(chart, spec.Face.Side, hole.Chainage, hole.Reach);
        return new(hole.Name, key, hole.Chainage - along, hole.Chainage + along, hole.Reach - radius, hole.Reach + radius, hole.BossWall, hole.BossWall == 0 && hole.Depth < spec.Deck.Thickness, hole.BossWall > 0)
        {
            CutClear = hole.BossWall > 0 ? BossClear : CutPlanner.Clear,
        };
    }
}
