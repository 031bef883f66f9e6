using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel;

/// <summary>
/// The levels of every plan node: heights of the surfaces of the faces around it, near ones made one. A level is a vertex of the
/// mesh to be. Levels of one node have consecutive numbers from below upwards. Where the order of surfaces over a face or along an
/// edge would be upset by rounding, the levels in question are made one as well, so the mesh closes whatever the numbers.
/// </summary>
internal sealed class NodeLevels
{
    private readonly BlockTable blocks;
    private readonly PlanFaces faces;
    private readonly FaceColumns columns;
    private readonly GrowingArray<double> height;
    private readonly GrowingArray<int> nodeOf;
    private readonly HashSet<int> meeting = [];
    private readonly int[] stamp, place;
    private readonly bool[] meets;
    private readonly double[] heights;
    private readonly int[] nodes;

    public NodeLevels(BlockTable blocks, PlanFaces faces, FaceColumns columns)
    {
        (this.blocks, this.faces, this.columns) = (blocks, faces, columns);
        height = new(4 * faces.Plan.NodeCount);
        nodeOf = new(4 * faces.Plan.NodeCount);
        stamp = new int[blocks.Planes.Length];
        place = new int[blocks.Planes.Length];
        meets = new bool[faces.FaceCount];
        CornerStart = new int[faces.Origin.Length];
        int total = 0;
        for (int h = 0; h < faces.Origin.Length; h++)
        {
            CornerStart[h] = total;
            total += columns.Count[faces.Face[h]];
        }

        Corner = new int[total];
        Array.Fill(stamp, -1);
        var scratch = new GrowingArray<(double Z, int Plane)>(32);
        for (int node = 0; node < faces.Plan.NodeCount; node++)
        {
            Gather(node, scratch);
            Number(node, scratch.Span);
            if (!Assign(node))
            {
                KeepOrder(node);
            }
        }

        scratch.GiveBack();
        (heights, nodes, Count) = (height.Items, nodeOf.Items, height.Count);
    }

    /// <summary>Levels of the corner where half-edge h starts: one for each boundary of its face, from CornerStart[h].</summary>
    public int[] CornerStart { get; }

    public int[] Corner { get; }

    public int Count { get; }

    public double Height(int level) => heights[level];

    /// <summary>The plan node over which a level lies.</summary>
    public int NodeOf(int level) => nodes[level];

    /// <summary>Whether two boundaries of a face's column have one level at one of its corners.</summary>
    public bool Meet(int face) => meets[face];

    public ReadOnlySpan<int> Of(int halfEdge) => Corner.AsSpan(CornerStart[halfEdge], columns.Count[faces.Face[halfEdge]]);

    /// <summary>Levels that two boundaries of one column share.</summary>
    public IReadOnlySet<int> Meeting => meeting;

    /// <summary>Makes all levels of a node from one to another the lower one.</summary>
    public void Merge(int node, int low, int high)
    {
        for (int i = faces.AroundStart[node]; i < faces.AroundStart[node + 1]; i++)
        {
            int h = faces.Around[i], start = CornerStart[h];
            for (int k = start; k < start + columns.Count[faces.Face[h]]; k++)
            {
                if (Corner[k] > low && Corner[k] <= high)
                {
                    Corner[k] = low;
                    meets[faces.Face[h]] = true;
                    meeting.Add(low);
                }
            }
        }
    }

    public void GiveBack()
    {
        height.GiveBack();
        nodeOf.GiveBack();
    }

    /// <summary>The surfaces of all faces around a node by their heights there.</summary>
    private void Gather(int node, GrowingArray<(double Z, int Plane)> found)
    {
        found.Clear();
        double u = faces.Plan.U[node], v = faces.Plan.V[node];
        var planes = blocks.Planes;
        int[] stamps = stamp;
        foreach (int h in faces.AroundNode(node))
        {
            foreach (ref readonly var boundary in columns.Of(faces.Face[h]))
            {
                if (stamps[boundary.Plane] != node)
                {
                    stamps[boundary.Plane] = node;
                    Insert(found, planes[boundary.Plane].At(u, v), boundary.Plane);
                }
            }
        }
    }

    private static void Insert(GrowingArray<(double Z, int Plane)> sorted, double z, int plane)
    {
        sorted.Add((z, plane));
        var span = sorted.Span;
        int j = span.Length - 1;
        for (; j > 0 && (span[j - 1].Z > z || (span[j - 1].Z == z && span[j - 1].Plane > plane)); j--)
        {
            span[j] = span[j - 1];
        }

        span[j] = (z, plane);
    }

    /// <summary>Makes heights that differ by less than rounding can do one level; the flattest of its planes gives its height.</summary>
    private void Number(int node, ReadOnlySpan<(double Z, int Plane)> sorted)
    {
        for (int i = 0; i < sorted.Length;)
        {
            int flattest = i, last = i;
            double slack = blocks.Planes[sorted[i].Plane].Slack, least = slack;
            place[sorted[i].Plane] = height.Count;
            while (last + 1 < sorted.Length)
            {
                double next = blocks.Planes[sorted[last + 1].Plane].Slack;
                if (sorted[last + 1].Z - sorted[last].Z > KernelLimits.SameLevel + slack + next)
                {
                    break;
                }

                last++;
                slack = next;
                place[sorted[last].Plane] = height.Count;
                (flattest, least) = slack < least ? (last, slack) : (flattest, least);
            }

            height.Add(sorted[flattest].Z);
            nodeOf.Add(node);
            i = last + 1;
        }
    }

    /// <summary>Gives each corner its levels; false where those of one do not ascend.</summary>
    private bool Assign(int node)
    {
        bool ascending = true;
        int[] places = place, corner = Corner;
        foreach (int h in faces.AroundNode(node))
        {
            int at = CornerStart[h], last = -1;
            bool apart = true;
            foreach (ref readonly var boundary in columns.Of(faces.Face[h]))
            {
                int level = places[boundary.Plane];
                corner[at++] = level;
                ascending &= level >= last;
                if (level == last)
                {
                    apart = false;
                    meeting.Add(level);
                }

                last = level;
            }

            meets[faces.Face[h]] |= !apart;
        }

        return ascending;
    }

    private void KeepOrder(int node)
    {
        foreach (int h in faces.AroundNode(node))
        {
            KeepOrder(node, h);
        }
    }

    private void KeepOrder(int node, int halfEdge)
    {
        int start = CornerStart[halfEdge], count = columns.Count[faces.Face[halfEdge]];
        for (int k = start + 1; k < start + count; k++)
        {
            if (Corner[k] < Corner[k - 1])
            {
                Merge(node, Corner[k], Corner[k - 1]);
                k = start;
            }
        }
    }
}
