using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>Least and greatest heights, mm, of blocks' surfaces over their outlines, and which blocks have one that slopes.</summary>
internal sealed class BlockRanges
{
    private readonly BlockTable blocks;

    public BlockRanges(BlockTable blocks)
    {
        this.blocks = blocks;
        Sloped = new bool[blocks.Count];
        for (int i = 0; i < blocks.Count; i++)
        {
            Sloped[i] = blocks.Planes[blocks.Lower[i]].IsSloped || blocks.Planes[blocks.Upper[i]].IsSloped;
            AnySloped |= Sloped[i];
        }

        if (!AnySloped)
        {
            return;
        }

        Lower = new (double, double)[blocks.Count];
        Upper = new (double, double)[blocks.Count];
        for (int i = 0; i < blocks.Count; i++)
        {
            Lower[i] = RangeOver(i, blocks.Planes[blocks.Lower[i]]);
            Upper[i] = RangeOver(i, blocks.Planes[blocks.Upper[i]]);
        }
    }

    public bool[] Sloped { get; }

    public bool AnySloped { get; }

    /// <summary>Ranges of the lower surfaces; empty where nothing slopes.</summary>
    public (double Low, double High)[] Lower { get; } = [];

    public (double Low, double High)[] Upper { get; } = [];

    private (double Low, double High) RangeOver(int block, in GridPlane plane)
    {
        if (!plane.IsSloped)
        {
            return (plane.Z, plane.Z);
        }

        double low = double.MaxValue, high = double.MinValue;
        for (int i = blocks.RingStart[block]; i < blocks.RingStart[block + 1]; i++)
        {
            double z = plane.At(blocks.U[i], blocks.V[i]);
            low = Math.Min(low, z);
            high = Math.Max(high, z);
        }

        return (low, high);
    }
}
