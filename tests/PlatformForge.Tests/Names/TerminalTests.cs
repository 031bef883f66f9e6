using PlatformForge.Cli.Terminals;
using PlatformForge.Tests.Cli;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Names;

public class TerminalTests
{
    [Fact]
    public void What_somebody_else_wrote_commands_no_terminal()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small + "\"\\u001b[2Jx\" = 1\n\"a\\u202eb\" = 2\n");
        var run = CliRun.Of("check", file);
        Assert.Equal(3, run.Exit);
        Assert.DoesNotContain(run.Error, c => (char.IsControl(c) && c != '\n') || c == '\u202E');
        Assert.Contains("[2Jx", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Plain_names_are_left_as_they_are() => Assert.All(
        new[] { "Hält", "北駅", "🚂", "x\u200Dy", "a b" }, name => Assert.Same(name, PlainLine.Of(name)));
}
