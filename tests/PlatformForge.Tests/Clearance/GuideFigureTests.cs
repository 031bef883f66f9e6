using PlatformForge.Clearance;
using PlatformForge.Clearance.Sweeping;
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
