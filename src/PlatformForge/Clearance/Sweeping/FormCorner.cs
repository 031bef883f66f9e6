using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;

namespace PlatformForge.Clearance.Sweeping;

/// <summary>One corner of a part, with the edge that runs from it to the next corner of its ring.</summary>
/// <param name="X">Forward in the carrier's frame, mm.</param>
/// <param name="Y">To the left, mm.</param>
/// <param name="Carrier">What carries it.</param>
/// <param name="Outline">Index of its outline in the form: that of the shape in the form; those of shapes turned round follow.</param>
/// <param name="Next">Index of the next corner of the ring.</param>
/// <param name="CornerSide">+1 where the corner can be the leftmost place of its part, −1 the rightmost, 2 both, 0 neither.</param>
/// <param name="EdgeSide">+1 when the edge looks left, −1 right, 0 when it runs square to the vehicle.</param>
internal readonly record struct FormCorner(double X, double Y, PartCarrier Carrier, int Outline, int Next, int CornerSide, int EdgeSide)
{
    // An edge whose normal leans by less than this sine from the vehicle's axis is taken to run square to the vehicle.
    private const double SquareSine = 1e-9;

    // How far the way that a corner goes may turn from the vehicle's axis: a slew and as much again of its trace's slope, as a tangent.
    private const double MostAslant = 1;

    /// <summary>Adds the corners of a ring.</summary>
    public static void AddRing(List<FormCorner> corners, IReadOnlyList<Point2> ring, PartCarrier carrier, int outline)
    {
        int first = corners.Count, count = ring.Count;
        for (int i = 0; i < count; i++)
        {
            int edge = SideOf(ring[i], ring[(i + 1) % count]), before = SideOf(ring[(i + count - 1) % count], ring[i]);
            int corner = edge == before ? edge : edge * before == 0 ? edge + before : 2;
            corners.Add(new(ring[i].X, ring[i].Y, carrier, outline, first + ((i + 1) % count), corner, edge));
        }
    }

    /// <summary>Of all corners those that can decide how far anything reaches when the vehicle is off in one way, and those at the ends of
    /// edges that can.</summary>
    public static FormCorner[] Deciding(FormCorner[] all, PlayState state, GuidedPoints points)
    {
        var own = Array.ConvertAll(all, c => c with { CornerSide = CornerIn(c, state, points), EdgeSide = EdgeIn(c, all[c.Next], state, points) });
        int[] kept = [.. Enumerable.Range(0, all.Length).Where(i => own[i].CornerSide != 0 || own[i].EdgeSide != 0
            || Array.Exists(own, c => c.EdgeSide != 0 && c.Next == i))];
        return Array.ConvertAll(kept, i => own[i] with { Next = Math.Max(0, Array.IndexOf(kept, own[i].Next)) });
    }

    private static int CornerIn(in FormCorner corner, PlayState state, in GuidedPoints points)
    {
        double lever = corner.X / points.Apart, about = MostAslant * Math.Abs(corner.Y) / points.Apart;
        bool left = corner.CornerSide is 1 or 2 && state.CanBeFarthest(1, lever, about, points),
            right = corner.CornerSide is -1 or 2 && state.CanBeFarthest(-1, lever, about, points);
        return left && right ? 2 : left ? 1 : right ? -1 : 0;
    }

    // Outward the edge from a to b looks along (b.Y − a.Y, a.X − b.X).
    private static int EdgeIn(in FormCorner a, in FormCorner b, PlayState state, in GuidedPoints points)
    {
        if (a.EdgeSide == 0)
        {
            return 0;
        }

        double ahead = a.EdgeSide * (b.Y - a.Y) / Math.Abs(a.X - b.X);
        double from = (a.X - (ahead * a.Y)) / points.Apart, to = (b.X - (ahead * b.Y)) / points.Apart;
        return state.CanBeFarthest(a.EdgeSide, (from + to) / 2, Math.Abs(from - to) / 2, points) ? a.EdgeSide : 0;
    }

    // The outward normal of an edge (dx, dy) of a counter-clockwise ring is (dy, −dx).
    private static int SideOf(Point2 from, Point2 to)
    {
        var run = to - from;
        return Math.Abs(run.X) <= SquareSine * run.Length ? 0 : run.X < 0 ? 1 : -1;
    }
}
