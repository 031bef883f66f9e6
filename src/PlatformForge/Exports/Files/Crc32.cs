namespace PlatformForge.Exports.Files;

/// <summary>The checksum of PNG chunks and ZIP entries (ISO 3309, polynomial 0xEDB88320 in reversed form).</summary>
internal static class Crc32
{
    private static readonly uint[] Table = MakeTable();

    /// <summary>Carries a running checksum, 0 at first, over more bytes.</summary>
    public static uint Add(uint checksum, ReadOnlySpan<byte> bytes)
    {
        uint c = ~checksum;
        foreach (byte b in bytes)
        {
            c = Table[(c ^ b) & 0xFF] ^ (c >> 8);
        }

        return ~c;
    }

    private static uint[] MakeTable()
    {
        var table = new uint[256];
        for (uint i = 0; i < table.Length; i++)
        {
            uint c = i;
            for (int bit = 0; bit < 8; bit++)
            {
                c = (c & 1) != 0 ? 0xEDB88320 ^ (c >> 1) : c >> 1;
            }

            table[i] = c;
        }

        return table;
    }
}
