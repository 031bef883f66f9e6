using PlatformForge.Exports.Files;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Cli;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>Gaps measured on the finished layout against the plan.</summary>
public class AsBuiltTests
{
    /// <summary>Straight track, a coach 34 mm wide, 1.1 mm of budget: the coping at 18.1 mm, so 9.85 mm from the running edge of 16.5 mm gauge.</summary>
    private static readonly Lazy<Dossier> Straight = new(() => DesignRun.Design(Samples.Sound(Samples.Small), RunWatch.None).Value!);

    private static readonly Lazy<Dossier> Curved = new(() => DesignRun.Design(
        Samples.Sound(Samples.Small.Replace("[{ straight = 900 }]",
            "[{ straight = 250 }, { curve = 800, length = 400, hand = \"right\" }, { straight = 400 }]")
            + "ramps = { end = { length = 60 } }\n[[vehicle]]\nname = \"van\"\nlength = 84\npivots = 40\nwidth = 32\n"),
        RunWatch.None).Value!);

    [Fact]
    public void A_gap_from_the_running_edge_gives_the_edge_and_what_is_left()
    {
        var edge = Sound(Straight.Value, "chainage,gap\n400,9.55\n500,10.25\n", out _);
        Assert.Equal(9.55 + 8.25, edge.Measures[0].True, 1e-9);
        Assert.Equal(-0.30, edge.Measures[0].OffBy, 0.011);
        Assert.Equal(0.80, edge.Measures[0].Closest!.Left, 0.011);
        Assert.Equal(0.40, edge.Measures[1].OffBy, 0.011);
        Assert.Same(edge.Measures[0], edge.Worst);
    }

    [Theory]
    [InlineData(9.55, null)]
    [InlineData(9.40, "PF4081")]
    [InlineData(8.70, "PF4080")]
    public void Less_than_the_running_clearance_is_told_and_a_foul_is_an_error(double gap, string? code)
    {
        Sound(Straight.Value, FormattableString.Invariant($"gap;at\n{gap};450"), out var findings);
        Assert.Equal(code is null ? [] : [code], findings.Select(f => f.Code));
        Assert.AllOrNone(findings, f => Assert.Equal(("gaps.csv", 2), (f.File, f.Line)));
    }

    /// <summary>8.70 from the rail puts the edge at 16.95 mm, 0.05 inside the coach; 0.7 wanted, so 0.75 mm away mends it, and it does.</summary>
    [Fact]
    public void The_move_that_is_offered_is_enough()
    {
        Sound(Straight.Value, "chainage,gap\n450,8.70", out var findings);
        Assert.Contains("fouls it by 0.05 mm", findings[0].Message, StringComparison.Ordinal);
        Assert.Contains("Move it 0.75 mm away", findings[0].Remedy, StringComparison.Ordinal);
        Sound(Straight.Value, "chainage,gap\n450,9.46", out var mended);
        Assert.Empty(mended);
    }

    /// <summary>The edge is where it is, whatever it was measured from: the clearance of one vehicle predicts what the rail would give.</summary>
    [Fact]
    public void A_gap_to_a_vehicle_and_one_to_the_rail_find_the_same_edge()
    {
        var dossier = Curved.Value;
        var planned = Sound(dossier, "chainage,gap\n470,12", out _).Measures[0];
        Assert.Equal(["coach", "van"], planned.Vehicles.Select(v => v.Vehicle));
        foreach (var room in planned.Vehicles)
        {
            var seen = Sound(dossier, FormattableString.Invariant($"chainage,gap,vehicle\n470,{room.Planned:R},{room.Vehicle}"), out _).Measures[0];
            Assert.InRange(seen.OffBy, -dossier.Platforms[0].Envelope.ErrorBound - 1e-9, 1e-9);
        }
    }

    [Fact]
    public void Units_decimal_commas_quotes_and_column_order_are_those_of_survey_tables()
    {
        var plain = Sound(Straight.Value, "chainage,gap,vehicle\n400,1.25,coach\n", out _);
        foreach (string text in new[] { "Vehicle;Gap (mm);Chainage (cm)\ncoach;1,25;40\n",
            "# first evening\ngap (in)\tat\tvehicle\n0.0492126\t400\t\"coach\"\n" })
        {
            Assert.Equal(plain.Measures[0].True, Sound(Straight.Value, text, out _).Measures[0].True, 1e-6);
        }
    }

    [Theory]
    [InlineData("chainage,gap\n900,9\n", "PF4082", "350 to 540")]
    [InlineData("chainage,gap,vehicle\n400,1,coahc\n", "PF4083", "\"coach\"")]
    [InlineData("chainage,gap\n400,-1\n", "PF1031", "0")]
    [InlineData("chainage,gap,platform\n400,9,island\n", "PF1032", "\"halt\"")]
    [InlineData("chainage,gap\n", "PF1030", "row")]
    [InlineData("chainage,gap\n400,wide\n", "PF2103", "12.5")]
    [InlineData("chainage,width\n400,9\n", "PF2102", "gap")]
    public void A_wrong_table_is_told_by_line_with_what_would_be_right(string text, string code, string remedy)
    {
        var outcome = AsBuiltCheck.Of(Straight.Value, text, "gaps.csv");
        Assert.Null(outcome.Value);
        var finding = Assert.Single(outcome.Findings);
        Assert.Equal((code, "gaps.csv"), (finding.Code, finding.File));
        Assert.InRange(finding.Line, 1, 2);
        Assert.Contains(remedy, finding.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void The_command_line_shows_the_table_and_ends_with_4_when_a_vehicle_fouls()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small), gaps = folder.Write("gaps.csv", "chainage;gap\n400;9,5\n500;8,7\n");
        var run = CliRun.Of("check", file, "--as-built", gaps);
        Assert.Equal(4, run.Exit);
        Assert.Contains("gaps.csv:3:1  error PF4080", run.Error, StringComparison.Ordinal);
        Assert.Contains("The readings name no vehicle: their gaps count from the running edge of the nearer rail", run.Out, StringComparison.Ordinal);
        Assert.Contains("half the gauge, 8.25 mm, plus the gap", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("name no vehicle",
            CliRun.Of("check", file, "--as-built", folder.Write("coach.csv", "chainage,gap,vehicle\n400,1.2,coach\n")).Out, StringComparison.Ordinal);
        Assert.Contains("1 of 2 readings name no vehicle",
            CliRun.Of("check", file, "--as-built", folder.Write("both.csv", "chainage,gap,vehicle\n400,1.2,coach\n450,10,\n")).Out, StringComparison.Ordinal);
        Assert.Contains("Worst: chainage 500 mm, -0.05 mm left for coach (body) where 1.1", run.Out, StringComparison.Ordinal);
        var json = CliRun.Of("check", file, "--as-built", gaps, "--json").Json().GetProperty("as_built")[0];
        Assert.Equal(500, json.GetProperty("worst_at_mm").GetDouble());
        Assert.Equal(2, json.GetProperty("readings").GetArrayLength());
        Assert.Equal(3, CliRun.Of("check", file, "--as-built", folder["nothing.csv"]).Exit);
    }

    [Fact]
    public void What_is_left_for_a_vehicle_that_might_be_bought_is_told_by_the_true_edge()
    {
        // The coach is 34 wide, the wide one 36: a millimetre less on either side.
        var wide = Straight.Value.Tracks[0].Vehicles[0] with
        {
            Name = "wide coach",
            Parts = [PlatformForge.Clearance.Vehicles.VehiclePart.Box("body", PlatformForge.Clearance.Vehicles.PartCarrier.Body, -114, 114, 36, 3, 50)]
        };
        var outcome = AsBuiltCheck.Of(Straight.Value, "chainage,gap,vehicle\n400,10.05,\n450,1.2,wide coach\n", "gaps.csv", [wide]);
        var edge = Assert.Single(outcome.Value!);
        Assert.Equal(0.30, edge.Measures[0].Vehicles.Single(v => v.Vehicle == "wide coach").Left, 0.011);
        Assert.Equal(1.30, edge.Measures[0].Vehicles.Single(v => v.Vehicle == "coach").Left, 0.011);
        Assert.Equal(18 + 1.2, edge.Measures[1].True, 0.011);
        Assert.Equal(["PF4081"], outcome.Findings.Select(f => f.Code));
    }

    [Fact]
    public void A_build_with_readings_has_them_in_the_report_and_a_table_of_their_own()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small), gaps = folder.Write("gaps.csv", "chainage,gap\n400,9.5\n500,8.7\n");
        var run = CliRun.Of("build", file, "--no-pictures", "-o", folder["out"], "--as-built", gaps);
        Assert.Equal(4, run.Exit);
        Assert.Contains("gaps.csv:3:1  error PF4080", run.Error, StringComparison.Ordinal);
        string report = File.ReadAllText(folder["out/report.md"]);
        Assert.Contains("### As measured on the layout", report, StringComparison.Ordinal);
        Assert.Contains("The readings name no vehicle", report, StringComparison.Ordinal);
        Assert.Contains("The readings name no vehicle", run.Out, StringComparison.Ordinal);
        Assert.Contains("chainage 500.0, -0.05 left for coach (body)", report, StringComparison.Ordinal);
        Assert.Equal(3, File.ReadAllLines(folder["out/tables/halt-as-built.csv"]).Length);
        Assert.Equal(0, CliRun.Of("verify", folder["out"]).Exit);
    }

    private static AsBuiltEdge Sound(Dossier dossier, string text, out IReadOnlyList<Finding> findings)
    {
        var outcome = AsBuiltCheck.Of(dossier, text, "gaps.csv");
        findings = outcome.Findings;
        Assert.True(outcome.Value is not null, string.Join("\n", findings.Select(f => f.Message)));
        return Assert.Single(outcome.Value);
    }
}
