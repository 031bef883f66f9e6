using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Verification;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>From where to where a vehicle comes as near as at its nearest: beside straight track, along all that stands as near to it.</summary>
public class StretchTests
{
    [Fact]
    public void Beside_straight_track_it_is_all_of_an_even_edge()
    {
        var (from, to) = Stretch(Pieces.Coach(), Bar(500, 700, 20));
        Assert.Equal(500, from, 4.0);
        Assert.Equal(700, to, 4.0);
    }

    /// <summary>Places are as near as one another within 0.02 mm.</summary>
    [Theory]
    [InlineData(0.01, 700)]
    [InlineData(0.03, 600)]
    public void It_ends_where_the_edge_steps_back_by_more_than_two_hundredths(double step, double end)
    {
        var (from, to) = Stretch(Pieces.Coach(), Bar(500, 600, 20), Bar(600, 700, 20 + step));
        Assert.Equal(500, from, 4.0);
        Assert.Equal(end, to, 4.0);
    }

    /// <summary>Posts 15 mm apart are one row for a step of 4 mm and four misses; 30 mm apart each stands alone.</summary>
    [Theory]
    [InlineData(15, 8)]
    [InlineData(30, 1)]
    public void Posts_that_stand_close_are_one_row(double pitch, int together)
    {
        var trolley = new Vehicle("trolley", 30, 0, 0, [VehiclePart.Box("buffer", PartCarrier.Body, -2.1, 2.1, 34, 2, 40)]);
        var (from, to) = Stretch(trolley, [.. Enumerable.Range(0, 8).Select(i => Bar(500 + (pitch * i), 500.1 + (pitch * i), 20))]);
        Assert.Equal((together - 1) * pitch, to - from, 0.2);
    }

    private static Mesh Bar(double from, double to, double near) => Pieces.Bar(Pieces.Straight(1200), from, to, near, 60, 0, 20);

    private static (double From, double To) Stretch(Vehicle vehicle, params Mesh[] bars) =>
        SectionsVerifier.Verify([.. bars.Select(b => Pieces.Section(b))], Pieces.Facts(Pieces.Straight(1200), vehicle)).Closest!.Stretch;
}
