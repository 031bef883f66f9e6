using System.Runtime.CompilerServices;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Levels;

/// <summary>
/// Applies blocks to a column of air in order. Material keeps the paint of the last block that put it there; where a block was
/// taken out, what it lays bare shows the paint of that block.
/// </summary>
internal sealed class ColumnStack(BlockTable blocks)
{
    private Piece[] pieces = new Piece[8];
    private int count;

    /// <summary>The boundaries of the column over a point that stands for its face, from below upwards.</summary>
    public void Build(ReadOnlySpan<int> covering, double u, double v, GrowingArray<ColumnBoundary> result)
    {
        count = 0;
        foreach (int block in covering)
        {
            int lower = blocks.Lower[block], upper = blocks.Upper[block];
            double low = blocks.Planes[lower].At(u, v), high = blocks.Planes[upper].At(u, v);
            if (Above(high, low))
            {
                Apply(new(low, high, lower, upper, blocks.Paints[block]), blocks.Adds[block]);
            }
        }

        Emit(result);
    }

    private static bool Above(double a, double b) => a - b > KernelLimits.SameSurface;

    private static bool Same(double a, double b) => Math.Abs(a - b) <= KernelLimits.SameSurface;

    /// <summary>Takes the block's range of height out of the pieces that reach into it, what stands under and over it stays, and puts its own there if it
    /// adds. Pieces are looked through from above: blocks mostly come from below upwards.</summary>
    private void Apply(in Piece block, bool adds)
    {
        if (pieces.Length < count + 2)
        {
            Array.Resize(ref pieces, 2 * (count + 2));
        }

        var all = pieces;
        var (first, end) = Reached(block);
        bool under = end > first && Above(block.Low, all[first].Low), over = end > first && Above(all[end - 1].High, block.High);
        int kept = first + (under ? 1 : 0) + (adds ? 1 : 0), upper = kept + (over ? 1 : 0);
        Piece cut = over ? all[end - 1] : default;
        if (upper != end && end < count)
        {
            Array.Copy(all, end, all, upper, count - end);
        }

        count += upper - end;

        // Surfaces that a block bares by taking material out show its paint.
        if (over)
        {
            all[kept] = new(block.High, cut.High, block.HighPlane, cut.HighPlane, cut.Paint) { LowShown = block.Paint, HighShown = cut.HighShown };
        }

        if (adds)
        {
            all[kept - 1] = block;
        }

        if (under)
        {
            ref var below = ref all[first];
            (below.High, below.HighPlane, below.HighShown) = (block.Low, block.LowPlane, block.Paint);
        }
    }

    // The pieces that reach into a block's range of height.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private (int First, int End) Reached(in Piece block)
    {
        int first = count, end = count;
        while (first > 0 && Above(pieces[first - 1].High, block.Low))
        {
            first--;
        }

        while (end > first && !Above(block.High, pieces[end - 1].Low))
        {
            end--;
        }

        return (first, end);
    }

    private void Emit(GrowingArray<ColumnBoundary> result)
    {
        for (int i = 0; i < count; i++)
        {
            ref readonly var here = ref pieces[i];
            byte material = (byte)(here.Paint + 1);
            if (i == 0 || !Same(pieces[i - 1].High, here.Low))
            {
                result.Add(new(here.LowPlane, 0, material, here.LowShown));
            }

            bool touches = i + 1 < count && Same(here.High, pieces[i + 1].Low);
            byte next = touches ? (byte)(pieces[i + 1].Paint + 1) : (byte)0;
            if (next != material)
            {
                result.Add(new(here.HighPlane, material, next, here.HighShown));
            }
        }
    }

    /// <summary>Material between two heights, with the planes they are of and what its lower and upper surfaces show.</summary>
    private struct Piece(double low, double high, int lowPlane, int highPlane, byte paint)
    {
        public double Low = low, High = high;
        public int LowPlane = lowPlane, HighPlane = highPlane;
        public byte Paint = paint, LowShown = paint, HighShown = paint;
    }
}
