using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Levels;

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
    private readonly LevelNumbers numbers;
    private readonly double[] heights;
    private readonly int[] nodes;

    public NodeLevels(BlockTable blocks, PlanFaces faces, FaceColumns columns)
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
        numbers = new(blocks, faces, columns, this);
        numbers.Number();
        (heights, nodes, Count) = (numbers.Height.Items, numbers.NodeOf.Items, numbers.Height.Count);
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
                    NoteMeeting(faces.Face[h], low);
                }
            }
        }
    }

    /// <summary>Notes that two boundaries of a face's column have one level at one of its corners.</summary>
    public void NoteMeeting(int face, int level)
    {
        meets[face] = true;
        meeting.Add(level);
    }

    public void GiveBack()
    {
        numbers.Height.GiveBack();
        numbers.NodeOf.GiveBack();
    }
}
