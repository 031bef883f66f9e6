using System.Numerics;

namespace PlatformForge.Solids.Kernel;

/// <summary>
/// Arrays that steps of the kernel borrow and give back: each thread keeps a few of every size. The framework's pool would do the same, but is compiled
/// anew for each kind of item whenever the program starts; this one is compiled ahead with the program.
/// </summary>
internal static class Lent<T>
    where T : unmanaged
{
    // Arrays kept of each size, and powers of two up to which they are kept.
    private const int Each = 3, Sizes = 18;

    private const int LeastLength = 16;

    [ThreadStatic]
    private static T[]?[]? kept;

    /// <summary>An array of at least a length; what it holds at first is anything.</summary>
    public static T[] Rent(int least)
    {
        int size = BitOperations.Log2((uint)Math.Max(LeastLength, least) - 1) + 1;
        if (size >= Sizes)
        {
            return new T[least];
        }

        if (kept is { } all)
        {
            for (int i = size * Each; i < (size + 1) * Each; i++)
            {
                if (all[i] is { } array)
                {
                    all[i] = null;
                    return array;
                }
            }
        }

        return new T[1 << size];
    }

    /// <summary>Takes an array back that nobody looks at any more.</summary>
    public static void GiveBack(T[] array)
    {
        int size = BitOperations.Log2((uint)Math.Max(1, array.Length));
        if (size >= Sizes || array.Length != 1 << size || array.Length < LeastLength)
        {
            return;
        }

        var all = kept ??= new T[Sizes * Each][];
        for (int i = size * Each; i < (size + 1) * Each; i++)
        {
            if (all[i] is null)
            {
                all[i] = array;
                return;
            }
        }
    }
}
