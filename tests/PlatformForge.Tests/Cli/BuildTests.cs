using System.Globalization;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Cli;

/// <summary>The whole run on a small platform, through the command line.</summary>
public class BuildTests
{
    /// <summary>The small project with a ramp, so that it has two sections, and a socket in the first of them.</summary>
    private const string Halt = Samples.Small + "ramps = { end = { length = 97 } }\nboard = [{ at = 380, inset = 8 }]\n";

    [Fact]
    public void A_build_ends_with_the_verdict_and_the_cautions_and_verifies_again()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Halt);
        var run = CliRun.Of("build", file, "--no-pictures");
        Assert.Equal(0, run.Exit);
        Assert.Matches(@"Clear: nothing touches\. Least clearance \d+\.\d\d mm, (at chainage \d+|along chainage \d+ to \d+) mm of main, .*: coach \(body",
            run.Out);
        Assert.Contains("For model railways only.", run.Out, StringComparison.Ordinal);
        Assert.Contains("sweeping the vehicles\n", run.Error, StringComparison.Ordinal);
        Assert.NotEmpty(Directory.GetFiles(folder["halt/stl"], "*.stl"));
        var verify = CliRun.Of("verify", folder["halt"], "--json").Json();
        Assert.Equal(0, verify.GetProperty("exit_code").GetInt32());
        var closest = verify.GetProperty("verdict").GetProperty("closest");
        Assert.Equal("coach", closest.GetProperty("vehicle").GetString());

        // Straight track: what is kept is the budget, 0.7 wanted + 0.2 print + 0.2 fitting, and never less.
        Assert.InRange(closest.GetProperty("clearance_mm").GetDouble(), 1.1 - 1e-6, 1.1 + 0.02);
    }

    [Fact]
    public void A_second_build_writes_nothing_and_a_changed_socket_only_what_it_touches()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Halt);
        Assert.Equal(0, CliRun.Of("build", file, "--no-pictures", "-q").Exit);
        var before = folder.Listing("halt");
        var again = CliRun.Of("build", file, "--no-pictures", "--json").Json();
        Assert.Equal(0, again.GetProperty("written").GetArrayLength());
        Assert.Equal(before, folder.Listing("halt"));
        var changed = CliRun.Of("build", file, "--no-pictures", "--set", "platform.board.depth=5");
        Assert.Contains("halt: print 1 again; 2 is as before.", changed.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_project_gives_the_same_bytes_in_three_cultures()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Halt);
        var was = CultureInfo.CurrentCulture;
        try
        {
            foreach (string culture in new[] { "", "ru-RU", "tr-TR", "ar-SA" })
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture;
                Assert.Equal(0, CliRun.Of("build", file, "--no-pictures", "-q", "-o", folder["in-" + culture]).Exit);
            }
        }
        finally
        {
            CultureInfo.DefaultThreadCurrentCulture = null;
            CultureInfo.CurrentCulture = was;
        }

        Assert.Equal(folder.Listing("in-"), folder.Listing("in-ru-RU"));
        Assert.Equal(folder.Listing("in-"), folder.Listing("in-tr-TR"));
        Assert.Equal(folder.Listing("in-"), folder.Listing("in-ar-SA"));
    }

    [Fact]
    public void A_person_who_watches_sees_the_stages_drawn_over_each_other()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Halt);
        using StringWriter results = new() { NewLine = "\n" }, messages = new() { NewLine = "\n" };
        int exit = PlatformForge.Cli.CommandLine.Run(["check", file], new(results, messages, IsInteractive: true, TakesColour: true));
        Assert.Equal(0, exit);
        Assert.Contains("Clear: nothing touches.", results.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', results.ToString());
    }

    [Fact]
    public void Ctrl_C_ends_with_130_and_leaves_nothing_behind()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Halt);
        var run = CliRun.With(new CancellationToken(true), "build", file);
        Assert.Equal(130, run.Exit);
        Assert.Contains("Interrupted", run.Error, StringComparison.Ordinal);
        Assert.Equal(["halt.toml"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void A_folder_that_was_tampered_with_ends_verify_with_5()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Halt);
        Assert.Equal(0, CliRun.Of("build", file, "--no-pictures", "-q").Exit);
        string stl = Directory.GetFiles(folder["halt/stl"]).Order(StringComparer.Ordinal).First();
        byte[] bytes = File.ReadAllBytes(stl);
        bytes[200] ^= 0x40;
        File.WriteAllBytes(stl, bytes);
        var run = CliRun.Of("verify", folder["halt"]);
        Assert.Equal(5, run.Exit);
        Assert.Contains(Path.GetFileName(stl), run.Error, StringComparison.Ordinal);

        // And a build does not replace what somebody changed, unless told to.
        Assert.Equal(6, CliRun.Of("build", file, "--no-pictures").Exit);
        Assert.Equal(bytes, File.ReadAllBytes(stl));
        Assert.Equal(0, CliRun.Of("build", file, "--no-pictures", "--force").Exit);
        Assert.Equal(0, CliRun.Of("verify", folder["halt"]).Exit);
    }

    [Fact]
    public void Compare_tries_every_value_and_writes_nothing()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Halt);
        var designs = CliRun.Of("compare", file, "--vary", "platform.ramps.end.length=60,90,900", "--json").Json().GetProperty("designs").EnumerateArray()
            .ToArray();
        Assert.Equal(["60", "90", "900"], designs.Select(d => d.GetProperty("values").GetProperty("platform.ramps.end.length").GetString()));
        Assert.Equal([true, true, false], designs.Select(d => d.GetProperty("passed").GetBoolean()));
        Assert.True(designs[0].GetProperty("grams").GetDouble() > designs[1].GetProperty("grams").GetDouble());
        Assert.Equal("PF4007", designs[2].GetProperty("findings")[0].GetProperty("code").GetString());
        Assert.Equal(["halt.toml"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName));
        string table = CliRun.Of("compare", file, "--vary", "clearance.running=0.5,1.5").Out;
        Assert.Contains("clearance.running", table.Split('\n')[0], StringComparison.Ordinal);
        Assert.Contains("clear", table.Split('\n')[2], StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_further_vehicle_that_comes_from_beyond_the_known_track_only_what_is_known_is_told_and_what_would_be_enough()
    {
        // Straight track of 900 mm, platform from 350 to 540 mm. 440 mm long, axles 20 mm apart in bogies 400 mm apart: the last axle stands 430 mm behind the
        // front.
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Halt),
            long_ = folder.Write("long.toml", "name = \"long one\"\nlength = 440\npivots = 400\nwidth = 30\nbogie_wheelbase = 20\n");
        var run = CliRun.Of("check", file, "--with-vehicle", long_);
        Assert.Equal(0, run.Exit);
        Assert.Equal(4, CliRun.Of("check", file, "--with-vehicle", long_, "--strict").Exit);
        Assert.Contains(long_ + ":1:8  warning PF3026  name", run.Error, StringComparison.Ordinal);
        Assert.Contains("from chainage 350 to 430 mm", run.Error, StringComparison.Ordinal);
        Assert.Contains("80 mm more of the track at its start: 430 mm before the platform are enough", run.Error, StringComparison.Ordinal);
        Assert.Equal(0, CliRun.Of("build", file, "--no-pictures", "-q").Exit);
        Assert.Contains("PF3026", CliRun.Of("verify", folder["halt"], "--with-vehicle", long_).Error, StringComparison.Ordinal);
        string lengthened = folder.Write("lengthened.toml", Samples.Small.Replace("{ straight = 900 }", "{ straight = 1100 }", StringComparison.Ordinal)
            .Replace("from = 350, to = 540", "from = 430.1, to = 620.1", StringComparison.Ordinal));
        Assert.DoesNotContain("PF3026", CliRun.Of("check", lengthened, "--with-vehicle", long_).Error, StringComparison.Ordinal);
        string gaps = folder.Write("gaps.csv", "chainage,gap\n400,11\n");
        Assert.Contains("long one", CliRun.Of("check", file, "--with-vehicle", long_, "--as-built", gaps, "--json").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fault_in_a_vehicle_file_speaks_of_that_file()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Halt);
        string With(string name, string text) => CliRun.Of("check", file, "--with-vehicle", folder.Write(name, text)).Error;
        Assert.Contains("the vehicle file has no key \"lenght\"", With("bad.toml", "lenght = 200\npivots = 140\nwidth = 40\n"), StringComparison.Ordinal);
        Assert.Contains("without bogies pivots is the wheelbase", With("van.toml", "length = 40\npivots = 60\nwidth = 30\n"), StringComparison.Ordinal);
        Assert.Contains("bogie pivot to bogie pivot", With("coach.toml", "length = 100\npivots = 160\nwidth = 30\nbogie_wheelbase = 20\n"),
            StringComparison.Ordinal);
        Assert.Contains("  error PF1014  high", With("flat.toml", "length = 100\npivots = 60\nwidth = 30\nlow = 20\nhigh = 10\n"), StringComparison.Ordinal);
        Assert.Contains("platformforge init --form", CliRun.Of("check", file, "--with-vehicle", folder["none.toml"]).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_vehicle_that_might_be_bought_is_held_against_the_finished_design()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Halt), wide = folder.Write("wide.toml", "length = 200\npivots = 140\nwidth = 40\n");
        Assert.Equal(0, CliRun.Of("check", file).Exit);
        var run = CliRun.Of("check", file, "--with-vehicle", wide);
        Assert.Equal(4, run.Exit);
        Assert.Matches(@"FOULS by 1\.9\d mm.*: wide", run.Out);
        Assert.Contains(wide + ":1:1  error PF8020  name", run.Error, StringComparison.Ordinal);
        Assert.Equal(3, CliRun.Of("check", file, "--with-vehicle", "no-such-kind").Exit);

        // Its own limits count as well as its reach.
        string curved = folder.Write("curved.toml",
            Halt.Replace("{ straight = 900 }", "{ straight = 300 }, { curve = 3000, length = 300, hand = \"left\" }, { straight = 300 }",
                StringComparison.Ordinal));
        string stiff = folder.Write("stiff.toml", "length = 100\npivots = 60\nwidth = 30\nleast_radius = 4000\n");
        Assert.Equal(0, CliRun.Of("check", curved).Exit);
        var limited = CliRun.Of("check", curved, "--with-vehicle", stiff);
        Assert.Equal(4, limited.Exit);
        Assert.Contains(stiff + ":4:16  error PF3022  least_radius", limited.Error, StringComparison.Ordinal);

        // And against the finished folder, which knows its scale and its budget by itself.
        Assert.Equal(0, CliRun.Of("build", file, "--no-pictures", "-q").Exit);
        var built = CliRun.Of("verify", folder["halt"], "--with-vehicle", wide);
        Assert.Equal(4, built.Exit);
        Assert.Contains(wide + ":1:1  error PF8020  name", built.Error, StringComparison.Ordinal);
        Assert.Matches(@"\n  wide on main: fouls by 1\.9\d mm, (at chainage \d+|along chainage \d+ to \d+) mm \(body\)\n", built.Out);
        Assert.Matches(
            @"\n?  coach on main: \d\.\d\d mm left after play and budget, (at chainage \d+|along chainage \d+ to \d+) mm \(body\); "
            + @"standing true it clears by 1\.1\d mm", built.Out);
    }
}
