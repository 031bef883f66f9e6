using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Levels;

/// <summary>Finds and numbers the levels of all nodes, from nought on.</summary>
internal sealed class LevelNumbers
{
    private readonly BlockTable blocks;
    private readonly PlanFaces faces;
    private readonly FaceColumns columns;
    private readonly NodeLevels levels;
    private readonly int[] stamp, place;

    /// <param name="blocks">The blocks.</param>
    /// <param name="faces">The plan.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="levels">Takes the corners' levels.</param>
    public LevelNumbers(BlockTable blocks, PlanFaces faces, FaceColumns columns, NodeLevels levels)
    {
        (this.blocks, this.faces, this.columns, this.levels) = (blocks, faces, columns, levels);
        Height = new(4 * faces.Plan.NodeCount);
        NodeOf = new(4 * faces.Plan.NodeCount);
        stamp = new int[blocks.Planes.Length];
        place = new int[blocks.Planes.Length];
    }

    /// <summary>Height of each level, mm.</summary>
    public GrowingArray<double> Height { get; }

    /// <summary>The node over which each lies.</summary>
    public GrowingArray<int> NodeOf { get; }

    public void Number()
    {
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
            place[sorted[i].Plane] = Height.Count;
            while (last + 1 < sorted.Length)
            {
                double next = blocks.Planes[sorted[last + 1].Plane].Slack;
                if (sorted[last + 1].Z - sorted[last].Z > KernelLimits.SameLevel + slack + next)
                {
                    break;
                }

                last++;
                slack = next;
                place[sorted[last].Plane] = Height.Count;
                (flattest, least) = slack < least ? (last, slack) : (flattest, least);
            }

            Height.Add(sorted[flattest].Z);
            NodeOf.Add(node);
            i = last + 1;
        }
    }

    /// <summary>Gives each corner its levels; false where those of one do not ascend.</summary>
    private bool Assign(int node)
    {
        bool ascending = true;
        int[] places = place, corner = levels.Corner;
        foreach (int h in faces.AroundNode(node))
        {
            int at = levels.CornerStart[h], last = -1;
            foreach (ref readonly var boundary in columns.Of(faces.Face[h]))
            {
                int level = places[boundary.Plane];
                corner[at++] = level;
                ascending &= level >= last;
                if (level == last)
                {
                    levels.NoteMeeting(faces.Face[h], level);
                }

                last = level;
            }
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
        int start = levels.CornerStart[halfEdge], count = columns.Count[faces.Face[halfEdge]];
        int[] corner = levels.Corner;
        for (int k = start + 1; k < start + count; k++)
        {
            if (corner[k] < corner[k - 1])
            {
                levels.Merge(node, corner[k], corner[k - 1]);
                k = start;
            }
        }
    }
}
