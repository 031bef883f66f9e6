using PlatformForge.Geometry;
using PlatformForge.Platforms;

namespace PlatformForge.Solids.Bodies;

/// <summary>
/// Chamfers at the mouths of holes and sockets: the deck is printed face down, and a first layer that is squashed closes a mouth by some tenths of a
/// millimetre. One block a side, whose floor rises outwards at 45 degrees to the deck's top.
/// </summary>
internal static class MouthBlocks
{
    /// <summary>Share of a recess's depth, or of the deck a hole goes through, that a chamfer takes at most.</summary>
    private const double MostOfDepth = 0.5;

    public static void Remove(FacetedPlan chart, TopSurface top, double from, double to, List<ColumnBlock> blocks)
    {
        var plan = chart.Plan;
        foreach (var socket in plan.Sockets.Where(s => FurnitureBlocks.Touches(from, to, s.Chainage, s.Along)))
        {
            double size = Size(plan, socket.Depth);
            Chamfer(FurnitureBlocks.Rectangle(plan, socket, 0), FurnitureBlocks.Rectangle(plan, socket, size), size, top.Along(socket.Chainage), blocks);
        }

        foreach (var hole in plan.PostHoles.Where(h => FurnitureBlocks.Touches(from, to, h.Chainage, h.Diameter)))
        {
            double size = Size(plan, hole.Depth ?? plan.Spec.Deck.Thickness);
            Chamfer(FurnitureBlocks.Round(plan, hole), FurnitureBlocks.Round(plan, hole with { Diameter = hole.Diameter + (2 * size) }), size, top.Along(hole.Chainage), blocks);
        }
    }

    private static double Size(PlatformPlan plan, double depth) => Math.Min(plan.Spec.Deck.MouthChamfer, depth * MostOfDepth);

    // Both rings counter-clockwise with as many corners, every side of one parallel to that of the other.
    private static void Chamfer(Point2[] mouth, Point2[] wide, double size, HeightPlane deck, List<ColumnBlock> blocks)
    {
        for (int i = 0; i < mouth.Length && size > 0; i++)
        {
            int next = (i + 1) % mouth.Length;
            Point3 At(Point2 p, double drop) => new(p.X, p.Y, deck.At(p) - drop);
            var floor = HeightPlane.Through(At(mouth[i], size), At(mouth[next], size), At(wide[next], 0));
            blocks.Add(Layer.Removed([wide[i], wide[next], mouth[next], mouth[i]], floor, deck.Raised(Layer.Above), Paint.Deck));
        }
    }
}
