using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>The blocks laid out in arrays: rings in grid coordinates, planes without repeats, boxes.</summary>
internal sealed class BlockTable
{
    public BlockTable(IReadOnlyList<ColumnBlock> blocks)
    {
        Count = blocks.Count;
        Frame = FrameOf(blocks);
        RingStart = new int[Count + 1];
        for (int i = 0; i < Count; i++)
        {
            int length = blocks[i].Outline.Length;
            if (length < 3)
            {
                throw new BrokenInvariantException($"Solids: the outline of block {i} has {length} points; a ring has at least three.");
            }

            RingStart[i + 1] = RingStart[i] + length;
        }

        U = new double[RingStart[Count]];
        V = new double[RingStart[Count]];
        WallFace = new int[RingStart[Count]];
        Lower = new int[Count];
        Upper = new int[Count];
        Adds = new bool[Count];
        Paints = new byte[Count];
        Boxes = new PlanBox[Count];
        var known = new Dictionary<HeightPlane, int>(Count);
        var planes = new GrowingArray<GridPlane>(Count);
        for (int i = 0; i < Count; i++)
        {
            var block = blocks[i];
            Adds[i] = block.Action == BlockAction.Add;
            Paints[i] = (byte)block.Paint;
            Lower[i] = Enter(block.Lower, known, planes);
            Upper[i] = Enter(block.Upper, known, planes);
            LayRing(i, block.Outline);
            LayFaces(i, block.WallFaces);
        }

        Planes = planes.Span.ToArray();
    }

    public int Count { get; }

    public GridFrame Frame { get; }

    /// <summary>Ring i is U and V from RingStart[i] up to RingStart[i + 1].</summary>
    public int[] RingStart { get; }

    public double[] U { get; }

    public double[] V { get; }

    /// <summary>Number of the named wall face that the side from each corner on makes; nought for none.</summary>
    public int[] WallFace { get; }

    /// <summary>Names of wall faces; number i is name i − 1.</summary>
    public List<string> FaceNames { get; } = [];

    public int[] Lower { get; }

    public int[] Upper { get; }

    public bool[] Adds { get; }

    public byte[] Paints { get; }

    public PlanBox[] Boxes { get; }

    public GridPlane[] Planes { get; }

    private static GridFrame FrameOf(IReadOnlyList<ColumnBlock> blocks)
    {
        double lowX = double.MaxValue, lowY = double.MaxValue, highX = double.MinValue, highY = double.MinValue;
        for (int i = 0; i < blocks.Count; i++)
        {
            foreach (var p in blocks[i].Outline)
            {
                lowX = Math.Min(lowX, p.X);
                lowY = Math.Min(lowY, p.Y);
                highX = Math.Max(highX, p.X);
                highY = Math.Max(highY, p.Y);
            }
        }

        return lowX <= highX ? new(new(lowX, lowY), new(highX, highY)) : new(default, default);
    }

    private int Enter(HeightPlane plane, Dictionary<HeightPlane, int> known, GrowingArray<GridPlane> planes)
    {
        if (!known.TryGetValue(plane, out int id))
        {
            id = planes.Count;
            known.Add(plane, id);
            planes.Add(Frame.ToGrid(plane));
        }

        return id;
    }

    private void LayFaces(int block, IReadOnlyList<string?> names)
    {
        for (int i = 0; i < Math.Min(names.Count, RingStart[block + 1] - RingStart[block]); i++)
        {
            if (names[i] is { } name)
            {
                int known = FaceNames.IndexOf(name);
                if (known < 0)
                {
                    FaceNames.Add(name);
                    known = FaceNames.Count - 1;
                }

                WallFace[RingStart[block] + i] = known + 1;
            }
        }
    }

    private void LayRing(int block, Point2[] outline)
    {
        double lowU = double.MaxValue, lowV = double.MaxValue, highU = double.MinValue, highV = double.MinValue;
        int at = RingStart[block];
        foreach (var p in outline)
        {
            var (u, v) = Frame.ToGrid(p);
            U[at] = u;
            V[at++] = v;
            lowU = Math.Min(lowU, u);
            lowV = Math.Min(lowV, v);
            highU = Math.Max(highU, u);
            highV = Math.Max(highV, v);
        }

        Boxes[block] = new(lowU, lowV, highU, highV);
    }
}
