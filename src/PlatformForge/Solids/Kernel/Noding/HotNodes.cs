using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>Nodes by bucket: bucket b holds Member[Start[b]] up to Member[Start[b + 1]]; their places lie in the same order, with room for a last
/// four.</summary>
internal sealed class HotNodes
{
    /// <summary>How many places are compared at once.</summary>
    public const int Lanes = 4;

    public HotNodes(PlanNodes nodes, SegmentBuckets buckets)
    {
        int count = nodes.Count;
        int[] bucket = Lent<int>.Rent(count);
        Start = Lent<int>.Rent(buckets.Count + 2);
        Member = Lent<int>.Rent(count);
        U = Lent<double>.Rent(count + Lanes);
        V = Lent<double>.Rent(count + Lanes);
        var start = Start.AsSpan(0, buckets.Count + 2);
        start.Clear();
        for (int i = 0; i < count; i++)
        {
            bucket[i] = buckets.Of(nodes[i].U, nodes[i].V);
            start[bucket[i] + 2]++;
        }

        for (int i = 2; i < start.Length; i++)
        {
            start[i] += start[i - 1];
        }

        for (int i = 0; i < count; i++)
        {
            int at = start[bucket[i] + 1]++;
            Member[at] = i;
            (U[at], V[at]) = nodes[i];
        }

        Lent<int>.GiveBack(bucket);
    }

    public int[] Start { get; }

    public int[] Member { get; }

    public double[] U { get; }

    public double[] V { get; }

    public void GiveBack()
    {
        Lent<int>.GiveBack(Start);
        Lent<int>.GiveBack(Member);
        Lent<double>.GiveBack(U);
        Lent<double>.GiveBack(V);
    }
}
