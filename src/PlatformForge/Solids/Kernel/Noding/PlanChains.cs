using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>The second half of snap rounding: segments become chains of edges between hot nodes; equal edges become one.</summary>
internal sealed class PlanChains(PlanNodes nodes, int expected)
{
    private readonly PairTable table = new(2 * expected);
    private readonly GrowingArray<(int From, int To)> edges = new(2 * expected);
    private readonly GrowingArray<int> firstParent = new(2 * expected);
    private readonly GrowingArray<(int Segment, int Next)> parents = new(2 * expected);

    /// <summary>Bends all segments through the nodes that they meet.</summary>
    public void Bend(PlanSegment[] segments, int count, SegmentBuckets buckets)
    {
        var hot = new HotNodes(nodes, buckets);
        var bends = new SegmentBends(buckets, hot);
        for (int i = 0; i < count; i++)
        {
            int last = segments[i].From;
            foreach (int node in bends.Of(segments[i], i))
            {
                AddEdge(last, node, i);
                last = node;
            }

            AddEdge(last, segments[i].To, i);
        }

        bends.GiveBack();
        hot.GiveBack();
    }

    public NodedPlan ToPlan(ReadOnlySpan<PlanSegment> segments, ReadOnlySpan<(int Block, int Next)> toggles)
    {
        var (u, v, rank) = Rank();
        int[] from = Plain(edges.Count), to = Plain(edges.Count), toggleStart = new int[edges.Count + 1];
        var traits = new EdgeTraits(edges.Count);
        var toggle = new GrowingArray<int>(2 * edges.Count);
        for (int e = 0; e < edges.Count; e++)
        {
            int a = rank[edges[e].From], b = rank[edges[e].To];
            (from[e], to[e]) = a < b ? (a, b) : (b, a);
            int start = toggle.Count;
            for (int p = firstParent[e]; p >= 0; p = parents[p].Next)
            {
                ref readonly var segment = ref segments[parents[p].Segment];
                traits.Inherit(e, segment, rank);
                for (int t = segment.FirstToggle; t >= 0; t = toggles[t].Next)
                {
                    toggle.Add(toggles[t].Block);
                }
            }

            CancelPairs(toggle, start);
            toggleStart[e + 1] = toggle.Count;
        }

        int[] toggled = toggle.Span.ToArray();
        toggle.GiveBack();
        GiveBack();
        return traits.Plan(u, v, from, to, toggleStart, toggled);
    }

    private void GiveBack()
    {
        table.GiveBack();
        edges.GiveBack();
        firstParent.GiveBack();
        parents.GiveBack();
    }

    // What edges take over from the segments that run along them: of the longest line its number, and the walls named on either side.
    private readonly struct EdgeTraits(int count)
    {
        private readonly int[] line = Plain(count);
        private readonly double[] lineLength = new double[count];
        private readonly WallName[] right = new WallName[count], left = new WallName[count];

        public void Inherit(int edge, in PlanSegment segment, int[] rank)
        {
            if (segment.LineLength >= lineLength[edge])
            {
                (line[edge], lineLength[edge]) = (segment.Line, segment.LineLength);
            }

            if (segment.OnRight.Face + segment.OnLeft.Face > 0)
            {
                // A straight segment's nodes are in the order of its ends.
                bool ahead = rank[segment.From] < rank[segment.To];
                var (onRight, onLeft) = ahead ? (segment.OnRight, segment.OnLeft) : (segment.OnLeft, segment.OnRight);
                (right[edge], left[edge]) = (onRight.Face > 0 ? onRight : right[edge], onLeft.Face > 0 ? onLeft : left[edge]);
            }
        }

        public NodedPlan Plan(int[] u, int[] v, int[] from, int[] to, int[] toggleStart, int[] toggle) => new()
        {
            U = u,
            V = v,
            From = from,
            To = to,
            ToggleStart = toggleStart,
            Toggle = toggle,
            Line = line,
            LineLength = lineLength,
            OnRight = right,
            OnLeft = left,
        };
    }

    // All of it is written at once.
    private static int[] Plain(int length) => GC.AllocateUninitializedArray<int>(length);

    private void AddEdge(int a, int b, int segment)
    {
        int edge = table.Enter(Math.Min(a, b), Math.Max(a, b), out bool isNew);
        if (isNew)
        {
            edges.Add((a, b));
            firstParent.Add(-1);
        }

        parents.Add((segment, firstParent[edge]));
        firstParent[edge] = parents.Count - 1;
    }

    /// <summary>Numbers the nodes by (u, v).</summary>
    private (int[] U, int[] V, int[] Rank) Rank()
    {
        int n = nodes.Count;
        int[] order = GridOrder.Of(nodes.Places);
        int[] u = Plain(n), v = Plain(n), rank = Plain(n);
        for (int i = 0; i < n; i++)
        {
            rank[order[i]] = i;
            (u[i], v[i]) = nodes[order[i]];
        }

        return (u, v, rank);
    }

    /// <summary>An outline that runs along an edge twice does not part inside from outside there.</summary>
    private static void CancelPairs(GrowingArray<int> toggle, int start)
    {
        var slice = toggle.Span[start..];
        if (slice.Length < 2)
        {
            return;
        }

        for (int i = 1; i < slice.Length; i++)
        {
            int block = slice[i], j = i;
            for (; j > 0 && slice[j - 1] > block; j--)
            {
                slice[j] = slice[j - 1];
            }

            slice[j] = block;
        }

        int kept = start;
        for (int i = 0; i < slice.Length; i++)
        {
            if (i + 1 < slice.Length && slice[i] == slice[i + 1])
            {
                i++;
            }
            else
            {
                toggle[kept++] = slice[i];
            }
        }

        toggle.Shrink(kept);
    }
}
