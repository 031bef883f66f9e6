using PlatformForge.Platforms.Plans;
using PlatformForge.Track;

namespace PlatformForge.Tests.Clearance.Motion;

/// <summary>
/// What of a platform vehicles can meet: its coping's front with the heights it is held to, and the wall under it. Straight between the stations of its plan.
/// </summary>
internal sealed class PlatformFace
{
    // Squares of distances that differ by less, mm², are one corner seen from both its sides.
    private const double Alike = 1e-9;

    // So many sides of a line have a box about them.
    private const int Together = 8;

    private readonly (double X, double Y, double Top)[] coping, wall;
    private readonly ((double X, double Y) Low, (double X, double Y) High)[] copingBoxes, wallBoxes;
    private readonly double thickness, gap;
    private readonly bool over;
    private readonly int trackSide;

    public PlatformFace(PlatformPlan plan)
    {
        (double, double, double)[] Line(PlanLine line) =>
            [.. plan.Stations.Select(s => (plan.ToLayout(s, line.At(s)), plan.Profile.At(s) - plan.Site.RailTop)).Select(p => (p.Item1.X, p.Item1.Y, p.Item2))];
        (coping, wall) = (Line(plan.CopingFront), Line(plan.WallFace));
        (copingBoxes, wallBoxes) = (Boxes(coping), Boxes(wall));
        (thickness, gap, over) = (plan.Spec.Coping.Thickness, plan.Spec.Face.VerticalGap, plan.Spec.Face.BodiesPassOver);

        // Chainage increases along the line; the track lies to the right of a platform on the left.
        trackSide = plan.Side == Side.Left ? -1 : 1;
    }

    /// <summary>Heights above rail top between which the level coping lies, mm.</summary>
    public (double Low, double High) Coping => (coping.Max(p => p.Top) - thickness, coping.Max(p => p.Top));

    /// <summary>Signed distance in plan of a ring that stands there with its corners' heights: below nil inside. Infinite where heights do not meet.</summary>
    public double Distance((double X, double Y, double Z)[] ring) => Math.Min(
        To(coping, ring, (z, top) => z > top - thickness - gap && (!over || z < top + gap)),
        To(wall, ring, (z, top) => z < top - thickness));

    private double To((double X, double Y, double Top)[] line, (double X, double Y, double Z)[] ring, Func<double, double, bool> meets)
    {
        double least = double.PositiveInfinity;
        foreach (var (x, y, z) in ring)
        {
            var (distance, top) = FromLine(line, x, y);
            least = meets(z, top) ? Math.Min(least, distance) : least;
        }

        var (low, high) = Box(ring);
        foreach (var (x, y, top) in line)
        {
            // No place of the ring is nearer than the box about it.
            if (least > 0 && Square(x, y, low, high) > least * least)
            {
                continue;
            }

            var (distance, z) = FromRing(ring, x, y);
            least = meets(z, top) ? Math.Min(least, distance) : least;
        }

        return least;
    }

    // Signed distance to the open line, positive on the track's side, and the line's height there. At a corner of the line both its sides are as near; the one
    // that the place lies more across tells on which side of the line it is, however sharp the corner.
    private (double, double) FromLine((double X, double Y, double Top)[] line, double x, double y)
    {
        double best = double.PositiveInfinity, height = 0, sign = 1, most = 0;
        var boxes = line == coping ? copingBoxes : wallBoxes;
        for (int i = 0; i + 1 < line.Length; i++)
        {
            // Many sides at once lie farther off than the nearest so far.
            if (i % Together == 0 && Square(x, y, boxes[i / Together].Low, boxes[i / Together].High) >= best + Alike)
            {
                i += Together - 1;
                continue;
            }

            var (ax, ay, az) = line[i];
            var (bx, by, bz) = line[i + 1];
            double ux = bx - ax, uy = by - ay, t = (((x - ax) * ux) + ((y - ay) * uy)) / ((ux * ux) + (uy * uy));
            bool beyond = (i == 0 && t < 0) || (i + 2 == line.Length && t > 1);
            t = Math.Clamp(t, 0, 1);
            double dx = x - ax - (t * ux), dy = y - ay - (t * uy), square = (dx * dx) + (dy * dy);
            if (square >= best + Alike)
            {
                continue;
            }

            double across = trackSide * ((ux * dy) - (uy * dx)) / Math.Sqrt((ux * ux) + (uy * uy));
            if (square < best - Alike || Math.Abs(across) > most)
            {
                (best, height, most) = (square, az + (t * (bz - az)), Math.Abs(across));
                sign = beyond || across >= 0 ? 1 : -1;
            }
        }

        return (sign * Math.Sqrt(best), height);
    }

    private static ((double X, double Y) Low, (double X, double Y) High)[] Boxes((double, double, double)[] line) =>
        [.. Enumerable.Range(0, (line.Length + Together - 2) / Together)
            .Select(i => Box(line.AsSpan(i * Together, Math.Min(Together + 1, line.Length - (i * Together)))))];

    private static ((double X, double Y) Low, (double X, double Y) High) Box(ReadOnlySpan<(double X, double Y, double)> places)
    {
        (double X, double Y) low = (double.PositiveInfinity, double.PositiveInfinity), high = (double.NegativeInfinity, double.NegativeInfinity);
        foreach (var (x, y, _) in places)
        {
            (low, high) = ((Math.Min(low.X, x), Math.Min(low.Y, y)), (Math.Max(high.X, x), Math.Max(high.Y, y)));
        }

        return (low, high);
    }

    // Of the distance to a box, less what rounding may make of it; nil inside.
    private static double Square(double x, double y, (double X, double Y) low, (double X, double Y) high)
    {
        double dx = Math.Max(0, Math.Max(low.X - x, x - high.X)), dy = Math.Max(0, Math.Max(low.Y - y, y - high.Y));
        return ((dx * dx) + (dy * dy)) * (1 - 1e-12);
    }

    // Signed distance to a ring, negative inside, and the ring's height at the nearest place.
    private static (double, double) FromRing((double X, double Y, double Z)[] ring, double x, double y)
    {
        double best = double.PositiveInfinity, height = 0;
        bool inside = false;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            var (ax, ay, az) = ring[j];
            var (bx, by, bz) = ring[i];
            double ux = bx - ax, uy = by - ay, t = Math.Clamp((((x - ax) * ux) + ((y - ay) * uy)) / ((ux * ux) + (uy * uy)), 0, 1);
            double dx = x - ax - (t * ux), dy = y - ay - (t * uy), square = (dx * dx) + (dy * dy);
            if (square < best)
            {
                (best, height) = (square, az + (t * (bz - az)));
            }

            if ((ay > y) != (by > y) && x < ax + (ux * (y - ay) / uy))
            {
                inside = !inside;
            }
        }

        return (inside ? -Math.Sqrt(best) : Math.Sqrt(best), height);
    }
}
