using System.Diagnostics;
using System.Globalization;

namespace PlatformForge.Outside.Tests;

/// <summary>The command line as a process among others: signals, streams that nobody takes, a working folder that is gone.</summary>
public sealed class ProcessTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("platformforge-process-").FullName;

    // As it was compiled beside the tests: it is at work for long enough to be interrupted.
    private static string Slow => Path.Combine(AppContext.BaseDirectory, "PlatformForge.Cli.dll");

    private static string Sample => WrittenSamples.SampleFile("pendlewick");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("INT", "build")]
    [InlineData("TERM", "build")]
    [InlineData("HUP", "build")]
    [InlineData("INT", "check")]
    [InlineData("TERM", "check")]
    [InlineData("INT", "compare")]
    [InlineData("INT", "survey")]
    [InlineData("INT", "verify")]
    public void A_signal_ends_a_command_with_130_and_leaves_the_folder_as_it_was(string signal, string command)
    {
        string[] args = command switch
        {
            "build" => ["build", Sample, "-o", Path.Combine(folder, "out")],
            "compare" => ["compare", Sample, "--vary", "clearance.running=0.8,0.9,1,1.1,1.2,1.3"],
            "survey" => ["survey", WrittenSamples.SampleFile("pendlewick-string"), "-o", Path.Combine(folder, "out")],
            "verify" => ["verify", Built()],
            _ => [command, Sample],
        };
        var start = new ProcessStartInfo("dotnet", [Slow, .. args]) { UseShellExecute = false, RedirectStandardError = true, RedirectStandardOutput = true };
        using var process = Process.Start(start)!;

        // The first stage is told: the command is at work.
        Assert.NotNull(process.StandardError.ReadLine());
        Assert.Equal(0, Tool.Run("kill", "-" + signal, process.Id.ToString(CultureInfo.InvariantCulture)).Exit);
        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(30)));
        Assert.Equal((130, ""), (process.ExitCode, process.StandardOutput.ReadToEnd()));
        Assert.Contains("Interrupted", process.StandardError.ReadToEnd(), StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(folder, "out")));
    }

    [Theory]
    [InlineData(">/dev/full")]
    [InlineData(">&-")]
    public void Results_that_cannot_be_written_end_with_6(string where)
    {
        string project = Path.Combine(folder, "halt.toml"), built = Path.Combine(folder, "halt");
        Assert.Equal(0, Shell($"init --sample straight-halt '{project}'").Exit);
        var said = Shell($"build '{project}' --no-pictures {where}");
        Assert.True(said.Exit == 6, said.All);
        Assert.Contains($"The files are in place all the same, in {built}.", said.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", said.All, StringComparison.Ordinal);
        Assert.Equal(0, Shell($"verify '{built}'").Exit);
        Assert.All(new[] { "presets scales", "schema", "findings", "--help", $"verify '{built}' --json" }, c => Assert.Equal(6, Shell($"{c} {where}").Exit));
    }

    [Theory]
    [InlineData("2>&-")]
    [InlineData("2>/dev/full")]
    public void Messages_that_cannot_be_written_change_nothing(string where)
    {
        var said = Shell($"check '{WrittenSamples.SampleFile("straight-halt")}' {where}");
        Assert.Equal(0, said.Exit);
        Assert.Contains("Clear", said.Out, StringComparison.Ordinal);
        Assert.Equal(3, Shell($"check nowhere.toml {where}").Exit);
    }

    [Fact]
    public void A_working_folder_that_is_gone_is_told_without_a_trace()
    {
        string gone = Path.Combine(folder, "gone");
        Directory.CreateDirectory(gone);
        var said = Tool.Run("bash", "-c", $"cd '{gone}' && rmdir '{gone}' && exec dotnet '{WrittenSamples.Program}' check halt.toml");
        Assert.Equal(3, said.Exit);
        Assert.Contains("no longer there", said.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", said.All, StringComparison.Ordinal);
    }

    private string Built()
    {
        string built = Path.Combine(folder, "built");
        Assert.Equal(0, WrittenSamples.CommandLine("build", Sample, "--no-pictures", "-q", "-o", built).Exit);
        return built;
    }

    private static Tool.Said Shell(string command) => Tool.Run("bash", "-c", $"exec dotnet '{WrittenSamples.Program}' {command}");
}
