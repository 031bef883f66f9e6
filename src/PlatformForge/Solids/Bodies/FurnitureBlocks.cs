using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Track;

namespace PlatformForge.Solids.Bodies;

/// <summary>Sockets with their bosses, and post holes.</summary>
internal static class FurnitureBlocks
{
    /// <summary>Sides of the polygon drawn around a round upright hole.</summary>
    public const int HoleSides = 12;

    /// <summary>How far in mm a hole right through the deck goes on below it, so that it is open whatever the slope.</summary>
    public const double ThroughDepth = 0.5;

    public static void AddBosses(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var plan = chart.Plan;
        foreach (var socket in plan.Sockets.Where(s => s.BossWall > 0))
        {
            // A boss that a cut was forced through ends at the cut.
            var ring = Between(chart, from, to, Rectangle(plan, socket, socket.BossWall));
            if (ring.Length > 0)
            {
                double floor = plan.TopAt(socket.Chainage, socket.Reach) - socket.Depth - socket.BossWall;
                blocks.Add(Layer.Added(
                    ring, new(Math.Max(0, floor)), top.Along(socket.Chainage).Raised(-plan.Spec.Deck.Thickness / 2), Paint.Wall));
            }
        }
    }

    /// <summary>Round bosses of holes that are deeper than the deck, cut off inside the walls, which are solid themselves, and at the section's ends.</summary>
    public static void AddHoleBosses(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var (plan, walls) = (chart.Plan, chart.Plan.Spec.Walls);
        foreach (var hole in plan.PostHoles.Where(h => h.BossWall > 0 && h.Depth is not null))
        {
            double s = hole.Chainage;
            var ring = Between(chart, from, to, Round(plan, hole, hole.BossWall));
            ring = Behind(plan, ring, s, plan.WallBack.At(s) - (walls.FrontThickness / 2), towardsBack: true);
            ring = Behind(plan, ring, s, plan.BackWallFace.At(s) + (walls.BackThickness / 2), towardsBack: false);
            if (ring.Length > 0)
            {
                double floor = plan.TopAt(s, hole.Reach) - hole.Depth!.Value - hole.BossWall;
                blocks.Add(Layer.Added(ring, new(Math.Max(0, floor)), top.Along(s).Raised(-plan.Spec.Deck.Thickness / 2), Paint.Wall));
            }
        }
    }

    // The part of a ring beyond a reach, or before it, told at a chainage.
    private static Point2[] Behind(PlatformPlan plan, Point2[] ring, double chainage, double reach, bool towardsBack)
    {
        var along = plan.Chart.At(chainage).Tangent * plan.Side.Outward(towardsBack ? 1 : -1);
        var on = plan.ToLayout(chainage, reach);
        return ring.Length == 0 ? ring : ConvexRing.LeftOf(ring, on, on + along);
    }

    public static void Remove(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var plan = chart.Plan;
        foreach (var socket in plan.Sockets.Where(s => Touches(from, to, s.Chainage, s.Along)))
        {
            double floor = plan.TopAt(socket.Chainage, socket.Reach) - socket.Depth;
            blocks.Add(Layer.Removed(
                Rectangle(plan, socket, 0), new(floor), top.Along(socket.Chainage).Raised(Layer.Above), Paint.Deck));
        }

        foreach (var hole in plan.PostHoles.Where(h => Touches(from, to, h.Chainage, h.Diameter)))
        {
            var surface = top.Along(hole.Chainage);
            var ring = Round(plan, hole);
            var lower = hole.Depth is { } depth
                ? new HeightPlane(plan.TopAt(hole.Chainage, hole.Reach) - depth)
                : surface.Raised(-plan.Spec.Deck.Thickness - ThroughDepth);
            blocks.Add(Layer.Removed(ring, lower, surface.Raised(Layer.Above), Paint.Deck));
        }
    }

    /// <summary>Ring of a regular polygon whose sides touch the hole's circle, so that the pin fits at every side: radius/cos(π/n).</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="hole">The hole.</param>
    /// <param name="wall">Added to its radius, mm, for what stands round it.</param>
    public static Point2[] Round(PlatformPlan plan, PlanHole hole, double wall = 0)
    {
        var middle = plan.ToLayout(hole.Chainage, hole.Reach);
        double heading = plan.Chart.At(hole.Chainage).Heading, radius = ((hole.Diameter / 2) + wall) / Math.Cos(Math.PI / HoleSides);
        return [.. Enumerable.Range(0, HoleSides).Select(k => middle + (Point2.FromAngle(heading + (2 * Math.PI * (k + 0.5) / HoleSides)) * radius))];
    }

    public static bool Touches(double from, double to, double middle, double size) => middle + size > from && middle - size < to;

    public static Point2[] Rectangle(PlatformPlan plan, PlanSocket socket, double wall)
    {
        var middle = plan.ToLayout(socket.Chainage, socket.Reach);
        var along = plan.Chart.At(socket.Chainage).Tangent;
        Point2 x = along * ((socket.Along / 2) + wall), y = along.Left * ((socket.Across / 2) + wall);
        return [middle - x - y, middle + x - y, middle + x + y, middle - x + y];
    }

    private static Point2[] Between(FacetedPlan chart, double from, double to, Point2[] ring)
    {
        foreach (var (s, forward) in new[] { (from, true), (to, false) })
        {
            var origin = chart.CrossLine(s).Origin;
            var left = chart.Forward(s).Left * (forward ? -1 : 1); // material lies to the left of this direction
            ring = ConvexRing.LeftOf(ring, origin, origin + left);
            if (ring.Length == 0)
            {
                break;
            }
        }

        return ring;
    }
}
