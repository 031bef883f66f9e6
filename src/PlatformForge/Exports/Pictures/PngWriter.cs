using System.Buffers.Binary;
using System.IO.Compression;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using PlatformForge.Exports.Files;

namespace PlatformForge.Exports.Pictures;

/// <summary>Writes a picture as PNG (ISO/IEC 15948): 8 bits a channel, no interlace, marked as sRGB, no time and no text.</summary>
public static class PngWriter
{
    private const int Channels = 3;

    private static ReadOnlySpan<byte> Signature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>The file.</summary>
    /// <param name="image">The picture.</param>
    /// <param name="isDrawing">Whether most rows are like those above: then no other way to tell a row is tried.</param>
    public static byte[] ToBytes(PixelImage image, bool isDrawing = false)
    {
        using var png = new MemoryStream();
        png.Write(Signature);
        Span<byte> header = stackalloc byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, image.Width);
        BinaryPrimitives.WriteInt32BigEndian(header[4..], image.Height);
        header[8] = 8; // bits a channel
        header[9] = 2; // red, green, blue
        Chunk(png, "IHDR"u8, header);
        Chunk(png, "sRGB"u8, [0]); // perceptual intent
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            WriteRows(zlib, image, isDrawing);
        }

        Chunk(png, "IDAT"u8, packed.GetBuffer().AsSpan(0, (int)packed.Length));
        Chunk(png, "IEND"u8, []);
        return png.ToArray();
    }

    private static void Chunk(MemoryStream png, ReadOnlySpan<byte> kind, ReadOnlySpan<byte> body)
    {
        Span<byte> word = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(word, body.Length);
        png.Write(word);
        png.Write(kind);
        png.Write(body);
        BinaryPrimitives.WriteUInt32BigEndian(word, Crc32.Add(Crc32.Add(0, kind), body));
        png.Write(word);
    }

    private static void WriteRows(ZLibStream to, PixelImage image, bool isDrawing)
    {
        int length = image.Width * Channels;
        var above = new byte[length];
        var plain = new byte[1 + length];
        var averaged = new byte[1 + length];
        for (int y = 0; y < image.Height; y++)
        {
            var row = image.Pixels.AsSpan(y * length, length);
            Filter(plain, 2, row, above); // differences to the row above
            if (isDrawing)
            {
                to.Write(plain);
                row.CopyTo(above);
                continue;
            }

            Filter(averaged, 4, row, above); // to the nearest of left, above and corner (Paeth)
            to.Write(Cost(plain) <= Cost(averaged) ? plain : averaged);
            row.CopyTo(above);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Filter(byte[] to, byte kind, ReadOnlySpan<byte> row, byte[] above)
    {
        to[0] = kind;
        if (kind == 2)
        {
            Subtract(to.AsSpan(1), row, above);
            return;
        }

        Subtract(to.AsSpan(1, Channels), row[..Channels], above);
        int i = Channels;
        for (; i + Vector128<byte>.Count <= row.Length; i += Vector128<byte>.Count)
        {
            Vector256<short> left = Wide(row[(i - Channels)..]), over = Wide(above.AsSpan(i)), corner = Wide(above.AsSpan(i - Channels));
            Vector256<short> byLeft = over - corner, byAbove = left - corner;
            Vector256<short> a = Vector256.Abs(byLeft), b = Vector256.Abs(byAbove), c = Vector256.Abs(byLeft + byAbove);
            var guess = Vector256.ConditionalSelect(Vector256.LessThanOrEqual(a, Vector256.Min(b, c)), left,
                Vector256.ConditionalSelect(Vector256.LessThanOrEqual(b, c), over, corner));
            var guessed = Vector128.Narrow(guess.GetLower().AsUInt16(), guess.GetUpper().AsUInt16());
            (Vector128.Create(row[i..]) - guessed).CopyTo(to.AsSpan(i + 1));
        }

        for (; i < row.Length; i++)
        {
            to[i + 1] = unchecked((byte)(row[i] - Paeth(row[i - Channels], above[i], above[i - Channels])));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<short> Wide(ReadOnlySpan<byte> bytes)
    {
        var (low, high) = Vector128.Widen(Vector128.Create(bytes));
        return Vector256.Create(low, high).AsInt16();
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Subtract(Span<byte> to, ReadOnlySpan<byte> row, ReadOnlySpan<byte> above)
    {
        int i = 0;
        for (; i + Vector256<byte>.Count <= row.Length; i += Vector256<byte>.Count)
        {
            (Vector256.Create(row[i..]) - Vector256.Create(above[i..])).CopyTo(to[i..]);
        }

        for (; i < row.Length; i++)
        {
            to[i] = unchecked((byte)(row[i] - above[i]));
        }
    }

    private static int Paeth(int left, int above, int corner)
    {
        int guess = left + above - corner, a = Math.Abs(guess - left), b = Math.Abs(guess - above), c = Math.Abs(guess - corner);
        return a <= b && a <= c ? left : b <= c ? above : corner;
    }

    // The usual rule of thumb: small differences of either sign pack best.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static int Cost(byte[] filtered)
    {
        int sum = 0, i = 0;
        for (; i + Vector256<byte>.Count <= filtered.Length; i += Vector256<byte>.Count)
        {
            // Of a signed byte and its opposite the lesser, both taken as plain ones: its size, that of -128 too.
            var signed = Vector256.Create(filtered, i);
            var (low, high) = Vector256.Widen(Vector256.Min(signed, Vector256<byte>.Zero - signed));
            sum += Vector256.Sum(low + high);
        }

        for (; i < filtered.Length; i++)
        {
            sum += Math.Abs((int)unchecked((sbyte)filtered[i]));
        }

        return sum;
    }
}
