using System.Runtime.CompilerServices;

namespace PlatformForge.Solids.Kernel.Lending;

/// <summary>
/// An array that grows at its end and hands out references to its items: the plain store of the kernel's hot loops. The memory is
/// borrowed; whoever made it may give it back once nothing looks at it any more.
/// </summary>
internal sealed class GrowingArray<T>(int capacity)
    where T : unmanaged
{
    private const int LeastCapacity = 16;

    private T[] items = Lent<T>.Rent(Math.Max(LeastCapacity, capacity));

    public int Count { get; private set; }

    public Span<T> Span => items.AsSpan(0, Count);

    /// <summary>The memory itself, good until something is added.</summary>
    public T[] Items => items;

    public ref T this[int index] => ref items[index];

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(T item)
    {
        if (Count == items.Length)
        {
            Grow(2 * Count);
        }

        items[Count++] = item;
    }

    /// <summary>Appends room for items, to be filled at once: what it holds at first is anything.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Span<T> Extend(int by)
    {
        int from = Count;
        if (from + by > items.Length)
        {
            Grow(Math.Max(2 * from, from + by));
        }

        Count = from + by;
        return items.AsSpan(from, by);
    }

    public void Shrink(int count) => Count = count;

    public void Clear() => Count = 0;

    /// <summary>Ends the use of this array.</summary>
    public void GiveBack()
    {
        Lent<T>.GiveBack(items);
        items = [];
        Count = 0;
    }

    private void Grow(int size)
    {
        var larger = Lent<T>.Rent(size);
        items.AsSpan(0, Count).CopyTo(larger);
        Lent<T>.GiveBack(items);
        items = larger;
    }
}
