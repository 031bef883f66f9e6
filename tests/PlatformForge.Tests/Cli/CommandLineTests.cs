using System.Diagnostics;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Schemas;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Cli;

public class CommandLineTests
{
    [Fact]
    public void Without_arguments_help_is_shown_with_examples()
    {
        var run = CliRun.Of();
        Assert.Equal(2, run.Exit);
        Assert.Contains("platformforge build my-halt.toml", run.Out, StringComparison.Ordinal);
        Assert.Empty(run.Error);
    }

    [Theory]
    [InlineData("init")]
    [InlineData("check")]
    [InlineData("build")]
    [InlineData("compare")]
    [InlineData("verify")]
    [InlineData("presets")]
    [InlineData("schema")]
    [InlineData("survey")]
    public void Every_command_has_help_with_an_example(string command)
    {
        var run = CliRun.Of(command, "--help");
        Assert.Equal(0, run.Exit);
        Assert.Contains("Example", run.Out, StringComparison.Ordinal);
        Assert.Contains("platformforge " + command, run.Out, StringComparison.Ordinal);
        Assert.Contains("--json", run.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Did you mean check?", "chekc")]
    [InlineData("--bogus", "check", "x.toml", "--bogus")]
    [InlineData("Name the project file.", "check")]
    [InlineData("Name the folder.", "verify")]
    [InlineData("Say what to vary", "compare", "x.toml")]
    [InlineData("presets", "presets", "boats")]
    [InlineData("'set'", "check", "x.toml", "--set")]
    public void A_wrong_command_line_ends_with_2_and_says_where_help_is(string told, params string[] args)
    {
        var run = CliRun.Of(args);
        Assert.Equal(2, run.Exit);
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
        Assert.Contains("--help", run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Out);
    }

    [Fact]
    public void A_wrong_command_line_with_json_still_gives_one_object()
    {
        var json = CliRun.Of("check", "--json", "--bogus").Json();
        Assert.Equal(2, json.GetProperty("exit_code").GetInt32());
        Assert.Contains("--bogus", json.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Init_writes_the_starting_file_and_never_over_another()
    {
        using var folder = new TempFolder();
        var run = CliRun.Of("init", folder["halt.toml"]);
        Assert.Equal(0, run.Exit);
        Assert.InRange(File.ReadAllLines(folder["halt.toml"]).Length, 20, 60);
        using var other = new TempFolder();
        Assert.Equal(0, CliRun.Of("init", other["long.toml"], "--full").Exit);
        Assert.Equal(StartingFile.Write(), File.ReadAllText(other["long.toml"]));
        File.WriteAllText(folder["halt.toml"], "mine");
        Assert.Equal((6, "mine"), (CliRun.Of("init", folder["halt.toml"]).Exit, File.ReadAllText(folder["halt.toml"])));
        Assert.Equal(0, CliRun.Of("init", folder["halt.toml"], "--force", "--sample", "pendlewick").Exit);
        Assert.Equal(PresetShelf.Sample("pendlewick"), File.ReadAllText(folder["halt.toml"]));
        Assert.Equal(6, CliRun.Of("init", folder.Path).Exit);
        Assert.Equal(6, CliRun.Of("init", folder["halt.toml/no-folder.toml"]).Exit);
        Assert.Equal(2, CliRun.Of("init", folder["x.toml"], "--sample", "atlantis").Exit);
        Assert.Equal(["halt.toml"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName));
    }

    /// <summary>A file moved onto a pipe or a device takes it away from everybody; one moved onto a link parts it from its file.</summary>
    [Fact]
    public void Init_replaces_plain_files_alone()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var folder = new TempFolder();
        using (var make = System.Diagnostics.Process.Start("mkfifo", [folder["pipe.toml"]]))
        {
            make.WaitForExit();
        }

        folder.Write("mine.toml", "mine");
        File.CreateSymbolicLink(folder["link.toml"], folder["mine.toml"]);
        File.CreateSymbolicLink(folder["nowhere.toml"], folder["none.toml"]);
        foreach (string name in new[] { "pipe.toml", "link.toml", "nowhere.toml" })
        {
            var run = CliRun.Of("init", folder[name], "--force", "--sample", "straight-halt");
            Assert.Equal(6, run.Exit);
            Assert.Contains("it was left as it is", run.Error, StringComparison.Ordinal);
        }

        Assert.Equal("mine", File.ReadAllText(folder["link.toml"]));
        Assert.Equal((0L, false), (new FileInfo(folder["pipe.toml"]).Length, File.Exists(folder["none.toml"])));
    }

    [Fact]
    public void Presets_are_listed_with_their_sources()
    {
        Assert.Contains("4mm-18.83", CliRun.Of("presets", "scales").Out, StringComparison.Ordinal);
        Assert.Contains("bed-220x220", CliRun.Of("presets", "--quiet").Out, StringComparison.Ordinal);
        Assert.Matches(@"multiple-unit-two-car .*\r?\n    - 4 from memory, 27 common practice", CliRun.Of("presets", "vehicles").Out);
        Assert.Matches(@"rear car: gap +650 mm full size +common practice, no source", CliRun.Of("presets", "vehicles", "multiple-unit-two-car").Out);
        Assert.Equal(3, CliRun.Of("presets", "vehicles", "hovercraft").Exit);
        var json = CliRun.Of("presets", "--json").Json();
        foreach (string kind in new[] { "scales", "vehicles", "printers" })
        {
            Assert.All(json.GetProperty(kind).EnumerateArray(), p => Assert.NotEmpty(p.GetProperty("source").GetString()!));
        }
    }

    [Fact]
    public void The_schema_is_printed_as_it_is_shipped() => Assert.Equal(ProjectSchema.Write(), CliRun.Of("schema").Out);

    [Fact]
    public void A_fault_of_the_file_is_shown_as_file_line_column_code_key_what_and_remedy()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.With(4, "rail_top = -8"));
        var run = CliRun.Of("check", file);
        Assert.Equal(3, run.Exit);
        Assert.Equal($"{file}:4:12  error PF1008  layout.rail_top\n  rail_top is -8 mm.\n  Give a number from 0 to 200 mm. Tried: "
            + "layout.rail_top = 8 works.\n", run.Error);
        Assert.Empty(run.Out);
        var json = CliRun.Of("check", file, "--json").Json();
        Assert.Equal((3, 4, 12), (json.GetProperty("exit_code").GetInt32(), json.GetProperty("findings")[0].GetProperty("line").GetInt32(),
            json.GetProperty("findings")[0].GetProperty("column").GetInt32()));
    }

    [Fact]
    public void The_program_runs_as_a_process_of_its_own()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", "[layout\n");
        var start = new ProcessStartInfo("dotnet", [typeof(PlatformForge.Cli.CommandLine).Assembly.Location, "check", file])
        {
            UseShellExecute = false,
            RedirectStandardError = true,
            RedirectStandardOutput = true
        };
        using var process = Process.Start(start)!;
        string error = process.StandardError.ReadToEnd();
        Assert.Empty(process.StandardOutput.ReadToEnd());
        process.WaitForExit();
        Assert.Equal(3, process.ExitCode);
        Assert.StartsWith($"{file}:1:8  error PF1005\n", error, StringComparison.Ordinal);
    }
}
