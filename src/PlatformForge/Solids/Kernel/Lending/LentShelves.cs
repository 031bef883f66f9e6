using System.Numerics;
using System.Runtime.CompilerServices;

namespace PlatformForge.Solids.Kernel.Lending;

/// <summary>
/// Where lent arrays wait, of every size as many as all cores together use at once. Threads share them, since a run has more threads than cores. Those that
/// are large are let go of after each collection of everything: a run that has gone on to other work does not hold them.
/// </summary>
internal static class LentShelves
{
    // Power of two of the length from which an array is large.
    private const int Large = 14;

    private static readonly int Each = 2 + (2 * Environment.ProcessorCount);

    private static readonly List<object?[]> All = [];

    private static int collections;

    /// <summary>Empty shelves for one kind of item, so many sizes of it.</summary>
    public static object?[] New(int sizes)
    {
        var shelves = new object?[sizes * Each];
        lock (All)
        {
            All.Add(shelves);
        }

        return shelves;
    }

    /// <summary>
    /// The greatest power of two that a length from 1 on reaches. The framework counts bits by what the processor has, and what was compiled ahead with such
    /// a count in it is thrown away at the start;
    /// so it stands here by itself, once for all kinds of item.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static int PowerOf(int length) => BitOperations.Log2((uint)length);

    /// <summary>An array of a size (a power of two), null where none waits.</summary>
    public static object? Take(object?[] shelves, int size)
    {
        for (int i = size * Each; i < (size + 1) * Each; i++)
        {
            if (Volatile.Read(ref shelves[i]) is { } array && Interlocked.CompareExchange(ref shelves[i], null, array) == array)
            {
                return array;
            }
        }

        return null;
    }

    /// <summary>Keeps an array, where there is room for it.</summary>
    public static void Put(object?[] shelves, int size, object array)
    {
        if (GC.CollectionCount(GC.MaxGeneration) != Volatile.Read(ref collections))
        {
            LetGo();
        }

        for (int i = size * Each; i < (size + 1) * Each; i++)
        {
            if (Volatile.Read(ref shelves[i]) is null && Interlocked.CompareExchange(ref shelves[i], array, null) is null)
            {
                return;
            }
        }
    }

    private static void LetGo()
    {
        lock (All)
        {
            Volatile.Write(ref collections, GC.CollectionCount(GC.MaxGeneration));
            foreach (object?[] shelves in All)
            {
                Array.Clear(shelves, Large * Each, shelves.Length - (Large * Each));
            }
        }
    }
}
