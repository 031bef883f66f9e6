using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>
/// Points at which the segments of a bucket cross one another, bucket by bucket. Of all pairs one side is tested first, four at a time: whether the one's
/// ends lie clearly on either side of the other's line. Few are left to be looked at in full.
/// </summary>
internal sealed class SegmentCrossings(PlanSegment[] segments, int[] start, int[] member)
{
    private const int Lanes = 4;

    // Where the segments of all buckets start and end: a row for each coordinate, with room for a last comparison of four. They are laid out
    // before any are compared: a vector read right after its numbers were written one by one would have to wait for them.
    private double[] ends = [];

    /// <summary>What was found, in the order of buckets and of the segments in them.</summary>
    public GrowingArray<(double U, double V)> Found { get; } = new(256);

    /// <summary>Looks through all buckets.</summary>
    public void Find(int buckets)
    {
        int row = member.Length + Lanes;
        ends = Lent<double>.Rent(4 * row);
        LayOut(member, row);
        for (int bucket = 0; bucket < buckets; bucket++)
        {
            if (start[bucket + 1] - start[bucket] > 1)
            {
                FindAmong(member.AsSpan(start[bucket], start[bucket + 1] - start[bucket]), start[bucket], row);
            }
        }

        Lent<double>.GiveBack(ends);
    }

    public void GiveBack() => Found.GiveBack();

    private void LayOut(ReadOnlySpan<int> all, int row)
    {
        Span<double> startU = ends.AsSpan(0, row), startV = ends.AsSpan(row, row), endU = ends.AsSpan(2 * row, row), endV = ends.AsSpan(3 * row, row);
        for (int i = 0; i < all.Length; i++)
        {
            ref readonly var s = ref segments[all[i]];
            (startU[i], startV[i], endU[i], endV[i]) = (s.StartU, s.StartV, s.StartU + s.AheadU, s.StartV + s.AheadV);
        }
    }

    private void FindAmong(ReadOnlySpan<int> inside, int first, int row)
    {
        ref double startU = ref ends[first], startV = ref Unsafe.Add(ref startU, row);
        ref double endU = ref Unsafe.Add(ref startV, row), endV = ref Unsafe.Add(ref endU, row);
        for (int i = 0; i + 1 < inside.Length; i++)
        {
            ref readonly var a = ref segments[inside[i]];
            Vector256<double> u = Vector256.Create(a.StartU), v = Vector256.Create(a.StartV);
            Vector256<double> aheadU = Vector256.Create(a.AheadU), aheadV = Vector256.Create(a.AheadV);
            Vector256<double> touch = Vector256.Create(a.Touch), back = -touch;
            for (int j = i + 1; j < inside.Length; j += Lanes)
            {
                var from = (aheadU * (Vector256.LoadUnsafe(ref startV, (nuint)j) - v)) - (aheadV * (Vector256.LoadUnsafe(ref startU, (nuint)j) - u));
                var to = (aheadU * (Vector256.LoadUnsafe(ref endV, (nuint)j) - v)) - (aheadV * (Vector256.LoadUnsafe(ref endU, (nuint)j) - u));
                var parts = (Vector256.GreaterThan(from, touch) & Vector256.LessThan(to, back))
                    | (Vector256.LessThan(from, back) & Vector256.GreaterThan(to, touch));
                for (uint bits = parts.ExtractMostSignificantBits(); bits != 0; bits &= bits - 1)
                {
                    int at = j + BitOperations.TrailingZeroCount(bits);
                    if (at < inside.Length)
                    {
                        Meet(a, segments[inside[at]]);
                    }
                }
            }
        }
    }

    private void Meet(in PlanSegment a, in PlanSegment b)
    {
        if (b.LowU <= a.HighU && b.LowV <= a.HighV && b.HighU >= a.LowU && b.HighV >= a.LowV && PlanSegment.Cross(a, b, out double u, out double v))
        {
            Found.Add((u, v));
        }
    }
}
