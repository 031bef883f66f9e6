using PlatformForge.Clearance;
using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

public class BadInputTests
{
    private static readonly (string Key, Func<PlatformSpec, double, PlatformSpec> With)[] Figures =
    [
        ("height", (s, v) => s with { Height = v }),
        ("face.from", (s, v) => s with { Face = s.Face with { From = v } }),
        ("face.to", (s, v) => s with { Face = s.Face with { To = v } }),
        ("face.least_radius", (s, v) => s with { Face = s.Face with { LeastRadius = v } }),
        ("face.taper", (s, v) => s with { Face = s.Face with { Taper = v } }),
        ("face.vertical_gap", (s, v) => s with { Face = s.Face with { VerticalGap = v } }),
        ("ramps.start.length", (s, v) => s with { StartRamp = new(Length: v) }),
        ("ramps.end.gradient", (s, v) => s with { EndRamp = new(Gradient: v) }),
        ("ramps.end.foot", (s, v) => s with { EndRamp = new(Gradient: 8, FootHeight: v) }),
        ("deck.thickness", (s, v) => s with { Deck = s.Deck with { Thickness = v } }),
        ("deck.width", (s, v) => s with { Deck = s.Deck with { Width = v } }),
        ("deck.crossfall", (s, v) => s with { Deck = s.Deck with { Crossfall = v } }),
        ("coping.width", (s, v) => s with { Coping = s.Coping with { Width = v } }),
        ("coping.thickness", (s, v) => s with { Coping = s.Coping with { Thickness = v } }),
        ("coping.overhang", (s, v) => s with { Coping = s.Coping with { Overhang = v } }),
        ("coping.slab_length", (s, v) => s with { Coping = s.Coping with { SlabLength = v } }),
        ("coping.joint_width", (s, v) => s with { Coping = s.Coping with { JointWidth = v } }),
        ("coping.joint_depth", (s, v) => s with { Coping = s.Coping with { JointDepth = v } }),
        ("coping.arris_chamfer", (s, v) => s with { Coping = s.Coping with { ArrisChamfer = v } }),
        ("wall.front_thickness", (s, v) => s with { Walls = s.Walls with { FrontThickness = v } }),
        ("wall.back_thickness", (s, v) => s with { Walls = s.Walls with { BackThickness = v } }),
        ("wall.end_thickness", (s, v) => s with { Walls = s.Walls with { EndThickness = v } }),
        ("ribs.pitch", (s, v) => s with { Ribs = s.Ribs with { Pitch = v } }),
        ("ribs.thickness", (s, v) => s with { Ribs = s.Ribs with { Thickness = v } }),
        ("ribs.lengthwise_thickness", (s, v) => s with { Ribs = s.Ribs with { LongitudinalThickness = v } }),
        ("ribs.depth", (s, v) => s with { Ribs = s.Ribs with { Depth = v } }),
        ("board[0].at", (s, v) => s.With<SocketSpec>([new(v, 8)])),
        ("board[0].inset", (s, v) => s.With<SocketSpec>([new(500, v)])),
        ("board[0].depth", (s, v) => s.With<SocketSpec>([new(500, 8) { Depth = v }])),
        ("board[0].along", (s, v) => s.With<SocketSpec>([new(500, 8) { Along = v }])),
        ("board[0].fit", (s, v) => s.With<SocketSpec>([new(500, 8) { Fit = v }])),
        ("fence.pitch", (s, v) => s.With<FenceSpec>([new() { Pitch = v }])),
        ("fence.pin", (s, v) => s.With<FenceSpec>([new() { PinDiameter = v }])),
        ("fence.inset", (s, v) => s.With<FenceSpec>([new() { Inset = v }])),
        ("fence.gap[0].from", (s, v) => s.With<FenceSpec>([new() { Gaps = [new(v, 600)] }])),
        ("line.width", (s, v) => s with { WhiteLine = new() { Width = v } }),
        ("line.inset", (s, v) => s with { WhiteLine = new() { Inset = v } }),
        ("cuts[0]", (s, v) => s with { ForcedCuts = [v] }),
    ];

    public static TheoryData<string, double> Cases
    {
        get
        {
            var cases = new TheoryData<string, double>();
            foreach (var (key, _) in Figures)
            {
                foreach (double value in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity, 1e308, -1e308 })
                {
                    cases.Add(key, value);
                }
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_figure_that_is_none_or_off_all_bounds_is_an_error_at_its_key(string key, double value)
    {
        var with = Figures.Single(f => f.Key == key).With;
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => with(s, value)));
        Assert.Null(outcome.Value);
        var finding = Assert.Single(outcome.Findings);
        Assert.Equal(("PF4001", "platform[0]." + key, Severity.Error), (finding.Code, finding.Key, finding.Severity));
        Assert.NotEmpty(finding.Remedy);
    }

    [Theory]
    [InlineData("deck.width", "PF4010")]
    [InlineData("coping.joint_depth", "PF4011")]
    [InlineData("coping.overhang", "PF4011")]
    [InlineData("coping.arris_chamfer", "PF4011")]
    [InlineData("ramps.start.foot", "PF4006")]
    [InlineData("board[0].inset", "PF4030")]
    [InlineData("board[1].inset", "PF4031")]
    public void Faults_are_told_with_key_figure_and_what_would_work(string key, string code)
    {
        PlatformSpec Spoil(PlatformSpec s) => key switch
        {
            "deck.width" => s with { Deck = s.Deck with { Width = 7 } },
            "coping.joint_depth" => s with { Coping = s.Coping with { JointDepth = 1.2 } },
            "coping.overhang" => s with { Coping = s.Coping with { Overhang = 7 } },
            "coping.arris_chamfer" => s with { Coping = s.Coping with { ArrisChamfer = 1 } },
            "ramps.start.foot" => s with { StartRamp = new(Gradient: 8, FootHeight: -7.5) },
            "board[0].inset" => s.With<SocketSpec>([new(500, 2, InsetFrom.Edge)]),
            _ => s.With<SocketSpec>([new(400, 20), new(500, 0.5)]),
        };
        var outcome = PlatformPlanner.Plan(Bench.Straight(Spoil));
        Assert.Null(outcome.Value);
        var finding = Assert.Single(outcome.Findings, f => f.Severity == Severity.Error);
        Assert.Equal((code, "platform[0]." + key), (finding.Code, finding.Key));

        // The figure in the remedy is taken at its word.
        double offered = double.Parse(System.Text.RegularExpressions.Regex.Match(finding.Remedy, @"-?\d+(\.\d+)?").Value,
            System.Globalization.CultureInfo.InvariantCulture);
        PlatformSpec Mend(PlatformSpec s) => key switch
        {
            "deck.width" => s with { Deck = s.Deck with { Width = offered }, Ribs = s.Ribs with { LongitudinalCount = 0 } },
            "coping.joint_depth" => s with { Coping = s.Coping with { JointDepth = offered } },
            "coping.overhang" => s with { Coping = s.Coping with { Overhang = offered } },
            "coping.arris_chamfer" => s with { Coping = s.Coping with { ArrisChamfer = offered } },
            "ramps.start.foot" => s with { StartRamp = new(Gradient: 8, FootHeight: offered) },
            "board[0].inset" => s.With<SocketSpec>([new(500, offered, InsetFrom.Edge)]),
            _ => s.With<SocketSpec>([new(400, 20), new(500, offered)]),
        };
        Assert.DoesNotContain(PlatformPlanner.Plan(Bench.Straight(Mend)).Findings, f => f.Severity == Severity.Error);
    }

    [Fact]
    public void All_faults_are_collected_and_not_one_at_a_time()
    {
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => (s with
        {
            Height = double.NaN,
            Deck = s.Deck with { Thickness = -1 },
        }).With<SocketSpec>([new(500, double.PositiveInfinity), new(double.NaN, 3)])));
        Assert.Equal(
            ["platform[0].board[0].inset", "platform[0].board[1].at", "platform[0].deck.thickness", "platform[0].height"],
            outcome.Findings.Select(f => f.Key).Order(StringComparer.Ordinal));

        var design =
            PlatformPlanner.Plan(Bench.Straight(s => s with
            {
                Deck = s.Deck with { Width = 7 },
                StartRamp = new(),
                EndRamp = new(96, 8),
                Face = s.Face with { To = 980 }
            }));
        Assert.Equal(["PF4004", "PF4005", "PF4005", "PF4010"], design.Findings.Select(f => f.Code).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(-10, 500, "PF4003", "face.from", "Give 100,")]
    [InlineData(200, 1010, "PF4003", "face.to", "Give 900,")]
    [InlineData(60, 500, "PF4004", "face.from", "Give 100 ")]
    [InlineData(200, 960, "PF4004", "face.to", "Give 900 ")]
    [InlineData(500, 400, "PF4002", "face.to", "505")]
    public void A_platform_needs_its_track_and_a_longest_vehicle_more_at_both_ends(double from, double to, string code, string key, string right)
    {
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => s with { Face = s.Face with { From = from, To = to } }));
        var finding = Assert.Single(outcome.Findings);
        Assert.Equal((code, "platform[0]." + key), (finding.Code, finding.Key));
        Assert.Contains(right, finding.Remedy, StringComparison.Ordinal);

        // The chainage that is offered is taken at its word.
        double offered = Offered(finding);
        Assert.DoesNotContain(
            PlatformPlanner.Plan(Bench.Straight(s => s with
            {
                Face = key == "face.from" ? s.Face with { From = offered, To = to }
                : s.Face with { From = from, To = offered }
            })).Findings, f => f.Severity == Severity.Error);
    }

    [Fact]
    public void On_a_track_too_short_for_any_platform_no_chainage_is_offered()
    {
        var track = TrackLayer.Lay(new("up", new Point2(0, 0), 0, [new StraightSpec(190)])).Value!;
        var findings = PlatformPlanner.Check(new PlatformSpec("up side", new FaceSpec("up", Side.Left, 50, 140)), Bench.Site, track, [Bench.Fleet]);
        Assert.Equal(["PF4004", "PF4004"], findings.Where(f => f.Severity == Severity.Error).Select(f => f.Code));
        Assert.All(findings.Where(f => f.Severity == Severity.Error), f => Assert.DoesNotContain("Give", f.Remedy, StringComparison.Ordinal));
    }

    [Fact]
    public void A_deck_too_narrow_for_what_stands_on_it_is_told_the_width_that_holds_all_of_it()
    {
        PlatformSpec With(PlatformSpec s, double width) =>
            (s with { Deck = s.Deck with { Width = width }, WhiteLine = new(), Ribs = s.Ribs with { LongitudinalCount = 0 } }).With<FenceSpec>([new()])
            .With<SocketSpec>([new(500, 9) { Across = 6 }]).With<HoleSpec>([new(300, 6)]);
        var finding = Assert.Single(PlatformPlanner.Plan(Bench.Straight(s => With(s, 4))).Findings, f => f.Code == "PF4010");
        double offered = Offered(finding);
        Assert.DoesNotContain(PlatformPlanner.Plan(Bench.Straight(s => With(s, offered))).Findings, f => f.Severity == Severity.Error);

        // A little less than that still holds coping and walls, and the socket has no place: the same width is named.
        var narrow = Assert.Single(PlatformPlanner.Plan(Bench.Straight(s => With(s, 10.5).With<FenceSpec>([]).With<HoleSpec>([]))).Findings,
            f => f.Severity == Severity.Error);
        Assert.Equal(("PF4035", "platform[0].board[0]"), (narrow.Code, narrow.Key));
        Assert.Equal(offered, Offered(narrow));
    }

    private static double Offered(Finding finding) =>
        double.Parse(System.Text.RegularExpressions.Regex.Match(finding.Remedy, @"-?\d+(\.\d+)?").Value, System.Globalization.CultureInfo.InvariantCulture);

    [Fact]
    public void At_buffer_stops_no_track_is_needed_beyond()
    {
        var request = Bench.Straight(s => s with { Face = s.Face with { From = 60 } });
        Assert.False(PlatformPlanner.Plan(request).Succeeded);
        Assert.True(PlatformPlanner.Plan(request with { StartsAtBuffers = true }).Succeeded);
    }

    [Fact]
    public void Things_that_share_a_place_are_an_error()
    {
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => s.With<SocketSpec>([new(500, 10), new(501, 11)])));
        Assert.Contains(outcome.Findings, f => f is { Code: "PF4033", Severity: Severity.Error });
    }

    [Fact]
    public void Two_of_a_kind_in_one_place_are_told_apart_by_their_chainage()
    {
        static Finding Told(double second) =>
            Assert.Single(PlatformPlanner.Plan(Bench.Straight(s => s.With<SocketSpec>([new(500, 10), new(second, 10)]))).Findings, f => f.Code == "PF4033");
        var apart = Told(501.25);
        Assert.Contains(" at chainage 500 mm and the one at 501.25 mm ", apart.Message, StringComparison.Ordinal);
        Assert.Matches("^Move the .+ at chainage 50(0|1.25) mm to chainage [0-9.]+ mm,", apart.Remedy);
        var together = Told(500);
        Assert.StartsWith("Another ", together.Message, StringComparison.Ordinal);
        Assert.StartsWith("Move one of them to chainage ", together.Remedy, StringComparison.Ordinal);
        Assert.NotNull(together.Cure);
    }

    [Fact]
    public void A_socket_deeper_than_the_platform_says_how_deep_it_may_be()
    {
        // Rail top 8 and height 12.008 leave 20.008; 1.2 stay under the socket.
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => s.With<SocketSpec>([new(500, 10) { Depth = 19 }])));
        Assert.Contains("18.807", Assert.Single(outcome.Findings, f => f.Code == "PF4034").Remedy, StringComparison.Ordinal);
        Assert.True(PlatformPlanner.Plan(Bench.Straight(s => s.With<SocketSpec>([new(500, 10) { Depth = 18.807 }]))).Succeeded);
    }

    [Fact]
    public void A_place_that_nothing_passes_is_an_error_and_not_an_edge_on_the_rails()
    {
        var request = Bench.Straight();
        var outcome = PlatformPlanner.Plan(request with { Envelope = Bench.Envelope(request.Chart, Side.Left, _ => double.NegativeInfinity) });
        Assert.Equal("PF4020", Assert.Single(outcome.Findings).Code);
    }

    [Fact]
    public void A_platform_that_would_reach_a_curves_centre_says_what_width_would_do()
    {
        var track = TrackLayer.Lay(new("up", new Point2(0, 0), 0, [new CurveSpec(400, Hand.Left, Length: 900)])).Value!;
        PlatformRequest With(double width) => new(
            new PlatformSpec("up side", new FaceSpec("up", Side.Left, 200, 700)) { Deck = new() { Width = width } },
            Bench.Site,
            track,
            Bench.Envelope(track, Side.Left, _ => 20),
            ClearanceBudget.Of(1));
        var finding = Assert.Single(PlatformPlanner.Plan(With(380)).Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF4021", "platform[0].deck.width"), (finding.Code, finding.Key));
        Assert.Contains("299", finding.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain(PlatformPlanner.Plan(With(299)).Findings, f => f.Severity == Severity.Error);
    }
}
