using System.IO.Compression;
using System.Text;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>What an STL or a 3MF may hold at most: beyond it one clean fault with the limit, before it costs time or memory.</summary>
public class MeshBoundsTests
{
    private const string Vertex = "<vertex x=\"0\" y=\"0\" z=\"0\"/>";

    private static readonly string Object = $"<object id=\"1\">{HandPackage.Tetrahedron}</object>";

    private static readonly string Solid = $"<resources>{Object}</resources>";

    private const string Build = "<build><item objectid=\"1\"/></build>";

    private static readonly Dictionary<string, (Func<string> Text, double Limit)> BeyondModels = new()
    {
        ["chain of groups"] = (() => Model($"<resources>{Object}{Chain(5000)}</resources>{Build}"), InputLimits.ModelDepth),
        ["groups of groups"] = (() => Model($"<resources>{Object}{Doubled(15)}</resources><build><item objectid=\"16\"/></build>"), InputLimits.ModelTriangles),
        ["members"] =
        (() =>
            Model($"<resources>{Object}<object id=\"2\"><components>{Repeat("<component objectid=\"1\"/>", 20_000)}</components></object></resources>{Build}"),
            InputLimits.ModelObjects),
        ["objects"] =
        (() => Model($"<resources>{string.Concat(Enumerable.Range(1, 11_000).Select(Support))}</resources>{Build}"), InputLimits.ModelObjects),
        ["things on the plate"] = (() => Model($"{Solid}<build>{Repeat("<item objectid=\"1\"/>", 3000)}</build>"), InputLimits.ModelItems),
        ["lines of metadata"] = (() => Model(string.Concat(Enumerable.Range(0, 500).Select(i => $"<metadata name=\"q:{i}\">x</metadata>")) + Solid + Build,
            "xmlns:q=\"urn:q\""), InputLimits.ModelMetadata),
        ["a line of metadata"] = (() => Model($"<metadata name=\"Title\">{new string('x', 3_000_000)}</metadata>{Solid}{Build}"), InputLimits.ModelText),
        ["a line of metadata in pieces"] = (() => Model($"<metadata name=\"Title\">{Repeat("<![CDATA[<]]>x", 300_000)}</metadata>{Solid}{Build}"),
            InputLimits.ModelText),
        ["a name"] = (() => Model($"<metadata name=\"{new string('x', 3_000_000)}\">x</metadata>{Solid}{Build}"), InputLimits.ModelText),
        ["attributes"] = (() => Model($"<metadata {string.Concat(Enumerable.Range(0, 5000).Select(i => $"a{i}=\"1\" "))}/>{Solid}{Build}"),
            InputLimits.MarkupAttributes),
        ["elements inside one another"] = (() => Model($"{Repeat("<q:a>", 100_000)}{Repeat("</q:a>", 100_000)}{Solid}{Build}", "xmlns:q=\"urn:q\""),
            InputLimits.ModelElementsDeep),
        ["corners"] =
        (() =>
            Model("<resources><object id=\"1\" "
                + $"type=\"support\"><mesh><vertices>{Repeat(Vertex, InputLimits.ModelTriangles + 10)}</vertices></mesh></object></resources>{Build}"),
                InputLimits.ModelTriangles),
        ["a coordinate"] = (() => Model($"<resources>{Object.Replace("x=\"6\"", "x=\"10001\"", StringComparison.Ordinal)}</resources>{Build}"),
            InputLimits.MeshCoordinate),
    };

    public static TheoryData<string> BeyondModelsNames => [.. BeyondModels.Keys];

    [Theory]
    [MemberData(nameof(BeyondModelsNames))]
    public void A_package_beyond_a_limit_is_one_fault_with_the_limit(string what)
    {
        var (model, limit) = BeyondModels[what];
        var finding = Assert.Single(ThreeMfReader.Read(HandPackage.With(model()), "big.3mf").Findings);
        Assert.Equal(("PF7203", FaultKind.Mesh), (finding.Code, finding.Kind));
        Assert.True(finding.Message.Contains(limit.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal),
            $"{what}: {finding.Message}");
        Assert.True(finding.Message.Length < 300, what);
    }

    [Fact]
    public void A_small_archive_that_swells_is_refused_by_what_it_swells_to()
    {
        using var memory = new MemoryStream();
        using (var archive = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            Write(archive, "[Content_Types].xml", HandPackage.ContentTypes, 1);
            Write(archive, "_rels/.rels", HandPackage.Relationships, 1);
            Write(archive, "3D/3dmodel.model", $"<model xmlns=\"{HandPackage.Namespace}\">", 1, new string(' ', 90_000) + "<!-- -->",
                (InputLimits.ModelBytes / 90_000) + 2);
        }

        Assert.True(memory.Length < InputLimits.MeshBytes);
        var finding = Assert.Single(ThreeMfReader.Read(memory.ToArray(), "bomb.3mf").Findings);
        Assert.Contains("limit", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_archive_of_many_parts_is_refused()
    {
        using var memory = new MemoryStream();
        using (var archive = new ZipArchive(memory, ZipArchiveMode.Create, leaveOpen: true))
        {
            for (int i = 0; i <= InputLimits.ModelParts; i++)
            {
                archive.CreateEntry($"part{i}");
            }
        }

        Assert.Contains("1000", Assert.Single(ThreeMfReader.Read(memory.ToArray(), "parts.3mf").Findings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mesh_beyond_a_limit_is_one_fault_with_the_limit()
    {
        Mesh ball = HandSolids.Ball(6), far = ball with { Vertices = Array.ConvertAll(ball.Vertices, v => v * 1e6) },
            wide = Repeated(HandSolids.Tetrahedron() with { Vertices = Array.ConvertAll(HandSolids.Tetrahedron().Vertices, v => v * 1000) }, 1000);
        Assert.Equal(["PF7102"], Codes(StlWriter.ToBytes(far, "x")));
        Assert.Equal(["PF7105"], Codes(StlWriter.ToBytes(Repeated(ball, (InputLimits.SectionTriangles / ball.TriangleCount) + 1), "x")));
        Assert.Equal(["PF7105"], Codes(StlWriter.ToBytes(wide, "x")));
        Assert.Equal(["PF7105"], Codes(new byte[InputLimits.MeshBytes + 1]));
        string facet = "facet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\nendloop\nendfacet\n";
        Assert.Equal(["PF7105"], Codes(Encoding.UTF8.GetBytes("solid x\n" + Repeat(facet, InputLimits.SectionTriangles + 1) + "endsolid x\n")));
    }

    private static string[] Codes(byte[] bytes) => [.. StlReader.Read(bytes, "x.stl").Findings.Select(f => f.Code)];

    private static Mesh Repeated(Mesh mesh, int times) => new(mesh.Vertices, [.. Enumerable.Repeat(mesh.Triangles, times).SelectMany(t => t)], []);

    private static string Model(string inside, string attributes = "") => $"<model xmlns=\"{HandPackage.Namespace}\" {attributes}>{inside}</model>";

    private static string Repeat(string text, int times) => new StringBuilder(text.Length * times).Insert(0, text, times).ToString();

    private static string Support(int id) => $"<object id=\"{id}\" type=\"support\"><mesh><vertices/></mesh></object>";

    private static string Chain(int length) =>
        string.Concat(Enumerable.Range(2, length).Select(i => $"<object id=\"{i}\"><components><component objectid=\"{i - 1}\"/></components></object>"));

    // Each group holds the one before it four times: a few lines that come to a thousand million solids.
    private static string Doubled(int length) =>
        string.Concat(Enumerable.Range(2, length)
            .Select(i => $"<object id=\"{i}\"><components>{Repeat($"<component objectid=\"{i - 1}\"/>", 4)}</components></object>"));

    private static void Write(ZipArchive archive, string name, string head, int heads, string body = "", int bodies = 0)
    {
        using var stream = archive.CreateEntry(name, CompressionLevel.Fastest).Open();
        for (int i = 0; i < heads; i++)
        {
            stream.Write(Encoding.UTF8.GetBytes(head));
        }

        byte[] bytes = Encoding.UTF8.GetBytes(body);
        for (int i = 0; i < bodies; i++)
        {
            stream.Write(bytes);
        }
    }
}
