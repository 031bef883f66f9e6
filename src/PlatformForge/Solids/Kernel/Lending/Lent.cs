using System.Runtime.CompilerServices;

namespace PlatformForge.Solids.Kernel.Lending;

/// <summary>
/// Arrays that steps of the kernel borrow and give back, kept for whichever thread asks next. The framework's pool would do the same, but is compiled
/// anew for each kind of item whenever the program starts; this one is compiled ahead with the program.
/// </summary>
internal static class Lent<T>
    where T : unmanaged
{
    // Powers of two up to which arrays are kept: a face of brick over a whole bed takes some 2^19 corners.
    private const int Sizes = 22;

    private const int LeastLength = 16;

    private static readonly object?[] Kept = LentShelves.New(Sizes);

    /// <summary>An array of at least a length; what it holds at first is anything.</summary>
    public static T[] Rent(int least)
    {
        int size = LentShelves.PowerOf(Math.Max(LeastLength, least) - 1) + 1;
        return size >= Sizes ? new T[least] : LentShelves.Take(Kept, size) is { } array ? Unsafe.As<T[]>(array) : new T[1 << size];
    }

    /// <summary>Takes an array back that nobody looks at any more.</summary>
    public static void GiveBack(T[] array)
    {
        int size = LentShelves.PowerOf(Math.Max(1, array.Length));
        if (size < Sizes && array.Length == 1 << size && array.Length >= LeastLength)
        {
            LentShelves.Put(Kept, size, array);
        }
    }
}
