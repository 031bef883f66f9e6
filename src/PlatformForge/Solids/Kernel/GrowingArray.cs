using System.Runtime.CompilerServices;

namespace PlatformForge.Solids.Kernel;

/// <summary>An array that grows at its end and hands out references to its items: the plain store of the kernel's hot loops.</summary>
internal sealed class GrowingArray<T>(int capacity)
{
    private const int LeastCapacity = 16;

    private T[] items = new T[Math.Max(LeastCapacity, capacity)];

    public int Count { get; private set; }

    public Span<T> Span => items.AsSpan(0, Count);

    public ref T this[int index] => ref items[index];

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(T item)
    {
        if (Count == items.Length)
        {
            Array.Resize(ref items, 2 * Count);
        }

        items[Count++] = item;
    }

    /// <summary>Makes room for so many more items, whose values are left to the caller.</summary>
    public Span<T> Extend(int count)
    {
        if (Count + count > items.Length)
        {
            Array.Resize(ref items, Math.Max(2 * items.Length, Count + count));
        }

        Count += count;
        return items.AsSpan(Count - count, count);
    }

    public void Shrink(int count) => Count = count;

    public void Clear() => Count = 0;
}
