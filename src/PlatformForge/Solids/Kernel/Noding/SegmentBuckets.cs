using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>Square buckets over the plan; each segment is entered in all that it, widened by a step, passes through.</summary>
internal sealed class SegmentBuckets
{
    /// <summary>How many buckets there are for a segment.</summary>
    private const double BucketsPerSegment = 2;

    private readonly double lowU, lowV, perStep, side;
    private readonly int columns, rows;
    private readonly GrowingArray<BucketRun> runs;
    private readonly int[] runStart;

    public SegmentBuckets(ReadOnlySpan<PlanSegment> segments)
    {
        double highU = double.MinValue, highV = double.MinValue;
        (lowU, lowV) = (double.MaxValue, double.MaxValue);
        foreach (ref readonly var s in segments)
        {
            lowU = Math.Min(lowU, s.LowU);
            lowV = Math.Min(lowV, s.LowV);
            highU = Math.Max(highU, s.HighU);
            highV = Math.Max(highV, s.HighV);
        }

        const double margin = 2;
        (lowU, lowV) = (lowU - margin, lowV - margin);
        double width = highU + margin - lowU, height = highV + margin - lowV;
        side = Math.Max(Math.Sqrt(width * height / (BucketsPerSegment * Math.Max(1, segments.Length))), Math.Max(width, height) / (4 * segments.Length));
        perStep = 1 / side;
        columns = (int)(width * perStep) + 1;
        rows = (int)(height * perStep) + 1;
        runs = new(2 * segments.Length);
        runStart = new int[segments.Length + 1];
        for (int i = 0; i < segments.Length; i++)
        {
            Enter(segments[i]);
            runStart[i + 1] = runs.Count;
        }
    }

    public int Count => columns * rows;

    /// <summary>The buckets that a segment passes through.</summary>
    public ReadOnlySpan<BucketRun> RunsOf(int segment) => runs.Span[runStart[segment]..runStart[segment + 1]];

    public int Of(int u, int v) => (Column(u) * rows) + Row(v);

    /// <summary>Segments by bucket: bucket b holds member[start[b]] up to member[start[b + 1]].</summary>
    public (int[] Start, int[] Member) BySegments()
    {
        var start = new int[Count + 2];
        foreach (var run in runs.Span)
        {
            for (int bucket = run.First; bucket < run.End; bucket++)
            {
                start[bucket + 2]++;
            }
        }

        for (int i = 2; i < start.Length; i++)
        {
            start[i] += start[i - 1];
        }

        var member = new int[start[^1]];
        for (int s = 0; s + 1 < runStart.Length; s++)
        {
            foreach (var run in RunsOf(s))
            {
                for (int bucket = run.First; bucket < run.End; bucket++)
                {
                    member[start[bucket + 1]++] = s;
                }
            }
        }

        return (start, member);
    }

    public void GiveBack() => runs.GiveBack();

    private int Column(double u) => (int)((u - lowU) * perStep);

    private int Row(double v) => (int)((v - lowV) * perStep);

    private void Enter(in PlanSegment s)
    {
        int left = Column(s.LowU - 1), right = Column(s.HighU + 1), bottom = Row(s.LowV - 1), top = Row(s.HighV + 1);
        if (right - left <= 1 || bottom == top)
        {
            Fill(left, right, bottom, top);
            return;
        }

        double slope = s.AheadV / s.AheadU;
        for (int column = left; column <= right; column++)
        {
            double from = Math.Max(s.LowU, lowU + (column * side) - 1), to = Math.Min(s.HighU, lowU + ((column + 1) * side) + 1);
            double a = s.StartV + (slope * (from - s.StartU)), b = s.StartV + (slope * (to - s.StartU));
            int low = Math.Max(bottom, Row(Math.Max(lowV, Math.Min(a, b) - 1))), high = Math.Min(top, Row(Math.Max(lowV, Math.Max(a, b) + 1)));
            Fill(column, column, low, high);
        }
    }

    private void Fill(int left, int right, int bottom, int top)
    {
        for (int column = left; column <= right; column++)
        {
            runs.Add(new((column * rows) + bottom, (column * rows) + top + 1));
        }
    }
}

/// <summary>Buckets of one column that follow one another: from the first to before the end.</summary>
internal readonly record struct BucketRun(int First, int End);
