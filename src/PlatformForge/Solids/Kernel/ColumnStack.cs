using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel;

/// <summary>
/// Applies blocks to a column of air in order. Material keeps the paint of the last block that put it there; where a block was
/// taken out, what it lays bare shows the paint of that block.
/// </summary>
internal sealed class ColumnStack(BlockTable blocks)
{
    private Piece[] pieces = new Piece[8], spare = new Piece[8];
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

    private void Apply(in Level low, in Level high, bool adds, byte paint)
    {
        if (spare.Length < count + 2)
        {
            Array.Resize(ref spare, 2 * (count + 2));
        }

        int kept = 0;
        bool placed = !adds;
        for (int i = 0; i < count; i++)
        {
            ref readonly var old = ref pieces[i];
            if (!placed && Above(old.High, high) && !Above(low, old.Low))
            {
                Place(ref kept, low, high, paint);
                placed = true;
            }

            if (!Above(old.High, low) || !Above(high, old.Low))
            {
                spare[kept++] = old;
                continue;
            }

            if (Above(low, old.Low))
            {
                // What stands under the block's lower surface; that surface is bared if the block takes material out.
                spare[kept++] = old with { High = low, HighShown = paint };
                if (!placed)
                {
                    Place(ref kept, low, high, paint);
                    placed = true;
                }
            }

            if (Above(old.High, high))
            {
                spare[kept++] = old with { Low = high, LowShown = paint };
            }
        }

        if (!placed)
        {
            Place(ref kept, low, high, paint);
        }

        (pieces, spare) = (spare, pieces);
        count = kept;
    }

    private void Place(ref int kept, in Level low, in Level high, byte paint) => spare[kept++] = new(low, high, paint, paint, paint);

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
