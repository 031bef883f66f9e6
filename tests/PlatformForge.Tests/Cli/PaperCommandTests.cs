using PlatformForge.Projects.Presets;
using Xunit;

namespace PlatformForge.Tests.Cli;

public class PaperCommandTests
{
    [Theory]
    [InlineData("PF7441", "--bars", "inches", "paper", "--bars", "3.94,100")]
    [InlineData("PF7441", "--bars", "99.6,100.2", "paper", "--bars", "about right")]
    [InlineData("PF1011", "--size", "A4", "paper", "--size", "A44")]
    [InlineData("PF1008", "paper.size", "\"A4\"", "paper", "--size", "30x40")]
    [InlineData("PF7440", "paper.margin", "margins of", "paper", "--set", "paper.margin=70")]
    [InlineData("PF7444", "--sets", "drawings", "build", "--sets", "drawing")]
    [InlineData("PF7444", "--sets", "prints", "build", "--sets", ",")]
    public void What_cannot_be_meant_is_refused_before_anything_is_written(string code, string where, string says, string command, params string[] options)
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder["halt.toml"], PresetShelf.Sample("straight-halt"));
        var run = CliRun.Of([command, folder["halt.toml"], .. options]);
        Assert.True(run.Exit is 2 or 3, run.Error);
        Assert.Contains(code, run.Error, StringComparison.Ordinal);
        Assert.Contains(where, run.Error, StringComparison.Ordinal);
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
        Assert.Equal(["halt.toml"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void Paper_alone_goes_to_a_folder_of_its_own_and_tells_the_verdict()
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder["halt.toml"], PresetShelf.Sample("straight-halt"));
        var run = CliRun.Of("paper", folder["halt.toml"], "--size", "A3", "--by", "page");
        Assert.True(run.Exit == 0, run.Error);
        Assert.Contains("Clear: nothing touches.", run.Out, StringComparison.Ordinal);
        Assert.NotEmpty(Directory.GetFiles(folder["halt-paper/paper"], "*.pdf"));
        Assert.False(Directory.Exists(folder["halt-paper/stl"]));
    }

    /// <summary>Of a run of every set one that the project cannot have is left out with a warning; named by itself it is refused, and nothing is
    /// written.</summary>
    [Fact]
    public void A_set_that_cannot_be_keeps_no_other_from_being_made()
    {
        using var folder = new TempFolder();
        folder.Write("halt.toml", PresetShelf.Sample("straight-halt") + "\n[sheet]\nsize = [30, 20]\n\n[gauges]\nat = [100000]\n");
        var run = CliRun.Of("build", folder["halt.toml"], "--sets", "all", "--no-pictures");
        Assert.True(run.Exit == 0, run.Error);
        Assert.Contains("warning PF7530", run.Out + run.Error, StringComparison.Ordinal);
        Assert.Contains("The set sheet is left out.", run.Out + run.Error, StringComparison.Ordinal);
        Assert.Contains("The set gauges is left out.", run.Out + run.Error, StringComparison.Ordinal);
        Assert.Contains("The set sheet is left out.", File.ReadAllText(folder["halt/report.md"]), StringComparison.Ordinal);
        Assert.True(Directory.Exists(folder["halt/stl"]) && Directory.Exists(folder["halt/paper"]) && !Directory.Exists(folder["halt/sheet"])
            && !Directory.Exists(folder["halt/gauges"]));
        Assert.Equal(0, CliRun.Of("verify", folder["halt"]).Exit);

        var named = CliRun.Of("build", folder["halt.toml"], "--sets", "prints,sheet", "--no-pictures", "--output", folder["other"]);
        Assert.Equal(3, named.Exit);
        Assert.Contains("error PF7530", named.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["other"]));

        // Who asks to hear of errors only hears of what is not made.
        var quiet = CliRun.Of("build", folder["halt.toml"], "--sets", "all", "--no-pictures", "-q");
        Assert.Equal(0, quiet.Exit);
        Assert.Contains("is left out", quiet.Error, StringComparison.Ordinal);
        Assert.Empty(quiet.Out);
    }
}
