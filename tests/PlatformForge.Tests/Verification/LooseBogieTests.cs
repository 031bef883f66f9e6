using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Tests.Clearance.Motion;
using PlatformForge.Verification.Poses;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>A bogie's frames, off the track's middle by themselves, lie on the line between the bogie's axles and about its pivot.</summary>
public class LooseBogieTests
{
    private const double Front = 31, Rear = -22, Half = 16.5, Wheelbase = 30, Ahead = 3, Close = 1e-6;

    // So little play that the poses are those of no play.
    private static readonly RunningPlay Little = new(1e-9);

    [Theory]
    [InlineData(PartCarrier.LeadingBogie, 0)]
    [InlineData(PartCarrier.TrailingBogie, 0)]
    [InlineData(PartCarrier.LeadingBogie, Ahead)]
    [InlineData(PartCarrier.TrailingBogie, Ahead)]
    public void Frames_lie_on_the_chord_of_their_own_axles(PartCarrier carrier, double ahead)
    {
        var ride = Pieces.Curve(1200, 500);
        VehiclePart[] parts = [VehiclePart.Box("body", PartCarrier.Body, -110, 112, 34, 5, 45),
            VehiclePart.Box("frames", carrier, Rear, Front, 2 * Half, 1, 8)];
        var coach = new Vehicle("coach", 160, Wheelbase, Wheelbase, parts) { LeadingPivotAhead = ahead, TrailingPivotAhead = ahead };
        var runs = PoseRun.Loose(new(ride, [coach]), coach, Little, backwards: false, 400, 700)!.Where(r => r.Vehicle.Parts[0].Name == "frames").ToArray();
        Assert.All(runs, run =>
        {
            Assert.False(run.Rolls);
            for (int i = 0; i < run.Fronts.Length; i += 17)
            {
                Point2 first = ride.At(run.Fronts[i]).At(0), second = Behind(ride, run.Fronts[i]);
                var along = (first - second) * (1 / Wheelbase);
                var pivot = ((first + second) * 0.5) + (along * ahead);
                var frame = run.Poses[i].Of(run.Vehicle.Parts[0].Carrier);
                Point2[] expected = [pivot + (along * Rear) + (along.Left * -Half), pivot + (along * Front) + (along.Left * -Half),
                    pivot + (along * Front) + (along.Left * Half), pivot + (along * Rear) + (along.Left * Half)];
                Point2[] found = [.. run.Vehicle.Parts[0].Outline.Select(frame.Apply)];
                Assert.All(expected, e => Assert.Contains(found, f => (f - e).Length < Close));
            }
        });
    }

    /// <summary>Where each of a coach's carriers stands in it: ends at 112 and −110 from its middle, axles at 92 and 62, −68 and −98, all by hand.</summary>
    [Fact]
    public void Each_carrier_knows_what_of_the_vehicle_is_before_and_behind_its_foremost_axle()
    {
        VehiclePart[] parts = [VehiclePart.Box("body", PartCarrier.Body, -110, 112, 34, 5, 45), .. new[] { PartCarrier.LeadingBogie, PartCarrier.TrailingBogie }
            .Select(c => VehiclePart.Box("frames", c, Rear, Front, 2 * Half, 1, 8))];
        var coach = new Vehicle("coach", 160, Wheelbase, Wheelbase, parts) { LeadingPivotAhead = Ahead, TrailingPivotAhead = Ahead };
        (double Ahead, double Behind, double Front, double Rear)[] told = [.. LooseCarrier.Of(coach).Select(c => (c.Ahead, c.Behind, c.Front, c.Rear))];
        Assert.Equal([(0, 190, 20, 202), (0, 190, 20, 202), (160, 30, 180, 42)], told);
    }

    // A trailing bogie's frames that reach down to a platform's end where the vehicle halts at buffers: held once as if they lay about the bogie's last axle.
    [Fact]
    public void Frames_that_halt_beside_a_platforms_end_are_held_where_they_are()
    {
        var folder = DesignFolder.Of(RandomDesign.AtHalt(26));
        Assert.True(folder.IsClear, $"{folder.Verdict?.Tightest}");
        Assert.NotNull(folder.Verdict);
    }

    // Of two axles on the line, the one a wheelbase behind the other.
    private static Point2 Behind(PlatformForge.Track.Centreline ride, double front)
    {
        double near = front - (0.9 * Wheelbase), far = front - (1.1 * Wheelbase);
        for (int i = 0; i < 60; i++)
        {
            double middle = (near + far) / 2;
            (near, far) = (ride.At(front).At(0) - ride.At(middle).At(0)).Length > Wheelbase ? (near, middle) : (middle, far);
        }

        return ride.At((near + far) / 2).At(0);
    }
}
