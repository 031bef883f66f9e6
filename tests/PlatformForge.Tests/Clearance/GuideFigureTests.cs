using PlatformForge.Clearance;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>What guides a vehicle and how far it leans, by hand.</summary>
public class GuideFigureTests
{
    /// <summary>A bogie is guided by its own axles, which have the wheels' play and nothing of the pivot's.</summary>
    [Fact]
    public void A_bogie_is_off_by_the_play_of_its_wheels_and_a_body_by_that_and_the_pivots()
    {
        var coach = DemoStock.Coach("coach", 200, 140, 30, 24);
        var play = new RunningPlay(0.4, 0.3);
        Assert.Equal(new(24, new(0.4, 0.4, 0, 0.4), new(0.4, 0.4, 0, 0.4)), GuidedPoints.Of(coach, PartCarrier.LeadingBogie, play));
        Assert.Equal(new(140, new(0.4, 0.4, 0.3, 0.7), new(0.4, 0.4, 0.3, 0.7)), GuidedPoints.Of(coach, PartCarrier.Body, play));
    }

    /// <summary>
    /// A place 10 mm on the far side of the middle, as high as the roll centre, comes nearest on the arc about it: where it has sunk by half a
    /// millimetre, into the lower end of the window, it is √(10² − 0.5²) away. Leaning farther, what is left of it in the window is farther off.
    /// </summary>
    [Fact]
    public void What_leans_into_a_window_from_above_is_on_the_circle_about_the_roll_centre() =>
        Assert.Equal(-Math.Sqrt((10 * 10) - (0.5 * 0.5)), new LeanRange(0.1, 0, 10).Leftmost(-10, (0, 20), (9.5, 10.1))!.Value, 1e-9);

    /// <summary>The same with a cant of 0.05 radians: at its end the roll centre has gone 10·sin 0.05 to the left and down to 10·cos 0.05.</summary>
    [Fact]
    public void Cant_carries_the_roll_centre_along() =>
        Assert.Equal((10 * Math.Sin(0.05)) - Math.Sqrt((10 * 10) - (0.5 * 0.5)),
            new LeanRange(0.12, 0.05, 10).Leftmost(-10, (0, 20), ((10 * Math.Cos(0.05)) - 0.5, (10 * Math.Cos(0.05)) + 0.1))!.Value, 1e-9);

    /// <summary>An axle at one end and a bogie at the other, with play in the pivots only: the end on the bogie can be off.</summary>
    [Theory]
    [InlineData(0, 24)]
    [InlineData(24, 0)]
    public void A_vehicle_of_which_one_end_is_loose_is_loose(double leading, double trailing)
    {
        var vehicle = new Vehicle("v", 140, leading, trailing, [VehiclePart.Box("body", PartCarrier.Body, -100, 100, 30, 4, 50)]);
        var points = GuidedPoints.Of(vehicle, PartCarrier.Body, new(0, 0.3));
        Assert.True(points.IsLoose);
        Assert.Equal((leading > 0 ? 0.3 : 0, trailing > 0 ? 0.3 : 0), (points.Leading.Most, points.Trailing.Most));
        Assert.False(GuidedPoints.Of(vehicle, PartCarrier.Body, RunningPlay.None).IsLoose);
    }

    /// <summary>
    /// Pivots on a chord of 90 mm turn by 45 mm over the radius against the track, bogies or not. A hinge 30 mm from the middle of axles 10 mm either side of
    /// it lies (30² − 10²) / 2 over the radius off the track, which over hinges 100 mm apart is 4 mm more.
    /// </summary>
    [Fact]
    public void How_far_a_vehicle_turns_against_the_track_is_half_its_pivots_over_the_radius()
    {
        Assert.Equal((45, 15), (Form(DemoStock.Coach("coach", 140, 90, 30)).Slew, Form(DemoStock.Coach("coach", 140, 90, 30)).HalfWidth));
        Assert.Equal(45, Form(DemoStock.Coach("coach", 140, 90, 30, 24)).Slew, 1e-12);
        Assert.Equal(54, Form(DemoStock.Coach("hung", 140, 100, 30, 20) with { LeadingPivotAhead = -30, TrailingPivotAhead = 30 }).Slew, 1e-12);

        static SweptForm Form(Vehicle vehicle) =>
            Assert.Single(SweptForm.WaysRound(vehicle with { EitherWayRound = false }, SweptShape.Of(vehicle, RunningPlay.None, null), RunningPlay.None,
                halts: false));
    }

    /// <summary>Before the kink of 60 degrees turns the body by 15 it is 45 off the leading pivot's track, and beyond 45 so much off the trailing pivot's:
    /// between these it can stand.</summary>
    [Theory]
    [InlineData(10, false)]
    [InlineData(45, true)]
    [InlineData(80, false)]
    public void A_body_more_than_45_degrees_off_the_track_under_either_pivot_cannot_stand(double beyond, bool stands)
    {
        var ride = new Centreline("bent", [new(default, 0, 200, 0, 0), new(new(200, 0), Math.PI / 3, 200, 0, 0)]);
        Assert.Equal(stands, PoseSolver.TryPlace(ride, DemoStock.Coach("coach", 140, 90, 30), 200 + beyond, out _));
    }

    /// <summary>On straight track 900 mm long the front of a body of 60 and 80 mm about pivots of 100 stands 50 + 60 mm on when its last axle is at the start,
    /// its rear 50 + 80 mm back when its first is at the end.</summary>
    [Fact]
    public void What_is_open_at_the_ends_of_a_platform_is_told_from_end_to_end()
    {
        var track = DemoStock.Lay("up", new StraightSpec(900));
        var vehicle = new Vehicle("v", 100, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -80, 60, 30, 1, 9)]) { EitherWayRound = false };
        string[] messages = [.. VehicleFit.Beyond(new(track, [vehicle]), track, 20, 880).Select(f => f.Message)];
        Assert.Equal(2, messages.Length);
        Assert.Contains("from chainage 20 to 110 ", messages[0], StringComparison.Ordinal);
        Assert.Contains("from chainage 770 to 880 ", messages[1], StringComparison.Ordinal);
        messages = [.. VehicleFit.Beyond(new(track, [vehicle]), track, 800, 880).Select(f => f.Message)];
        Assert.Contains("from chainage 800 to 880 ", Assert.Single(messages), StringComparison.Ordinal);
    }

    /// <summary>Trucks hung 5 mm ahead of both their axles do not look the same turned round; one ahead and one behind do.</summary>
    [Theory]
    [InlineData(5, 5, 2)]
    [InlineData(5, -5, 1)]
    public void Pivots_off_the_middle_look_alike_when_they_are_off_to_opposite_ends(double leading, double trailing, int ways)
    {
        var track = DemoStock.Lay("up", new StraightSpec(3000));
        var vehicle = DemoStock.Coach("coach", 120, 90, 30, 20) with { LeadingPivotAhead = leading, TrailingPivotAhead = trailing };
        Assert.Equal(ways, DoubtPoses.Of(new(track, 1000, 1200, [new(track, [vehicle])]), track, vehicle, 10).Count);
    }
}
