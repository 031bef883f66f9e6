using System.Buffers.Binary;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.Pictures.Bodies;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Gltf;

/// <summary>
/// The bodies of one node as glTF wants them: one list of places about a middle of its own, and for each colour a list of their indices. Places are
/// single precision: about the middle of a section they are right to 10 nm, about the layout's origin they would be to a quarter of a micron.
/// </summary>
internal sealed class GlbMesh
{
    // More places than this need indices of four bytes; the last number of two bytes is kept back by the standard (3.7.2.1).
    private const int MostShort = ushort.MaxValue;

    private readonly IReadOnlyList<SceneBody> bodies;
    private readonly int[] firsts;

    /// <param name="bodies">At least one triangle among them.</param>
    public GlbMesh(IReadOnlyList<SceneBody> bodies)
    {
        this.bodies = bodies;
        firsts = new int[bodies.Count];
        var (low, high) = (new Point3(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity),
            new Point3(double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity));
        for (int i = 0; i < bodies.Count; i++)
        {
            firsts[i] = Places;
            Places += bodies[i].Mesh.Vertices.Length;
            foreach (var v in bodies[i].Mesh.Vertices)
            {
                low = new(Math.Min(low.X, v.X), Math.Min(low.Y, v.Y), Math.Min(low.Z, v.Z));
                high = new(Math.Max(high.X, v.X), Math.Max(high.Y, v.Y), Math.Max(high.Z, v.Z));
            }
        }

        Middle = new(Math.Round((low.X + high.X) / 2), Math.Round((low.Y + high.Y) / 2), Math.Round((low.Z + high.Z) / 2));
        (Low, High) = (low - Middle, high - Middle);
        var counts = new SortedDictionary<string, (Rgb Colour, int Count)>(StringComparer.Ordinal);
        foreach (var (colour, count) in bodies.SelectMany(Shown))
        {
            counts[colour.Hex] = (colour, (counts.TryGetValue(colour.Hex, out var there) ? there.Count : 0) + (3 * count));
        }

        (Colours, Counts) = ([.. counts.Values.Select(c => c.Colour)], [.. counts.Values.Select(c => c.Count)]);
    }

    /// <summary>What is put at the origin, whole mm.</summary>
    public Point3 Middle { get; }

    /// <summary>Least coordinates about the middle, mm.</summary>
    public Point3 Low { get; }

    /// <summary>Largest coordinates about the middle, mm.</summary>
    public Point3 High { get; }

    /// <summary>Number of places.</summary>
    public int Places { get; }

    /// <summary>The colours that are seen, in the order of their lists.</summary>
    public IReadOnlyList<Rgb> Colours { get; }

    /// <summary>Number of indices of each colour.</summary>
    public IReadOnlyList<int> Counts { get; }

    /// <summary>Bytes of an index.</summary>
    public int IndexSize => Places > MostShort ? 4 : 2;

    /// <summary>Bytes of all places.</summary>
    public long PlacesLength => 12L * Places;

    /// <summary>Bytes of all indices, filled up to a multiple of four.</summary>
    public long IndicesLength => ((long)IndexSize * Counts.Sum() + 3) / 4 * 4;

    /// <summary>Writes places, then the indices colour by colour.</summary>
    public void Write(Stream to)
    {
        byte[] place = new byte[12];
        foreach (var v in bodies.SelectMany(b => b.Mesh.Vertices))
        {
            var p = v - Middle;
            BinaryPrimitives.WriteSingleLittleEndian(place, (float)p.X);
            BinaryPrimitives.WriteSingleLittleEndian(place.AsSpan(4), (float)p.Y);
            BinaryPrimitives.WriteSingleLittleEndian(place.AsSpan(8), (float)p.Z);
            to.Write(place);
        }

        foreach (var colour in Colours)
        {
            WriteIndices(to, colour);
        }

        to.Write(new byte[IndicesLength - ((long)IndexSize * Counts.Sum())]);
    }

    private void WriteIndices(Stream to, Rgb colour)
    {
        byte[] index = new byte[4];
        for (int b = 0; b < bodies.Count; b++)
        {
            var body = bodies[b];
            for (int t = 0; t < body.Mesh.TriangleCount; t++)
            {
                for (int corner = 0; corner < 3 && body.Colours[body.PaintOf(t)] == colour; corner++)
                {
                    BinaryPrimitives.WriteUInt32LittleEndian(index, (uint)(firsts[b] + body.Mesh.Triangles[(3 * t) + corner]));
                    to.Write(index.AsSpan(0, IndexSize));
                }
            }
        }
    }

    // The colours of a body, each with the number of its triangles.
    private static IEnumerable<(Rgb Colour, int Count)> Shown(SceneBody body) => body.Mesh.Paints.Length == 0 ? [(body.Colours[0], body.Mesh.TriangleCount)]
        : body.Mesh.Paints.CountBy(p => p).Select(p => (body.Colours[p.Key], p.Value));
}
