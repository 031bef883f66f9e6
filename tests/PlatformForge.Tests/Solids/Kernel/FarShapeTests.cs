using PlatformForge.Geometry;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Meshes;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>How far a solid may extend is a matter of its own size and not of where it stands on the layout.</summary>
public class FarShapeTests
{
    [Theory]
    [InlineData(20_000, 0)]
    [InlineData(0, 20_000)]
    [InlineData(-25_000, 31_000)]
    public void A_block_far_from_the_layout_s_corner_is_the_same_block(double x, double y)
    {
        var report = MeshCheck.Inspect(SolidRaiser.Raise([Block(x, y, 120, 40)]).Mesh);
        Assert.True(report.IsSound);
        Assert.Equal(120 * 40 * 5, report.Volume, 1e-3);
    }

    /// <summary>2³⁰ steps of 2⁻¹⁵ mm are 32,768 mm.</summary>
    [Theory]
    [InlineData(32_700, 10, true)]
    [InlineData(10, 32_700, true)]
    [InlineData(32_800, 10, false)]
    [InlineData(10, 32_800, false)]
    public void A_solid_may_extend_over_thirty_two_metres_and_no_more(double length, double width, bool raised)
    {
        if (raised)
        {
            Assert.Equal(length * width * 5, MeshCheck.Inspect(SolidRaiser.Raise([Block(-7, 3, length, width)]).Mesh).Volume, 1);
        }
        else
        {
            Assert.Throws<BrokenInvariantException>(() => SolidRaiser.Raise([Block(-7, 3, length, width)]));
        }
    }

    private static ColumnBlock Block(double x, double y, double length, double width) =>
        new([new(x, y), new(x + length, y), new(x + length, y + width), new(x, y + width)], new HeightPlane(0), new(5), BlockAction.Add, Paint.Wall);
}
