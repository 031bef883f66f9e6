using System.Runtime.CompilerServices;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>
/// Signed distance in plan to a ring: positive outside, below nil inside, where it is the depth under the nearest edge. Where a ring overlaps itself, as
/// widening may make it in a hollow, that is inside.
/// </summary>
internal sealed class OutlineDistance
{
    // A segment that crosses the ring is first tried at this many places, then the best is narrowed down to a third as often.
    private const int Tries = 12;
    private const int Narrowings = 40;

    private readonly Point2[] ring;
    private readonly Point2[] outward;
    private readonly double[] reach;

    /// <param name="corners">The ring in either direction; corners that repeat the one before are passed over.</param>
    public OutlineDistance(IReadOnlyList<Point2> corners)
    {
        ring = [.. corners.Where((p, i) => p != corners[(i + corners.Count - 1) % corners.Count])];
        var hull = PlanHull.Of(ring);
        outward = new Point2[hull.Count];
        reach = new double[hull.Count];
        for (int i = 0; i < hull.Count; i++)
        {
            var along = hull[(i + 1) % hull.Count] - hull[i];
            outward[i] = along.Left * (-1 / along.Length);
            reach[i] = Point2.Dot(outward[i], hull[i]);
        }
    }

    /// <summary>How many sides the hull of the ring has.</summary>
    public int Sides => reach.Length;

    /// <summary>The sides of the hull where a carrier stands.</summary>
    public void Stand(in CarrierPose pose, Span<HullSide> sides)
    {
        for (int i = 0; i < reach.Length; i++)
        {
            var n = (pose.Forward * outward[i].X) + (pose.Forward.Left * outward[i].Y);
            sides[i] = new(n.X, n.Y, reach[i] + Point2.Dot(n, pose.Origin));
        }
    }

    /// <summary>Signed distance of a point, mm.</summary>
    public double At(Point2 p)
    {
        double least = double.PositiveInfinity;
        int turns = 0;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            Point2 a = ring[j], b = ring[i];
            least = Math.Min(least, Squared(p, a, b));
            if ((a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X + ((b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y)))
            {
                turns += b.Y > p.Y ? 1 : -1;
            }
        }

        return turns != 0 ? -Math.Sqrt(least) : Math.Sqrt(least);
    }

    /// <summary>The least signed distance along a segment, mm.</summary>
    /// <param name="a">First end.</param>
    /// <param name="b">Last end.</param>
    /// <param name="place">Where it is taken, 0 at a to 1 at b.</param>
    public double Least(Point2 a, Point2 b, out double place)
    {
        double least = At(a), atB = At(b);
        place = 0;
        if (atB < least)
        {
            (least, place) = (atB, 1);
        }

        if (least < 0 || Crosses(a, b))
        {
            return Deepest(a, b, out place);
        }

        // Apart from one another, one of the nearest points is an end of the segment or a corner of the ring.
        var along = b - a;
        double square = Point2.Dot(along, along);
        if (square > 0)
        {
            foreach (var corner in ring)
            {
                double t = Point2.Dot(corner - a, along) / square;
                if (t is > 0 and < 1)
                {
                    double distance = (corner - (a + (along * t))).Length;
                    if (distance < least)
                    {
                        (least, place) = (distance, t);
                    }
                }
            }
        }

        return least;
    }

    private static double Squared(Point2 p, Point2 a, Point2 b)
    {
        var along = b - a;
        double t = Math.Clamp(Point2.Dot(p - a, along) / Point2.Dot(along, along), 0, 1);
        var off = p - (a + (along * t));
        return Point2.Dot(off, off);
    }

    private bool Crosses(Point2 a, Point2 b)
    {
        var along = b - a;
        double before = Point2.Cross(along, ring[^1] - a);
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            double now = Point2.Cross(along, ring[i] - a);
            if ((before > 0) != (now > 0))
            {
                var edge = ring[i] - ring[j];
                if ((Point2.Cross(edge, a - ring[j]) > 0) != (Point2.Cross(edge, b - ring[j]) > 0))
                {
                    return true;
                }
            }

            before = now;
        }

        return false;
    }

    // Depth is a concave function along a segment inside a convex ring, so narrowing finds the deepest point; in other rings
    // it is the deepest near the best of the first tries.
    private double Deepest(Point2 a, Point2 b, out double place)
    {
        double At(double t) => this.At(a + ((b - a) * t));
        int best = 0;
        double least = double.PositiveInfinity;
        for (int i = 0; i <= Tries; i++)
        {
            double here = At((double)i / Tries);
            if (here < least)
            {
                (best, least) = (i, here);
            }
        }

        double low = Math.Max(0, best - 1) / (double)Tries, high = Math.Min(Tries, best + 1) / (double)Tries;
        for (int i = 0; i < Narrowings; i++)
        {
            double third = (high - low) / 3;
            if (At(low + third) <= At(high - third))
            {
                high -= third;
            }
            else
            {
                low += third;
            }
        }

        double middle = (low + high) / 2, atMiddle = At(middle);
        place = atMiddle < least ? middle : (double)best / Tries;
        return Math.Min(atMiddle, least);
    }
}

/// <summary>A side of a hull: what lies beyond it lies at least as far from the hull as from the line along it.</summary>
/// <param name="X">Unit direction outward, x.</param>
/// <param name="Y">The same, y.</param>
/// <param name="Reach">How far outward the side lies, mm.</param>
internal readonly record struct HullSide(double X, double Y, double Reach)
{
    /// <summary>Whether all points of an oblong are surely so far from the hull, mm; quick, and close beside a long side.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AreBeyond(ReadOnlySpan<HullSide> sides, Point2 centre, Point2 along, double halfLength, double halfWidth, double distance)
    {
        foreach (ref readonly var n in sides)
        {
            double away = (n.X * centre.X) + (n.Y * centre.Y) - n.Reach;
            if (away - (halfLength * Math.Abs((n.X * along.X) + (n.Y * along.Y))) - (halfWidth * Math.Abs((n.X * along.Y) - (n.Y * along.X))) >= distance)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The same of the points of a segment.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AreBeyond(ReadOnlySpan<HullSide> sides, Point3 a, Point3 b, double distance)
    {
        foreach (ref readonly var n in sides)
        {
            if ((n.X * a.X) + (n.Y * a.Y) - n.Reach >= distance && (n.X * b.X) + (n.Y * b.Y) - n.Reach >= distance)
            {
                return true;
            }
        }

        return false;
    }
}
