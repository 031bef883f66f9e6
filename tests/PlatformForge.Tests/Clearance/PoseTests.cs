using FsCheck.Xunit;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Clearance;

[Properties(Arbitrary = [typeof(RunCases)], QuietOnSuccess = true)]
public class PoseTests
{
    [Property(MaxTest = 30)]
    public void Axles_stand_on_the_centreline_and_all_distances_are_exact(RunCase run)
    {
        foreach (var track in new[] { run.Smooth(), run.Kinked() })
        {
            for (double u = 200; u < track.Length; u += 37)
            {
                Assert.True(PoseSolver.TryPlace(track, run.Vehicle, u, out var pose));
                Assert.Equal(run.Vehicle.PivotCentres, (pose.LeadingBogie.Origin - pose.TrailingBogie.Origin).Length, 1e-9);
                Assert.Equal(0, ((pose.LeadingBogie.Origin + pose.TrailingBogie.Origin) * 0.5 - pose.Body.Origin).Length, 1e-9);
                Assert.Equal(1, pose.Body.Forward.Length, 1e-12);
                OnTrack(track, pose.LeadingBogie, run.Vehicle.LeadingWheelbase, u);
                OnTrack(track, pose.TrailingBogie, run.Vehicle.TrailingWheelbase, u - run.Vehicle.PivotCentres);
            }
        }
    }

    [Fact]
    public void Turned_round_the_trailing_end_leads()
    {
        var track = DemoStock.PendlewickTrack();
        var vehicle = new Vehicle("v", 100, 20, 0, [VehiclePart.Box("body", PartCarrier.Body, -70, 60, 30, 1, 2)]);
        Assert.True(PoseSolver.TryPlaceTurned(track, vehicle, 600, out var pose));
        Assert.Equal(0, (pose.TrailingBogie.Origin - track.At(600).Position).Length, 1e-9);
        Assert.True(Point2.Dot(pose.Body.Forward, track.At(550).Tangent) < -0.99);
        Assert.Equal(pose.Body.Forward.X, (pose.LeadingBogie.Origin.X - pose.TrailingBogie.Origin.X) / 100, 1e-9);
    }

    [Fact]
    public void A_curve_too_tight_for_the_pivots_is_refused_at_exactly_an_eighth_of_a_turn()
    {
        bool Stands(double pivots)
        {
            var track = DemoStock.Lay("curve", new CurveSpec(100, Hand.Right, Angle: 6));
            return PoseSolver.TryPlace(track, new("v", pivots, 0, 0, []), 400, out _);
        }

        Assert.True(Stands(141.4));
        Assert.False(Stands(141.5));
        Assert.False(Stands(250));
    }

    private static void OnTrack(Centreline track, CarrierPose bogie, double wheelbase, double guess)
    {
        foreach (double x in new[] { -wheelbase / 2, wheelbase / 2 })
        {
            // The nearest point of a kinked track may be the kink itself, which square feet do not find: a scan does.
            var axle = bogie.Apply(new(x, 0));
            double foot = Math.Abs(track.Locate(axle, guess + x).Offset);
            Assert.True(foot < 1e-8 || Enumerable.Range(-200, 401).Min(i => (track.At(guess + x + (i * 0.2)).Position - axle).Length) < 0.11, $"{foot}");
        }
    }
}
