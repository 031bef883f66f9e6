using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>Figures that this room tells beside the sweep, each worked out by plain geometry.</summary>
public class FigureTests
{
    /// <summary>A chord that turns 45 degrees at its ends against a circle of radius R is R·√2 long: R 100 takes 141.42 mm, 150 mm take R 106.07.</summary>
    [Fact]
    public void A_curve_too_sharp_for_the_pivots_is_told_the_longest_pivots_and_the_least_radius()
    {
        var finding = Assert.Single(TrackFitRule.CurveFault("up", Bare(150) with { Key = "vehicle[2]" }, (100, 640)));
        Assert.Equal(("PF3021", "vehicle[2].pivots", "141.4"), (finding.Code, finding.Key, finding.Cure!.Value));
        Assert.Contains("with wheelbase of 150 mm", finding.Message, StringComparison.Ordinal);
        Assert.Contains("100 mm radius at chainage 640 mm", finding.Message, StringComparison.Ordinal);
        Assert.Contains("can be 141.4 mm at most there, or the curve's radius 107 mm or more", finding.Remedy, StringComparison.Ordinal);
        Assert.Empty(TrackFitRule.CurveFault("up", Bare(141.4), (100, 640)));
        Assert.Empty(TrackFitRule.CurveFault("up", Bare(150), (107, 640)));
    }

    [Theory]
    [InlineData(60, 20, "bogie_wheelbase")]
    [InlineData(20, 60, "trailing_bogie_wheelbase")]
    public void A_curve_too_sharp_for_a_bogie_names_that_bogie(double leading, double trailing, string key)
    {
        var vehicle = Bare(50) with { LeadingWheelbase = leading, TrailingWheelbase = trailing, Key = "vehicle[0]" };
        var finding = Assert.Single(TrackFitRule.CurveFault("up", vehicle, (40, 0)));
        Assert.Equal(("vehicle[0]." + key, "56.5"), (finding.Key, finding.Cure!.Value)); // 40·√2 = 56.57, and 60/√2 = 42.43
        Assert.Contains("56.5 mm at most there, or the curve's radius 43 mm or more", finding.Remedy, StringComparison.Ordinal);
        Assert.Empty(TrackFitRule.CurveFault("up", vehicle with { TruckOf = "engine" }, (40, 0)));
    }

    [Fact]
    public void A_stated_least_radius_is_kept_to()
    {
        var finding = Assert.Single(TrackFitRule.CurveFault("up", Bare(50) with { LeastRadius = 500 }, (437.6, 12)));
        Assert.Equal(("PF3022", "437"), (finding.Code, finding.Cure!.Value));
        Assert.Empty(TrackFitRule.CurveFault("up", Bare(50) with { LeastRadius = 437 }, (437.6, 12)));
    }

    /// <summary>The middle of a wheelbase of 60 mm lies 500 − √(500² − 30²) = 0.901 mm inside R 500; with 0.5 mm of play R is (30² + 0.5²) / (2·0.5) = 900.25
    /// mm.</summary>
    [Fact]
    public void A_middle_axle_has_to_go_aside_by_the_versine()
    {
        var finding = Assert.Single(TrackFitRule.MiddleAxle("up", Bare(60) with { MiddleAxlePlay = 0.5 }, (500, 0)));
        Assert.Contains("has to go 0.90 mm aside", finding.Message, StringComparison.Ordinal);
        Assert.Contains("Give the axle 1.0 mm of side play; with 0.5 mm the tightest curve is 901 mm", finding.Remedy, StringComparison.Ordinal);
        Assert.Empty(TrackFitRule.MiddleAxle("up", Bare(60) with { MiddleAxlePlay = 0.91 }, (500, 0)));
        Assert.Empty(TrackFitRule.MiddleAxle("up", Bare(60) with { MiddleAxlePlay = 0.5 }, (901, 0)));
    }

    [Fact]
    public void The_sharpest_curve_of_a_stretch_is_told_with_its_place()
    {
        var track = DemoStock.Lay("up", new StraightSpec(300), new CurveSpec(700, Hand.Right, Length: 200), new CurveSpec(400, Hand.Left, Length: 100),
            new StraightSpec(300));
        Assert.Equal((400, 500), Rounded(TrackFitRule.Sharpest(new(track, []), 0, 900)));
        Assert.Equal((700, 300), Rounded(TrackFitRule.Sharpest(new(track, []), 0, 450)));
        Assert.Equal((400, 550), Rounded(TrackFitRule.Sharpest(new(track, []), 550, 900)));
        Assert.Equal(double.PositiveInfinity, TrackFitRule.Sharpest(new(track, []), 650, 900).Radius);
        static (double, double) Rounded((double Radius, double Chainage) c) => (Math.Round(c.Radius, 6), Math.Round(c.Chainage, 6));
    }

    /// <summary>250 mm of track before the platform and 262 mm of coach: 12 are missing.</summary>
    [Fact]
    public void Too_little_known_track_is_told_by_how_much()
    {
        var track = DemoStock.Lay("up", new StraightSpec(900));
        var findings = EnvelopeSweeper.Sweep(new(track, 250, 600, [new(track, [DemoStock.Coach("long coach", 261.6, 188, 34)])])).Findings;
        var finding = Assert.Single(findings);
        Assert.Contains("Only 250 mm of track 'up' are known before the platform; long coach is 261.6 mm long and still slews there: "
            + "11.6 mm are missing at the track's start", finding.Message, StringComparison.Ordinal);
        Assert.Contains("at least 12 mm more of it at its start, so that 262 mm are known before the platform", finding.Remedy, StringComparison.Ordinal);
    }

    public static TheoryData<string, Func<EnvelopeRequest, EnvelopeRequest>> BadRequests() => new()
    {
        { "PF3001", r => r with { To = r.From } }, { "PF3001", r => r with { To = double.PositiveInfinity } }, { "PF3001", r => r with { From = double.NaN } },
        { "PF3001", r => r with { From = r.To - 2e6 } },
        { "PF3002", r => r with { Spacing = 0 } }, { "PF3002", r => r with { Spacing = double.PositiveInfinity } },
        { "PF3002", r => r with { Tolerance = 0 } }, { "PF3002", r => r with { Tolerance = double.NaN } },
        { "PF3002", r => r with { Tolerance = double.PositiveInfinity } }, { "PF3003", r => r with { Play = new(-0.1) } },
        { "PF3003", r => r with { Play = new(0, double.NaN) } },
        { "PF3003", r => r with { Play = new(0, 0, 0.5, 10) { Cant = 0.4 } } }, { "PF3003", r => r with { Play = new(0, 0, 0.1, double.NaN) } },
        { "PF3003", r => r with { Play = new(0) { Cant = -0.1 } } },
    };

    [Theory]
    [MemberData(nameof(BadRequests))]
    public void A_request_that_cannot_be_answered_says_which_figure_is_wrong(string code, Func<EnvelopeRequest, EnvelopeRequest> spoil)
    {
        var track = DemoStock.Lay("up", new StraightSpec(2000));
        var sound = new EnvelopeRequest(track, 600, 1200, [new(track, [DemoStock.Coach("coach", 262, 188, 34)])]);
        Assert.Empty(RequestRule.Findings(sound));
        Assert.Equal([code], RequestRule.Findings(spoil(sound)).Select(f => f.Code));
    }

    /// <summary>0.02 rad are 1.146 degrees; sin 0.02 is 0.019999, and 40 − 10 mm above the centre that is 0.60, at 12 mm 0.04.</summary>
    [Fact]
    public void The_budget_tells_lean_in_degrees_and_at_two_heights()
    {
        var budget = ClearanceBudget.Of(1, play: new(0, 0, 0.02, 10) { Cant = 0.01 }, coping: 12, tallest: 40);
        var roll = budget.Lines.Single(l => l.Name == "suspension roll");
        Assert.Equal(0.6, roll.AmountMm, 1e-3);
        Assert.Equal("1.15 degrees each way, swept with the vehicles by each part's height: 0.04 at the coping, 0.60 at 40 above rail top", roll.Basis);
        var cant = budget.Lines.Single(l => l.Name == "cant");
        Assert.Equal("0.57 degrees each way, swept with the vehicles by each part's height: 0.12 at the coping, 0.40 at 40 above rail top", cant.Basis);
        Assert.Equal(0.4, cant.AmountMm, 1e-3);
    }

    /// <summary>
    /// On straight track the rearmost axle stands at its very start. As drawn that is the trailing bogie's, 10 mm behind its pivot: the front is 10 + 50 + 60
    /// mm on. Turned round it is the leading pivot itself: 50 + 80.
    /// </summary>
    [Theory]
    [InlineData(false, 120)]
    [InlineData(true, 130)]
    public void The_front_of_a_vehicle_whose_last_axle_is_at_the_start_of_the_track(bool eitherWay, double front)
    {
        var track = DemoStock.Lay("up", new StraightSpec(900));
        var vehicle = new Vehicle("v", 100, 0, 20, [VehiclePart.Box("body", PartCarrier.Body, -80, 60, 30, 1, 9)]) { EitherWayRound = eitherWay };
        Assert.Equal(front, KnownTrack.Reached(track, track, vehicle, atStart: true)!.Value, 1e-6);

        // At the end: as drawn the leading pivot at 900 and the rear 50 + 80 behind it, turned round the trailing bogie's axle there and 10 + 50 + 60.
        Assert.Equal(900 - 130, KnownTrack.Reached(track, track, vehicle, atStart: false)!.Value, 1e-6);
    }

    /// <summary>Where a curve begins, a vehicle with unequal ends is not its own mirror: run either way round it covers what it covers one way and what it
    /// covers turned.</summary>
    [Fact]
    public void Sills_of_a_vehicle_that_runs_either_way_round_are_those_of_both_ways()
    {
        var track = DemoStock.Lay("up", new StraightSpec(500), new CurveSpec(500, Hand.Left, Length: 900));
        var drawn = new Vehicle("v", 120, 60, 20, [VehiclePart.Box("body", PartCarrier.Body, -70, 110, 30, 1, 20)]) { Sill = new(15, 14, -40, 100) };
        var turned = BruteSweep.TurnedRound(drawn) with { Sill = new(15, 14, -100, 40) };
        SillReach Of(Vehicle v, bool eitherWay) =>
            Assert.Single(SillSurvey.Over(new(track, 420, 760, [new(track, [v with { EitherWayRound = eitherWay }])]), Side.Right));
        SillReach both = Of(drawn, true), one = Of(drawn, false), other = Of(turned, false);
        Assert.All(Enumerable.Range(0, both.Greatest.Length), i => Assert.Equal(Math.Max(one.Greatest[i], other.Greatest[i]), both.Greatest[i], 1e-6));
        Assert.All(Enumerable.Range(0, both.Least.Length), i => Assert.Equal(Math.Min(one.Least[i], other.Least[i]), both.Least[i], 1e-6));
        Assert.Contains(Enumerable.Range(0, both.Greatest.Length), i => other.Greatest[i] > one.Greatest[i] + 0.05);
    }

    /// <summary>A transition of 200 mm to R 500 changes its curvature by 1/500 in 200 mm: 10⁻⁵ to the square millimetre.</summary>
    [Fact]
    public void How_much_a_line_bends_within_a_stretch_is_told_by_its_least_its_most_and_its_rate()
    {
        var line = DemoStock.Lay("up", new StraightSpec(300), new TransitionSpec(200, 500, Hand.Left), new CurveSpec(500, Hand.Left, Length: 100),
            new CurveSpec(400, Hand.Right, Length: 100));
        void Is(double from, double to, double least, double most, double rate)
        {
            var span = CurvatureSpan.Over(line, from, to);
            Assert.Equal(least, span.Least, 1e-12);
            Assert.Equal(most, span.Most, 1e-12);
            Assert.Equal(rate, span.Rate, 1e-15);
            Assert.Equal(least == most && rate == 0, span.IsUniform);
        }

        Is(50, 250, 0, 0, 0);
        Is(350, 450, 0.0005, 0.0015, 1e-5);
        Is(250, 450, 0, 0.0015, 1e-5);
        Is(510, 590, 0.002, 0.002, 0);
        Is(550, 650, -0.0025, 0.002, 0);
        Is(620, 750, -0.0025, 0, 0);
        Is(-40, 100, 0, 0, 0);
        var both = CurvatureSpan.Over(line, 350, 450).Join(CurvatureSpan.Over(line, 620, 650));
        Assert.Equal((-0.0025, 0.0015), (Math.Round(both.Least, 9), Math.Round(both.Most, 9)));
        Assert.Equal(1e-5, both.Rate, 1e-15);
        Assert.Equal(0, both.KinkTurn);

        var bent = new Centreline("bent", [new(default, 0, 500, 0, 0), new(new(500, 0), 0.05, 500, 0, 0)]);
        Assert.Equal(0.05, CurvatureSpan.Over(bent, 400, 600).KinkTurn, 1e-12);
        Assert.Equal(0, CurvatureSpan.Over(bent, 501, 600).KinkTurn);
        Assert.Equal(0, CurvatureSpan.Over(bent, 400, 500).KinkTurn);
        Assert.False(CurvatureSpan.Over(bent, 400, 600).IsUniform);
    }

    private static Vehicle Bare(double pivots) => new("engine", pivots, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -pivots, pivots, 30, 1, 20)]);
}
