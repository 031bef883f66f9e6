using PlatformForge.Clearance.Vehicles;
using PlatformForge.Verification.Poses;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>In how many ways a vehicle stands off the track's middle, and which vehicle has one way alone.</summary>
public class PlayWaysTests
{
    private static readonly VehiclePart Body = VehiclePart.Box("body", PartCarrier.Body, -110, 112, 34, 5, 45);
    private static readonly VehiclePart Frames = VehiclePart.Box("frames", PartCarrier.LeadingBogie, -20, 20, 30, 1, 8);

    [Fact]
    public void A_vehicle_stands_one_way_alone_where_nothing_but_its_body_is_there_and_nothing_has_play()
    {
        bool IsAlone(RunningPlay play, params VehiclePart[] parts) => PoseRun.IsAllOf(new("coach", 160, 30, 30, parts), play);
        Assert.True(IsAlone(new(0), Body));
        Assert.True(IsAlone(new(0), Body, Body));
        Assert.False(IsAlone(new(0), Body, Frames));
        Assert.False(IsAlone(new(0), Frames));
        Assert.False(IsAlone(new(0)));
        Assert.False(IsAlone(new(0.1), Body));
        Assert.False(IsAlone(new(0, 0.1), Body));
    }

    /// <summary>Each end is pressed to either side by itself: four ways, and one where nothing gives.</summary>
    [Theory]
    [InlineData(0, 0, 1)]
    [InlineData(0.2, 0, 4)]
    [InlineData(0, 0.2, 4)]
    [InlineData(0.2, 0.1, 4)]
    public void Each_end_is_pressed_to_either_side(double wheelset, double pivot, int ways)
    {
        var off = AxlesOff.Ways(new("coach", 160, 30, 30, [Body]), new(wheelset, pivot));
        Assert.Equal(ways, off.Count);
        Assert.Equal(ways, off.Distinct().Count());
        Assert.All(off, o => Assert.Equal((wheelset, wheelset, pivot), (Math.Abs(o.Lead.Front), Math.Abs(o.Trail.Rear), Math.Abs(o.Lead.Pivot))));

        // Wheelsets in the body itself have no pivot between them and it.
        Assert.Equal(wheelset > 0 ? 4 : 1, AxlesOff.Ways(new("wagon", 60, 0, 0, [Body]), new(wheelset, pivot)).Count);
    }
}
