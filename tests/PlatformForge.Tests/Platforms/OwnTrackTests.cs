using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Projects.Remedies;
using PlatformForge.Tests.Clearance.Motion;
using PlatformForge.Tests.Projects.Remedies;
using PlatformForge.Tests.Verification;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>
/// A track that comes back round a loop beside the platform that it serves. Straight, then half a circle of 60 mm, then straight back: where both are straight
/// vehicles reach half their width, 17 mm, from either middle, and 1 mm is kept, so that of the 120 mm between the tracks 120 − 36 are left for the platform.
/// </summary>
public class OwnTrackTests
{
    private const double Radius = 60, Half = 17, Running = 1, Room = (2 * Radius) - (2 * (Half + Running));

    // What a sweep may err by, either side of the platform, mm.
    private const double Swept = 0.03;

    private static Centreline Loop(double degrees, Hand hand = Hand.Left, double straight = 700) => TrackLayer.Lay(new("up", new(0, 0), 0,
        [new StraightSpec(straight), new CurveSpec(Radius, hand, Angle: degrees * Math.PI / 180), new StraightSpec(straight)])).Value!;

    private static PlatformRequest Request(Centreline track, double width, double from = 150, double to = 400, Side side = Side.Left)
    {
        var spec = new PlatformSpec("halt", new FaceSpec("up", side, from, to)) { Key = "platform[0]", Deck = new DeckSpec { Width = width } };
        var budget = ClearanceBudget.Of(running: Running);
        var swept = EnvelopeSweeper.Sweep(new(track, from, to, [new TrackRun(track, [Bench.Fleet])])
        {
            Beyond = HeldHeights.Beyond(budget),
            Edge = HeldHeights.Edge(spec),
        });
        return new(spec, Bench.Site, track, swept.Value!, budget);
    }

    private static Finding[] Faults(PlatformRequest request) => [.. PlatformPlanner.Plan(request).Findings.Where(f => f.Severity == Severity.Error)];

    /// <summary>Left of the track and, mirrored, right of it: an answer in closed form, and the width offered is all of the room.</summary>
    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void A_platform_wider_than_the_room_before_the_returning_track_is_told_by_how_much(Side side)
    {
        var track = Loop(180, side.Of(Hand.Left, Hand.Right));
        var told = Assert.Single(Faults(Request(track, Room + 6, side: side)));
        Assert.Equal(("PF4029", "platform[0].deck.width", FaultKind.DesignRule), (told.Code, told.Key, told.Kind));
        double depth = double.Parse(System.Text.RegularExpressions.Regex.Match(told.Message, @"needs (\d+\.\d+) mm").Groups[1].Value,
            System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(depth, 6 - 0.01, 6 + Swept);
        Assert.Contains("'fleet' (body)", told.Message, StringComparison.Ordinal);

        double offered = double.Parse(told.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(offered, Room - Swept - 0.01, Room);
        Assert.Empty(Faults(Request(track, offered, side: side)));
    }

    [Fact]
    public void One_that_leaves_it_room_is_left_alone_and_so_is_one_on_the_other_side()
    {
        var track = Loop(180);
        Assert.Empty(Faults(Request(track, Room - Swept)));
        Assert.Equal("PF4029", Assert.Single(Faults(Request(track, Room + 0.02))).Code);
        Assert.Empty(Faults(Request(track, Room + 60, side: Side.Right)));
    }

    /// <summary>
    /// Round 190 degrees the track comes back at a slant of 1 in 5.67: it is too near from where its distance from the back corner is less than 18 mm. The
    /// platform begins after that, to some mm, and all of its width is kept.
    /// </summary>
    [Fact]
    public void Where_it_comes_nearer_at_one_end_the_platform_begins_after_that()
    {
        const double Width = 24, To = 1000, Straight = 1100, Angle = 190 * Math.PI / 180;
        var track = Loop(190, straight: Straight);
        var told = Assert.Single(Faults(Request(track, Width, 700, To)));
        Assert.Equal(("PF4029", "platform[0].face.from"), (told.Code, told.Key));

        // The returning line starts where the circle has turned by 190 degrees.
        double x = Straight + (Radius * Math.Sin(Angle)), y = Radius - (Radius * Math.Cos(Angle)), back = Half + Running + Width;
        double least = x - ((y - back - ((Half + Running) / -Math.Cos(Angle))) / Math.Tan(Angle));
        double offered = double.Parse(told.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(offered, least, least + 2.5);
        Assert.Empty(Faults(Request(track, Width, offered, To)));
        Assert.NotEmpty(Faults(Request(track, Width, Math.Floor(least) - 1, To)));
    }

    /// <summary>Back beside itself at 40 mm it leaves 4 mm, too little for any platform: its other side is tried, and offered since it works.</summary>
    [Fact]
    public void Where_no_platform_is_left_the_other_side_is_offered()
    {
        double turn = Math.Acos(1 - (80 / (2 * Radius)));
        var track = TrackLayer.Lay(new("up", new(0, 0), 0,
            [new StraightSpec(700), new CurveSpec(Radius, Hand.Left, Angle: Math.PI), new CurveSpec(Radius, Hand.Left, Angle: turn),
                new CurveSpec(Radius, Hand.Right, Angle: turn), new StraightSpec(700)])).Value!;
        var told = Assert.Single(Faults(Request(track, 60)));
        Assert.Equal(("PF4029", "platform[0].face.side", "\"right\""), (told.Code, told.Key, told.Cure!.Value));
        Assert.Empty(Faults(Request(track, 60, side: Side.Right)));
    }

    /// <summary>What verification alone refused: a design by lot whose track comes back on the platform round a curve.</summary>
    [Fact]
    public void A_design_by_lot_that_its_own_track_runs_into_is_refused_by_the_plan() =>
        Assert.Equal("PF4029", DesignFolder.Of(RandomDesign.AtHalt(69)).Refused);

    // An up line that turns right beyond the island, three quarters of a circle round, and crosses itself and the down line square at x = 740.
    private const string Island = """
        [layout]
        name = "Quillhaven"
        scale = "4mm"
        rail_top = 8
        [[track]]
        name = "up"
        alignment = [{ straight = 800 }, { curve = 60, angle = 270, hand = "right" }, { straight = 600 }]
        [[track]]
        name = "down"
        start = { x = 0, y = 120 }
        alignment = [{ straight = 1200 }]
        [[vehicle]]
        name = "van"
        length = 100
        pivots = 60
        width = 34
        [clearance]
        running = 1
        print = 0
        fitting = 0
        [[platform]]
        name = "island"
        face = { track = "up", side = "left", from = 350, to = 700 }
        other_face = { track = "down", side = "right" }

        """;

    [Theory]
    [InlineData(721.9, false)]
    [InlineData(722.5, true)]
    [InlineData(735, true)]
    public void An_island_ends_before_its_own_track_and_what_is_offered_works(double to, bool fouls)
    {
        var source = new ProjectSource(Island.Replace("to = 700", FormattableString.Invariant($"to = {to}"), StringComparison.Ordinal), "halt.toml");
        Finding[] Errors(params Cure[] cures) => [.. FaultyDesign.FindingsOf(source, cures).Where(f => f.Severity == Severity.Error)];
        if (!fouls)
        {
            Assert.Empty(Errors().Select(f => f.Message));
            return;
        }

        var told = Assert.Single(Errors());
        Assert.Equal(("PF4029", "platform[0].face.to"), (told.Code, told.Key));
        Assert.Empty(Errors(told.Cure!).Select(f => f.Message));
    }
}
