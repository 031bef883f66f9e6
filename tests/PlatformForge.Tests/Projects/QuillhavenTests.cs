using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Cli;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>The sample of a platform just past a crossover, from the project file to the verdict. Figures of reach: USERS.md (f) 3, from an independent
/// simulation.</summary>
public class QuillhavenTests
{
    // 9.5 mm, the widest engine's cylinders on plain straight, and the sample's 0.7 of clearance.
    private const string FromStraight = "platform[0].face.reach=10.2";

    private static string Sample => PresetShelf.Sample("quillhaven")!;

    [Fact]
    public void An_edge_designed_from_plain_straight_is_refused_with_chainage_vehicle_part_and_what_would_work()
    {
        using var folder = new TempFolder();
        string file = folder.Write("quillhaven.toml", Sample);
        var run = CliRun.Of("check", file, "--set", "platform[0].face.edge=uniform", "--set", FromStraight);
        Assert.Equal(4, run.Exit);
        Assert.Contains("error PF4025  platform[0].face.reach", run.Error, StringComparison.Ordinal);

        // 30 mm past the crossover, between 11.3 at 10 mm and 10.6 at 40 mm.
        var told = Regex.Match(run.Error, @"at chainage 446 mm long coach \(body\) reaches (\d+\.\d+) mm and fouls it by (\d+\.\d+) mm");
        Assert.True(told.Success, run.Error);
        Assert.InRange(Number(told.Groups[1]), 10.6, 11.3);
        Assert.Equal(Number(told.Groups[1]) - 10.2, Number(told.Groups[2]), 0.011);

        string offered = Regex.Match(run.Error, @"Give a reach of (\d+(\.\d+)?) mm").Groups[1].Value;
        Assert.Equal(0, CliRun.Of("check", file, "--set", "platform[0].face.edge=uniform", "--set", "platform[0].face.reach=" + offered).Exit);
    }

    [Theory]
    [InlineData("faired")]
    [InlineData("fitted")]
    public void The_eased_edge_is_built_and_verify_agrees(string edge)
    {
        using var folder = new TempFolder();
        string file = folder.Write("quillhaven.toml", Sample), built = folder["built"];
        var run = CliRun.Of("build", file, "-o", built, "--no-pictures", "--strict", "--set", "platform[0].face.edge=" + edge);
        Assert.True(run.Exit == 0, run.Error);
        var verified = CliRun.Of("verify", built);
        Assert.Equal(0, verified.Exit);
        double least = Number(Regex.Match(verified.Out, @"Clear: nothing touches\. Least clearance (\d+\.\d+) mm").Groups[1]);
        Assert.InRange(least, 0.7, 0.73);
    }

    [Fact]
    public void A_platform_made_for_the_straight_alone_is_found_fouled_by_the_independent_poses()
    {
        // The same straight, laid by itself where the crossover ends, and the platform that it asks for...
        double turn = 78.0 / 450;
        string x = (260 + (2 * 450 * Math.Sin(turn))).ToString("R", CultureInfo.InvariantCulture),
            y = (2 * 450 * (1 - Math.Cos(turn))).ToString("R", CultureInfo.InvariantCulture);
        var straight = Samples.Sound(
            Sample,
            "track[0].alignment=[{ straight = 700 }]", $"track[0].start={{ x = {x}, y = {y} }}", "track[0].buffers=both",
            "platform[0].face.from=30", "platform[0].face.to=584", "platform[0].face.edge=fitted", "platform[0].baseboard_joints=[224]",
            "platform[0].fence.from=74", "platform[0].fence.to=204",
            "platform[0].board[0].at=144", "platform[0].board[1].at=284", "platform[0].board[2].at=464", "platform[0].board[3].at=374");
        var alone = DesignRun.Design(straight, new RunWatch(_ => { }, default)).Value!;
        Assert.InRange(alone.Platforms[0].Plan.CopingFront.Reach.Max(), 10.19, 10.23);

        // ...held against vehicles on the track as it is.
        var whole = DesignRun.Design(Samples.Sound(Sample), new RunWatch(_ => { }, default)).Value!;
        var verdict = TrialVerdict.Of(alone with { Tracks = whole.Tracks });
        Assert.False(verdict.Passed);
        Assert.Equal(("long coach", "body"), (verdict.Closest!.Vehicle, verdict.Closest.Part));
        Assert.InRange(verdict.Closest.Clearance, -0.75, -0.6);
        Assert.Contains(verdict.Findings, f => f.Severity == Severity.Error && f.Message.Contains("long coach", StringComparison.Ordinal));
        Assert.True(TrialVerdict.Of(alone).Passed);
    }

    [Fact]
    public void The_sample_is_reachable_by_init_and_stands_without_a_warning()
    {
        using var folder = new TempFolder();
        string file = folder["bay.toml"];
        Assert.Equal(0, CliRun.Of("init", file, "--sample", "quillhaven").Exit);
        Assert.Equal(Sample, File.ReadAllText(file));
        Assert.Equal(0, CliRun.Of("check", file, "--strict").Exit);
    }

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);
}
