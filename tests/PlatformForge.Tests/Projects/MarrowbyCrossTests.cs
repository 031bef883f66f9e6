using PlatformForge.Exports;
using PlatformForge.Projects;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Tests.Cli;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>A platform between two lines with a turnout beside it, all taken from one drawing.</summary>
public sealed class MarrowbyCrossTests : IDisposable
{
    private const int Up = 0, Loop = 2;

    private readonly TempFolder folder = new();

    public MarrowbyCrossTests()
    {
        Directory.CreateDirectory(folder["survey"]);
        foreach (var (path, text) in PresetShelf.FilesOf("marrowby-cross"))
        {
            folder.Write(path, text);
        }
    }

    public void Dispose() => folder.Dispose();

    private static string Sample => PresetShelf.Sample("marrowby-cross")!;

    private Outcome<Dossier> Design(string text)
    {
        var read = ProjectReader.ReadFile(folder.Write("cross.toml", text));
        Assert.True(read.Succeeded, string.Join('\n', read.Findings));
        return DesignRun.Design(read.Value!, RunWatch.None);
    }

    [Fact]
    public void A_vehicle_that_takes_the_turnout_swings_out_beside_it_and_the_edge_gives_way()
    {
        var platform = Design(Sample).Value!.Platforms[0];
        var (up, loop) = (platform.Envelope.Composite(Side.Left, run: Up), platform.Envelope.Composite(Side.Left, run: Loop));

        // The long coach on a curve of 1600 mm, by independent simulation (USERS: 19.6 mm, within about 0.1).
        Assert.Equal(19.6, up.At(720), 0.1);

        // On the stretch that they share they sweep the same, as far as two lines of one drawing can be told apart; just past the turnout (chainage 860) the other one reaches farther.
        Assert.Equal(up.At(550), loop.At(550), 0.1);
        Assert.InRange(loop.At(880) - up.At(880), 0.3, 3);
        Assert.True(loop.At(990) < up.At(990) - 2);
        Assert.True(platform.Plan.CopingFront.At(880) >= loop.At(880) + platform.Budget.Sum - 0.02);
    }

    [Fact]
    public void Vehicles_that_pass_behind_the_platform_bound_its_width()
    {
        var fault = Assert.Single(Design(Sample.Replace("width = 52", "width = 70", StringComparison.Ordinal)).Findings, f => f.Severity == Severity.Error);
        Assert.Equal("PF4022", fault.Code);
        Assert.Contains("another track", fault.Message, StringComparison.Ordinal);
        Assert.Contains("56.", fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_calibration_the_run_stops_and_asks_for_a_scale()
    {
        string[] parts = Sample.Split(", calibrate = { length = 300 }");
        var run = CliRun.Of("check", folder.Write("cross.toml", string.Concat(parts)));
        Assert.Equal(3, run.Exit);
        Assert.Contains("survey/marrowby-cross.svg:5  error PF2111", run.Error, StringComparison.Ordinal);
        Assert.Contains("calibrate = { length = 300", run.Error, StringComparison.Ordinal);
    }
}
