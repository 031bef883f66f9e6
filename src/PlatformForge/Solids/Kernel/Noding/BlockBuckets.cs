using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>Blocks sorted into square buckets by their boxes, in block order within a bucket. Pairs are looked through many at a time.</summary>
internal sealed class BlockBuckets
{
    // What is told of a block in a bucket: whether this is the first column and the lowest row of buckets that it reaches, and whether it is marked.
    private const byte First = 1, Lowest = 2, Marked = 4, All = 7;

    private readonly double lowU, lowV, perStep;
    private readonly int columns, rows;
    private readonly int[] start;
    private readonly int[] member;
    private readonly byte[] told;
    private readonly bool[] anyMarked;

    /// <param name="boxes">The blocks' boxes.</param>
    /// <param name="marked">Blocks of which one at least has to be in every pair.</param>
    public BlockBuckets(PlanBox[] boxes, bool[] marked)
    {
        double highU = double.MinValue, highV = double.MinValue, spanU = 0, spanV = 0;
        (lowU, lowV) = (double.MaxValue, double.MaxValue);
        foreach (var box in boxes)
        {
            lowU = Math.Min(lowU, box.LowU);
            lowV = Math.Min(lowV, box.LowV);
            highU = Math.Max(highU, box.HighU);
            highV = Math.Max(highV, box.HighV);
            spanU += box.HighU - box.LowU;
            spanV += box.HighV - box.LowV;
        }

        // A bucket as wide as the average block keeps both the copies of a block and the strangers in a bucket few.
        double side = Math.Max(1, 0.5 * (spanU + spanV) / boxes.Length);
        side = Math.Max(side, Math.Sqrt((highU - lowU + 1) * (highV - lowV + 1) / (4.0 * boxes.Length)));
        perStep = 1 / side;
        columns = (int)((highU - lowU) * perStep) + 1;
        rows = (int)((highV - lowV) * perStep) + 1;
        start = new int[(columns * rows) + 2];
        Count(boxes);
        member = new int[start[^1]];
        told = new byte[start[^1] + Vector256<byte>.Count];
        anyMarked = new bool[columns * rows];
        Fill(boxes, marked);
    }

    public int Buckets => columns * rows;

    /// <summary>
    /// The pairs of blocks to be looked at in a bucket: one of them at least is marked, and this is the first bucket that both reach, so no pair comes twice.
    /// </summary>
    public void Pairs(int bucket, GrowingArray<(int A, int B)> found)
    {
        found.Clear();
        if (!anyMarked[bucket])
        {
            return;
        }

        var all = Vector256.Create(All);
        ref byte first = ref MemoryMarshal.GetArrayDataReference(told);
        for (int m = start[bucket], end = start[bucket + 1]; m < end; m++)
        {
            var own = Vector256.Create(told[m]);
            for (int n = m + 1; n < end; n += Vector256<byte>.Count)
            {
                uint bits = Vector256.Equals(own | Vector256.LoadUnsafe(ref first, (nuint)n), all).ExtractMostSignificantBits();
                for (; bits != 0 && n + BitOperations.TrailingZeroCount(bits) < end; bits &= bits - 1)
                {
                    found.Add((member[m], member[n + BitOperations.TrailingZeroCount(bits)]));
                }
            }
        }
    }

    private int Column(double u) => (int)((u - lowU) * perStep);

    private int Row(double v) => (int)((v - lowV) * perStep);

    private void Count(PlanBox[] boxes)
    {
        foreach (ref readonly var box in boxes.AsSpan())
        {
            int left = Column(box.LowU), right = Column(box.HighU), bottom = Row(box.LowV), top = Row(box.HighV);
            for (int column = left; column <= right; column++)
            {
                for (int row = bottom; row <= top; row++)
                {
                    start[(column * rows) + row + 2]++;
                }
            }
        }

        for (int i = 2; i < start.Length; i++)
        {
            start[i] += start[i - 1];
        }
    }

    private void Fill(PlanBox[] boxes, bool[] marked)
    {
        for (int i = 0; i < boxes.Length; i++)
        {
            ref readonly var box = ref boxes[i];
            int left = Column(box.LowU), right = Column(box.HighU), bottom = Row(box.LowV), top = Row(box.HighV);
            for (int column = left; column <= right; column++)
            {
                for (int row = bottom; row <= top; row++)
                {
                    int bucket = (column * rows) + row;
                    int at = start[bucket + 1]++;
                    member[at] = i;
                    told[at] = (byte)((column == left ? First : 0) | (row == bottom ? Lowest : 0) | (marked[i] ? Marked : 0));
                    anyMarked[bucket] |= marked[i];
                }
            }
        }
    }
}
