using PlatformForge.Geometry;

namespace PlatformForge.Exports.Stl;

/// <summary>
/// Gives corners with the same three 32-bit numbers one index, in order of first appearance. A table of open addresses: one
/// look-up a corner of a large file would cost a general dictionary several times more.
/// </summary>
internal sealed class CornerWelder
{
    private int[] table;
    private (float X, float Y, float Z)[] corners;
    private int count;

    public CornerWelder(int triangles)
    {
        int size = 16;
        while (size < triangles)
        {
            size *= 2;
        }

        table = new int[2 * size];
        corners = new (float, float, float)[size];
    }

    public int IndexOf(float x, float y, float z)
    {
        var corner = (X: x + 0f, Y: y + 0f, Z: z + 0f);
        int slot = SlotOf(corner);
        if (table[slot] != 0)
        {
            return table[slot] - 1;
        }

        if (count == corners.Length)
        {
            Grow();
            slot = SlotOf(corner);
        }

        corners[count] = corner;
        table[slot] = ++count;
        return count - 1;
    }

    public Point3[] ToVertices() => Array.ConvertAll(corners[..count], c => new Point3(c.X, c.Y, c.Z));

    private int SlotOf((float X, float Y, float Z) corner)
    {
        int mask = table.Length - 1, slot = Hash(corner) & mask;
        while (table[slot] != 0 && corners[table[slot] - 1] != corner)
        {
            slot = (slot + 1) & mask;
        }

        return slot;
    }

    private void Grow()
    {
        Array.Resize(ref corners, 2 * corners.Length);
        table = new int[2 * corners.Length];
        for (int i = 0; i < count; i++)
        {
            table[SlotOf(corners[i])] = i + 1;
        }
    }

    private static int Hash((float X, float Y, float Z) corner)
    {
        unchecked
        {
            ulong mix = BitConverter.SingleToUInt32Bits(corner.X);
            mix = (mix * 0x9E3779B97F4A7C15) ^ BitConverter.SingleToUInt32Bits(corner.Y);
            mix = (mix * 0x9E3779B97F4A7C15) ^ BitConverter.SingleToUInt32Bits(corner.Z);
            mix *= 0x9E3779B97F4A7C15;
            return (int)(mix >> 33);
        }
    }
}
