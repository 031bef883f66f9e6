using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>The hot nodes whose pixels a segment passes through, in order along it; four are compared at a time.</summary>
internal sealed class SegmentBends(SegmentBuckets buckets, HotNodes hot)
{
    private readonly GrowingArray<double> along = new(16);
    private readonly GrowingArray<int> met = new(16);

    /// <summary>The nodes of a segment, by its number too; good until the next one is asked for.</summary>
    public ReadOnlySpan<int> Of(in PlanSegment segment, int number)
    {
        along.Clear();
        met.Clear();
        Meet(segment, buckets.RunsOf(number));
        Order(along.Span, met.Span);
        return met.Span;
    }

    public void GiveBack()
    {
        along.GiveBack();
        met.GiveBack();
    }

    private void Meet(in PlanSegment s, ReadOnlySpan<BucketRun> runs)
    {
        const double pixel = KernelLimits.PixelReach;
        Vector256<double> startU = Vector256.Create(s.StartU), startV = Vector256.Create(s.StartV);
        Vector256<double> aheadU = Vector256.Create(s.AheadU), aheadV = Vector256.Create(s.AheadV);
        Vector256<double> lowU = Vector256.Create(s.LowU - pixel), lowV = Vector256.Create(s.LowV - pixel);
        Vector256<double> highU = Vector256.Create(s.HighU + pixel), highV = Vector256.Create(s.HighV + pixel);
        var reach = Vector256.Create(s.Reach);
        ref double hotU = ref MemoryMarshal.GetArrayDataReference(hot.U), hotV = ref MemoryMarshal.GetArrayDataReference(hot.V);
        foreach (var run in runs)
        {
            // Buckets of a run follow one another, and so do their nodes.
            for (int k = hot.Start[run.First], to = hot.Start[run.End]; k < to; k += HotNodes.Lanes)
            {
                Vector256<double> u = Vector256.LoadUnsafe(ref hotU, (nuint)k), v = Vector256.LoadUnsafe(ref hotV, (nuint)k);
                var side = (aheadU * (v - startV)) - (aheadV * (u - startU));
                var meets = Vector256.LessThanOrEqual(Vector256.Abs(side), reach)
                    & Vector256.GreaterThanOrEqual(u, lowU) & Vector256.GreaterThanOrEqual(v, lowV)
                    & Vector256.LessThanOrEqual(u, highU) & Vector256.LessThanOrEqual(v, highV);
                for (uint bits = meets.ExtractMostSignificantBits(); bits != 0; bits &= bits - 1)
                {
                    int at = k + BitOperations.TrailingZeroCount(bits);
                    if (at < to && hot.Member[at] is var node && node != s.From && node != s.To)
                    {
                        met.Add(node);
                        along.Add((s.AheadU * (hot.U[at] - s.StartU)) + (s.AheadV * (hot.V[at] - s.StartV)));
                    }
                }
            }
        }
    }

    /// <summary>Sorts the few nodes that a segment meets.</summary>
    private static void Order(Span<double> along, Span<int> met)
    {
        for (int i = 1; i < met.Length; i++)
        {
            var (place, node) = (along[i], met[i]);
            int j = i;
            for (; j > 0 && along[j - 1] > place; j--)
            {
                (along[j], met[j]) = (along[j - 1], met[j - 1]);
            }

            (along[j], met[j]) = (place, node);
        }
    }
}
