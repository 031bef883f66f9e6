using System.Buffers.Binary;
using System.Text;
using PlatformForge.Geometry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Stl;

/// <summary>
/// Reads STL, binary or text. The length decides first, since binary headers of others often begin with the word
/// that marks the text form.
/// </summary>
public static class StlReader
{
    /// <summary>Reads a whole file.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="name">What to call it in findings.</param>
    /// <returns>PF7101 not STL or cut short, PF7102 a number that is none, PF7103 the text form broken, PF7104 no triangle at all,
    /// PF7105 beyond a limit.</returns>
    public static Outcome<StlContents> Read(ReadOnlySpan<byte> bytes, string name)
    {
        if (bytes.Length > InputLimits.MeshBytes)
        {
            return Outcome.Fault<StlContents>(Fault("PF7105", name, Invariant($"has {bytes.Length} bytes, over the limit ")
                + Invariant($"of {InputLimits.MeshBytes}"), "Build the folder again; a section has some ten thousand triangles."));
        }

        if (bytes.Length >= StlWriter.HeaderLength)
        {
            uint count = BinaryPrimitives.ReadUInt32LittleEndian(bytes[80..]);
            if (bytes.Length == StlWriter.HeaderLength + ((long)StlWriter.FacetLength * count))
            {
                return ReadBinary(bytes, (int)count, name);
            }
        }

        if (StlTextReader.Recognises(bytes))
        {
            return StlTextReader.Read(bytes, name);
        }

        return Outcome.Fault<StlContents>(bytes.Length < StlWriter.HeaderLength
            ? Fault("PF7101", name, Invariant($"is {bytes.Length} bytes long, shorter than the {StlWriter.HeaderLength} bytes that head a binary STL"),
                "The file is cut short or is no STL: write it again.")
            : Truncated(bytes, name));
    }

    internal static Finding Fault(string code, string name, string what, string remedy) =>
        Finding.Error(code, "", Invariant($"'{name}' {what}."), remedy, FaultKind.Mesh);

    /// <summary>Whether a coordinate is a number of a model's size.</summary>
    internal static bool Holds(float value) => Math.Abs(value) <= InputLimits.MeshCoordinate;

    internal static Finding TooMany(string name) =>
        Fault("PF7105", name, Invariant($"has more than {InputLimits.SectionTriangles} triangles, which is the limit"),
            "Build the folder again; a section has some ten thousand triangles.");

    /// <summary>The fault of triangles that are longer together than is measured.</summary>
    internal static Finding? Beyond(CornerWelder welder, ReadOnlySpan<int> triangles, string name)
    {
        var v = welder.ToVertices();
        double sides = 0;
        for (int i = 0; i < triangles.Length; i += 3)
        {
            Point3 a = v[triangles[i]], b = v[triangles[i + 1]], c = v[triangles[i + 2]];
            sides += (b - a).Length + (c - b).Length + (a - c).Length;
        }

        return sides <= InputLimits.MeshSides ? null
            : Fault("PF7105", name, Invariant($"has triangles whose sides come to {sides:0} mm, over the limit of {InputLimits.MeshSides:0}"),
                "Build the folder again; the sides of a section's triangles come to some hundred metres.");
    }

    private static Finding Truncated(ReadOnlySpan<byte> bytes, string name)
    {
        uint count = BinaryPrimitives.ReadUInt32LittleEndian(bytes[80..]);
        long wanted = StlWriter.HeaderLength + ((long)StlWriter.FacetLength * count);
        return Fault("PF7101", name, Invariant($"counts {count} triangles, which take {wanted} bytes, but is {bytes.Length} bytes long"),
            "The file is cut short or is no STL: write it again.");
    }

    private static Outcome<StlContents> ReadBinary(ReadOnlySpan<byte> bytes, int count, string name)
    {
        if (count == 0)
        {
            return Outcome.Fault<StlContents>(Fault("PF7104", name, "holds no triangle", "Write it again from a solid that is not empty."));
        }

        if (count > InputLimits.SectionTriangles)
        {
            return Outcome.Fault<StlContents>(TooMany(name));
        }

        var welder = new CornerWelder(count);
        var triangles = new int[3 * count];
        int attributes = 0;
        for (int i = 0; i < count; i++)
        {
            var facet = bytes.Slice(StlWriter.HeaderLength + (StlWriter.FacetLength * i), StlWriter.FacetLength);
            for (int corner = 0; corner < 3; corner++)
            {
                var (x, y, z) = Corner(facet.Slice(12 + (12 * corner), 12));
                if (!(Holds(x) && Holds(y) && Holds(z)))
                {
                    return Outcome.Fault<StlContents>(Fault("PF7102", name, Invariant($"has a corner of triangle {i + 1} that is no number, or lies ")
                        + Invariant($"beyond {InputLimits.MeshCoordinate:0} mm"), "Write it again; the file is damaged."));
                }

                triangles[(3 * i) + corner] = welder.IndexOf(x, y, z);
            }

            attributes += facet[48] == 0 && facet[49] == 0 ? 0 : 1;
        }

        if (Beyond(welder, triangles, name) is { } beyond)
        {
            return Outcome.Fault<StlContents>(beyond);
        }

        string title = Encoding.ASCII.GetString(bytes[..80]).TrimEnd(' ', '\0');
        return Outcome.Of(new StlContents(new(welder.ToVertices(), triangles, []), title, false, attributes));
    }

    private static (float X, float Y, float Z) Corner(ReadOnlySpan<byte> place) => (BinaryPrimitives.ReadSingleLittleEndian(place),
        BinaryPrimitives.ReadSingleLittleEndian(place[4..]), BinaryPrimitives.ReadSingleLittleEndian(place[8..]));
}
