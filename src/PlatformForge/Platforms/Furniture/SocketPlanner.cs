using PlatformForge.Platforms.Edges;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Furniture;

/// <summary>Puts sockets into the deck and says which do not fit.</summary>
internal static class SocketPlanner
{
    /// <summary>Thickness of material round a socket below the deck and under its floor, mm: three printed lines.</summary>
    public const double BossWall = 1.2;

    /// <summary>Least material in mm left between a socket or hole and an edge of the deck: two printed lines.</summary>
    public const double LeastLand = 0.8;

    // Sums of stated lengths that differ by less than this, mm, are equal.
    private const double Grain = 1e-9;

    /// <summary>Sockets with their keys; those that fall off the ends are left out.</summary>
    public static IReadOnlyList<(PlanSocket Socket, string Key)> Plan(PlatformSpec spec, PlatformSite site, BodyPlan lines, HeightProfile profile, List<Finding> findings)
    {
        var sockets = new List<(PlanSocket, string)>();
        for (int i = 0; i < spec.Sockets.Count; i++)
        {
            var socket = spec.Sockets[i];
            string key = PlatformFindings.Indexed(spec.Key, "sockets", i);
            double along = socket.Along + socket.Fit, across = socket.Across + socket.Fit, s = socket.Chainage;
            bool boss = socket.Depth > spec.Deck.Thickness - LeastLand;
            double land = Land(spec, socket);
            double first = spec.Face.From + land + (along / 2), last = spec.Face.To - land - (along / 2);
            if (s < first || s > last)
            {
                findings.Add(PlatformFindings.OffTheEnds($"{key}.chainage", socket.Name, s, first, last, Smaller($"{key}.along", spec.Face.To - spec.Face.From - (2 * land) - socket.Fit)));
                continue;
            }

            double reach = socket.From == InsetFrom.Back ? lines.Back.At(s) - socket.Inset : lines.CopingFront.At(s) + socket.Inset;
            double nearest = Math.Max(lines.CopingBack.At(s), lines.WallFace.At(s) + land) + (across / 2), farthest = lines.Farthest(s, land) - (across / 2);
            double Inset(double t) => socket.From == InsetFrom.Back ? lines.Back.At(s) - t : t - lines.CopingFront.At(s);
            bool fromBack = socket.From == InsetFrom.Back;
            if (nearest > farthest + Grain)
            {
                findings.Add(PlatformFindings.DeckTooNarrowFor(key, socket.Name, spec.Deck.Width, Rules.LeastDeck.ForSocket(spec, socket), $"{spec.Key}.deck.width"));
                continue;
            }

            if (reach < nearest - Grain)
            {
                findings.Add(PlatformFindings.ThroughCoping($"{key}.inset", socket.Name, nearest - reach, Inset(nearest), !fromBack));
            }
            else if (reach > farthest + Grain)
            {
                findings.Add(PlatformFindings.OffTheDeck($"{key}.inset", socket.Name, reach - farthest, Inset(farthest), fromBack));
            }

            double floor = profile.At(s) - Fall(spec, lines, s, reach) - socket.Depth - (boss ? BossWall : 0);
            if (floor < 0)
            {
                findings.Add(PlatformFindings.TooDeep($"{key}.depth", socket.Name, socket.Depth, socket.Depth + floor, site.RailTop));
            }

            sockets.Add((new(socket.Name, s, reach, along, across, socket.Depth, boss ? BossWall : 0), key));
        }

        return sockets;
    }

    // The size that finds room between the platform's ends, to a tenth of a mm; null where none does.
    private static Cure? Smaller(string key, double most) => most > LeastLand ? Cure.Set(key, Math.Floor(most * 10) / 10) : null;

    /// <summary>Material in mm that is left round a socket: more where it stands in a boss.</summary>
    public static double Land(PlatformSpec spec, SocketSpec socket) => socket.Depth > spec.Deck.Thickness - LeastLand ? BossWall : LeastLand;

    /// <summary>What a socket occupies in plan with its boss.</summary>
    public static Keepout Keepout(PlanSocket socket, string key, Centreline chart, Side side)
    {
        double along = (socket.Along / 2) + socket.BossWall, across = (socket.Across / 2) + socket.BossWall;
        double s = along / Stretch(chart, side, socket.Chainage, socket.Reach);
        return new(socket.Name, key, socket.Chainage - s, socket.Chainage + s, socket.Reach - across, socket.Reach + across, socket.BossWall, socket.BossWall == 0, true);
    }

    /// <summary>Length in the layout at a reach for a millimetre of chainage.</summary>
    public static double Stretch(Centreline chart, Side side, double chainage, double reach) =>
        1 - (side.Bend(chart.CurvatureAt(chainage)) * reach);

    /// <summary>Material in mm round and under a hole of a depth: none where the deck alone is deep enough, or the hole goes right through.</summary>
    public static double Boss(PlatformSpec spec, double? depth) => depth > spec.Deck.Thickness - LeastLand ? BossWall : 0;

    /// <summary>How far in mm the deck lies below the coping's top at a place.</summary>
    public static double Fall(PlatformSpec spec, BodyPlan lines, double s, double reach) =>
        spec.Deck.Crossfall > 0 ? (reach - lines.CopingFront.At(s)) / spec.Deck.Crossfall : 0;
}
