using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Clearance;

public class EnvelopeFaultTests
{
    private static readonly Centreline Track = DemoStock.PendlewickTrack();

    [Fact]
    public void Impossible_vehicles_are_told_all_at_once_with_what_would_work()
    {
        Vehicle[] stock =
        [
            DemoStock.Coach("too long between bogies", 200, 220, 34),
            DemoStock.Coach("inside out", 200, 150, -34),
            DemoStock.Coach("overlapping bogies", 200, 60, 34, wheelbase: 70),
            DemoStock.Coach("no number", double.NaN, 150, 34),
            new("nothing", 100, 0, 0, []),
            new("hanging bogie part", 100, 0, 0, [VehiclePart.Box("frames", PartCarrier.LeadingBogie, -10, 10, 20, 0, 5),
                VehiclePart.Box("body", PartCarrier.Body, -60, 60, 20, 5, 2)]),
            new("huge", 1e308, double.PositiveInfinity, -1, [VehiclePart.Box("body", PartCarrier.Body, -60, 60, 20, 5, 20)]) { LeastRadius = -3 },
        ];
        var outcome = EnvelopeSweeper.Sweep(new(Track, 300, 900, [new(Track, stock)]));
        Assert.Null(outcome.Value);
        Assert.Equal(
            ["PF3016", "PF3014", "PF3016", "PF3014", "PF3012", "PF3015", "PF3013", "PF3010", "PF3011", "PF3011", "PF3017"],
            outcome.Findings.Select(f => f.Code));
        Assert.Contains("200.0 mm at most", outcome.Findings[0].Remedy, StringComparison.Ordinal);
        Assert.All(outcome.Findings, f => Assert.NotEmpty(f.Remedy));
    }

    [Fact]
    public void A_curve_too_sharp_for_a_vehicle_is_told_with_the_largest_pivot_centres_that_fit()
    {
        var sharp = DemoStock.Lay("sharp", new StraightSpec(500), new CurveSpec(120, Hand.Left, Angle: 1.5), new StraightSpec(500));
        var finding = Assert.Single(EnvelopeSweeper.Sweep(new(sharp, 400, 700, [new(sharp, [DemoStock.Coach("coach", 262, 188, 34)])])).Findings);
        Assert.Equal(("PF3021", FaultKind.DesignRule), (finding.Code, finding.Kind));
        Assert.Contains("120 mm radius", finding.Message, StringComparison.Ordinal);
        Assert.Contains("169.7 mm at most", finding.Remedy, StringComparison.Ordinal);
        Assert.Contains("133 mm or more", finding.Remedy, StringComparison.Ordinal);
        Assert.True(EnvelopeSweeper.Sweep(new(sharp, 400, 700, [new(sharp, [DemoStock.Coach("coach", 200, 169, 34)])])).Succeeded);
    }

    [Fact]
    public void Kinks_that_only_together_are_too_sharp_are_found_while_running()
    {
        CentrelineElement Bend(double x, double y, double heading) => new(new(x, y), heading, 20, 0, 0);
        var elements = new List<CentrelineElement> { new(default, 0, 500, 0, 0) };
        for (int i = 0; i < 9; i++)
        {
            var at = elements[^1].At(elements[^1].Length).Position;
            elements.Add(Bend(at.X, at.Y, (i + 1) * 0.19));
        }

        var end = elements[^1].At(20);
        elements.Add(new(end.Position, 9 * 0.19, 500, 0, 0));
        var chart = DemoStock.Lay("chart", new StraightSpec(480), new CurveSpec(130, Hand.Left, Angle: 1.71), new StraightSpec(480));
        var finding =
            Assert.Single(
                EnvelopeSweeper.Sweep(new(chart, 480, 520, [new(new("bent", elements), [DemoStock.Coach("coach", 262, 188, 34)])])
                {
                    StraightBeyondEnds = true,
                    Tolerance = 1
                }).Findings);
        Assert.Equal("PF3021", finding.Code);
    }

    [Fact]
    public void A_kink_that_is_no_track_is_told_before_anything_is_swept()
    {
        var bent = new Centreline("bent", [new(default, 0, 500, 0, 0), new(new(500, 0), 0.5, 500, 0, 0)]);
        var chart = DemoStock.Lay("chart", new StraightSpec(450), new CurveSpec(200, Hand.Left, Angle: 0.5), new StraightSpec(450));
        var finding =
            Assert.Single(
                EnvelopeSweeper.Sweep(new(chart, 300, 600, [new(bent, [DemoStock.Coach("coach", 262, 188, 34)])]) { StraightBeyondEnds = true }).Findings);
        Assert.Equal("PF3023", finding.Code);
        Assert.Contains("28.6 degrees at chainage 500", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stated_least_radius_is_held() =>
        Assert.Equal("PF3022",
            Assert.Single(
                EnvelopeSweeper.Sweep(new(Track, 300, 900, [new(Track, [DemoStock.Coach("coach", 262, 188, 34) with { LeastRadius = 900 }])])).Findings).Code);

    [Fact]
    public void Less_than_a_vehicles_length_of_track_beyond_the_platform_is_told_for_both_ends_unless_buffers_end_it()
    {
        var request = new EnvelopeRequest(Track, 100, 1300, [new(Track, DemoStock.Pendlewick)]);
        var findings = EnvelopeSweeper.Sweep(request).Findings;
        Assert.Equal(["PF3020", "PF3020"], findings.Select(f => f.Code));
        Assert.Contains("162 mm are missing at the track's start", findings[0].Message, StringComparison.Ordinal);
        Assert.Contains("at least 162 mm more of it at its start, so that 262 mm are known before the platform", findings[0].Remedy, StringComparison.Ordinal);
        Assert.Contains("at least 162 mm more", findings[1].Remedy, StringComparison.Ordinal);
        Assert.True(EnvelopeSweeper.Sweep(request with { Runs = [request.Runs[0] with { StartsAtBuffers = true, EndsAtBuffers = true }] }).Succeeded);
        Assert.True(EnvelopeSweeper.Sweep(request with { StraightBeyondEnds = true }).Succeeded);
    }

    [Fact]
    public void How_far_a_vehicle_comes_with_its_last_axle_at_the_start_of_a_curve_is_that_of_the_circle()
    {
        // Rigid, axles a apart on a circle of radius R: the middle of the wheelbase lies √(R² − a²/4) from its centre, the inner front corner that less half
        // the width, and x ahead; its chainage is R·(asin(a/2R) + atan(x / that)).
        const double Radius = 500, Axles = 120, Ahead = 95, Width = 36;
        var ring = DemoStock.Lay("ring", new CurveSpec(Radius, Hand.Left, Length: 1200));
        var van = new Vehicle("van", Axles, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -95, Ahead, Width, 0, 40)]);
        double middle = Math.Sqrt((Radius * Radius) - (Axles * Axles / 4));
        double expected = Radius * (Math.Asin(Axles / 2 / Radius) + Math.Atan2(Ahead, middle - (Width / 2)));
        Assert.Equal(expected, KnownTrack.Reached(ring, ring, van, atStart: true)!.Value, 1e-5);
        Assert.Equal(1200 - expected, KnownTrack.Reached(ring, ring, van, atStart: false)!.Value, 1e-5);
        Assert.Empty(VehicleFit.Beyond(new(ring, [van]), ring, expected + 0.01, 1200 - expected - 0.01));
        Assert.Equal(["PF3026", "PF3026"], VehicleFit.Beyond(new(ring, [van]), ring, expected - 0.01, 1200 - expected + 0.01).Select(f => f.Code));
        Assert.Empty(VehicleFit.Beyond(new(ring, [van]) { StartsAtBuffers = true, EndsAtBuffers = true }, ring, 10, 1190));
    }

    [Theory]
    [InlineData(500, 400)]
    [InlineData(500, 500)]
    [InlineData(double.NaN, 500)]
    [InlineData(0, double.PositiveInfinity)]
    [InlineData(-1e308, 1e308)]
    public void A_stretch_that_is_none_is_told(double from, double to) =>
        Assert.Contains(EnvelopeSweeper.Sweep(new(Track, from, to, [new(Track, DemoStock.Pendlewick)])).Findings, f => f.Code == "PF3001");

    [Fact]
    public void Silly_tolerances_plays_and_empty_fleets_are_told()
    {
        var request = new EnvelopeRequest(Track, 300, 900, [new(Track, [])]) { Spacing = 0, Tolerance = double.NaN, Play = new(-1, 0, 2) };
        Assert.Equal(["PF3002", "PF3003", "PF3004"], EnvelopeSweeper.Sweep(request).Findings.Select(f => f.Code));
    }

    [Fact]
    public void A_chart_with_kinks_is_our_own_fault()
    {
        var kinked = new Centreline("k", [new(default, 0, 500, 0, 0), new(new(500, 0), 0.02, 500, 0, 0)]);
        Assert.Throws<BrokenInvariantException>(() => EnvelopeSweeper.Sweep(new(kinked, 300, 600, [new(kinked, DemoStock.Quillhaven)])));
    }
}
