using PlatformForge.Platforms;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

public class RampTests
{
    [Theory]
    [InlineData(1, 1.5, 0.5)]
    [InlineData(0, 1.5, 1.5)]
    [InlineData(8, 1.5, 0)]
    public void A_foot_that_nobody_stated_is_at_rail_top_or_as_low_as_the_deck_goes(double railTop, double deck, double foot)
    {
        var request = Bench.Straight(s => s with { Height = 12, StartRamp = new(Gradient: 8), Deck = s.Deck with { Thickness = deck } });
        var plan = Bench.Plan(request with { Site = request.Site with { RailTop = railTop } });
        Assert.Equal(railTop + foot, plan.Profile.StartFoot, 1e-9);
        Assert.Equal((12 - foot) * 8, plan.Profile.StartHead - plan.Profile.From, 1e-9);
    }

    [FsCheck.Xunit.Property(MaxTest = 15)]
    public void A_foot_that_nobody_stated_is_never_refused(int seed)
    {
        var random = new Random(seed);
        var request = Bench.Request(seed, EdgeStyle.Fitted,
            s => s with { StartRamp = new(Gradient: 8), EndRamp = new(Gradient: 8), Deck = s.Deck with { Crossfall = random.Next(2) * 60 } });
        Bench.Plan(request with { Site = request.Site with { RailTop = random.NextDouble() * 3 } });
    }

    [Fact]
    public void Twelve_millimetres_at_one_in_eight_take_ninety_six()
    {
        var plan = Bench.Plan(Bench.Straight(s => s with { Height = 12, StartRamp = new(Gradient: 8), EndRamp = new(Gradient: 8) }));
        Assert.Equal(200 + 96, plan.Profile.StartHead, 1e-9);
        Assert.Equal(800 - 96, plan.Profile.EndHead, 1e-9);
        Assert.Contains(plan.Profile.StartHead, plan.Stations);
        Assert.Contains(plan.Profile.EndHead, plan.CopingJoints);
    }

    [Fact]
    public void A_ramp_by_length_and_one_by_gradient_of_the_same_fall_are_the_same_plan()
    {
        var byGradient = Bench.Plan(Bench.Straight(s => s with { Height = 12, StartRamp = new(Gradient: 8) }));
        var byLength = Bench.Plan(Bench.Straight(s => s with { Height = 12, StartRamp = new(Length: 96) }));
        Assert.Equal(byGradient.Profile, byLength.Profile);
        Assert.Equal(byGradient.Stations, byLength.Stations);
    }

    [Fact]
    public void A_raised_foot_shortens_a_ramp_by_gradient_and_steepens_nothing()
    {
        var plan = Bench.Plan(Bench.Straight(s => s with { Height = 12, EndRamp = new(Gradient: 10, FootHeight: 2) }));
        Assert.Equal(700, plan.Profile.EndHead, 1e-9);
        Assert.Equal(Bench.Site.RailTop + 2, plan.TopAt(800, 40), 1e-9);
        Assert.Equal(Bench.Site.RailTop + 7, plan.TopAt(750, 40), 1e-9);
        Assert.Equal(Bench.Site.RailTop + 12, plan.TopAt(500, 40), 1e-9);
    }

    [Fact]
    public void The_deck_falls_away_from_the_edge_by_the_crossfall()
    {
        // 1 in 80 over 40 mm is 0.500 mm at model size, 1 in 40 is 1.000 (STANDARDS 3.5, computed).
        foreach (var (n, fall) in new[] { (80.0, 0.5), (40, 1), (50, 0.8) })
        {
            var plan = Bench.Plan(Bench.Straight(s => s with { Height = 12, Deck = s.Deck with { Crossfall = n } }));
            double front = plan.CopingFront.At(500);
            Assert.Equal(20, plan.TopAt(500, front), 1e-9);
            Assert.Equal(20 - fall, plan.TopAt(500, front + 40), 1e-9);
        }
    }

    [Fact]
    public void The_line_stops_at_the_ramp_tops()
    {
        var plan =
            Bench.Plan(Bench.Straight(s => s with { StartRamp = new(Gradient: 8), EndRamp = new(Length: 120), WhiteLine = new() { Inset = 1, Width = 1.5 } }));
        Assert.NotNull(plan.WhiteLine);
        Assert.Equal(plan.Profile.StartHead, plan.WhiteLine.From);
        Assert.Equal(680, plan.WhiteLine.To, 1e-9);
        Assert.Equal(plan.CopingFront.At(500) + 1, plan.WhiteLine.Near.At(500), 1e-9);
        Assert.Equal(plan.CopingFront.At(500) + 2.5, plan.WhiteLine.Far.At(500), 1e-9);
    }

    [Fact]
    public void Ramps_that_do_not_fit_say_how_much_is_missing_and_which_gradient_would_fit()
    {
        var outcome =
            PlatformPlanner.Plan(Bench.Straight(s => s with
            {
                Height = 12,
                Face = s.Face with { To = 350 },
                StartRamp = new(Gradient: 8),
                EndRamp = new(Gradient: 8)
            }));
        var finding = Assert.Single(outcome.Findings, f => f.Code == "PF4007");
        Assert.Equal("platform[0].ramps", finding.Key);
        Assert.Contains("by 42 mm", finding.Remedy, StringComparison.Ordinal);
        Assert.Contains("1 in 6.25", finding.Remedy, StringComparison.Ordinal);

        // What is offered works, if steeper than published.
        var mended =
            PlatformPlanner.Plan(Bench.Straight(s => s with
            {
                Height = 12,
                Face = s.Face with { To = 350 },
                StartRamp = new(Gradient: 6.25),
                EndRamp = new(Gradient: 6.25)
            }));
        Assert.True(mended.Succeeded);
        Assert.Contains(mended.Findings, f => f is { Code: "PF4203", Severity: Severity.Warning });
    }

    [Fact]
    public void On_a_curve_the_foot_stays_over_the_baseboard_at_the_back_too()
    {
        // A ramp is one plane, so on the outside of a curve it goes on falling towards the back; rails 2 mm over the baseboard leave too little there.
        var request = new PlatformRequest(Pendlewick.Platform() with
        {
            StartRamp = new(Gradient: 8, FootHeight: 0),
            EndRamp = new(Gradient: 8, FootHeight: 0)
        }, Pendlewick.Site with { RailTop = 3 }, Pendlewick.Track,
            Bench.Envelope(Pendlewick.Track, Side.Right, _ => 22), Pendlewick.Budget);
        var outcome = PlatformPlanner.Plan(request);
        var finding = Assert.Single(outcome.Findings, f => f.Code == "PF4006");
        Assert.Equal("platform[0].ramps.end.foot", finding.Key);

        // The height that is offered is enough, but for what a foot so much higher changes the ramp's length by.
        double offered = double.Parse(finding.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        var raised = request with { Spec = request.Spec with { EndRamp = new(Gradient: 8, FootHeight: offered + 0.05) } };
        Assert.InRange(offered, 0.01, 2);
        Assert.DoesNotContain(PlatformPlanner.Plan(raised).Findings, f => f.Code == "PF4006");
    }
}
