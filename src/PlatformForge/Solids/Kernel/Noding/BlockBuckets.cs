namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>Blocks sorted into square buckets by their boxes, in block order within a bucket.</summary>
internal sealed class BlockBuckets
{
    private readonly double lowU, lowV, perStep;
    private readonly int columns, rows;
    private readonly int[] start;
    private readonly BucketMember[] member;
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
        member = new BucketMember[start[^1]];
        anyMarked = new bool[columns * rows];
        Fill(boxes, marked);
    }

    public int Buckets => columns * rows;

    /// <summary>The blocks that reach into a bucket; none where none of them is marked.</summary>
    public ReadOnlySpan<BucketMember> Members(int bucket) => anyMarked[bucket] ? member.AsSpan(start[bucket], start[bucket + 1] - start[bucket]) : [];

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
                    member[start[bucket + 1]++] = new(i, column == left, row == bottom, marked[i]);
                    anyMarked[bucket] |= marked[i];
                }
            }
        }
    }
}

/// <summary>A block in one of the buckets that its box reaches into.</summary>
internal readonly struct BucketMember
{
    private const int All = 7;

    private readonly int flags;

    /// <param name="block">Number of the block.</param>
    /// <param name="first">Whether this is the first column of buckets that it reaches.</param>
    /// <param name="lowest">Whether this is the lowest row that it reaches.</param>
    /// <param name="marked">Whether it is one of those of which every pair has at least one.</param>
    public BucketMember(int block, bool first, bool lowest, bool marked) => (Block, flags) = (block, (first ? 1 : 0) | (lowest ? 2 : 0) | (marked ? 4 : 0));

    public int Block { get; }

    /// <summary>Whether two blocks are to be looked at here: the first bucket that both reach has them, so no pair comes twice.</summary>
    public static bool Meet(BucketMember a, BucketMember b) => (a.flags | b.flags) == All;
}
