using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Cli;

public class GaugesCommandTests
{
    [Fact]
    public void Gauges_are_made_alone_in_a_folder_of_their_own_which_verifies()
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder["halt.toml"], Samples.Small);
        var run = CliRun.Of("gauges", folder["halt.toml"], "--at", "440");
        Assert.True(run.Exit == 0, run.Error);
        Assert.True(File.Exists(folder["halt-gauges/gauges/halt-slide-gauge-at-440.stl"]));
        Assert.False(Directory.Exists(folder["halt-gauges/stl"]));
        Assert.Contains("Gauges and proofs", File.ReadAllText(folder["halt-gauges/report.md"]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_gauge_where_no_platform_is_is_refused_with_a_chainage_that_works()
    {
        using var folder = new TempFolder();
        File.WriteAllText(folder["halt.toml"], Samples.Small);
        var run = CliRun.Of("gauges", folder["halt.toml"], "--at", "900");
        Assert.NotEqual(0, run.Exit);
        Assert.Contains("PF7504", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["halt-gauges"]));
    }
}
