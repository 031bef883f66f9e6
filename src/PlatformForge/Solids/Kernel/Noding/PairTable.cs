using System.Numerics;
using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>Numbers pairs of integers in the order in which they first come: open addressing, nothing is ever taken out.</summary>
internal sealed class PairTable
{
    private const ulong Scatter = 0x9E3779B97F4A7C15; // 2^64 over the golden ratio, odd

    private readonly GrowingArray<ulong> keys;

    // Numbers of pairs and one, nought where free: small beside the pairs, so that more of the table lies near.
    private int[] slots = [];
    private int shift;

    public PairTable(int expected)
    {
        keys = new(expected);
        Lay((int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, 2 * expected)));
    }

    /// <summary>The number of a pair, and whether it is new.</summary>
    public int Enter(int a, int b, out bool isNew)
    {
        ulong key = Key(a, b);
        ref int slot = ref Find(key);
        isNew = slot == 0;
        if (!isNew)
        {
            return slot - 1;
        }

        keys.Add(key);
        slot = keys.Count;
        if (2 * keys.Count > 1 << (64 - shift))
        {
            Grow();
        }

        return keys.Count - 1;
    }

    /// <summary>The number of a pair, or −1.</summary>
    public int Find(int a, int b) => Find(Key(a, b)) - 1;

    public void GiveBack()
    {
        keys.GiveBack();
        Lent<int>.GiveBack(slots);
        slots = [];
    }

    private static ulong Key(int a, int b) => ((ulong)(uint)a << 32) | (uint)b;

    private ref int Find(ulong key)
    {
        var (all, known) = (slots, keys.Items);
        int mask = (1 << (64 - shift)) - 1, slot = (int)((key * Scatter) >> shift);
        while (all[slot] is > 0 and var number && known[number - 1] != key)
        {
            slot = (slot + 1) & mask;
        }

        return ref all[slot];
    }

    private void Lay(int size)
    {
        shift = 64 - BitOperations.Log2((uint)size);
        slots = Lent<int>.Rent(size);
        slots.AsSpan(0, size).Clear();
    }

    private void Grow()
    {
        Lent<int>.GiveBack(slots);
        Lay(2 << (64 - shift));
        var all = keys.Span;
        for (int i = 0; i < all.Length; i++)
        {
            Find(all[i]) = i + 1;
        }
    }
}
