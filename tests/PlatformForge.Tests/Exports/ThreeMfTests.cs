using System.Globalization;
using System.IO.Compression;
using System.Xml.Linq;
using PlatformForge.Exports.Looks;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>
/// The rules K, X and G of STANDARDS 5.5, read from the text of the 3MF core specification 1.4.0 (6 February 2025), each checked on
/// a package as written.
/// </summary>
public class ThreeMfTests
{
    private static readonly XNamespace Core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
    private static readonly byte[] Picture = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    internal static ThreeMfModel Sample(params Mesh[] meshes) => new(
        [new("Title", "Quillhaven <bay> & \"head\""), new("Designer", "us"), new("Description", "two solids"), new("Application", "PlatformForge 0")],
        Palette.Materials,
        [.. meshes.Select((m, i) => new ThreeMfObject(i + 1, $"Section {i + 1}", $"QH-{i + 1}", m, []))],
        [.. meshes.Select((_, i) => new ThreeMfItem(i + 1, AffineMotion.Of(RigidTransform.AboutZ(0.5).Then(RigidTransform.Shift(100 * (i + 1), 60, 0))),
            $"QH-{i + 1}"))],
        Picture);

    [Theory]
    [InlineData("box", 6000)]
    [InlineData("angle", 240)]
    [InlineData("tetrahedron", 36)]
    public void A_solid_keeps_volume_names_materials_and_place_through_a_package(string name, double volume)
    {
        var model = Sample(StlTests.Solid(name), HandSolids.Box(1, 1, 1));
        var read = ThreeMfReader.Read(ThreeMfWriter.ToBytes(model), "s.3mf").Value!;
        Assert.Equal(volume, read.Objects[0].Mesh!.Volume(), 9);
        Assert.Equal(volume, read.PlacedMeshes()[0].Volume(), 6);
        Assert.Equal(model.Metadata, read.Metadata);
        Assert.Equal(model.Materials, read.Materials);
        Assert.Equal(Picture, read.Thumbnail);
        Assert.Equal(model.Objects.Select(o => (o.Id, o.Name, o.PartNumber)), read.Objects.Select(o => (o.Id, o.Name, o.PartNumber)));
        var paints = model.Objects[0].Mesh!.Paints;
        Assert.Equal(paints.Length == 0 ? new byte[read.Objects[0].Mesh!.TriangleCount] : paints, read.Objects[0].Mesh!.Paints);
        foreach (var (wanted, got) in model.PlacedMeshes().Zip(read.PlacedMeshes()))
        {
            Assert.All(StlTests.Corners(wanted).Zip(StlTests.Corners(got)), pair => Assert.True((pair.First - pair.Second).Length < 3e-6));
        }
    }

    [Fact]
    public void K1_K2_the_archive_is_plain_with_deflated_or_stored_entries_and_fixed_times()
    {
        var bytes = ThreeMfWriter.ToBytes(Sample(HandSolids.Box()));
        Assert.True(bytes.AsSpan().IndexOf("PK\u0006\u0006"u8) < 0, "ZIP64 where a plain archive would do");
        int at = 0, entries = 0;
        while ((at = bytes.AsSpan(at).IndexOf("PK\u0001\u0002"u8) is var next && next >= 0 ? at + next : -1) >= 0)
        {
            Assert.Contains(BitConverter.ToUInt16(bytes, at + 10), new ushort[] { 0, 8 });
            Assert.Equal(0x0021_0000u, BitConverter.ToUInt32(bytes, at + 12)); // 1 January 1980, midnight
            entries++;
            at += 4;
        }

        Assert.Equal(4, entries);
    }

    [Fact]
    public void K3_K4_K6_K7_relationships_and_content_types_name_model_and_thumbnail()
    {
        using var archive = Open(ThreeMfWriter.ToBytes(Sample(HandSolids.Box())));
        XNamespace relationships = "http://schemas.openxmlformats.org/package/2006/relationships",
            types = "http://schemas.openxmlformats.org/package/2006/content-types";
        var rels = Xml(archive, "_rels/.rels").Root!.Elements(relationships + "Relationship")
            .ToDictionary(r => (string)r.Attribute("Type")!, r => (string)r.Attribute("Target")!);
        Assert.Equal("/3D/3dmodel.model", rels["http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"]);
        string thumbnail = rels["http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail"];
        Assert.NotNull(archive.GetEntry(thumbnail[1..]));
        var defaults = Xml(archive, "[Content_Types].xml").Root!.Elements(types + "Default")
            .ToDictionary(d => (string)d.Attribute("Extension")!, d => (string)d.Attribute("ContentType")!);
        Assert.Equal("application/vnd.ms-package.3dmanufacturing-3dmodel+xml", defaults["model"]);
        Assert.Equal("application/vnd.openxmlformats-package.relationships+xml", defaults["rels"]);
        Assert.Equal("image/png", defaults["png"]);
    }

    [Fact]
    public void X1_to_X10_the_model_part_keeps_the_rules_of_the_XML()
    {
        using var archive = Open(ThreeMfWriter.ToBytes(Sample(HandSolids.Angle(), HandSolids.Box())));
        var document = Xml(archive, "3D/3dmodel.model");
        Assert.Equal("utf-8", document.Declaration!.Encoding, ignoreCase: true);
        Assert.Null(document.DocumentType);
        var model = document.Root!;
        Assert.Equal(Core + "model", model.Name);
        Assert.Equal("millimeter", (string?)model.Attribute("unit"));
        Assert.Single(model.Elements(Core + "resources"));
        Assert.Single(model.Elements(Core + "build"));
        Assert.DoesNotContain(model.DescendantsAndSelf().Attributes(), a => a.Name == XNamespace.Xml + "space");
        var ids = model.Element(Core + "resources")!.Elements().Select(e => (int)e.Attribute("id")!).ToArray();
        Assert.Equal(ids.Distinct(), ids);
        Assert.All(ids, id => Assert.True(id >= 1));
        Assert.DoesNotContain(model.Elements(Core + "metadata"), m => ((string)m.Attribute("name")!).EndsWith("Date", StringComparison.Ordinal));
        var numbers = model.Descendants(Core + "vertex").Attributes().Select(a => a.Value)
            .Concat(model.Descendants(Core + "item").SelectMany(i => ((string)i.Attribute("transform")!).Split(' ')));
        Assert.All(numbers, n => Assert.Matches(@"^[-+]?([0-9]+(\.[0-9]+)?|\.[0-9]+)([eE][-+]?[0-9]+)?$", n));
        Assert.All(model.Descendants(Core + "base"), b => Assert.Matches("^#[0-9A-F]{6}$", (string)b.Attribute("displaycolor")!));
    }

    [Fact]
    public void G_rules_every_mesh_is_closed_by_index_outward_and_in_the_positive_octant()
    {
        var read = ThreeMfReader.Read(ThreeMfWriter.ToBytes(Sample(HandSolids.Angle(), HandSolids.Ball(8))), "g.3mf").Value!;
        foreach (var mesh in read.Objects.Select(o => o.Mesh!))
        {
            var edges = new HashSet<(int, int)>();
            for (int i = 0; i < mesh.Triangles.Length; i++)
            {
                Assert.True(edges.Add((mesh.Triangles[i], mesh.Triangles[i - (i % 3) + ((i + 1) % 3)])), "an edge runs the same way twice");
            }

            Assert.All(edges, e => Assert.Contains((e.Item2, e.Item1), edges));
            Assert.True(mesh.Volume() > 0);
            Assert.True(mesh.TriangleCount >= 4);
            Assert.Equal(mesh.Vertices.Distinct().Count(), mesh.Vertices.Length);
        }

        Assert.All(read.PlacedMeshes(), m => Assert.True(Math.Min(m.Box().Low.X, m.Box().Low.Y) >= 0));
    }

    [Fact]
    public void G10_G11_objects_have_a_material_and_triangles_name_only_one()
    {
        using var archive = Open(ThreeMfWriter.ToBytes(Sample(HandSolids.Angle())));
        var thing = Xml(archive, "3D/3dmodel.model").Descendants(Core + "object").Single();
        Assert.NotNull(thing.Attribute("pid"));
        Assert.Equal("3", (string?)thing.Attribute("pindex"));
        Assert.Equal(6, thing.Descendants(Core + "triangle").Count(t => t.Attribute("p1") is not null));
        Assert.DoesNotContain(thing.Descendants(Core + "triangle"), t => t.Attribute("p2") is not null || t.Attribute("p3") is not null);
    }

    [Fact]
    public void The_same_model_gives_the_same_bytes_in_three_cultures()
    {
        var model = Sample(HandSolids.Ball(9), HandSolids.Angle());
        var before = CultureInfo.CurrentCulture;
        try
        {
            var files = new[] { "", "de-DE", "ru-RU" }.Select(culture =>
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                return ThreeMfWriter.ToBytes(model);
            }).ToArray();
            Assert.Equal(files[0], files[1]);
            Assert.Equal(files[0], files[2]);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void The_published_transform_gives_the_published_box_and_volume()
    {
        // MUSTPASS_Chapter3.2c_MultipleItemsTransform of the 3MF samples: a mesh of box 20 x 18 x 32, moved by "0 1 0 0 0 1.666667 1.25 0 0 0 0 0",
        // becomes 40 x 20 x 30; determinant 2.08333, so 3360 mm3 become 7000. Any solid of that box and volume will do.
        var outer = HandSolids.Box(20, 18, 32);
        var inner = HandSolids.Box(17, 16, 30); // the hollow: 11520 - 8160 = 3360
        var mesh = new Mesh(
            [.. outer.Vertices, .. inner.Vertices.Select(v => v + new Point3(1, 1, 1))],
            [.. outer.Triangles, .. inner.Triangles.Reverse().Select(i => i + 8)],
            []);
        Assert.Equal(3360, mesh.Volume(), 6);
        string item = "<item objectid=\"1\" transform=\"0 1 0 0 0 1.666667 1.25 0 0 0 0 0\"/>";
        var read = ThreeMfReader.Read(HandPackage.With(HandPackage.Model(HandPackage.MeshText(mesh), item)), "t.3mf");
        var placed = Assert.Single(read.Value!.PlacedMeshes());
        var (low, high) = placed.Box();
        Assert.Equal(40, high.X - low.X, 4);
        Assert.Equal(20, high.Y - low.Y, 4);
        Assert.Equal(30, high.Z - low.Z, 4);
        Assert.Equal(7000, placed.Volume(), 2);
    }

    private static ZipArchive Open(byte[] bytes) => new(new MemoryStream(bytes));

    private static XDocument Xml(ZipArchive archive, string name)
    {
        using var stream = archive.GetEntry(name)!.Open();
        return XDocument.Load(stream);
    }
}
