namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>Blocks sorted into square buckets by their boxes, in block order within a bucket.</summary>
internal sealed class BlockBuckets
{
    private readonly double lowU, lowV, perStep;
    private readonly int columns, rows;
    private readonly int[] start, member;

    public BlockBuckets(PlanBox[] boxes)
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
        start = new int[(columns * rows) + 1];
        Each(boxes, (bucket, _) => start[bucket + 1]++);
        for (int i = 0; i < columns * rows; i++)
        {
            start[i + 1] += start[i];
        }

        member = new int[start[^1]];
        var next = start.AsSpan(0, columns * rows).ToArray();
        Each(boxes, (bucket, block) => member[next[bucket]++] = block);
    }

    public int Count => columns * rows;

    public int Of(double u, double v) => ((int)((u - lowU) * perStep) * rows) + (int)((v - lowV) * perStep);

    public ReadOnlySpan<int> Members(int bucket) => member.AsSpan(start[bucket], start[bucket + 1] - start[bucket]);

    private void Each(PlanBox[] boxes, Action<int, int> visit)
    {
        for (int i = 0; i < boxes.Length; i++)
        {
            int low = Of(boxes[i].LowU, boxes[i].LowV), high = Of(boxes[i].HighU, boxes[i].HighV);
            for (int column = low / rows; column <= high / rows; column++)
            {
                for (int row = low % rows; row <= high % rows; row++)
                {
                    visit((column * rows) + row, i);
                }
            }
        }
    }
}
