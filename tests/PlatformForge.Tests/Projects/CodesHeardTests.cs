using PlatformForge.Projects.Presets;
using PlatformForge.Tests.Cli;
using PlatformForge.Tests.Projects.Remedies;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>One faulty project, file or command line for each finding that no other test makes the program tell: it is told by the ordinary reader, in a
/// sentence that can be true, and where a value is said to work the finding is gone with it.</summary>
public sealed class CodesHeardTests : IDisposable
{
    private const string Straights = "station,versine\n100,0\n200,0\n300,0\n400,0\n500,0\n600,0\n700,0\n800,0\n";

    private readonly TempFolder folder = new();

    public CodesHeardTests()
    {
        folder.Write("small.toml", Samples.Small);
        foreach (string sample in (string[])["straight-halt", "thornhithe"])
        {
            folder.Write(sample + ".toml", PresetShelf.Sample(sample)!);
        }

        folder.Write("short.csv", "distance,offset\n0,0\n10,0.1\n20,0.1\n30,0.2\n40,0.2\n50,0.1\n60,0\n");
        folder.Write("versines.csv", Straights);

        // Places on a curve of 2 m, but for one that was misread by 6 mm.
        folder.Write("misread.csv", "distance,offset\n" + string.Concat(Enumerable.Range(0, 19).Select(i =>
            FormattableString.Invariant($"{i * 50},{(i * 50 * (900 - (i * 50)) / 4000.0) + (i == 9 ? 6 : 0):0.0}\n"))));
        folder.Write("line.svg", """
            <svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="300mm" viewBox="0 0 900 300"><polyline id="up" fill="none" stroke="black"
            points="0,100 100,100 200,101 300,103 400,106 500,110 600,115 700,121 800,128 900,136"/></svg>
            """);
    }

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("PF2119", "small",
        """track=[{ name="main", survey={ kind="versines", file="versines.csv", measured="running-edge", rail="left", """
        + """also=[{ file="versines.csv", measured="running-edge", rail="right" }], chord=200, ruler_error=0.5 } }]""")]
    [InlineData("PF2125", "small", """track=[{ name="main", survey={ kind="drawing", file="line.svg", element="up", ruler_error=0.5 } }]""")]
    [InlineData("PF2130", "small", """track=[{ name="main", survey={ kind="string", file="short.csv", side="right", ruler_error=2 } }]""")]
    [InlineData("PF2162", "small", """track=[{ name="main", survey={ kind="string", file="misread.csv", side="right", ruler_error=0.25 } }]""")]
    [InlineData("PF3053", "straight-halt", "layout.rules=\"british-traditional\"", "platform[0].ramps={ end = { gradient = 3 } }")]
    [InlineData("PF4042", "small", "platform[0].fence={ pitch = 32, from = 500, to = 500 }")]
    [InlineData("PF4050", "small", "platform[0].cuts=[350.5]")]
    [InlineData("PF4061", "straight-halt", "platform[0].ribs={ lengthwise = 3 }",
        "platform[0].board=[{ at = 440, inset = 3.4, along = 10, across = 30, depth = 5 }]")]
    [InlineData("PF4091", "straight-halt", "platform[0].face.bodies_pass_over=true", "vehicle[0].low=13.5", "clearance.roll=1")]
    [InlineData("PF4100", "straight-halt", "platform[0].ribs={ pitch = 8 }", "platform[0].fixing=[{ at = 450, inset = 20, screw = 4 }]")]
    [InlineData("PF4122", "thornhithe", "track[1].start.x=1258", "track[1].start.y=655")]
    [InlineData("PF4123", "thornhithe", "track[1].start.y=300")]
    [InlineData("PF4132", "thornhithe", "platform[0].ramps={ start = { gradient = 8, foot = 4 }, end = { gradient = 8, foot = 4 } }",
        "platform[0].other_face={ track = \"down\", side = \"left\", edge = \"fitted\", bodies_pass_over = true }", "platform[0].face.bodies_pass_over=true",
        "vehicle[2].part=[{ name=\"canopy\", from=-60, to=60, width=90, low=16, high=40 }]", "platform[0].hole[0].inset=12")]
    [InlineData("PF4207", "small", "platform[0].coping={ arris_chamfer = 0.6 }", "platform[0].line={ width = 1, inset = 0.2 }")]
    [InlineData("PF6003", "small", "sections.longest=20", "platform[0].coping={ slab_length = 30 }")]
    [InlineData("PF6006", "small", "platform[0].ribs={ lengthwise = 20 }")]
    [InlineData("PF6008", "small", "platform[0].deck.width=24", "printer.bed=[300, 300]", "layout.scale=\"1-148\"", "platform[0].face.to=620",
        "platform[0].height=6")]
    public void A_project_at_fault_is_told_so(string code, string project, params string[] sets) => Heard(code, ["check", folder[project + ".toml"]], sets);

    [Theory]
    [InlineData("PF7443", "paper", "paper.size=[142, 142]", "paper.overlap=35", "platform[0].face.to=2900", "platform[0].deck.width=900",
        "printer={ bed = [1000, 1000], height = 100 }", "track[0].alignment=[{ straight = 3900 }]")]
    [InlineData("PF7505", "gauges", "vehicle[0].leading_truck={ pivot = 90, at = 110, wheelbase = 0, part = [{ name = \"axlebox\", from = -5, to = 5, width = "
        + "30, low = 3, high = 8 }] }", "gauges.throw_boards=[\"coach, leading truck\"]")]
    [InlineData("PF7506", "gauges", "printer={ bed = [60, 200], height = 100 }", "platform[0].face.from=440")]
    [InlineData("PF7507", "gauges", "platform[0].face.from=440")]
    [InlineData("PF7510", "gauges", "printer={ bed = [220, 220], height = 100, nozzle = 2, layer = 0.3 }", "layout.gauge=6.5", "platform[0].face.from=440")]
    [InlineData("PF7535", "build --sets sheet", "sheet={ versine = 0.02, slot = 4, wall_thickness = 4 }",
        "track[0].alignment=[{ straight = 300 }, { curve = 300, length = 300, hand = \"left\" }, { straight = 300 }]", "platform[0].face.edge=\"fitted\"")]
    public void What_cannot_be_made_is_told(string code, string command, params string[] sets) =>
        Heard(code, [.. command.Split(' '), folder["small.toml"], "--output", folder["out"]], sets);

    [Theory]
    [InlineData("PF1020", "init small.toml")]
    [InlineData("PF1023", "survey drawn.toml --string-lining 3000 --output out")]
    [InlineData("PF1033", "check small.toml --at nowhere")]
    [InlineData("PF1070", "findings PF9999")]
    public void A_command_that_cannot_be_followed_is_told_so(string code, string command)
    {
        folder.Write("drawn.toml", Samples.With(7, "survey = { kind = \"drawing\", file = \"line.svg\", element = \"up\", ruler_error = 0.5 }"));
        Heard(code, [.. command.Split(' ').Select(w => w.EndsWith(".toml", StringComparison.Ordinal) || w == "out" ? folder[w] : w)], []);
    }

    [Fact]
    public void A_figure_that_the_project_file_cannot_say_is_refused_of_the_librarys_callers()
    {
        var vehicle = Tests.Verification.Pieces.Coach() with { MiddleAxlePlay = -1 };
        Assert.Equal(["PF3018"], PlatformForge.Clearance.VehicleRule.Findings(vehicle).Select(f => f.Code));
        Assert.Equal("PF7103", Assert.Single(PlatformForge.Exports.Stl.StlReader.Read("solid a\n facet normal 0 0 1\n nonsense\n"u8, "a.stl").Findings).Code);
    }

    private void Heard(string code, string[] command, string[] sets)
    {
        var run = CliRun.Of([.. command, .. sets.SelectMany(s => new[] { "--set", s }), "--json"]);
        var all = run.Json().GetProperty("findings").EnumerateArray().ToArray();
        var told = all.Where(f => f.GetProperty("code").GetString() == code).ToArray();
        Assert.True(told.Length > 0,
            $"not heard among {string.Join("; ", all.Select(f => $"{f.GetProperty("code")} {f.GetProperty("message")} {f.GetProperty("remedy")}"))}");
        string given = string.Join(' ', command.Concat(sets));
        Assert.All(told,
            f =>
            Assert.Empty(Sentences.Complaints(new Finding(code, Severity.Error, "", f.GetProperty("message").GetString()!,
                f.GetProperty("remedy").GetString()!), given)));

        // What is said to have been tried is taken as it stands, as a user would.
        if (told[0].TryGetProperty("cure", out var cure) && cure.ValueKind == System.Text.Json.JsonValueKind.Object
            && cure.TryGetProperty("value", out var value)
            && told[0].GetProperty("remedy").GetString()!.StartsWith("Tried", StringComparison.Ordinal))
        {
            string taken = cure.GetProperty("key").GetString() + "="
                + (value.ValueKind == System.Text.Json.JsonValueKind.String ? value.GetString() : value.GetRawText());
            var after = CliRun.Of([.. command, .. sets.Append(taken).SelectMany(s => new[] { "--set", s }), "--json"]).Json().GetProperty("findings")
                .EnumerateArray();
            Assert.DoesNotContain(after, f => f.GetProperty("code").GetString() == code);
        }
    }
}
