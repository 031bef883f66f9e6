using System.Numerics;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>Numbers pairs of integers in the order in which they first come: open addressing, nothing is ever taken out.</summary>
internal sealed class PairTable
{
    private const ulong Scatter = 0x9E3779B97F4A7C15; // 2^64 over the golden ratio, odd

    private ulong[] keys;
    private int[] ids;
    private int shift, count;

    public PairTable(int expected)
    {
        int size = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, 2 * expected));
        keys = new ulong[size];
        ids = new int[size]; // number + 1, nought where free
        shift = 64 - BitOperations.Log2((uint)size);
    }

    public int Count => count;

    /// <summary>The number of a pair, and whether it is new.</summary>
    public int Enter(int a, int b, out bool isNew)
    {
        ulong key = Key(a, b);
        int slot = Slot(key);
        isNew = ids[slot] == 0;
        if (!isNew)
        {
            return ids[slot] - 1;
        }

        keys[slot] = key;
        ids[slot] = ++count;
        if (2 * count > keys.Length)
        {
            Grow();
        }

        return count - 1;
    }

    /// <summary>The number of a pair, or −1.</summary>
    public int Find(int a, int b) => ids[Slot(Key(a, b))] - 1;

    private static ulong Key(int a, int b) => ((ulong)(uint)a << 32) | (uint)b;

    private int Slot(ulong key)
    {
        int mask = keys.Length - 1, slot = (int)((key * Scatter) >> shift);
        while (ids[slot] != 0 && keys[slot] != key)
        {
            slot = (slot + 1) & mask;
        }

        return slot;
    }

    private void Grow()
    {
        var (oldKeys, oldIds) = (keys, ids);
        keys = new ulong[2 * oldKeys.Length];
        ids = new int[keys.Length];
        shift--;
        for (int i = 0; i < oldKeys.Length; i++)
        {
            if (oldIds[i] != 0)
            {
                int slot = Slot(oldKeys[i]);
                keys[slot] = oldKeys[i];
                ids[slot] = oldIds[i];
            }
        }
    }
}
