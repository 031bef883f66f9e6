using System.Text;
using FsCheck.Xunit;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>Must-fail packages after the names of the 3MF consortium's archived samples (STANDARDS 5.6): each a clean fault.</summary>
public class ThreeMfFaultTests
{
    private static readonly string Good = HandPackage.Model(HandPackage.Tetrahedron);
    private static readonly string Object = $"<object id=\"1\">{HandPackage.Tetrahedron}</object>";

    public static TheoryData<string, string, string> BrokenModels()
    {
        string Wrap(string inside, string attributes = "") => $"<model xmlns=\"{HandPackage.Namespace}\" {attributes}>{inside}</model>";
        string Resources(string inside = "") => $"<resources>{Object}{inside}</resources>";
        const string Build = "<build><item objectid=\"1\"/></build>";
        return new()
        {
            { "missing build", Wrap(Resources()), "build" },
            { "missing resources", Wrap("<build/>"), "build" },
            { "two model elements", Good + Good, "XML" },
            { "two builds", Wrap(Resources() + Build + Build), "build" },
            { "duplicate metadata", Wrap("<metadata name=\"Title\">a</metadata><metadata name=\"Title\">b</metadata>" + Resources() + Build), "Title" },
            { "metadata without name", Wrap("<metadata>a</metadata>" + Resources() + Build), "metadata" },
            { "metadata of an unknown name", Wrap("<metadata name=\"Colour\">a</metadata>" + Resources() + Build), "Colour" },
            { "item with unknown object", HandPackage.Model(HandPackage.Tetrahedron, "<item objectid=\"7\"/>"), "7" },
            { "item of type other", HandPackage.Model(HandPackage.Tetrahedron, type: "other"), "other" },
            { "invalid object type", HandPackage.Model(HandPackage.Tetrahedron, type: "sculpture"), "sculpture" },
            { "non-UTF encoding", "<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>" + Good, "ISO-8859-1" },
            { "DTD", "<!DOCTYPE model [<!ENTITY a \"b\">]>" + Good, "XML" },
            { "invalid unit", Wrap(Resources() + Build, "unit=\"furlong\""), "furlong" },
            { "unknown element", Wrap(Resources() + Build + "<extra/>"), "extra" },
            { "object id twice", Wrap(Resources(Object) + Build), "twice" },
            { "required extension", Wrap(Resources() + Build, "xmlns:q=\"urn:q\" requiredextensions=\"q\""), "urn:q" },
            { "number with a comma", Good.Replace("x=\"6\"", "x=\"6,5\"", StringComparison.Ordinal), "vertex 1" },
            { "number that ends in a point", Good.Replace("x=\"6\"", "x=\"6.\"", StringComparison.Ordinal), "vertex 1" },
            { "NaN", Good.Replace("x=\"6\"", "x=\"NaN\"", StringComparison.Ordinal), "vertex 1" },
            { "number too large", Good.Replace("x=\"6\"", "x=\"1e308\"", StringComparison.Ordinal), "vertex 1" },
            { "corner out of range", Good.Replace("v3=\"3\"", "v3=\"4\"", StringComparison.Ordinal), "4" },
            { "corner used twice", Good.Replace("v1=\"0\" v2=\"1\"", "v1=\"1\" v2=\"1\"", StringComparison.Ordinal), "triangle" },
            { "three triangles", Good.Replace("<triangle v1=\"1\" v2=\"2\" v3=\"3\"/>", "", StringComparison.Ordinal), "3 triangles" },
            { "transform of eleven numbers", HandPackage.Model(HandPackage.Tetrahedron, "<item objectid=\"1\" transform=\"1 0 0 0 1 0 0 0 1 0 0\"/>"),
                "twelve" },
            { "flat transform", HandPackage.Model(HandPackage.Tetrahedron, "<item objectid=\"1\" transform=\"1 0 0 0 1 0 0 0 0 0 0 0\"/>"), "flattens" },
            { "group of itself", Wrap("<resources><object id=\"1\"><components><component objectid=\"1\"/></components></object></resources>" + Build),
                "not defined" },
            { "material that is not there", Wrap(Resources().Replace("<object id=\"1\">", "<object id=\"1\" pid=\"5\" pindex=\"0\">", StringComparison.Ordinal)
                + Build), "no material" },
        };
    }

    [Theory]
    [MemberData(nameof(BrokenModels))]
    public void A_broken_model_part_is_one_clean_fault_that_says_what(string what, string model, string said)
    {
        var outcome = ThreeMfReader.Read(HandPackage.With(model), "broken.3mf");
        var finding = Assert.Single(outcome.Findings);
        Assert.Equal(("PF7203", FaultKind.Mesh), (finding.Code, finding.Kind));
        Assert.True(finding.Message.Contains(said, StringComparison.Ordinal), $"{what}: {finding.Message}");
    }

    [Fact]
    public void A_package_without_its_parts_is_a_clean_fault()
    {
        string thumbnail = HandPackage.Relationships.Replace("</Relationships>",
            "<Relationship Id=\"b\" Target=\"/t.png\" "
                + "Type=\"http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail\"/></Relationships>", StringComparison.Ordinal);
        string external = HandPackage.Relationships.Replace("Target=", "TargetMode=\"External\" Target=", StringComparison.Ordinal);
        byte[][] packages =
        [
            HandPackage.With(null), HandPackage.With(Good, relationships: null), HandPackage.With(Good, contentTypes: null),
            HandPackage.With(Good, thumbnail), HandPackage.With(Good, external),
            HandPackage.With(Good, contentTypes: HandPackage.ContentTypes.Replace("3dmodel+xml", "3dmodel", StringComparison.Ordinal)),
        ];
        Assert.All(packages, p => Assert.Equal("PF7202", Assert.Single(ThreeMfReader.Read(p, "p.3mf").Findings).Code));
        Assert.True(ThreeMfReader.Read(HandPackage.With(Good), "p.3mf").Succeeded);
    }

    [Fact]
    public void A_group_places_its_members_by_the_inner_motion_first()
    {
        string model = $"<model unit=\"centimeter\" xmlns=\"{HandPackage.Namespace}\"><resources>{Object}<object id=\"2\"><components>"
            + "<component objectid=\"1\" transform=\"1 0 0 0 1 0 0 0 1 10 0 0\"/></components></object></resources>"
            + "<build><item objectid=\"2\" transform=\"0 1 0 -1 0 0 0 0 1 0 0 5\"/></build></model>";
        var placed = Assert.Single(ThreeMfReader.Read(HandPackage.With(model), "g.3mf").Value!.PlacedMeshes());
        var (low, high) = placed.Box();

        // x from 10 to 16 becomes y, y from 0 to 6 becomes -x, z is raised by 5; then ten mm a centimetre.
        Assert.Equal((-60, 100, 50), (low.X, low.Y, low.Z));
        Assert.Equal((0, 160, 110), (high.X, high.Y, high.Z));
    }

    [Fact]
    public void A_cut_or_damaged_archive_is_a_clean_fault()
    {
        var bytes = ThreeMfWriter.ToBytes(ThreeMfTests.Sample(HandSolids.Ball(6)));
        for (int kept = 0; kept < bytes.Length; kept += 97)
        {
            var outcome = ThreeMfReader.Read(bytes[..kept], "cut.3mf");
            Assert.Equal("PF7201", Assert.Single(outcome.Findings).Code);
        }
    }

    [Property(MaxTest = 150)]
    public void Any_damage_ends_in_a_result_or_a_clean_fault(int seed)
    {
        var random = new Random(seed);
        var bytes = ThreeMfWriter.ToBytes(ThreeMfTests.Sample(HandSolids.Tetrahedron()));
        for (int i = random.Next(1, 6); i > 0; i--)
        {
            bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        }

        var outcome = ThreeMfReader.Read(bytes, "noise.3mf");
        Assert.True(outcome.Succeeded || outcome.Findings.Count > 0);

        var model = Encoding.UTF8.GetBytes(Good);
        for (int i = random.Next(1, 6); i > 0; i--)
        {
            model[random.Next(model.Length)] = (byte)random.Next(32, 127);
        }

        outcome = ThreeMfReader.Read(HandPackage.With(Encoding.UTF8.GetString(model)), "noise.3mf");
        Assert.True(outcome.Succeeded || outcome.Findings.Count > 0);
    }
}
