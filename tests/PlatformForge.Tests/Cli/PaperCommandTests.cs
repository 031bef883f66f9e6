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
}
