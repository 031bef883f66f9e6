using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel;

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
            var low = Height(blocks.Lower[block], u, v);
            var high = Height(blocks.Upper[block], u, v);
            if (high.Z - low.Z > KernelLimits.SameSurface)
            {
                Apply(low, high, blocks.Adds[block], blocks.Paints[block]);
            }
        }

        Emit(result);
    }

    private Level Height(int plane, double u, double v) => new(plane, blocks.Planes[plane].At(u, v));

    private static bool Above(in Level a, in Level b) => a.Z - b.Z > KernelLimits.SameSurface;

    private static bool Same(in Level a, in Level b) => Math.Abs(a.Z - b.Z) <= KernelLimits.SameSurface;

    /// <summary>Takes the block's range of height out of the pieces that reach into it, what stands under and over it stays, and puts its own there if it
    /// adds.</summary>
    private void Apply(in Level low, in Level high, bool adds, byte paint)
    {
        if (pieces.Length < count + 2)
        {
            Array.Resize(ref pieces, 2 * (count + 2));
        }

        int first = 0;
        while (first < count && !Above(pieces[first].High, low))
        {
            first++;
        }

        int end = first;
        while (end < count && Above(high, pieces[end].Low))
        {
            end++;
        }

        bool under = end > first && Above(low, pieces[first].Low), over = end > first && Above(pieces[end - 1].High, high);
        Piece lower = under ? pieces[first] : default, upper = over ? pieces[end - 1] : default;
        int kept = first + (under ? 1 : 0) + (adds ? 1 : 0) + (over ? 1 : 0);
        if (kept != end)
        {
            Array.Copy(pieces, end, pieces, kept, count - end);
            count += kept - end;
        }

        // Surfaces that a block bares by taking material out show its paint.
        if (under)
        {
            pieces[first++] = lower with { High = low, HighShown = paint };
        }

        if (adds)
        {
            pieces[first++] = new(low, high, paint, paint, paint);
        }

        if (over)
        {
            pieces[first] = upper with { Low = high, LowShown = paint };
        }
    }

    private void Emit(GrowingArray<ColumnBoundary> result)
    {
        for (int i = 0; i < count; i++)
        {
            ref readonly var here = ref pieces[i];
            byte material = (byte)(here.Paint + 1);
            if (i == 0 || !Same(pieces[i - 1].High, here.Low))
            {
                result.Add(new(here.Low.Plane, 0, material, here.LowShown));
            }

            bool touches = i + 1 < count && Same(here.High, pieces[i + 1].Low);
            byte next = touches ? (byte)(pieces[i + 1].Paint + 1) : (byte)0;
            if (next != material)
            {
                result.Add(new(here.High.Plane, material, next, here.HighShown));
            }
        }
    }

    private readonly record struct Level(int Plane, double Z);

    private readonly record struct Piece(Level Low, Level High, byte Paint, byte LowShown, byte HighShown);
}
