using PlatformForge.Solids;
using PlatformForge.Units;
using Xunit;
using static PlatformForge.Tests.Solids.Kernel.Shapes;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>Blocks that meet but for the rounding of doubles are one solid, wherever on the plan's grid they meet: half way between its points too.</summary>
public class GridBorderTests
{
    private const double Half = 10 + (Tolerances.GridStep / 2), Noise = 1e-9;

    /// <summary>The first of them ends a millionth of a micrometre before the middle between two grid points, the other begins as far behind it.</summary>
    [Fact]
    public void Blocks_side_by_side_along_the_solid() => One(Box(0, 0, Half - Noise, 5, 0, 3), Box(Half + Noise, 0, 20, 5, 0, 3));

    [Fact]
    public void Blocks_side_by_side_across_the_solid() => One(Box(0, 0, 40, Half - Noise, 0, 3), Box(0, Half + Noise, 40, 20, 0, 3));

    [Fact]
    public void Blocks_that_meet_at_a_corner_among_four() => One(
        Box(0, 0, Half - Noise, Half - Noise, 0, 3),
        Box(Half + Noise, 0, 30, Half + Noise, 0, 3),
        Box(0, Half + Noise, Half + Noise, 20, 0, 3),
        Box(Half - Noise, Half - Noise, 30, 20, 0, 3));

    private static void One(params ColumnBlock[] blocks)
    {
        var (solid, report) = RaiseSound(blocks);
        Assert.Equal((1, 0), (report.Components, report.Genus));
        Assert.Equal(blocks.Max(b => b.Outline.Max(p => p.X)) * blocks.Max(b => b.Outline.Max(p => p.Y)) * 3, report.Volume, 0.02); // half a step of its sides

        // Nothing is a step wide: corners are millimetres apart.
        var places = solid.Mesh.Vertices;
        Assert.All(places, v => Assert.DoesNotContain(places, w => w != v && (w - v).Length < 1));
    }
}
