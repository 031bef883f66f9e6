using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>Least and greatest heights, mm, of blocks' surfaces over their outlines, and which blocks have one that slopes.</summary>
internal sealed class BlockRanges
{
    private const int Row = 4;

    private readonly BlockTable blocks;

    // A row for each block: the least heights of its lower and of its upper surface, and their greatest ones less what makes two surfaces one.
    private readonly double[] rows = [];

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

        rows = new double[Row * blocks.Count];
        for (int i = 0; i < blocks.Count; i++)
        {
            var lower = RangeOver(i, blocks.Planes[blocks.Lower[i]]);
            var upper = RangeOver(i, blocks.Planes[blocks.Upper[i]]);
            (rows[Row * i], rows[(Row * i) + 1]) = (lower.Low, upper.Low);
            (rows[(Row * i) + 2], rows[(Row * i) + 3]) = (lower.High - KernelLimits.SameSurface, upper.High - KernelLimits.SameSurface);
        }
    }

    public bool[] Sloped { get; }

    public bool AnySloped { get; }

    /// <summary>
    /// Which surfaces of two blocks share heights, a bit for each pair from the lowest on: lower and lower, lower and upper, upper and lower, upper and
    /// upper. To be asked only where any slopes.
    /// </summary>
    public uint Overlaps(int a, int b)
    {
        ref double first = ref MemoryMarshal.GetArrayDataReference(rows);
        Vector256<double> ofA = Vector256.LoadUnsafe(ref first, (nuint)(Row * a)), ofB = Vector256.LoadUnsafe(ref first, (nuint)(Row * b));
        Vector256<double> lowA = Vector256.Shuffle(ofA, Vector256.Create(0L, 0, 1, 1)), highA = Vector256.Shuffle(ofA, Vector256.Create(2L, 2, 3, 3));
        Vector256<double> lowB = Vector256.Shuffle(ofB, Vector256.Create(0L, 1, 0, 1)), highB = Vector256.Shuffle(ofB, Vector256.Create(2L, 3, 2, 3));
        return (Vector256.LessThan(lowA, highB) & Vector256.LessThan(lowB, highA)).ExtractMostSignificantBits();
    }

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
