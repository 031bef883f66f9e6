using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>Where a sweep begins and ends, and what lies between two of its stations, against a sweeper that shares nothing with the product's.</summary>
public class HaltAndKinkTests
{
    private const double BruteError = 1.5e-4;

    private static readonly Vehicle Coach = DemoStock.Coach("coach", 140, 90, 30) with { EitherWayRound = false };

    /// <summary>
    /// Before buffer stops in a transition no later pose brings the middle of the vehicle as far inside the curve as the one in which it halts: what stands
    /// beside it then is reached by its whole side.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_vehicle_that_halts_in_a_transition_reaches_with_its_whole_side(bool atEnd)
    {
        var track = atEnd
            ? DemoStock.Lay("up", new StraightSpec(500), new TransitionSpec(220, 250, Hand.Left))
            : DemoStock.Lay("up", new CurveSpec(250, Hand.Left, Length: 1), new TransitionSpec(220, null, Hand.Left), new StraightSpec(500));

        // Its pivots are 45 mm from its middle, its ends 70.
        var (from, to) = atEnd ? (track.Length - 160, track.Length - 5) : (5, 160);
        var (first, last) = atEnd ? (300, track.Length - 25) : (115, 420.0);
        var run = new TrackRun(track, [Coach]) { StartsAtBuffers = !atEnd, EndsAtBuffers = atEnd };
        var envelope = EnvelopeSweeper.Sweep(new(track, from, to, [run])).Value!;
        double[] stations = [.. Enumerable.Range(0, envelope.Count).Where(i => i % 7 == 0).Select(i => envelope.From + (i * envelope.Spacing))];
        var truth = Assert.Single(BruteSweep.Sweep(track, track, Coach, stations, 0.2, (first, last)));
        for (int k = 0; k < stations.Length; k++)
        {
            Assert.InRange(envelope.Parts[0].Left[7 * k], truth.Left[k] - BruteError, truth.Left[k] + envelope.ErrorBound + 0.002);
            Assert.InRange(envelope.Parts[0].Right[7 * k], truth.Right[k] - BruteError, truth.Right[k] + envelope.ErrorBound + 0.002);
        }
    }

    /// <summary>Three kinks of 0.05 radians, 4 mm apart: a corner's way has a peak at each, and the join of two stations has to pass over it, whichever way the
    /// track runs.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Nothing_stands_out_between_two_stations_at_a_kink(bool along)
    {
        var ride = Bent(0.05, 500, 4, 4, 400);
        var chart = DemoStock.Lay("chart", new StraightSpec(1000));
        var run = new TrackRun(along ? ride : Reversed(ride), [Coach]);
        var envelope = EnvelopeSweeper.Sweep(new(chart, 400, 560, [run]) { Spacing = 8, Tolerance = 1, StraightBeyondEnds = true }).Value!;
        double[] places = [.. Enumerable.Range(0, 641).Select(i => 400 + (i / 4.0))];
        var truth = Assert.Single(BruteSweep.Sweep(run.Ride, chart, Coach, places, 0.5, along ? (280, 760) : (240, 700)));
        Assert.InRange(envelope.Spacing, 2, 8);
        foreach (var (side, reach) in new[] { (Side.Left, truth.Left), (Side.Right, truth.Right) })
        {
            var line = envelope.Composite(side);
            Assert.All(places.Zip(reach), p => Assert.True(line.At(p.First) >= p.Second - 0.002,
                $"{side}: {p.Second - line.At(p.First)} mm below the truth at {p.First}"));
        }
    }

    /// <summary>
    /// One kink of 0.02 radians, or three, a millimetre apart like the stations, so that poses stand close and little is added to what they show: the front
    /// corner has its peak, 0.02·(1 + 25/90) radians sharp, somewhere between two stations, wherever the kinks lie.
    /// </summary>
    [Theory]
    [InlineData(true, 3)]
    [InlineData(false, 3)]
    [InlineData(true, 1)]
    [InlineData(false, 1)]
    public void The_peak_at_kinks_lies_under_the_join_of_stations_wherever_it_falls(bool along, int kinks)
    {
        var chart = DemoStock.Lay("chart", new StraightSpec(1000));
        for (int shift = 0; shift < 6; shift++)
        {
            double at = 500 + (shift * 0.17);
            var ride = kinks == 3 ? Bent(0.02, at, 1, 1, 400) : Bent(0.02, at, 400);
            var run = new TrackRun(along ? ride : Reversed(ride), [Coach]);
            var envelope = EnvelopeSweeper.Sweep(new(chart, 490, 560, [run]) { Tolerance = 0.12, StraightBeyondEnds = true }).Value!;

            // With the leading pivot at the kinks the front corner is 25 mm on; the other way the rear one is.
            double kink = along ? at : ride.Length - at, lead = along ? 0 : 90;
            double[] places = [.. Enumerable.Range(0, 161).Select(i => 522 + (i / 20.0))];
            var truth = Assert.Single(BruteSweep.Sweep(run.Ride, chart, Coach, places, 0.05, (kink + lead - 6, kink + lead + 6)));
            foreach (var (side, reach) in new[] { (Side.Left, truth.Left), (Side.Right, truth.Right) })
            {
                var line = envelope.Composite(side);
                Assert.All(places.Zip(reach), p => Assert.True(line.At(p.First) >= p.Second - 0.0003,
                    $"{side}, {shift}: {p.Second - line.At(p.First)} mm below the truth at {p.First}"));
            }
        }
    }

    /// <summary>Stations several millimetres apart, on the way into a curve: between them too the join is nowhere below the truth, and at them nowhere above it
    /// by more than the bound.</summary>
    [Fact]
    public void Nothing_stands_out_between_stations_far_apart()
    {
        var track = DemoStock.Lay("up", new StraightSpec(300), new TransitionSpec(60, 300, Hand.Left), new CurveSpec(300, Hand.Left, Length: 60),
            new TransitionSpec(80, 260, Hand.Right), new StraightSpec(300));
        var envelope = EnvelopeSweeper.Sweep(new(track, 280, 520, [new(track, [Coach])]) { Spacing = 8, Tolerance = 0.5, StraightBeyondEnds = true }).Value!;
        Assert.InRange(envelope.Spacing, 2, 8);
        double[] places = [.. Enumerable.Range(0, 8 * (envelope.Count - 1)).Select(i => envelope.From + (i * envelope.Spacing / 8))];
        var truth = Assert.Single(BruteSweep.Sweep(track, track, Coach, places, 0.3));
        foreach (var (side, reach) in new[] { (Side.Left, truth.Left), (Side.Right, truth.Right) })
        {
            var line = envelope.Composite(side);
            Assert.All(places.Zip(reach), (p, i) => Assert.InRange(line.At(p.First) - p.Second, -0.0005, i % 8 == 0 ? envelope.ErrorBound + 0.0005 : 1));
        }
    }

    /// <summary>A bogie swept by itself stands with both its axles on the track, or off it by what is asked: on a circle their points are R, or R less that,
    /// from its centre.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, -1)]
    [InlineData(-1, -1)]
    public void A_bogie_by_itself_has_its_axles_where_they_belong(double leading, double trailing)
    {
        const double Radius = 300, Wheelbase = 24, Play = 0.4;
        var track = DemoStock.Lay("curve", new CurveSpec(Radius, Hand.Left, Angle: 3));
        var vehicle = DemoStock.Coach("coach", 200, 140, 30, Wheelbase) with { EitherWayRound = false };
        vehicle = vehicle with { Parts = [.. vehicle.Parts, VehiclePart.Box("frames", PartCarrier.LeadingBogie, -20, 20, 24, 1, 9)] };
        var play = new RunningPlay(Play);
        var shapes = SweptShape.Of(vehicle, play, null);
        var bogie = Assert.Single(SweptForm.WaysRound(vehicle, shapes, play, halts: false), f => f.IsBogie);
        var gear = bogie.Gear(track, new(leading, trailing));
        Assert.True(gear.Place(450, out var pose));
        var centre = track.At(0).At(Radius);
        Assert.Equal(Radius - (Play * leading), (pose.Body.Apply(new(Wheelbase / 2, 0)) - centre).Length, 1e-6);
        Assert.Equal(Radius - (Play * trailing), (pose.Body.Apply(new(-Wheelbase / 2, 0)) - centre).Length, 1e-6);
    }

    /// <summary>10.5 mm beyond both ends are asked for: stations a millimetre apart go 11 mm on.</summary>
    [Fact]
    public void Stations_go_on_beyond_the_ends_at_least_as_far_as_asked()
    {
        var track = DemoStock.Lay("up", new StraightSpec(2000));
        var envelope = EnvelopeSweeper.Sweep(new(track, 900, 1100, [new(track, [Coach])]) { Beyond = 10.5 }).Value!;
        Assert.Equal((889, 1111), (Math.Round(envelope.From, 9), Math.Round(envelope.From + ((envelope.Count - 1) * envelope.Spacing), 9)));
    }

    [Fact]
    public void A_stretch_of_an_envelope_says_the_same_of_each_place()
    {
        var whole = EnvelopeSweeper.Sweep(new(DemoStock.PendlewickTrack(), 500, 700, [new(DemoStock.PendlewickTrack(), [Coach])])).Value!;
        var stretch = whole.Within(550.4, 600.2);
        Assert.InRange(stretch.From, 550.4 - whole.Spacing, 550.4);
        Assert.InRange(stretch.From + ((stretch.Count - 1) * stretch.Spacing), 600.2, 600.2 + whole.Spacing);
        foreach (var side in new[] { Side.Left, Side.Right })
        {
            Assert.All([550.4, 573.5, 600.2], s => Assert.Equal(whole.Composite(side).At(s), stretch.Composite(side).At(s), 1e-9));
        }

        Assert.Same(whole, whole.Within(499, 701));
    }

    // Straights of these lengths, each turned left against the last.
    private static Centreline Bent(double turn, params double[] lengths)
    {
        var elements = new List<CentrelineElement>();
        var at = default(Point2);
        foreach (double length in lengths)
        {
            elements.Add(new(at, turn * elements.Count, length, 0, 0));
            at = elements[^1].At(length).Position;
        }

        return new("bent", elements);
    }

    private static Centreline Reversed(Centreline track) => new("back", [.. track.Elements.Reverse().Select(e =>
        new CentrelineElement(e.At(e.Length).Position, e.HeadingAt(e.Length) + Math.PI, e.Length, -e.EndCurvature, -e.StartCurvature))]);
}
