using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using FsCheck.Xunit;
using PlatformForge.Exports.Stl;
using PlatformForge.Geometry;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>The layout of binary STL as in STANDARDS 5.4: 80 bytes of header, count, 50 bytes a triangle (published format descriptions).</summary>
public class StlTests
{
    public static TheoryData<string, double> Solids() => new() { { "box", 6000 }, { "angle", 240 }, { "tetrahedron", 36 } };

    [Fact]
    public void The_published_box_is_684_bytes_with_12_triangles_8_corners_and_6000_cubic_mm()
    {
        // Box.stl of the 3MF consortium's library: 684 bytes, 12 triangles, 8 vertices, 6000 mm3, 10 x 20 x 30.
        var bytes = StlWriter.ToBytes(HandSolids.Box(), "box");
        Assert.Equal(684, bytes.Length);
        var read = StlReader.Read(bytes, "box.stl").Value!;
        Assert.Equal((12, 8), (read.Mesh.TriangleCount, read.Mesh.Vertices.Length));
        Assert.Equal(6000, read.Mesh.Volume(), 9);
        Assert.Equal((new Point3(0, 0, 0), new Point3(10, 20, 30)), read.Mesh.Box());
    }

    [Theory]
    [MemberData(nameof(Solids))]
    public void A_solid_keeps_its_volume_and_its_triangles_through_a_file(string name, double volume)
    {
        var mesh = Solid(name);
        var bytes = StlWriter.ToBytes(mesh, name);
        Assert.Equal(84 + (50 * mesh.TriangleCount), bytes.Length);
        var read = StlReader.Read(bytes, name).Value!;
        Assert.Equal(volume, read.Mesh.Volume(), 9);
        Assert.Equal(0, read.AttributesInUse);
        Assert.False(read.IsText);
        Assert.Equal(0, Apart(mesh, read.Mesh));
    }

    [Theory]
    [InlineData("solid rock")]
    [InlineData("Pendlewick section 3 of 7, a name that goes on and on past the eighty bytes that a header has")]
    [InlineData("Überführung\n")]
    public void No_title_makes_the_header_begin_with_solid_or_leave_plain_letters(string title)
    {
        var header = StlWriter.ToBytes(HandSolids.Box(), title).AsSpan(0, 80);
        Assert.False(Encoding.ASCII.GetString(header).StartsWith("solid", StringComparison.OrdinalIgnoreCase));
        Assert.False(header.ContainsAnyExceptInRange((byte)32, (byte)126));
    }

    [Fact]
    public void Normals_are_of_unit_length_and_point_outward()
    {
        var bytes = StlWriter.ToBytes(HandSolids.Box(), "box");
        for (int i = 0; i < 12; i++)
        {
            var facet = bytes.AsSpan(84 + (50 * i));
            Point3 At(ReadOnlySpan<byte> p) => new(BinaryPrimitives.ReadSingleLittleEndian(p), BinaryPrimitives.ReadSingleLittleEndian(p[4..]),
                BinaryPrimitives.ReadSingleLittleEndian(p[8..]));
            var normal = At(facet);
            Assert.Equal(1, normal.Length, 6);
            Assert.True(Point3.Dot(normal, At(facet[12..]) - new Point3(5, 10, 15)) > 0);
        }
    }

    [Fact]
    public void One_thread_and_many_write_the_same_bytes()
    {
        var mesh = HandSolids.Ball(100);
        var one = StlWriter.ToBytes(mesh, "ball", threads: 1);
        Assert.Equal(one, StlWriter.ToBytes(mesh, "ball", threads: 2));
        using var stream = new MemoryStream();
        StlWriter.Write(stream, mesh, "ball");
        Assert.Equal(one, stream.ToArray());
    }

    [Fact]
    public void The_text_form_reads_as_the_binary_one()
    {
        var mesh = HandSolids.Angle();
        var text = new StringBuilder("solid an angle\n");
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            text.Append("  facet normal 0 0 0\n    outer loop\n");
            for (int k = 0; k < 3; k++)
            {
                var v = mesh.Vertices[mesh.Triangles[i + k]];
                text.Append(CultureInfo.InvariantCulture, $"      vertex {v.X:E} {v.Y} {v.Z}\r\n");
            }

            text.Append("    endloop\n  endfacet\n");
        }

        var read = StlReader.Read(Encoding.ASCII.GetBytes(text + "endsolid an angle\n"), "a.stl").Value!;
        Assert.True(read.IsText);
        Assert.Equal("an angle", read.Title);
        Assert.Equal(240, read.Mesh.Volume(), 9);
        Assert.Equal(12, read.Mesh.Vertices.Length);
    }

    [Fact]
    public void The_length_decides_before_the_word_solid_does()
    {
        var bytes = StlWriter.ToBytes(HandSolids.Box(), "box");
        Encoding.ASCII.GetBytes("solid ").CopyTo(bytes, 0);
        Assert.False(StlReader.Read(bytes, "box.stl").Value!.IsText);
    }

    [Theory]
    [InlineData(0, "PF7101")]
    [InlineData(83, "PF7101")]
    [InlineData(84, "PF7101")]
    [InlineData(683, "PF7101")]
    public void A_file_cut_short_is_a_fault_with_both_lengths(int kept, string code)
    {
        var finding = Assert.Single(StlReader.Read(StlWriter.ToBytes(HandSolids.Box(), "box").AsSpan(0, kept), "cut.stl").Findings);
        Assert.Equal(code, finding.Code);
        Assert.Contains(kept.ToString(CultureInfo.InvariantCulture), finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_solid_and_a_corner_that_is_no_number_are_faults()
    {
        Assert.Equal("PF7104", Assert.Single(StlReader.Read(StlWriter.ToBytes(new([], [], []), ""), "e.stl").Findings).Code);
        var bytes = StlWriter.ToBytes(HandSolids.Box(), "box");
        BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(84 + 12), float.NaN);
        Assert.Equal("PF7102", Assert.Single(StlReader.Read(bytes, "nan.stl").Findings).Code);
    }

    [Property(MaxTest = 300)]
    public void Any_damage_ends_in_a_result_or_a_clean_fault(byte[] noise, int at, ushort keep)
    {
        var bytes = StlWriter.ToBytes(HandSolids.Tetrahedron(), "t");
        for (int i = 0; i < noise.Length; i++)
        {
            bytes[(int)((uint)(at + i) % (uint)bytes.Length)] = noise[i];
        }

        var outcome = StlReader.Read(bytes.AsSpan(0, Math.Min(keep % 400, bytes.Length)), "noise.stl");
        Assert.True(outcome.Succeeded || outcome.Findings.Count > 0);
        var text = StlReader.Read([.. "solid "u8, .. noise], "noise.stl");
        Assert.True(text.Succeeded || text.Findings.Count > 0);
    }

    internal static Mesh Solid(string name) => name switch
    {
        "box" => HandSolids.Box(),
        "angle" => HandSolids.Angle(),
        _ => HandSolids.Tetrahedron(),
    };

    internal static Point3[] Corners(Mesh mesh) => Array.ConvertAll(mesh.Triangles, i => mesh.Vertices[i]);

    /// <summary>The most that corners of one mesh are from those of another, triangle by triangle, whichever corner a triangle begins with, mm.</summary>
    internal static double Apart(Mesh one, Mesh other)
    {
        Point3[] a = Corners(one), b = Corners(other);
        Assert.Equal(a.Length, b.Length);
        return Enumerable.Range(0, one.TriangleCount)
            .Max(t => Enumerable.Range(0, 3).Min(turn => Enumerable.Range(0, 3).Max(k => (a[(3 * t) + k] - b[(3 * t) + ((k + turn) % 3)]).Length)));
    }
}
