using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Sections;
using PlatformForge.Tests.Projects;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>What of a facing is not stated yields to the nozzle; what is stated stays as it is, and is told.</summary>
public class NozzleRoomTests
{
    /// <summary>Undersides wider than a line hang free (common practice, no source), so none is made unasked, and nothing is told; layers are half a nozzle
    /// high, or a quarter of a course of bricks of 75 mm (BS EN 771 work size with joints of 10) where that is less.</summary>
    [Theory]
    [InlineData(22.5, 0.2)]
    [InlineData(43.5, 0.2)]
    [InlineData(76.2, 0.2)]
    [InlineData(87, 0.25)]
    [InlineData(76.2, 0.25)]
    [InlineData(120, 0.2)]
    [InlineData(43.5, 0.6)]
    public void Joints_plinths_and_recesses_that_are_not_stated_print_and_nothing_is_told(double ratio, double nozzle)
    {
        var scale = new ModelScale(ratio);
        var printer = Workbench.Printer with { Nozzle = nozzle, Layer = Math.Min(nozzle / 2, 75 / ratio / 4) };

        // In the largest scale this wall is lower than the sill of an opening for cables.
        OpeningSpec[] openings = ratio < 40 ? [] : [OpeningSpec.For(scale) with { Kind = OpeningKind.Cable }];
        var facing = FacingSpec.For(scale) with { Plinth = PlinthSpec.For(scale), Openings = openings };
        var told = Told(facing, printer);
        Assert.DoesNotContain(told, f => f.Code is "PF5030" or "PF5035" or "PF5055" or "PF5052");
    }

    [Fact]
    public void What_is_stated_stays_and_is_told()
    {
        var scale = new ModelScale(76.2);
        var printer = Workbench.Printer with { Nozzle = 0.25, Layer = 0.12 };
        var facing = FacingSpec.For(scale) with { Depth = 0.3, Plinth = PlinthSpec.For(scale) with { Steps = 1 } };
        Assert.Equal(facing.Depth, facing.Printed(0.25, 1.6, 1.6).Depth);
        Assert.Equal(["PF5035", "PF5055"], Told(facing, printer).Select(f => f.Code).Where(c => c is "PF5035" or "PF5055").Order());
    }

    [Theory]
    [InlineData("0.2", "facing = {}", 0.2)]
    [InlineData("0.4", "facing = {}", 0.262)]
    [InlineData("0.2", "facing = { depth = 0.3 }", 0.3)]
    public void A_project_that_is_read_has_joints_for_its_nozzle(string nozzle, string facing, double depth)
    {
        string text = Samples.Small + facing + "\n[printer]\nbed = [220, 220]\nnozzle = " + nozzle + "\n";
        var read = Samples.Read(text);
        Assert.True(read.Succeeded, string.Join("; ", read.Findings.Select(f => f.Key + " " + f.Message)));
        Assert.Equal(depth, read.Value!.Platforms[0].Facing!.Depth, 5e-4);
    }

    private static IReadOnlyList<Finding> Told(FacingSpec facing, PrinterSpec printer)
    {
        PlatformSpec Printed(PlatformSpec s) =>
            (s with { Walls = s.Walls with { FrontThickness = 1.6, BackThickness = 1.6, EndThickness = 1.6 }, Facing = facing }).Printed(printer.Nozzle);
        var plan = Workbench.Straight(150, Side.Left, Printed);
        return SectionMaker.Make(plan, printer, new()).Findings;
    }
}
