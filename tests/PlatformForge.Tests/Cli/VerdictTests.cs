using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Cli;

/// <summary>What the verdict says is so.</summary>
public class VerdictTests
{
    [Theory]
    [InlineData("check")]
    [InlineData("build")]
    public void An_edge_that_fouls_as_it_was_built_is_not_told_to_be_clear(string command)
    {
        // 7 mm from the running edge is 15.25 mm from the middle; the coach is 17 mm out.
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small), gaps = folder.Write("gaps.csv", "chainage,gap\n400,7\n");
        string[] more = command == "build" ? ["--no-pictures"] : [];
        var run = CliRun.Of([command, file, "--as-built", gaps, .. more]);
        Assert.Equal(4, run.Exit);
        Assert.Matches(@"\nClear as planned\. Least clearance \d+\.\d\d mm, .* AS BUILT IT FOULS by 1\.75 mm, at chainage 400 mm: coach \(body\)\.\n", run.Out);
        Assert.DoesNotContain("nothing touches", run.Out, StringComparison.Ordinal);
        string fine = folder.Write("fine.csv", "chainage,gap\n400,10\n");
        Assert.Contains("Clear: nothing touches. Least", CliRun.Of([command, file, "--as-built", fine, .. more]).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_there_are_several_platforms_the_least_clearance_names_its_platform()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small + "[[platform]]\nname = \"up side\"\nface = { track = \"main\", side = \"right\", from = 350, to "
            + "= 540 }\n");
        string one = folder.Write("one.toml", Samples.Small);
        Assert.DoesNotContain("at platform", CliRun.Of("check", one).Out, StringComparison.Ordinal);
        string check = CliRun.Of("check", file).Out, build = CliRun.Of("build", file, "--no-pictures").Out, verify = CliRun.Of("verify", folder["halt"]).Out;
        Assert.Matches(@"\n  coach on main: \d\.\d\d mm left after play and budget, (at chainage \d+|along chainage \d+ to \d+) mm at platform halt \(body\)",
            check);
        Assert.Matches(
            @"\n  coach on main: \d\.\d\d mm left after play and budget, (at chainage \d+|along chainage \d+ to \d+) mm at platform up side \(body\)", check);
        Assert.All([check, build, verify],
            o => Assert.Matches(@"Least clearance \d\.\d\d mm, (at chainage \d+|along chainage \d+ to \d+) mm of main at platform (halt|up side), \d", o));
        Assert.All([build, verify],
            o =>
            Assert.Matches(
                @"  coach on main: \d\.\d\d mm left after play and budget, (at chainage \d+|along chainage \d+ to \d+) mm at platform (halt|up side) \(body\)",
                o));
    }

    [Fact]
    public void What_passes_over_a_platform_that_is_held_out_from_under_it_is_told_to_overlap_in_plan()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small), high = folder.Write("wide.toml", "length = 200\npivots = 140\nwidth = 40\nlow = 20\n");
        var run = CliRun.Of("check", file, "--with-vehicle", high);
        Assert.Equal(4, run.Exit);
        Assert.Matches(@"\n  wide on main: overlaps by 1\.9\d mm, (at chainage \d+|along chainage \d+ to \d+) mm \(body, in plan\)", run.Out);
        Assert.Matches(
            @"\nNot passed\. Overlaps by 1\.9\d mm, (at chainage \d+|along chainage \d+ to \d+) mm of main, in plan, "
            + @"under a part whose underside is 20\.0 mm above rail top: wide \(body\)\.", run.Out);
        Assert.Matches(
            @"overlaps halt 1 of \d by 1\.9\d mm seen from above, .* mm above the rails, where the vehicle's underside is 20\.0 mm above them\. "
            + "They do not touch", run.Error);
        Assert.Contains("bodies_pass_over = true", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("FOULS", run.Out, StringComparison.Ordinal);
    }

    // Standing true the underside is 0.6 mm above the coping; roll and cant take its lower side below it, so that the coping is held to the body.
    [Fact]
    public void What_comes_to_the_height_of_a_platform_only_as_it_leans_is_told_so()
    {
        using var folder = new TempFolder();
        string text = Samples.Small.Replace("running = 0.7", "running = 0.7\nroll = 1.5\ncant = 0.5", StringComparison.Ordinal)
            .Replace("length = 228", "low = 12.6\nlength = 228", StringComparison.Ordinal)
            .Replace("to = 540 }", "to = 540, bodies_pass_over = true, vertical_gap = 0.5 }", StringComparison.Ordinal);
        var run = CliRun.Of("check", folder.Write("halt.toml", text));
        Assert.Equal(0, run.Exit);
        Assert.Matches(
            @"\n  coach on main: 0\.\d\d mm left after play and budget, (at chainage \d+|along chainage \d+ to \d+) mm \(body, in plan\), "
            + "as it leans; standing true it comes to the height of nothing printed", run.Out);
        Assert.Matches(
            @"\nClear: nothing touches\. Standing true no vehicle comes to the height of anything printed; leaning, coach \(body\) keeps play and budget, ",
            run.Out);
    }

    [Theory]
    [InlineData("british")]
    [InlineData("german")]
    public void A_listed_set_of_rules_is_shown_by_its_name(string name)
    {
        var run = CliRun.Of("presets", "rules", name);
        Assert.Equal(0, run.Exit);
        Assert.StartsWith(name + ": ", run.Out, StringComparison.Ordinal);
        Assert.NotEqual(0, CliRun.Of("presets", "rules", name, "--json").Json().GetProperty("figures").GetArrayLength());
        Assert.Equal(3, CliRun.Of("presets", "rules", "nowhere").Exit);
    }

    [Fact]
    public void A_missing_table_of_gaps_is_no_reason_to_start_a_project()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small);
        var run = CliRun.Of("check", file, "--as-built", folder["none.csv"]);
        Assert.Equal(3, run.Exit);
        Assert.Contains("write a heading chainage,gap", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("init", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("survey = 0.2", "", "stated")]
    [InlineData("running = 0.7", "survey_doubt = 0.3", "stated")]
    public void A_residual_that_was_typed_is_not_told_to_be_from_a_survey(string clearance, string track, string basis)
    {
        string text = Samples.Small.Replace("[clearance]\nrunning = 0.7", "[clearance]\n"
            + (clearance.StartsWith("running", StringComparison.Ordinal) ? clearance : clearance + "\nrunning = 0.7"),
            StringComparison.Ordinal).Replace("[[vehicle]]", track + "\n[[vehicle]]", StringComparison.Ordinal);
        var design = PlatformForge.Projects.Runs.DesignRun.Design(Samples.Sound(text), PlatformForge.Projects.Watches.RunWatch.None).Value!;
        Assert.Equal(basis, Assert.Single(design.Platforms[0].Budget.Lines, l => l.Name == "survey residual").Basis);
    }
}
