using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Rules;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Widths of lines and kerbs that are not stated print and hold what goes through them, in every scale; those that are stated stay.</summary>
public class LineRoomTests
{
    // 3 in, and two lines of a nozzle of 0.4 mm with the air of 0.1 mm on either side of a strip.
    [Theory]
    [InlineData(43.5, LineForm.Strip, 1.752)]
    [InlineData(87, LineForm.Paint, 0.876)]
    [InlineData(87, LineForm.Strip, 1)]
    [InlineData(87, LineForm.Inlay, 0.876)]
    [InlineData(101.6, LineForm.Inlay, 0.8)]
    [InlineData(220, LineForm.Strip, 1)]
    [InlineData(220, LineForm.Groove, 0.346)]
    public void A_line_is_as_wide_as_prints_where_no_width_is_stated(double ratio, LineForm form, double width)
    {
        var line = WhiteLineSpec.For(new ModelScale(ratio)) with { Form = form };
        Assert.Equal(width, line.Width, 0.001);
        Assert.Equal(0.5, (line with { Width = 0.5 }).Width);
        var plan = Workbench.Straight(96, change: s => s with { WhiteLine = line });
        Assert.DoesNotContain(LineRule.Check(plan, Workbench.Printer), f => f.Code == "PF5042");
    }

    [Theory]
    [InlineData(76.2, 5)]
    [InlineData(148, 3)]
    [InlineData(220, 3)]
    public void A_kerb_takes_the_posts_that_stand_on_it(double ratio, double width)
    {
        var scale = new ModelScale(ratio);
        PlatformPlan With(KerbSpec kerb, FenceSpec fence) =>
            Workbench.Straight(150, Side.Left, s => (s with { Back = new() { Kerb = kerb }, Features = [fence] }).Seated);
        var plan = With(KerbSpec.For(scale), FenceSpec.For(scale));
        Assert.Equal(width, plan.Spec.Back.Kerb!.Width, 0.01);
        Assert.DoesNotContain(LineRule.Check(plan, Workbench.Printer), f => f.Severity == Severity.Error);

        // Two lines of a nozzle of 0.4 mm before the holes.
        double holes = plan.Features[0].Openings.Min(o => o.Middle.Reach - (o.Across / 2));
        var line = Assert.Single(plan.Body.Lines, l => l.Made.Name == LineMake.Kerb);
        Assert.True(holes - line.Near.At(line.From) - line.Made.Fit >= 0.8 - 1e-9);
    }

    /// <summary>One finding for all posts of a fence, with a width that is taken.</summary>
    [Fact]
    public void A_kerb_too_narrow_for_its_posts_is_told_once_with_the_width_that_holds_them()
    {
        Finding[] Told(double width) =>
            [.. LineRule.Check(Workbench.Straight(150, Side.Left,
                s => s with { Back = new() { Kerb = new() { Width = width } }, Features = [new FenceSpec()] }), Workbench.Printer)
            .Where(f => f.Code == "PF5041")];
        var told = Assert.Single(Told(2.6));
        Assert.Equal(("platform[0].back.kerb.width", "3"), (told.Cure!.Key, told.Cure.Value));
        Assert.Contains("stand in its way", told.Message, StringComparison.Ordinal);
        Assert.Empty(Told(3));
        Assert.Single(Told(2.99));
    }
}
