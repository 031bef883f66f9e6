using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Charts;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>Laws of the swept envelope on random tracks and vehicles, against a sweeper that shares nothing with the product's.</summary>
[Properties(Arbitrary = [typeof(RunCases)], QuietOnSuccess = true)]
public class SweepProperties
{
    // Fine steps of the brute sweeper, mm. Its own error is a versine of the step over the sharpest curve with the longest lever: 0.2²·0.03/8 mm.
    private const double FineStep = 0.2, BruteError = 1.5e-4;

    [SimulatedProperty(16)]
    public void Reach_is_never_below_the_truth_nor_above_it_by_more_than_the_bound(RunCase run) => AgainstBrute(run, run.Smooth());

    [SimulatedProperty(12)]
    public void The_same_holds_on_kinked_track(RunCase run) => AgainstBrute(run, run.Kinked());

    [Property(MaxTest = 20)]
    public void A_wider_vehicle_never_shrinks_the_envelope(RunCase run)
    {
        var track = run.Smooth();
        var wider = run.Vehicle
            with
        { Parts = [.. run.Vehicle.Parts.Select(p => p with { Outline = [.. p.Outline.Select(q => new Point2(q.X, q.Y * 1.1))] })] };
        NowhereLess(Sweep(run, track, wider), Sweep(run, track, run.Vehicle));
    }

    [Property(MaxTest = 20)]
    public void A_longer_overhang_never_shrinks_the_envelope(RunCase run)
    {
        var track = run.Smooth();
        var body = run.Vehicle.Parts[0];
        var longer = body with { Outline = [.. body.Outline.Select(q => new Point2(q.X + Math.CopySign(5, q.X), q.Y))] };
        NowhereLess(Sweep(run, track, run.Vehicle with { Parts = [longer] }), Sweep(run, track, run.Vehicle with { Parts = [body] }));
    }

    [Property(MaxTest = 20)]
    public void A_tighter_curve_never_shrinks_the_envelope(RunCase run)
    {
        double radius = run.From; // any figure from 280 to 620 will do
        NowhereLess(OnCurve(run.Vehicle, radius * 0.9), OnCurve(run.Vehicle, radius));
    }

    [Property(MaxTest = 15)]
    public void Adding_a_vehicle_never_shrinks_the_composite_and_a_fleet_is_the_greatest_of_its_vehicles(RunCase run)
    {
        var track = run.Smooth();
        var van = DemoStock.Coach("van", 84, 40, 32.5);
        var both = EnvelopeSweeper.Sweep(Request(run, track, run.Vehicle, van)).Value!;
        var alone = EnvelopeSweeper.Sweep(Request(run, track, run.Vehicle)).Value!;
        NowhereLess(both, alone);
        foreach (var side in new[] { Side.Left, Side.Right })
        {
            var line = both.Composite(side);
            Assert.Equal(line.Reach, Enumerable.Range(0, both.Count).Select(i => both.Parts.Max(p => (side == Side.Left ? p.Left : p.Right)[i])));
        }
    }

    [Property(MaxTest = 15)]
    public void Mirrored_track_and_vehicle_have_the_mirrored_envelope(RunCase run)
    {
        var mirrored = run.Elements.Select(e => e switch
        {
            CurveSpec c => c with { Hand = (Hand)(-(int)c.Hand) },
            TransitionSpec t => t with { Hand = (Hand)(-(int)t.Hand) },
            _ => e,
        }).ToArray();
        var vehicle = run.Vehicle
            with
        { Parts = [.. run.Vehicle.Parts.Select(p => p with { Outline = [.. p.Outline.Reverse().Select(q => new Point2(q.X, -q.Y))] })] };
        Same(Sweep(run, run.Smooth(), run.Vehicle), Sweep(run, RunCase.Lay(mirrored, []), vehicle), Side.Right);
    }

    [Property(MaxTest = 15)]
    public void Turning_and_moving_the_track_changes_nothing(RunCase run)
    {
        var moved = TrackLayer.Lay(new("moved", new(1234.5, -987), 1.1, run.Elements)).Value!;
        Same(Sweep(run, run.Smooth(), run.Vehicle), Sweep(run, moved, run.Vehicle), Side.Left);
    }

    [Property(MaxTest = 15)]
    public void Running_the_other_way_gives_the_same_envelope_seen_from_the_other_end(RunCase run)
    {
        var track = run.Smooth();
        var back = Reversed(track);
        var there = Sweep(run, track, run.Vehicle);
        var again = EnvelopeSweeper.Sweep(Request(run, back, run.Vehicle) with { From = track.Length - run.To, To = track.Length - run.From }).Value!;
        for (int i = 0; i <= 50; i++)
        {
            double s = run.From + (i * RunCase.Stretch / 50);
            double bound = there.ErrorBound + Looseness(there);
            Assert.Equal(there.Composite(Side.Left).At(s), again.Composite(Side.Right).At(track.Length - s), bound);
            Assert.Equal(there.Composite(Side.Right).At(s), again.Composite(Side.Left).At(track.Length - s), bound);
        }
    }

    [Fact]
    public void A_hundred_times_finer_sweep_stays_within_the_bound_and_under_the_answer()
    {
        var track = DemoStock.Lay("s", new StraightSpec(300), new CurveSpec(400, Hand.Left, Length: 90), new TransitionSpec(40, 500, Hand.Right),
            new CurveSpec(500, Hand.Right, Length: 60), new StraightSpec(300));
        var vehicle = DemoStock.Quillhaven[0] with { EitherWayRound = false }; // both ends alike
        var envelope = EnvelopeSweeper.Sweep(new(track, 370, 440, [new(track, [vehicle])]) { StraightBeyondEnds = true }).Value!;
        int[] stations = [.. Enumerable.Range(0, 11).Select(i => i * (envelope.Count - 1) / 10)];
        var truth = BruteSweep.Sweep(track, track, vehicle, [.. stations.Select(i => envelope.From + (i * envelope.Spacing))], 0.03)[0];
        for (int k = 0; k < stations.Length; k++)
        {
            Assert.InRange(envelope.Parts[0].Left[stations[k]], truth.Left[k], truth.Left[k] + envelope.ErrorBound);
            Assert.InRange(envelope.Parts[0].Right[stations[k]], truth.Right[k], truth.Right[k] + envelope.ErrorBound);
        }

        Assert.InRange(envelope.ErrorBound, 0.001, 0.01);
    }

    internal static void AgainstBrute(RunCase run, Centreline ride)
    {
        var chart = KinkRounder.Chart(ride).Line;
        var outcome = EnvelopeSweeper.Sweep(new(chart, run.From, run.To, [new(ride, [run.Vehicle])]) { StraightBeyondEnds = true });
        var envelope = outcome.Value!;
        int[] stations = [.. Enumerable.Range(0, 15).Select(i => i * (envelope.Count - 1) / 14)];
        double[] at = [.. stations.Select(i => envelope.From + (i * envelope.Spacing)),
            .. Enumerable.Range(0, 14).Select(i => run.From + ((i + 0.37) * RunCase.Stretch / 14))];
        var truth = BruteSweep.Sweep(ride, chart, run.Vehicle, at, FineStep);
        for (int part = 0; part < run.Vehicle.Parts.Count; part++)
        {
            foreach (var side in new[] { Side.Left, Side.Right })
            {
                double[] own = side == Side.Left ? envelope.Parts[part].Left : envelope.Parts[part].Right,
                    brute = side == Side.Left ? truth[part].Left : truth[part].Right;
                var line = new ReachLine(side, envelope.From, envelope.Spacing, own, []);
                for (int k = 0; k < at.Length; k++)
                {
                    double over = line.At(at[k]) - brute[k];
                    Assert.True(over >= -BruteError, $"{run.Vehicle.Parts[part].Name} {side}: {-over} mm below the truth at {at[k]} ({run})");
                    Assert.True(k >= stations.Length || over <= envelope.ErrorBound + BruteError,
                        $"{run.Vehicle.Parts[part].Name} {side}: {over} mm above the truth at {at[k]} ({run})");
                }
            }
        }
    }

    // What the straight join between stations may add where two traces cross at an angle.
    private static double Looseness(SweptEnvelope envelope) => 0.3 * envelope.Spacing / 4;

    private static EnvelopeRequest Request(RunCase run, Centreline track, params Vehicle[] vehicles) =>
        new(track, run.From, run.To, [new(track, vehicles)]) { StraightBeyondEnds = true, Spacing = 0.5 };

    private static SweptEnvelope Sweep(RunCase run, Centreline track, Vehicle vehicle) => EnvelopeSweeper.Sweep(Request(run, track, vehicle)).Value!;

    private static SweptEnvelope OnCurve(Vehicle vehicle, double radius)
    {
        var track = DemoStock.Lay("curve", new CurveSpec(radius, Hand.Left, Angle: 6));
        return EnvelopeSweeper.Sweep(new(track, 2.5 * radius, (2.5 * radius) + 50, [new(track, [vehicle])]) { StraightBeyondEnds = true }).Value!;
    }

    // The bound of each sweep counts once: the greater envelope may be too great, the less one is never too small.
    private static void NowhereLess(SweptEnvelope greater, SweptEnvelope less)
    {
        foreach (var side in new[] { Side.Left, Side.Right })
        {
            var (a, b) = (greater.Composite(side), less.Composite(side));
            for (int i = 0; i <= 50; i++)
            {
                double share = i / 50.0;
                double x = a.At(a.From + (share * (a.To - a.From))), y = b.At(b.From + (share * (b.To - b.From)));
                Assert.True(x >= y - less.ErrorBound - Looseness(less), $"{side} at {share}: {x} < {y}");
            }
        }
    }

    private static void Same(SweptEnvelope a, SweptEnvelope b, Side leftOfB)
    {
        var right = leftOfB == Side.Left ? Side.Right : Side.Left;
        foreach (var (one, other) in new[] { (a.Composite(Side.Left), b.Composite(leftOfB)), (a.Composite(Side.Right), b.Composite(right)) })
        {
            Assert.Equal(one.Count, other.Count);
            Assert.All(Enumerable.Range(0, one.Count), i => Assert.Equal(one.Reach[i], other.Reach[i], 1e-6));
        }
    }

    private static Centreline Reversed(Centreline track) => new("back", [.. track.Elements.Reverse().Select(e =>
        new CentrelineElement(e.At(e.Length).Position, e.HeadingAt(e.Length) + Math.PI, e.Length, -e.EndCurvature, -e.StartCurvature))]);
}
