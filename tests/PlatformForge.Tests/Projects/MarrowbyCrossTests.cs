using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Exports.Drawings.Gaps;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Plans;
using PlatformForge.Exports.Drawings.Sections;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Exports.Tables;
using PlatformForge.Platforms;
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
        return DesignRun.Design(read.Value!, Samples.Known);
    }

    [Fact]
    public void A_vehicle_that_takes_the_turnout_swings_out_beside_it_and_the_edge_gives_way()
    {
        var platform = Design(Sample).Value!.Platforms[0];
        var (up, loop) = (platform.Envelope.Composite(Side.Left, run: Up), platform.Envelope.Composite(Side.Left, run: Loop));

        // The long coach on a curve of 1600 mm, by independent simulation (USERS: 19.6 mm, within about 0.1).
        Assert.Equal(19.6, up.At(720), 0.1);

        // On the stretch that they share they sweep the same, as far as two lines of one drawing can be told apart; just past the turnout (chainage 860) the
        // other one reaches farther.
        Assert.Equal(up.At(550), loop.At(550), 0.1);
        Assert.InRange(loop.At(880) - up.At(880), 0.3, 3);
        Assert.True(loop.At(990) < up.At(990) - 2);
        Assert.True(platform.Plan.CopingFront.At(880) >= loop.At(880) + platform.Budget.Sum - 0.02);
    }

    [Fact]
    public void Where_a_vehicle_of_another_track_governs_every_drawing_table_and_account_names_it_with_its_track()
    {
        const string Coach = "long coach on track 'loop'";
        var dossier = Design(Sample).Value!;
        var platform = dossier.Platforms[0];
        double s = CrossSectionDrawing.Telling(platform.Plan);
        Assert.Equal(Coach, EdgeAccount.At(platform.Plan, s).Vehicle);
        Assert.Contains(GoverningStretch.Of(platform.Plan), g => g.From < s && g.To > s && (g.Vehicle, g.Track) == ("long coach", "loop"));
        var rows = GapsByStyle.Of(platform.Plan);
        int at = Enumerable.Range(0, rows.Chainage.Count).MinBy(i => Math.Abs(rows.Chainage[i] - s));
        Assert.Equal(("long coach", "loop"), (rows.GoverningVehicle[at], rows.GoverningTrack[at]));
        Assert.Contains("up", rows.GoverningTrack);

        // The long coach stands on the cross-section: filled from its far side to as far as the requirement says.
        var section = CrossSectionDrawing.Draw(dossier, platform, s);
        string[] Words(Sheet sheet) => [.. sheet.Items.OfType<SheetText>().Select(t => t.Text)];
        Assert.Contains(Coach + ", governs here", Words(section));
        Assert.Contains("track 'loop'", Words(section));
        Assert.Contains(Coach, Words(PlanDrawing.Draw(dossier, platform)));
        Assert.Contains("track 'loop'", Words(PlanDrawing.Draw(dossier, platform)));
        Assert.Contains(Coach, Words(TightDrawing.Draw(dossier, platform)));
        Assert.Contains(Coach, Words(GapDrawing.Draw(dossier, platform)));

        // It comes nearest where it governs, and leaves there what the budget asks, beside what the track's drawing leaves uncertain.
        var place = Assert.Single(platform.Tightest, t => t.Pose.OtherTrack == "loop");
        double doubt = EdgeAccount.At(platform.Plan, place.Chainage).Allowances.Where(a => a.Name.Contains("survey", StringComparison.Ordinal)).Sum(a => a.Mm);
        Assert.Equal(platform.Budget.Margin + doubt, place.Left, 0.03);
        Assert.InRange(place.Chainage, 650, 945);
    }

    [Fact]
    public void Vehicles_that_pass_behind_the_platform_bound_its_width()
    {
        var fault = Assert.Single(Design(Sample.Replace("width = 52", "width = 70", StringComparison.Ordinal)).Findings, f => f.Severity == Severity.Error);
        Assert.Equal("PF4022", fault.Code);
        Assert.Contains("another track", fault.Message, StringComparison.Ordinal);
        Assert.Contains("56.", fault.Remedy, StringComparison.Ordinal);
    }

    /// <summary>The figure in the words is tried as the user would: it takes the finding away, and a tenth of a millimetre more does not.</summary>
    [Theory]
    [InlineData(58)]
    [InlineData(63.3)]
    [InlineData(70)]
    [InlineData(77.7)]
    public void The_width_that_is_offered_before_another_track_works_and_not_much_more_does(double asked)
    {
        Outcome<Dossier> With(double width) =>
            Design(Sample.Replace("width = 52", FormattableString.Invariant($"width = {width:R}"), StringComparison.Ordinal));
        var fault = Assert.Single(With(asked).Findings, f => f.Code == "PF4022");
        double offered = double.Parse(Regex.Match(fault.Remedy, @"width of (\d+(\.\d+)?) mm").Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.DoesNotContain(With(offered).Findings, f => f.Severity == Severity.Error);
        Assert.Contains(With(offered + 0.1).Findings, f => f.Code == "PF4022");
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
