using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>
/// Brings grid points into the order of (u, v): first spread by u over as many buckets as there are points, then sorted in each bucket. Points lie all along
/// a solid, so buckets hold few; one that holds many is left to the library's sort.
/// </summary>
internal static class GridOrder
{
    private const int Few = 24;

    /// <summary>Numbers of the points in order; of points at one place the order is not told.</summary>
    public static int[] Of(ReadOnlySpan<(int U, int V)> points)
    {
        var order = GC.AllocateUninitializedArray<int>(points.Length);
        if (points.IsEmpty)
        {
            return order;
        }

        long low = int.MaxValue, high = int.MinValue;
        foreach (var (u, _) in points)
        {
            (low, high) = (Math.Min(low, u), Math.Max(high, u));
        }

        ulong[] keys = Lent<ulong>.Rent(points.Length);
        int[] starts = Lent<int>.Rent(points.Length + 2);
        double perStep = points.Length / (high - low + 1.0);
        Spread(points, low, perStep, starts.AsSpan(0, points.Length + 2), keys, order);
        for (int bucket = 0; bucket < points.Length; bucket++)
        {
            // Filling has moved each start on to the next.
            int from = bucket == 0 ? 0 : starts[bucket], end = starts[bucket + 1];
            Sort(keys.AsSpan(from, end - from), order.AsSpan(from, end - from));
        }

        Lent<ulong>.GiveBack(keys);
        Lent<int>.GiveBack(starts);
        return order;
    }

    private static void Spread(ReadOnlySpan<(int U, int V)> points, long low, double perStep, Span<int> starts, ulong[] keys, int[] order)
    {
        const uint sign = 0x80000000;
        starts.Clear();
        foreach (var (u, _) in points)
        {
            starts[(int)((u - low) * perStep) + 2]++;
        }

        for (int i = 2; i < starts.Length; i++)
        {
            starts[i] += starts[i - 1];
        }

        for (int i = 0; i < points.Length; i++)
        {
            var (u, v) = points[i];
            int at = starts[(int)((u - low) * perStep) + 1]++;
            (keys[at], order[at]) = (((ulong)((uint)u ^ sign) << 32) | ((uint)v ^ sign), i);
        }
    }

    private static void Sort(Span<ulong> keys, Span<int> order)
    {
        if (keys.Length > Few)
        {
            keys.Sort(order);
            return;
        }

        for (int i = 1; i < keys.Length; i++)
        {
            var (key, point) = (keys[i], order[i]);
            int j = i;
            for (; j > 0 && keys[j - 1] > key; j--)
            {
                (keys[j], order[j]) = (keys[j - 1], order[j - 1]);
            }

            (keys[j], order[j]) = (key, point);
        }
    }
}
