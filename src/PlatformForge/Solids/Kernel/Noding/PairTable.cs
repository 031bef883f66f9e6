using System.Numerics;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>Numbers pairs of integers in the order in which they first come: open addressing, nothing is ever taken out.</summary>
internal sealed class PairTable
{
    private const ulong Scatter = 0x9E3779B97F4A7C15; // 2^64 over the golden ratio, odd

    private Entry[] entries;
    private int shift, count;

    public PairTable(int expected)
    {
        int size = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, 2 * expected));
        entries = new Entry[size];
        shift = 64 - BitOperations.Log2((uint)size);
    }

    public int Count => count;

    /// <summary>The number of a pair, and whether it is new.</summary>
    public int Enter(int a, int b, out bool isNew)
    {
        ulong key = Key(a, b);
        ref var entry = ref Find(key);
        isNew = entry.NumberAndOne == 0;
        if (!isNew)
        {
            return entry.NumberAndOne - 1;
        }

        entry = new(key, ++count);
        if (2 * count > entries.Length)
        {
            Grow();
        }

        return count - 1;
    }

    /// <summary>The number of a pair, or −1.</summary>
    public int Find(int a, int b) => Find(Key(a, b)).NumberAndOne - 1;

    private static ulong Key(int a, int b) => ((ulong)(uint)a << 32) | (uint)b;

    private ref Entry Find(ulong key)
    {
        var all = entries;
        int slot = (int)((key * Scatter) >> shift);
        while (all[slot].NumberAndOne != 0 && all[slot].Key != key)
        {
            slot = (slot + 1) & (all.Length - 1);
        }

        return ref all[slot];
    }

    private void Grow()
    {
        var old = entries;
        entries = new Entry[2 * old.Length];
        shift--;
        foreach (ref readonly var entry in old.AsSpan())
        {
            if (entry.NumberAndOne != 0)
            {
                Find(entry.Key) = entry;
            }
        }
    }

    /// <summary>Free where the number and one is nought.</summary>
    private readonly record struct Entry(ulong Key, int NumberAndOne);
}
