using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Manifests;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Exports;

public class ManifestTests
{
    private static readonly Manifest Sample = new(
        "Pendlewick", "0.1.0", new string('a', 64),
        [new("up side", "up side 1 of 1", 1, 270, 400.5, "stl/a-01.stl", "3mf/a.3mf", 1,
            new RigidTransform(new(1, 0, 0), new(0, Math.Cos(3), -Math.Sin(3)), new(0, Math.Sin(3), Math.Cos(3)), default).Then(RigidTransform.AboutZ(0.3))
                .Then(RigidTransform.Shift(1, 2, 3))) { AllPlates = "3mf/a-all.3mf" }],
        [new("3mf/a-all.3mf", 10, new string('d', 64)), new("3mf/a.3mf", 10, new string('b', 64)), new("stl/a-01.stl", 684, new string('c', 64))]);

    private static readonly DesignCopy Design = new(
        "Pendlewick", 76.2, 16.5, 8,
        [
            new("up", [new(0, 0, 0.1, 300, 0, 0), new(300, 0, 0.1, 260, 0, 1 / 760.0)],
                [new Vehicle("long coach", 188, 34, 34, [VehiclePart.Box("body", PartCarrier.Body, -131, 131, 34.5, 3, 50)]) { Sill = new(17, 16, -120, 120),
                    LeastRadius = 450 }], true, false),
        ],
        PrinterSpec.Oblong(220, 220, 250),
        [new("up side", [new(0, 0, 0.1, 560, 0, 0)], new FaceSpec("up", Side.Right, 270, 500, EdgeStyle.Faired), 12,
            ClearanceBudget.Of(1, 0.2, play: new RunningPlay(0.4)))]);

    [Fact]
    public void A_manifest_reads_back_as_it_was()
    {
        var read = ManifestForm.Read(ManifestForm.ToBytes(Sample), "m").Value!;
        Assert.Equal(Sample.Sections, read.Sections);
        Assert.Equal(Sample.Files, read.Files);
        Assert.Equal((Sample.Project, Sample.Version, Sample.InputHash), (read.Project, read.Version, read.InputHash));
    }

    [Theory]
    [InlineData("stl/a-01.stl\",\n      \"bytes\": 684", "../a-01.stl\",\n      \"bytes\": 684", "no path below")]
    [InlineData("\"bytes\": 684", "\"bytes\": 684.5", "breaks")]
    [InlineData("\"bytes\": 684", "\"bytes\": -1", "-1 bytes long")]
    [InlineData("\"format\": 3", "\"format\": 1", "format 3, but of format 1")]
    [InlineData("\"tool\": \"PlatformForge\",", "", "format 3")]
    [InlineData("\"format\"", "\"fromat\"", "format 3")]
    [InlineData("\"all_plates\"", "\"every_plate\"", "every_plate")]
    [InlineData("\"number\": 1,", "\"number\": 1, \"number\": 1,", "breaks")]
    [InlineData("\"number\": 1,", "", "breaks")]
    [InlineData("\"stl\": \"stl/a-01.stl\"", "\"stl\": \"stl/b.stl\"", "not among its files")]
    public void A_manifest_that_was_tampered_with_is_a_clean_fault(string old, string changed, string said)
    {
        string text = Encoding.UTF8.GetString(ManifestForm.ToBytes(Sample));
        Assert.Contains(old, text, StringComparison.Ordinal);
        var finding = Assert.Single(ManifestForm.Read(Encoding.UTF8.GetBytes(text.Replace(old, changed, StringComparison.Ordinal)), "m").Findings);
        Assert.Equal("PF7401", finding.Code);
        Assert.Contains(said, finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_motion_that_mirrors_is_refused()
    {
        var mirrored = Sample.Sections[0] with { ToLayout = new(new(-1, 0, 0), new(0, 1, 0), new(0, 0, 1), default) };
        Assert.Equal("PF7401", Assert.Single(ManifestForm.Read(ManifestForm.ToBytes(Sample with { Sections = [mirrored] }), "m").Findings).Code);
    }

    [Fact]
    public void A_design_copy_reads_back_every_figure()
    {
        var bytes = DesignForm.ToBytes(Design);
        var read = DesignForm.Read(bytes, "d").Value!;
        Assert.Equal(bytes, DesignForm.ToBytes(read));
        Assert.Equal(Design.Tracks[0].Vehicles[0].Parts[0].Outline, read.Tracks[0].Vehicles[0].Parts[0].Outline);
        Assert.Equal(Design.Tracks[0].Vehicles[0].Sill, read.Tracks[0].Vehicles[0].Sill);
        Assert.Equal(Design.Tracks[0].Elements, read.Tracks[0].Elements);
        Assert.Equal(Design.Platforms[0].Budget.Lines, read.Platforms[0].Budget.Lines);
        Assert.Equal(1.2, read.Platforms[0].Budget.Margin, 12);
        Assert.Equal(Design.Platforms[0].Face with { Edge = EdgeStyle.Fitted }, read.Platforms[0].Face);
        Assert.Equal(Design.Printer.Bed, read.Printer.Bed);
        Assert.Equal(Design.Tracks[0].ToCentreline().PointAt(500, 3), read.Tracks[0].ToCentreline().PointAt(500, 3));
    }

    [Theory]
    [InlineData("\"gauge\"", "\"guage\"", "guage")]
    [InlineData("\"cant\": 0", "\"cantt\": 0", "cantt")]
    [InlineData("\"wheelset\": 0.4,", "", "wheelset")]
    [InlineData("\"format\": 1", "\"format\": 7", "format 1, but of format 7")]
    [InlineData("\"tool\": \"PlatformForge\"", "\"tool\": \"another\"", "is not of PlatformForge, format 1")]
    [InlineData("\"gauge\": 16.5", "\"gauge\": 1e999", "too large")]
    [InlineData("\"vehicles\": [", "\"vehicles\": [null,", "null")]
    [InlineData("\"gauge\": 16.5", "\"gauge\": \"16.5\"", "gauge")]
    [InlineData("\"gauge\": 16.5", "\"gauge\": null", "gauge")]
    public void A_design_copy_that_is_not_wholly_known_is_refused(string old, string changed, string said)
    {
        string text = Encoding.UTF8.GetString(DesignForm.ToBytes(Design));
        Assert.Contains(old, text, StringComparison.Ordinal);
        var finding = Assert.Single(DesignForm.Read(Encoding.UTF8.GetBytes(text.Replace(old, changed, StringComparison.Ordinal)), "d").Findings);
        Assert.Equal("PF7402", finding.Code);
        Assert.Contains(said, finding.Message, StringComparison.Ordinal);
    }

    // Figures that may well lie below nil: places, turns and heights from rail top.
    private static readonly HashSet<string> Signed =
    [
        "x", "y", "heading", "start_curvature", "end_curvature", "bed", "outline", "z_low", "z_high", "from_x", "to_x", "from", "to", "leading_pivot_ahead",
        "trailing_pivot_ahead",
        "corner_ahead", "height_of_sill",
    ];

    [Fact]
    public void A_figure_below_nil_is_refused_wherever_the_design_copy_has_a_size()
    {
        var root = JsonNode.Parse(DesignForm.ToBytes(Design))!;
        string[] sizes = [.. Numbers(root).Select(n => n.GetPath())
            .Where(p => !p.Split('.').Any(step => Signed.Contains(step.Split('[')[0])) && !p.EndsWith("sill.height", StringComparison.Ordinal))];
        Assert.True(sizes.Length > 12, string.Join(" ", sizes));
        Assert.All(sizes, path =>
        {
            var changed = JsonNode.Parse(DesignForm.ToBytes(Design))!;
            Numbers(changed).First(n => n.GetPath() == path).ReplaceWith(-1);
            Assert.Equal("PF7402", Assert.Single(DesignForm.Read(Encoding.UTF8.GetBytes(changed.ToJsonString()), "d").Findings).Code);
        });
    }

    [Fact]
    public void Two_of_a_name_in_a_design_copy_and_two_of_a_path_in_a_manifest_are_refused()
    {
        static void Refused(DesignCopy design) => Assert.Contains(" two ", Assert.Single(DesignForm.Read(DesignForm.ToBytes(design), "d").Findings).Message,
            StringComparison.Ordinal);
        Refused(Design with { Tracks = [.. Design.Tracks, Design.Tracks[0]] });
        Refused(Design with { Platforms = [.. Design.Platforms, Design.Platforms[0]] });
        var again = Sample with { Files = [.. Sample.Files, Sample.Files[0]] };
        Assert.Contains("twice", Assert.Single(ManifestForm.Read(ManifestForm.ToBytes(again), "m").Findings).Message, StringComparison.Ordinal);
    }

    private static IEnumerable<JsonNode> Numbers(JsonNode? node) => node switch
    {
        JsonObject fields => fields.SelectMany(f => Numbers(f.Value)),
        JsonArray items => items.SelectMany(Numbers),
        JsonValue value when value.GetValueKind() == JsonValueKind.Number => [value],
        _ => [],
    };

    [Property(MaxTest = 200)]
    public void Any_damage_to_either_file_ends_in_a_result_or_a_clean_fault(int seed)
    {
        var random = new Random(seed);
        foreach (var original in new[] { ManifestForm.ToBytes(Sample), DesignForm.ToBytes(Design) })
        {
            var bytes = original[..random.Next(original.Length / 2, original.Length + 1)];
            for (int i = random.Next(4); i > 0; i--)
            {
                bytes[random.Next(bytes.Length)] = (byte)random.Next(32, 127);
            }

            var manifest = ManifestForm.Read(bytes, "m");
            var design = DesignForm.Read(bytes, "d");
            Assert.True(manifest.Succeeded || manifest.Findings.Count == 1);
            Assert.True(design.Succeeded || design.Findings.Count == 1);
        }
    }
}
