using PlatformForge.Geometry;
using PlatformForge.Geometry.Overlays;
using Xunit;

namespace PlatformForge.Tests.Overlays;

public class PlanOverlayTests
{
    private static readonly Point2[] Low = [new(0, 0), new(4, 0), new(4, 4), new(0, 4)], High = [new(2, 2), new(6, 2), new(6, 6), new(2, 6)];

    [Fact]
    public void Union_difference_and_intersection_of_two_squares_share_out_their_area()
    {
        Assert.Equal(28, Assert.Single(PlanOverlay.Union(Low, High)).Area);
        Assert.Equal(12, Assert.Single(PlanOverlay.Difference([Low], [High])).Area);
        Assert.Equal(4, Assert.Single(PlanOverlay.Intersection([Low], [High])).Area);
    }

    [Fact]
    public void Cells_of_two_squares_are_three_and_cover_their_union() =>
        Assert.Equal([4.0, 12, 12], PlanOverlay.Cells([[.. Low, Low[0]], [.. High, High[0]]]).Select(c => c.Area).Order());

    [Fact]
    public void A_hole_runs_clockwise_and_its_area_does_not_count()
    {
        var region = Assert.Single(PlanOverlay.Difference([Low], [[new(1, 1), new(3, 1), new(3, 3), new(1, 3)]]));
        Assert.Equal(12, region.Area);
        Assert.Equal(-4, Area(Assert.Single(region.Holes)));
        Assert.Equal(16, Area(region.Outline));
    }

    [Fact]
    public void What_has_nothing_in_common_has_no_regions() => Assert.Empty(PlanOverlay.Intersection([Low], [[new(8, 8), new(9, 8), new(9, 9)]]));

    private static double Area(Point2[] ring) => 0.5 * ring.Select((p, i) => Point2.Cross(p, ring[(i + 1) % ring.Length])).Sum();
}
