using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
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
        var request = Bench.Straight(s => s with
        {
            Name = name,
            Key = name == "up side" ? "platform[0]" : "platform[1]",
            Face = s.Face with { Side = side, From = from, To = to },
            Deck = s.Deck with { Width = width }
        });
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
        double offered = double.Parse(System.Text.RegularExpressions.Regex.Match(finding.Remedy, @"\d+(\.\d+)?").Value,
            System.Globalization.CultureInfo.InvariantCulture);
        var (mended, kept) = finding.Remedy.StartsWith("Give up side", StringComparison.Ordinal) ? (Up(offered), down)
            : (up, Of("down side", Apart, Side.Right, offered));
        Assert.Empty(PlatformNeighbours.Check([mended, kept]));
    }

    /// <summary>A heading copied and not changed: no place of one outline lies inside the other, and no width or stretch parts them.</summary>
    [Fact]
    public void The_same_platform_twice_is_told_without_a_figure_that_would_not_help()
    {
        var finding = Assert.Single(PlatformNeighbours.Check([Up(40), Up(40) with { Spec = Up(40).Spec with { Name = "copy", Key = "platform[1]" } }]));
        Assert.Equal("PF4027", finding.Code);
        Assert.Null(finding.Cure);
        Assert.Contains("leave it out", finding.Remedy, StringComparison.Ordinal);
    }

    /// <summary>
    /// Two platforms 10 wide with 12 mm between their edges: less than their copings would be left, so one is made shorter, at the end that costs less of
    /// it; and that works.
    /// </summary>
    [Theory]
    [InlineData(700, 900, "platform[0].face.to")]
    [InlineData(550, 750, "platform[0].face.to")]
    [InlineData(250, 400, "platform[0].face.from")]
    [InlineData(100, 300, "platform[0].face.from")]
    public void Where_no_width_works_the_platform_that_is_told_ends_before_the_other(double from, double to, string key)
    {
        PlatformPlan up = Up(10), down = Of("down side", 50, Side.Right, 10, from, to);
        var finding = Assert.Single(PlatformNeighbours.Check([up, down]));
        Assert.Equal(key, finding.Cure!.Key);
        Assert.StartsWith(key.EndsWith("to", StringComparison.Ordinal) ? "End up side at" : "Begin up side at", finding.Remedy, StringComparison.Ordinal);
        Assert.Contains(finding.Cure.Value, finding.Remedy, StringComparison.Ordinal);
        double at = double.Parse(finding.Cure.Value, System.Globalization.CultureInfo.InvariantCulture);
        var mended = key.EndsWith("to", StringComparison.Ordinal) ? Of("up side", 0, Side.Left, 10, 200, at) : Of("up side", 0, Side.Left, 10, at);
        Assert.Empty(PlatformNeighbours.Check([mended, down]));
    }

    /// <summary>A platform outside a curve of 60 degrees, and another far inside it: their boxes overlap, they do not.</summary>
    [Fact]
    public void A_platform_within_the_box_of_a_curved_one_is_not_in_its_way()
    {
        var curve =
            TrackLayer.Lay(new("up", new Point2(0, 0), 0, [new StraightSpec(150), new CurveSpec(600, Hand.Left, Length: 628), new StraightSpec(150)])).Value!;
        var outside = Bench.Straight(s => s with { Face = s.Face with { Side = Side.Right, From = 150, To = 778 } });
        var bent = Bench.Plan(outside with { Chart = curve, Envelope = Bench.Envelope(curve, Side.Right, _ => 18) });
        var inside = Of("down side", 250, Side.Right, 30, 200, 320);
        Assert.Empty(PlatformNeighbours.Check([bent, inside]));
        Assert.Empty(PlatformNeighbours.Check([inside, bent]));
    }

    [Fact]
    public void Platforms_that_only_share_their_track_s_other_side_or_another_stretch_are_left_alone()
    {
        Assert.Empty(PlatformNeighbours.Check([Up(60), Of("other side", 0, Side.Right, 60)]));
        Assert.Empty(PlatformNeighbours.Check([Of("up side", 0, Side.Left, 60, 120, 400), Of("down side", Apart, Side.Right, 60, 420, 800)]));
    }
}
