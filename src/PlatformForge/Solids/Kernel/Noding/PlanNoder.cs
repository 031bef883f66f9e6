using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>
/// Snap rounding: gathers outlines and crossing lines as they come and hands out a planar graph on grid nodes. Every end and
/// every crossing makes a grid node hot; every segment is bent through the hot nodes whose pixel it meets, judged by where the
/// segment ran before anything was rounded. So lines that overlapped before still do so afterwards, and no point moves further
/// than half a step along either axis.
/// </summary>
internal sealed class PlanNoder(int expected)
{
    private readonly PlanNodes nodes = new(expected);
    private readonly PairTable known = new(expected);
    private readonly GrowingArray<PlanSegment> segments = new(expected);
    private readonly GrowingArray<(int Block, int Next)> toggles = new(2 * expected);

    public int SegmentCount => segments.Count;

    public void AddRing(BlockTable blocks, int block)
    {
        int start = blocks.RingStart[block], end = blocks.RingStart[block + 1];
        double lastU = blocks.U[end - 1], lastV = blocks.V[end - 1];
        int lastNode = nodes.Enter(lastU, lastV);
        for (int i = start; i < end; i++)
        {
            double u = blocks.U[i], v = blocks.V[i];
            int node = nodes.Enter(u, v), segment = Segment(lastU, lastV, u, v, lastNode, node);
            if (segment >= 0)
            {
                AddToggle(segment, block);
                Name(segment, lastNode, blocks.WallFace[i == start ? end - 1 : i - 1], blocks.Adds[block], blocks.Paints[block]);
            }

            (lastU, lastV, lastNode) = (u, v, node);
        }
    }

    /// <summary>A line that bounds no block: where two surfaces cross.</summary>
    public void AddLine(double fromU, double fromV, double toU, double toV) =>
        Segment(fromU, fromV, toU, toV, nodes.Enter(fromU, fromV), nodes.Enter(toU, toV));

    /// <summary>
    /// A point on an edge of an earlier plan through which the edge shall run. Edges were bent by rounding, so the point is first
    /// moved onto the nearest segment as it came; otherwise that might miss the node.
    /// </summary>
    public void AddPoint(double u, double v)
    {
        double nearest = KernelLimits.BentBy * KernelLimits.BentBy, bestU = u, bestV = v;
        foreach (ref readonly var s in segments.Span)
        {
            double part = (((u - s.StartU) * s.AheadU) + ((v - s.StartV) * s.AheadV)) / ((s.AheadU * s.AheadU) + (s.AheadV * s.AheadV));
            double onU = s.StartU + (part * s.AheadU), onV = s.StartV + (part * s.AheadV), square = ((onU - u) * (onU - u)) + ((onV - v) * (onV - v));
            if (part > 0 && part < 1 && square < nearest)
            {
                (nearest, bestU, bestV) = (square, onU, onV);
            }
        }

        nodes.Enter(bestU, bestV);
    }

    /// <summary>An edge of an earlier plan, to be noded once more.</summary>
    public void AddEdge(NodedPlan plan, int edge)
    {
        int a = plan.From[edge], b = plan.To[edge];
        int from = nodes.Enter(plan.U[a], plan.V[a]), to = nodes.Enter(plan.U[b], plan.V[b]);
        int segment = Segment(plan.U[a], plan.V[a], plan.U[b], plan.V[b], from, to);
        ref var s = ref segments[segment];
        (s.Line, s.LineLength) = (plan.Line[edge], plan.LineLength[edge]);
        (s.OnRight, s.OnLeft) = s.From == from ? (plan.OnRight[edge], plan.OnLeft[edge]) : (plan.OnLeft[edge], plan.OnRight[edge]);
        foreach (int block in plan.Toggles(edge))
        {
            AddToggle(segment, block);
        }
    }

    /// <summary>Nodes what was added, once.</summary>
    public NodedPlan Node()
    {
        var buckets = new SegmentBuckets(segments.Span);
        FindCrossings(buckets);
        var chains = new PlanChains(nodes, segments.Count);
        chains.Bend(segments.Items, segments.Count, buckets);
        var plan = chains.ToPlan(segments.Span, toggles.Span);
        buckets.GiveBack();
        nodes.GiveBack();
        known.GiveBack();
        segments.GiveBack();
        toggles.GiveBack();
        return plan;
    }

    private int Segment(double fromU, double fromV, double toU, double toV, int from, int to)
    {
        if (from == to)
        {
            return -1;
        }

        int segment = known.Enter(Math.Min(from, to), Math.Max(from, to), out bool isNew);
        if (isNew)
        {
            segments.Add(new(fromU, fromV, toU, toV, from, to, segments.Count));
        }

        return segment;
    }

    /// <summary>A block that is put in place has its walls look out of its ring, to the right of its sides; one that is taken out leaves walls that look
    /// in.</summary>
    private void Name(int segment, int fromNode, int face, bool adds, byte paint)
    {
        if (face == 0)
        {
            return;
        }

        ref var s = ref segments[segment];
        if ((s.From == fromNode) == adds)
        {
            s.OnRight = new(face, paint);
        }
        else
        {
            s.OnLeft = new(face, paint);
        }
    }

    private void AddToggle(int segment, int block)
    {
        toggles.Add((block, segments[segment].FirstToggle));
        segments[segment].FirstToggle = toggles.Count - 1;
    }

    /// <summary>Every crossing makes a node hot.</summary>
    private void FindCrossings(SegmentBuckets buckets)
    {
        var (start, member) = buckets.BySegments();
        var crossings = new SegmentCrossings(segments.Items, start, member);
        crossings.Find(buckets.Count);
        foreach (var (u, v) in crossings.Found.Span)
        {
            nodes.Enter(u, v);
        }

        crossings.GiveBack();
    }
}
