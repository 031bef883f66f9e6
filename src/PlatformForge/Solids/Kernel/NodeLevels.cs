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
    private readonly int[] stamp, place;

    public NodeLevels(BlockTable blocks, PlanFaces faces, FaceColumns columns)
    {
        (this.blocks, this.faces, this.columns) = (blocks, faces, columns);
        height = new(4 * faces.Plan.NodeCount);
        nodeOf = new(4 * faces.Plan.NodeCount);
        stamp = new int[blocks.Planes.Length];
        place = new int[blocks.Planes.Length];
        CornerStart = new int[faces.Origin.Length];
        int total = 0;
        for (int h = 0; h < faces.Origin.Length; h++)
        {
            CornerStart[h] = total;
            total += columns.Count[faces.Face[h]];
        }

        Corner = new int[total];
        Array.Fill(stamp, -1);
        var scratch = new GrowingArray<(double Z, double Slack, int Plane)>(32);
        for (int node = 0; node < faces.Plan.NodeCount; node++)
        {
            Gather(node, scratch);
            Number(node, scratch.Span);
            Assign(node);
        }

        scratch.GiveBack();
    }

    /// <summary>Levels of the corner where half-edge h starts: one for each boundary of its face, from CornerStart[h].</summary>
    public int[] CornerStart { get; }

    public int[] Corner { get; }

    public int Count => height.Count;

    public double Height(int level) => height[level];

    /// <summary>The plan node over which a level lies.</summary>
    public int NodeOf(int level) => nodeOf[level];

    public ReadOnlySpan<int> Of(int halfEdge) => Corner.AsSpan(CornerStart[halfEdge], columns.Count[faces.Face[halfEdge]]);

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
                }
            }
        }
    }

    public void GiveBack()
    {
        height.GiveBack();
        nodeOf.GiveBack();
    }

    private void Gather(int node, GrowingArray<(double Z, double Slack, int Plane)> found)
    {
        found.Clear();
        double u = faces.Plan.U[node], v = faces.Plan.V[node];
        for (int i = faces.AroundStart[node]; i < faces.AroundStart[node + 1]; i++)
        {
            foreach (ref readonly var boundary in columns.Of(faces.Face[faces.Around[i]]))
            {
                if (stamp[boundary.Plane] != node)
                {
                    stamp[boundary.Plane] = node;
                    ref readonly var plane = ref blocks.Planes[boundary.Plane];
                    found.Add((plane.At(u, v), plane.Slack, boundary.Plane));
                }
            }
        }

        var span = found.Span;
        for (int i = 1; i < span.Length; i++)
        {
            var item = span[i];
            int j = i;
            for (; j > 0 && (span[j - 1].Z > item.Z || (span[j - 1].Z == item.Z && span[j - 1].Plane > item.Plane)); j--)
            {
                span[j] = span[j - 1];
            }

            span[j] = item;
        }
    }

    /// <summary>Makes heights that differ by less than rounding can do one level; the flattest of its planes gives its height.</summary>
    private void Number(int node, ReadOnlySpan<(double Z, double Slack, int Plane)> sorted)
    {
        for (int i = 0; i < sorted.Length;)
        {
            int flattest = i, last = i;
            place[sorted[i].Plane] = height.Count;
            while (last + 1 < sorted.Length
                && sorted[last + 1].Z - sorted[last].Z <= KernelLimits.SameLevel + sorted[last].Slack + sorted[last + 1].Slack)
            {
                last++;
                place[sorted[last].Plane] = height.Count;
                flattest = sorted[last].Slack < sorted[flattest].Slack ? last : flattest;
            }

            height.Add(sorted[flattest].Z);
            nodeOf.Add(node);
            i = last + 1;
        }
    }

    private void Assign(int node)
    {
        for (int i = faces.AroundStart[node]; i < faces.AroundStart[node + 1]; i++)
        {
            int h = faces.Around[i], at = CornerStart[h];
            foreach (ref readonly var boundary in columns.Of(faces.Face[h]))
            {
                Corner[at++] = place[boundary.Plane];
            }
        }

        for (int i = faces.AroundStart[node]; i < faces.AroundStart[node + 1]; i++)
        {
            KeepOrder(node, faces.Around[i]);
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
