using PlatformForge.Geometry;
using Xunit;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>What the kernel's oracle stands on.</summary>
public class PlanCellsTests
{
    private static readonly Point2[] Low = [new(0, 0), new(4, 0), new(4, 4), new(0, 4), new(0, 0)],
        High = [new(2, 2), new(6, 2), new(6, 6), new(2, 6), new(2, 2)];

    [Fact]
    public void Cells_of_two_squares_are_three_and_cover_their_union() => Assert.Equal([4.0, 12, 12], PlanCells.Of([Low, High]).Select(c => c.Area).Order());

    [Fact]
    public void A_ring_within_another_takes_its_area_from_it() =>
        Assert.Equal([4.0, 12], PlanCells.Of([Low, [new(1, 1), new(3, 1), new(3, 3), new(1, 3), new(1, 1)]]).Select(c => c.Area).Order());

    [Fact]
    public void A_line_that_ends_within_a_cell_parts_nothing() => Assert.Equal([16.0], PlanCells.Of([Low, [new(0, 0), new(2, 2)]]).Select(c => c.Area));
}
