using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Meshing.Polygons;

/// <summary>
/// Which levels the mesh needs as vertices. A level in the middle of a flat surface is not needed, nor is one through which a single
/// straight crease runs on: the surfaces on both sides end on the same straight line without it.
/// </summary>
internal sealed class LevelCreases(int levels)
{
    private const byte Many = 3;

    private readonly byte[] count = Cleared<byte>(levels);
    private readonly int[] first = Lent<int>.Rent(levels);

    /// <summary>A crease leaves a level along a line; the line's number is positive towards higher nodes, negative towards lower ones, never nought.</summary>
    public void Leave(int level, int line)
    {
        ref byte seen = ref count[level];
        if (seen == 0)
        {
            (seen, first[level]) = (1, line);
        }
        else
        {
            seen = seen == 1 && first[level] == -line ? (byte)2 : Many;
        }
    }

    /// <summary>Makes a level a vertex whatever runs through it.</summary>
    public void Need(int level) => count[level] = Many;

    public bool Needs(int level) => (count[level] & 1) != 0;

    public void GiveBack()
    {
        Lent<byte>.GiveBack(count);
        Lent<int>.GiveBack(first);
    }

    private static T[] Cleared<T>(int length)
        where T : unmanaged
    {
        var array = Lent<T>.Rent(length);
        array.AsSpan(0, length).Clear();
        return array;
    }
}
