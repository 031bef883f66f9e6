using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sets;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Verification.Poses;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>Articulated sets and coupled units: where their bodies stand, what they sweep, and the spaces between them.</summary>
[Properties(Arbitrary = [typeof(RunCases)], QuietOnSuccess = true)]
public class SetTests
{
    private const double Gap = 6, Width = 34;

    // Three bodies of 180, 190 and 170 mm; the outer ones hang over their own bogies, wheelbases all differ.
    private static readonly VehicleSet Triplet = new(
        "triplet",
        [
            Body("first", 150, 30, 32, 30.0 + 75, -72),
            Body("middle", 196, 32, 28, 95, -95),
            Body("last", 140, 28, 34, 67, -103),
        ],
        [new(BodyJointKind.SharedBogie, Gap), new(BodyJointKind.SharedBogie, Gap)]);

    private static readonly VehicleSet Pair = new(
        "pair", [Body("ahead", 186, 34, 34, 129, -129), Body("behind", 150, 30, 30, 110, -105)], [new(BodyJointKind.Coupling, 8)]);

    [Property(MaxTest = 30)]
    public void A_shared_bogie_stands_in_one_place_and_carries_both_its_bodies_at_their_pivots(RunCase run)
    {
        var track = run.Kinked();
        if (SetSolver.Place(track, Triplet, run.From + 300) is not { } poses)
        {
            return; // some kinked tracks are too sharp for it
        }

        for (int i = 0; i < 2; i++)
        {
            Near(poses[i].TrailingBogie.Origin, poses[i + 1].LeadingBogie.Origin);
            Near(poses[i].TrailingBogie.Forward, poses[i + 1].LeadingBogie.Forward);
            Near(poses[i].Body.Apply(new(-Triplet.Bodies[i].PivotCentres / 2, 0)), poses[i + 1].Body.Apply(new(Triplet.Bodies[i + 1].PivotCentres / 2, 0)));
        }
    }

    [Property(MaxTest = 20)]
    public void The_poses_that_verify_stand_the_bodies_where_the_set_stands(RunCase run)
    {
        var track = run.Smooth();
        var poses = SetSolver.Place(track, Triplet, run.From + 300)!;
        var chain = BruteSweep.Chain(track, Triplet.Bodies, run.From + 300);
        double front = run.From + 300 + (Triplet.Bodies[0].LeadingWheelbase / 2);
        for (int i = 0; i < 3; i++)
        {
            Near(chain[i].Body.Origin, poses[i].Body.Origin);
            var other = new StandingVehicle(track, Triplet.Bodies[i]).At(front)!.Value;
            Near(other.Body.Origin, poses[i].Body.Origin);
            Near(other.TrailingBogie.Origin, poses[i].TrailingBogie.Origin);
            front = track.Locate(poses[i].TrailingBogie.Apply(new(Triplet.Bodies[i].TrailingWheelbase / 2, 0))).Chainage;
        }
    }

    [Property(MaxTest = 4)]
    public void What_a_running_set_sweeps_is_what_its_bodies_sweep(RunCase run)
    {
        var track = run.Smooth();
        var envelope = EnvelopeSweeper.Sweep(new(track, run.From, run.To, [new(track, Triplet.Bodies)]) { StraightBeyondEnds = true }).Value!;
        int[] stations = [.. Enumerable.Range(0, 8).Select(i => i * (envelope.Count - 1) / 7)];
        double[] at = [.. stations.Select(i => envelope.From + (i * envelope.Spacing))];
        for (int body = 0, part = 0; body < 3; part += Triplet.Bodies[body++].Parts.Count)
        {
            var truth = BruteSweep.SweepBody(track, Triplet.Bodies, body, at, 0.25, (run.From - 60, run.To + 700));
            for (int k = 0; k < at.Length; k++)
            {
                Assert.InRange(envelope.Parts[part].Left[stations[k]] - truth[0].Left[k], -3e-4, envelope.ErrorBound + 3e-4);
                Assert.InRange(envelope.Parts[part].Right[stations[k]] - truth[0].Right[k], -3e-4, envelope.ErrorBound + 3e-4);
            }
        }
    }

    [Property(MaxTest = 20)]
    public void Coupled_bodies_keep_their_gap_and_ride_on_their_own_axles(RunCase run)
    {
        var track = run.Smooth();
        foreach (bool turned in new[] { false, true })
        {
            var poses = SetSolver.Place(track, Pair, run.From + 300, turned)!;
            Point2 rear = poses[0].Body.Apply(new(-129, 0)), front = poses[1].Body.Apply(new(110, 0)), mean = poses[0].Body.Forward + poses[1].Body.Forward;
            Assert.Equal(8, Point2.Dot(rear - front, mean) / mean.Length, 1e-8);
            foreach (var (pose, body) in poses.Zip(Pair.Bodies))
            {
                foreach (var axle in new[] { pose.LeadingBogie.Apply(new(body.LeadingWheelbase / 2, 0)),
                    pose.TrailingBogie.Apply(new(-body.TrailingWheelbase / 2, 0)) })
                {
                    Assert.Equal(0, track.Locate(axle).Offset, 1e-8);
                }
            }
        }
    }

    [Fact]
    public void A_set_stands_with_any_of_its_bodies_where_that_is_asked_either_way_round()
    {
        var track = DemoStock.PendlewickTrack();
        foreach (bool turned in new[] { false, true })
        {
            var poses = SetSolver.PlaceBody(track, Triplet, 1, 800, turned)!;
            Assert.Equal(800, poses[1].LeadingChainage, 1e-8);
            double first = track.Locate(poses[0].Body.Origin).Chainage, last = track.Locate(poses[2].Body.Origin).Chainage;
            Assert.Equal(turned, first < last);
        }
    }

    /// <summary>On a circle of radius R pivots lie at h = √(R² − p²/4); a body of pivots a turns by asin(a/2h) either side of its middle, so two bodies meet
    /// at the angle θ = asin(a/2h) + asin(b/2h), and corners a width w apart open from g to g·cos(θ/2) ± w·sin(θ/2).</summary>
    [Theory]
    [InlineData(500)]
    [InlineData(760)]
    [InlineData(2000)]
    public void On_a_circle_the_space_between_bodies_is_that_of_plain_trigonometry(double radius)
    {
        var track = DemoStock.Lay("curve", new CurveSpec(radius, Hand.Left, Angle: 3));
        Vehicle[] bodies = [Body("a", 150, 30, 30, 105, -72), Body("b", 120, 30, 30, 57, -90)];
        var set = new VehicleSet("set", bodies, [new(BodyJointKind.SharedBogie, Gap)]);
        var opening = Assert.Single(JointSurvey.Over(new(track, 1.5 * radius, (1.5 * radius) + 60, [new(track, bodies) { Sets = [set] }]), Side.Right));
        double h = Math.Sqrt((radius * radius) - (15.0 * 15)), half = (Math.Asin(75 / h) + Math.Asin(60 / h)) / 2;
        Assert.Equal((Gap * Math.Cos(half)) + (Width * Math.Sin(half)), opening.Platform.Greatest, 1e-6);
        Assert.Equal((Gap * Math.Cos(half)) - (Width * Math.Sin(half)), opening.Away.Least, 1e-6);
        Assert.Equal(opening.Away.Least, opening.Least.Least);
    }

    [Fact]
    public void Ends_that_run_into_one_another_are_told_with_a_gap_that_keeps_them_apart()
    {
        var track = DemoStock.Lay("curve", new CurveSpec(500, Hand.Left, Angle: 3));
        IReadOnlyList<JointOpening> Openings(double gap, out EnvelopeRequest request)
        {
            Vehicle[] bodies = [Body("a", 150, 30, 30, 105, -75 + (gap / 2)), Body("b", 120, 30, 30, 60 - (gap / 2), -90)];
            bodies[1] = bodies[1] with { Key = "vehicle[0].body[0]" };
            request = new(track, 750, 810, [new(track, bodies) { Sets = [new("set", bodies, [new(BodyJointKind.SharedBogie, gap)])] }]);
            return JointSurvey.Over(request, Side.Right);
        }

        // 34·sin(θ/2) = 4.59 mm with θ = asin(75/h) + asin(60/h), so a gap of 4.63 mm just keeps them apart.
        var tight = Openings(3, out var first);
        var finding = Assert.Single(JointSurvey.Findings(first, tight));
        Assert.Equal(("PF3024", "vehicle[0].body[0].gap"), (finding.Code, finding.Key));
        Assert.Contains("A gap of 4.7 mm", finding.Remedy, StringComparison.Ordinal);
        var wide = Openings(4.7, out var second);
        Assert.Empty(JointSurvey.Findings(second, wide));
        Assert.InRange(wide[0].Least.Least, 0, 0.11);
    }

    /// <summary>Bellows hang between the ends of two bodies, so the straight line between their corners is as far out as they come.</summary>
    [Property(MaxTest = 15)]
    public void Bellows_no_wider_than_the_bodies_stay_within_what_the_bodies_sweep(RunCase run)
    {
        const double Bellows = Width - 4;
        var track = run.Smooth();
        var envelope = EnvelopeSweeper.Sweep(new(track, run.From, run.To, [new(track, Pair.Bodies)]) { StraightBeyondEnds = true }).Value!;
        var (left, right) = (envelope.Composite(Side.Left), envelope.Composite(Side.Right));
        for (double u = run.From + 100; u < run.To + 500; u += 3)
        {
            var poses = SetSolver.Place(track, Pair, u)!;
            foreach (int side in new[] { 1, -1 })
            {
                Point2 a = poses[0].Body.Apply(new(-129, side * Bellows / 2)), b = poses[1].Body.Apply(new(110, side * Bellows / 2));
                foreach (double share in new[] { 0.25, 0.5, 0.75 })
                {
                    var place = track.Locate(a + ((b - a) * share));
                    if (place.Chainage >= run.From && place.Chainage <= run.To)
                    {
                        Assert.InRange(place.Offset, -right.At(place.Chainage), left.At(place.Chainage));
                    }
                }
            }
        }
    }

    private static Vehicle Body(string name, double pivots, double leading, double trailing, double front, double rear) =>
        new(name, pivots, leading, trailing, [
            VehiclePart.Box("body", PartCarrier.Body, rear, front, Width, 10, 50),
            VehiclePart.Box("frames", PartCarrier.TrailingBogie, -24, 24, 30, 2, 9)])
        {
            EitherWayRound = false,
            SetName = "set",
        };

    private static void Near(Point2 a, Point2 b) => Assert.True((a - b).Length < 1e-7, $"{a} is not {b}");
}
