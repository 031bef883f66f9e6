using PlatformForge.Benchmarks;
using Xunit;
using static PlatformForge.Tests.Solids.Kernel.Shapes;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>
/// The benchmark sections against two independent general kernels (one with exact constructions), which agree on volume to 0.00001 % and genus.
/// </summary>
public class ReferenceSectionTests
{
    private const double Agreement = 1e-6;

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(2.5)]
    public void The_plain_section_has_the_volume_and_genus_that_general_kernels_give(double turn)
    {
        var (_, report) = RaiseSound([.. ReferenceSection.Blocks(brick: false, turn)]);
        Assert.Equal(ReferenceSection.PlainVolume, report.Volume, ReferenceSection.PlainVolume * Agreement);
        Assert.Equal(ReferenceSection.Genus, report.Genus);
        Assert.Equal(1, report.Components);
    }

    [Fact]
    public void The_brick_section_has_the_volume_and_genus_that_general_kernels_give()
    {
        var (_, report) = RaiseSound([.. ReferenceSection.Blocks(brick: true)]);
        Assert.Equal(ReferenceSection.BrickVolume, report.Volume, ReferenceSection.BrickVolume * Agreement);
        Assert.Equal(ReferenceSection.Genus, report.Genus);
        Assert.Equal(1, report.Components);
    }
}
