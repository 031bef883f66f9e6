using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms;

/// <summary>Holds the returns of banks, which stand beyond their platforms' ends, against other platforms and the returns of these.</summary>
internal static class ReturnNeighbours
{
    // Places are compared this far apart along outlines, mm, and at every corner.
    private const double Step = 1;

    // Two that only touch, or lie in one another by less than this, mm, stand beside one another.
    private const double Touch = 0.01;

    /// <summary>What is told of two platforms that do not stand in one another without their returns; null where all have room.</summary>
    /// <param name="first">A platform.</param>
    /// <param name="second">Another.</param>
    /// <param name="outlines">The outline of each, without returns.</param>
    public static Finding? Check(PlatformPlan first, PlatformPlan second, (Point2[] First, Point2[] Second) outlines) =>
        Against(first, second, [outlines.Second, .. Rings(second).Select(r => r.Ring)]) ?? Against(second, first, [outlines.First]);

    private static Finding? Against(PlatformPlan plan, PlatformPlan other, IEnumerable<Point2[]> rings)
    {
        foreach (var (turn, ring) in Rings(plan))
        {
            double deep = rings.Select(r => Math.Max(Deepest(ring, r), Deepest(r, ring))).Max();
            if (deep > Touch)
            {
                return Told(plan, other, turn, deep);
            }
        }

        return null;
    }

    private static Finding Told(PlatformPlan plan, PlatformPlan other, BankReturn turn, double deep)
    {
        string rest = plan.Spec.Back.Returns == BankReturns.Both ? turn.IsAtEnd ? "start" : "end" : "none";
        return PlatformFindings.ReturnMeets(
            $"{plan.Spec.Key}.back.returns", (plan.Spec.Name, turn.IsAtEnd ? "end" : "start", other.Spec.Name), deep, rest);
    }

    private static IEnumerable<(BankReturn Turn, Point2[] Ring)> Rings(PlatformPlan plan) =>
        plan.Bank?.Returns.Select(r => (r, (Point2[])[r.Corner, .. r.Toe])) ?? [];

    // How far the farthest place of a ring's border that lies within another is from that one's border, mm.
    private static double Deepest(Point2[] ring, Point2[] within)
    {
        double deep = 0;
        for (int i = 0; i < ring.Length; i++)
        {
            Point2 a = ring[i], b = ring[(i + 1) % ring.Length];
            int steps = Math.Max(1, (int)Math.Ceiling((b - a).Length / Step));
            for (int k = 0; k < steps; k++)
            {
                var place = a + ((b - a) * ((double)k / steps));
                deep = PlatformNeighbours.Inside(within, place) ? Math.Max(deep, Off(within, place)) : deep;
            }
        }

        return deep;
    }

    private static double Off(Point2[] ring, Point2 place) => ring.Select((a, i) => (A: a, Along: ring[(i + 1) % ring.Length] - a)).Min(s =>
        (place - s.A - (s.Along * Math.Clamp(Point2.Dot(place - s.A, s.Along) / Math.Max(Point2.Dot(s.Along, s.Along), double.Epsilon), 0, 1))).Length);
}
