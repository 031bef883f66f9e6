using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Text;
using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Exports.Stl;

/// <summary>
/// Writes a mesh as binary STL: 80 bytes of free header, the count, then 50 bytes a triangle (normal, three corners
/// counter-clockwise from outside, an attribute word of 0), all little-endian. The format knows no units; ours are mm.
/// </summary>
public static class StlWriter
{
    /// <summary>Bytes before the first triangle.</summary>
    public const int HeaderLength = 84;

    /// <summary>Bytes a triangle.</summary>
    public const int FacetLength = 50;

    /// <summary>Most triangles that one array of bytes can hold.</summary>
    public const int MostTriangles = (int.MaxValue - HeaderLength) / FacetLength;

    private const int TextLength = 80;

    // Triangles one worker fills at a time: some 400 kB of output, large beside the cost of handing out work.
    private const int Chunk = 8192;

    // Triangles a buffer of the streaming way: 1 MB stays in the nearer caches.
    private const int StreamChunk = 20_000;

    /// <summary>The whole file in one array, ready for one write.</summary>
    /// <param name="mesh">Mesh in mm; coordinates become 32-bit floats.</param>
    /// <param name="title">Free text for the header, cut at 61 letters; written in plain letters, with a question mark for what has none.</param>
    /// <param name="threads">Most threads; the bytes are the same for any number.</param>
    public static byte[] ToBytes(Mesh mesh, string title, int threads = -1)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(mesh.TriangleCount, MostTriangles);
        int count = mesh.TriangleCount;
        var bytes = GC.AllocateUninitializedArray<byte>(HeaderLength + (FacetLength * count));
        WriteHeader(bytes, title, count);
        var corners = Corners(mesh);
        int chunks = (count + Chunk - 1) / Chunk;
        if (chunks <= 1 || threads == 1)
        {
            Fill(bytes.AsSpan(HeaderLength), mesh, corners, 0, count);
        }
        else
        {
            Parallel.For(0, chunks, new ParallelOptions { MaxDegreeOfParallelism = threads }, chunk =>
                Fill(bytes.AsSpan(HeaderLength + (FacetLength * chunk * Chunk)), mesh, corners, chunk * Chunk, Math.Min(count, (chunk + 1) * Chunk)));
        }

        return bytes;
    }

    /// <summary>
    /// The same bytes to a stream without ever holding them all: one buffer is filled while the other is written, so a large
    /// file takes hardly longer than writing its bytes.
    /// </summary>
    public static void Write(Stream to, Mesh mesh, string title)
    {
        int count = mesh.TriangleCount;
        var header = new byte[HeaderLength];
        WriteHeader(header, title, count);
        to.Write(header);
        var corners = Corners(mesh);
        byte[] filling = new byte[FacetLength * StreamChunk], writing = new byte[filling.Length];
        var pending = Task.CompletedTask;
        for (int from = 0; from < count; from += StreamChunk)
        {
            int end = Math.Min(count, from + StreamChunk), length = FacetLength * (end - from);
            Fill(filling, mesh, corners, from, end);
            pending.GetAwaiter().GetResult();
            (filling, writing) = (writing, filling);
            byte[] full = writing;
            pending = Task.Run(() => to.Write(full, 0, length));
        }

        pending.GetAwaiter().GetResult();
    }

    private static Corner[] Corners(Mesh mesh) => Array.ConvertAll(mesh.Vertices, v => new Corner(ToFloat(v.X), ToFloat(v.Y), ToFloat(v.Z)));

    private static void WriteHeader(Span<byte> bytes, string title, int count)
    {
        // Led by our name, so that no title can make a reader take the file for the text form, which begins with "solid".
        string text = "PlatformForge, mm. " + PlainLetters.Of(title, "?");
        var header = bytes[..TextLength];
        header.Fill((byte)' ');
        Encoding.ASCII.GetBytes(text.AsSpan(0, Math.Min(text.Length, TextLength)), header);
        foreach (ref byte letter in header)
        {
            letter = letter is >= 32 and < 127 ? letter : (byte)'?';
        }

        BinaryPrimitives.WriteUInt32LittleEndian(bytes[TextLength..], (uint)count);
    }

    private static void Fill(Span<byte> facets, Mesh mesh, Corner[] corners, int from, int to)
    {
        var triangles = mesh.Triangles.AsSpan(3 * from, 3 * (to - from));
        var records = MemoryMarshal.Cast<byte, Facet>(facets)[..(to - from)];
        for (int i = 0; i < records.Length; i++)
        {
            var (a, b, c) = FromWidest(corners[triangles[3 * i]], corners[triangles[(3 * i) + 1]], corners[triangles[(3 * i) + 2]]);
            var normal = Point3.Cross(Corner.Between(a, b), Corner.Between(a, c));
            double length = normal.Length, scale = length > 0 ? 1 / length : 0;
            records[i] = new(new(ToFloat(normal.X * scale), ToFloat(normal.Y * scale), ToFloat(normal.Z * scale)), a, b, c, 0);
        }
    }

    // A reader that works a normal out anew takes the sides at the first corner: at the widest one, opposite the longest side, least is lost.
    private static (Corner A, Corner B, Corner C) FromWidest(Corner a, Corner b, Corner c)
    {
        double ab = Squared(a, b), bc = Squared(b, c), ca = Squared(c, a);
        return bc >= ab && bc >= ca ? (a, b, c) : ca >= ab ? (b, c, a) : (c, a, b);

        static double Squared(Corner from, Corner to) => Corner.Between(from, to) is var d ? Point3.Dot(d, d) : 0;
    }

    // Adding nil turns minus nil into nil, so that equal corners have equal bytes.
    private static float ToFloat(double mm) => (float)mm + 0f;

    private readonly record struct Corner(float X, float Y, float Z)
    {
        public static Point3 Between(Corner from, Corner to) => new((double)to.X - from.X, (double)to.Y - from.Y, (double)to.Z - from.Z);
    }

    /// <summary>A triangle as it lies in the file: 50 bytes, little-endian as every processor that .NET 10 is made for.</summary>
    [StructLayout(LayoutKind.Sequential, Pack = 2)]
    private readonly record struct Facet(Corner Normal, Corner A, Corner B, Corner C, ushort Attribute);
}
