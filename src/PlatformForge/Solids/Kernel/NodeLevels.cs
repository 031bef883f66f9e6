using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel;

/// <summary>
/// The levels of every plan node: heights of the surfaces of the faces around it, near ones made one. A level is a vertex of the
/// mesh to be. Levels of one node have consecutive numbers from below upwards. Where the order of surfaces over a face or along an
/// edge would be upset by rounding, the levels in question are made one as well, so the mesh closes whatever the numbers.
/// </summary>
internal sealed class NodeLevels
{
    private readonly PlanFaces faces;
    private readonly FaceColumns columns;
    private readonly HashSet<int> meeting = [];
    private readonly bool[] meets;
    private readonly GrowingArray<double> height;
    private readonly GrowingArray<int> nodeOf;
    private readonly double[] heights;
    private readonly int[] nodes;

    public NodeLevels(BlockTable blocks, PlanFaces faces, FaceColumns columns, SideBySide sides)
    {
        (this.faces, this.columns) = (faces, columns);
        meets = new bool[faces.FaceCount];
        CornerStart = GC.AllocateUninitializedArray<int>(faces.Origin.Length);
        int total = 0;
        for (int h = 0; h < faces.Origin.Length; h++)
        {
            CornerStart[h] = total;
            total += columns.Count[faces.Face[h]];
        }

        Corner = GC.AllocateUninitializedArray<int>(total);
        var parts = new LevelNumbers[sides.Parts(total, 2)];
        for (int i = 0; i < parts.Length; i++)
        {
            parts[i] = new(blocks, faces, columns, this, 4 * faces.Plan.NodeCount / parts.Length);
        }

        sides.Run(parts.Length, part => parts[part].Number(SideBySide.Range(part, parts.Length, faces.Plan.NodeCount)));
        (height, nodeOf) = (parts[0].Height, parts[0].NodeOf);
        meeting.UnionWith(parts[0].Meeting);
        for (int i = 1; i < parts.Length; i++)
        {
            Append(parts[i]);
        }

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
    public void Merge(int node, int low, int high) => Merge(node, low, high, meeting);

    /// <summary>The same, with the level noted in a set where boundaries come to share it.</summary>
    public void Merge(int node, int low, int high, HashSet<int> shared)
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
                    shared.Add(low);
                }
            }
        }
    }

    /// <summary>Notes that two boundaries of a face's column have one level at one of its corners; parts may do so at once.</summary>
    public void NoteMeeting(int face) => meets[face] = true;

    public void GiveBack()
    {
        height.GiveBack();
        nodeOf.GiveBack();
    }

    /// <summary>Numbers a part's levels on from those before it.</summary>
    private void Append(LevelNumbers part)
    {
        int before = height.Count;
        part.Height.Span.CopyTo(height.Extend(part.Height.Count));
        part.NodeOf.Span.CopyTo(nodeOf.Extend(part.NodeOf.Count));
        meeting.UnionWith(part.Meeting.Select(level => level + before));
        for (int i = faces.AroundStart[part.Nodes.From]; i < faces.AroundStart[part.Nodes.End]; i++)
        {
            int h = faces.Around[i];
            foreach (ref int level in Corner.AsSpan(CornerStart[h], columns.Count[faces.Face[h]]))
            {
                level += before;
            }
        }

        part.Height.GiveBack();
        part.NodeOf.GiveBack();
    }
}

