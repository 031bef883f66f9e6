using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

public class NeighbourTests
{
    // Two straight tracks, the platforms between them with their backs to one another; edges at 19 mm, so 82 mm between the edges.
    private const double Apart = 120;

    private static PlatformPlan Of(string name, double y, Side side, double width, double from = 200, double to = 800)
    {
        var request = Bench.Straight(s => s with { Name = name, Key = name == "up side" ? "platform[0]" : "platform[1]", Face = s.Face with { Side = side, From = from, To = to }, Deck = s.Deck with { Width = width } });
        var track = TrackLayer.Lay(new("up", new Point2(0, y), 0, [new StraightSpec(1000)])).Value!;
        return Bench.Plan(request with { Chart = track, Envelope = Bench.Envelope(track, side, _ => 18) });
    }

    private static PlatformPlan Up(double width) => Of("up side", 0, Side.Left, width);

    [Theory]
    [InlineData(40, 40, false)]
    [InlineData(40, 41.9, false)]
    [InlineData(40, 42.5, true)]
    [InlineData(60, 60, true)]
    [InlineData(24, 70, true)]
    public void Two_platforms_in_one_place_are_an_error_with_a_width_that_works(double width, double other, bool collide)
    {
        PlatformPlan up = Up(width), down = Of("down side", Apart, Side.Right, other);
        var findings = PlatformNeighbours.Check([up, down]);
        if (!collide)
        {
            Assert.Empty(findings);
            return;
        }

        var finding = Assert.Single(findings);
        Assert.Equal(("PF4027", "platform[0].deck.width", FaultKind.DesignRule), (finding.Code, finding.Key, finding.Kind));
        double offered = double.Parse(System.Text.RegularExpressions.Regex.Match(finding.Remedy, @"\d+(\.\d+)?").Value, System.Globalization.CultureInfo.InvariantCulture);
        var (mended, kept) = finding.Remedy.StartsWith("Give up side", StringComparison.Ordinal) ? (Up(offered), down) : (up, Of("down side", Apart, Side.Right, offered));
        Assert.Empty(PlatformNeighbours.Check([mended, kept]));
    }

    [Fact]
    public void Platforms_that_only_share_their_track_s_other_side_or_another_stretch_are_left_alone()
    {
        Assert.Empty(PlatformNeighbours.Check([Up(60), Of("other side", 0, Side.Right, 60)]));
        Assert.Empty(PlatformNeighbours.Check([Of("up side", 0, Side.Left, 60, 120, 400), Of("down side", Apart, Side.Right, 60, 420, 800)]));
    }
}
