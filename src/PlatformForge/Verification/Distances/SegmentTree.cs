using PlatformForge.Clearance;
using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>
/// Segments in plan, sorted into circles within circles, so that the nearest to an outline is found by looking at a few.
/// </summary>
internal sealed class SegmentTree
{
    private const int Leaf = 4;

    // Deeper than this, halves are taken by count, which ends within 31 more.
    private const int UnevenDepth = 30;
    private const int MostOpen = 64;

    private readonly PlanSegment[] segments;
    private readonly List<Node> growing = [];
    private readonly Node[] nodes;

    public SegmentTree(PlanSegment[] segments)
    {
        this.segments = segments;
        if (segments.Length > 0)
        {
            Grow(0, segments.Length, 0);
        }

        nodes = [.. growing];
        growing.Clear();
    }

    public int Count => segments.Length;

    /// <summary>
    /// The segment nearest to an outline on a carrier, if it is nearer than <paramref name="bound"/> mm.
    /// </summary>
    /// <param name="outline">The outline in the carrier's frame.</param>
    /// <param name="pose">Where the carrier stands.</param>
    /// <param name="bound">What is to be beaten; lowered to the distance found.</param>
    /// <param name="nearest">The point of the segment that is nearest; untouched when there is none.</param>
    /// <returns>Index of the section that is nearest, or -1.</returns>
    public int Nearest(OutlineDistance outline, in CarrierPose pose, ref double bound, ref Point3 nearest)
    {
        int section = -1;
        if (nodes.Length == 0)
        {
            return section;
        }

        Span<int> open = stackalloc int[MostOpen];
        int waiting = 1;
        open[0] = 0;
        while (waiting > 0)
        {
            ref readonly var node = ref nodes[open[--waiting]];
            if (outline.AtLeast(Local(pose, node.Centre)) - node.Radius >= bound)
            {
                continue;
            }

            if (node.Second > 0)
            {
                open[waiting++] = node.Second;
                open[waiting++] = node.First;
                continue;
            }

            for (int i = node.From; i < node.To; i++)
            {
                var (a, b, owner) = segments[i];
                double distance = outline.Least(Local(pose, new(a.X, a.Y)), Local(pose, new(b.X, b.Y)), out double place);
                if (distance < bound)
                {
                    (bound, nearest, section) = (distance, a + ((b - a) * place), owner);
                }
            }
        }

        return section;
    }

    private static Point2 Local(in CarrierPose pose, Point2 p)
    {
        var off = p - pose.Origin;
        return new(Point2.Dot(pose.Forward, off), Point2.Cross(pose.Forward, off));
    }

    private int Grow(int from, int to, int depth)
    {
        double x0 = double.PositiveInfinity, y0 = x0, x1 = -x0, y1 = -x0;
        for (int i = from; i < to; i++)
        {
            var (a, b, _) = segments[i];
            (x0, x1) = (Math.Min(x0, Math.Min(a.X, b.X)), Math.Max(x1, Math.Max(a.X, b.X)));
            (y0, y1) = (Math.Min(y0, Math.Min(a.Y, b.Y)), Math.Max(y1, Math.Max(a.Y, b.Y)));
        }

        var centre = new Point2((x0 + x1) / 2, (y0 + y1) / 2);
        double radius = new Point2(x1 - x0, y1 - y0).Length / 2;
        int me = growing.Count;
        growing.Add(new(centre, radius, from, to, 0, 0));
        if (to - from > Leaf)
        {
            int middle = depth < UnevenDepth ? Part(from, to, x1 - x0 >= y1 - y0, centre) : (from + to) / 2;
            int first = Grow(from, middle, depth + 1), second = Grow(middle, to, depth + 1);
            growing[me] = new(centre, radius, from, to, first, second);
        }

        return me;
    }

    // Segments on the low side of the middle come first; where all lie on one side they are halved by count.
    private int Part(int from, int to, bool alongX, Point2 centre)
    {
        int low = from, high = to;
        while (low < high)
        {
            var (a, b, _) = segments[low];
            bool isLow = alongX ? a.X + b.X < 2 * centre.X : a.Y + b.Y < 2 * centre.Y;
            if (isLow)
            {
                low++;
            }
            else
            {
                high--;
                (segments[low], segments[high]) = (segments[high], segments[low]);
            }
        }

        return low == from || low == to ? (from + to) / 2 : low;
    }

    private readonly record struct Node(Point2 Centre, double Radius, int From, int To, int First, int Second);
}
