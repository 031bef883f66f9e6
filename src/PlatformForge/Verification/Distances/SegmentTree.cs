using System.Runtime.CompilerServices;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>
/// Segments in plan, sorted into oblongs within oblongs that lie the way their segments run, so that the nearest to an
/// outline is found by looking at a few.
/// </summary>
internal sealed class SegmentTree
{
    private const int Leaf = 8;

    // Deeper than this, halves are taken by count, which ends within 31 more.
    private const int UnevenDepth = 30;
    private const int MostOpen = 64;

    // Hulls with more sides than this are kept on the heap.
    private const int MostSides = 32;

    // What could be nearer by less than this is passed over, mm: along a straight edge everything is equally near but for rounding.
    private const double Indifference = 1e-7;

    private readonly PlanSegment[] segments;
    private Oblong[] oblongs;
    private int grown;

    public SegmentTree(PlanSegment[] segments)
        : this(segments, segments.Length)
    {
    }

    /// <param name="segments">The segments: the tree's own from now on, which sorts them.</param>
    /// <param name="count">How many of them count; what is behind them is left alone.</param>
    public SegmentTree(PlanSegment[] segments, int count)
    {
        (this.segments, Count) = (segments, count);

        // Leaves hold four and more of them, as a rule: then there are no more oblongs than this.
        oblongs = new Oblong[(count / 2) + 1];
        if (count > 0)
        {
            Grow(0, count, 0);
        }
    }

    public int Count { get; }

    /// <summary>
    /// The segment nearest to an outline on a carrier, if it is nearer than <paramref name="bound"/> mm.
    /// </summary>
    /// <param name="outline">The outline in the carrier's frame.</param>
    /// <param name="pose">Where the carrier stands.</param>
    /// <param name="bound">What is to be beaten; lowered to the distance found.</param>
    /// <param name="nearest">The point of the segment that is nearest; untouched when there is none.</param>
    /// <returns>Index of the section that is nearest, or -1.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public int Nearest(OutlineDistance outline, in CarrierPose pose, ref double bound, ref Point3 nearest)
    {
        int section = -1;
        if (Count == 0)
        {
            return section;
        }

        Span<HullSide> sides = outline.Sides <= MostSides ? stackalloc HullSide[outline.Sides] : new HullSide[outline.Sides];
        outline.Stand(pose, sides);
        Span<int> open = stackalloc int[MostOpen];
        int waiting = 1;
        open[0] = 0;
        while (waiting > 0)
        {
            ref readonly var oblong = ref oblongs[open[--waiting]];
            if (HullSide.AreBeyond(sides, oblong.Centre, oblong.Along, oblong.HalfLength, oblong.HalfWidth, bound - Indifference))
            {
                continue;
            }

            if (oblong.Second > 0)
            {
                open[waiting++] = oblong.Second;
                open[waiting++] = oblong.First;
                continue;
            }

            int owner = NearestIn(oblong, outline, sides, pose, ref bound, ref nearest);
            section = owner >= 0 ? owner : section;
        }

        return section;
    }

    // Among the segments of a leaf.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int NearestIn(in Oblong leaf, OutlineDistance outline, ReadOnlySpan<HullSide> sides, in CarrierPose pose, ref double bound, ref Point3 nearest)
    {
        int section = -1;
        for (int i = leaf.From; i < leaf.To; i++)
        {
            ref readonly var segment = ref segments[i];
            if (HullSide.AreBeyond(sides, segment.A, segment.B, bound - Indifference))
            {
                continue;
            }

            var (a, b, owner) = segment;
            Point2 p = Local(pose, new(a.X, a.Y)), q = Local(pose, new(b.X, b.Y));
            double distance = outline.Least(p, q, out double place);
            if (distance < bound)
            {
                (bound, nearest, section) = (distance, a + ((b - a) * place), owner);
            }
        }

        return section;
    }

    private static Point2 Local(in CarrierPose pose, Point2 p) => Turn(pose, p - pose.Origin);

    private static Point2 Turn(in CarrierPose pose, Point2 v) => new(Point2.Dot(pose.Forward, v), Point2.Cross(pose.Forward, v));

    private int Grow(int from, int to, int depth)
    {
        var oblong = Around(from, to);
        int me = grown++;
        if (me == oblongs.Length)
        {
            Array.Resize(ref oblongs, 2 * me);
        }

        oblongs[me] = oblong;
        if (to - from > Leaf)
        {
            int middle = depth < UnevenDepth ? Part(oblong) : (from + to) / 2;
            int first = Grow(from, middle, depth + 1), second = Grow(middle, to, depth + 1);
            oblongs[me] = oblong with { First = first, Second = second };
        }

        return me;
    }

    // The oblong around the ends of segments, along the direction in which they are most spread out.
    private Oblong Around(int from, int to)
    {
        var origin = Plan(segments[from].A);
        double n = 2 * (to - from), x = 0, y = 0, xx = 0, xy = 0, yy = 0;
        for (int i = from; i < to; i++)
        {
            Point2 a = Plan(segments[i].A) - origin, b = Plan(segments[i].B) - origin;
            (x, y) = (x + a.X + b.X, y + a.Y + b.Y);
            (xx, xy, yy) = (xx + (a.X * a.X) + (b.X * b.X), xy + (a.X * a.Y) + (b.X * b.Y), yy + (a.Y * a.Y) + (b.Y * b.Y));
        }

        var along = Point2.FromAngle(Math.Atan2(2 * (xy - (x * y / n)), xx - yy - (((x * x) - (y * y)) / n)) / 2);
        double u0 = double.PositiveInfinity, v0 = u0, u1 = -u0, v1 = -u0;
        for (int i = from; i < to; i++)
        {
            Point2 a = Plan(segments[i].A) - origin, b = Plan(segments[i].B) - origin;
            double ua = Point2.Dot(along, a), ub = Point2.Dot(along, b), va = Point2.Cross(along, a), vb = Point2.Cross(along, b);
            (u0, u1) = (Math.Min(u0, Math.Min(ua, ub)), Math.Max(u1, Math.Max(ua, ub)));
            (v0, v1) = (Math.Min(v0, Math.Min(va, vb)), Math.Max(v1, Math.Max(va, vb)));
        }

        var centre = origin + (along * ((u0 + u1) / 2)) + (along.Left * ((v0 + v1) / 2));
        return new(centre, along, (u1 - u0) / 2, (v1 - v0) / 2, from, to, 0, 0);
    }

    // Segments before the middle come first; where all lie on one side they are halved by count.
    private int Part(in Oblong oblong)
    {
        int low = oblong.From, high = oblong.To;
        while (low < high)
        {
            var (a, b, _) = segments[low];
            if (Point2.Dot(oblong.Along, Plan(a) + Plan(b) - (oblong.Centre * 2)) < 0)
            {
                low++;
            }
            else
            {
                high--;
                (segments[low], segments[high]) = (segments[high], segments[low]);
            }
        }

        return low == oblong.From || low == oblong.To ? (oblong.From + oblong.To) / 2 : low;
    }

    private static Point2 Plan(Point3 p) => new(p.X, p.Y);

    private readonly record struct Oblong(Point2 Centre, Point2 Along, double HalfLength, double HalfWidth, int From, int To, int First, int Second);
}
