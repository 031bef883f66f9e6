using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Sections;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>White lines beside slabs with tooled margins: which of both is to be seen on the mesh.</summary>
public class MarginLineTests
{
    private const double Width = 8, Margin = 1.4, Deep = 0.2;

    private static readonly CopingSpec Tooled =
        new() { Width = Width, Thickness = 1.6, Overhang = 1, SlabLength = 25, Margin = Margin, MarginDepth = Deep, JointDepth = 0.3 };

    [Theory]
    [InlineData(LineForm.Groove, 43.5)]
    [InlineData(LineForm.Groove, 76.2)]
    [InlineData(LineForm.Inlay, 76.2)]
    [InlineData(LineForm.Strip, 76.2)]
    [InlineData(LineForm.Paint, 76.2)]
    public void All_four_lines_of_a_margin_are_in_the_mesh_beside_a_white_line_whose_inset_is_not_stated(LineForm form, double ratio)
    {
        var set = Made(WhiteLineSpec.For(new ModelScale(ratio)) with { Form = form });
        var line = set.Plan.Spec.WhiteLine!;
        Assert.Equal(0.2 + 0.4 + Margin, line.Inset, 1e-9);

        // Across the middle of a slab from the edge: the deck, the margin's line, the deck, the white line's own cut or paint, the deck, the other line.
        double edge = set.Plan.CopingFront.Reach[0], middle = Middle(set);
        double[] grooves = [.. Steps(set, middle).Where(p => p.Deep > 0.1).Select(p => Math.Round(p.At - edge, 2))];
        Assert.Contains(grooves, g => Math.Abs(g - Margin) < 0.1);
        Assert.Contains(grooves, g => Math.Abs(g - (Width - Margin)) < 0.1);
        Assert.Equal(form != LineForm.Paint, grooves.Any(g => Math.Abs(g - line.Inset - (line.Width / 2)) < 0.1));
        Assert.DoesNotContain(grooves, g => g > Margin + 0.25 && g < line.Inset - 0.05);
        Assert.DoesNotContain(Told(line), f => f.Code == "PF5072");
    }

    [Fact]
    public void A_stated_inset_that_swallows_a_margins_line_is_told_with_one_that_does_not()
    {
        var line = new WhiteLineSpec { Form = LineForm.Groove, Inset = 0.8, Width = 1 };
        var told = Assert.Single(Told(line), f => f.Code == "PF5072");
        Assert.Equal("platform[0].line.inset", told.Cure!.Key);
        double inset = double.Parse(told.Cure.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.DoesNotContain(Told(line with { Inset = inset }), f => f.Code == "PF5072");
        Assert.DoesNotContain(Told(line with { Form = LineForm.Paint }), f => f.Code == "PF5072");
    }

    [Theory]
    [InlineData(3.0, 0.8)]
    [InlineData(0.0, 0.8)]
    public void A_line_that_a_margin_leaves_room_for_stays_where_it_is_used_to(double margin, double inset) =>
        Assert.Equal(inset, (Spec(new() { Form = LineForm.Groove, Width = 1 }) with { Coping = Tooled with { Margin = margin } }).Seated.WhiteLine!.Inset,
            1e-9);

    private static PlatformSpec Spec(WhiteLineSpec line) => Plan(line).Spec;

    private static PlatformPlan Plan(WhiteLineSpec line) =>
        Workbench.Straight(150, change: s => (s with { Coping = Tooled, WhiteLine = line, Deck = s.Deck with { Thickness = 1.6 } }).Seated);

    private static SectionSet Made(WhiteLineSpec line) => Workbench.Made(Plan(line), Workbench.Printer, new());

    private static IReadOnlyList<Finding> Told(WhiteLineSpec line) => SectionMaker.Make(Plan(line), Workbench.Printer, new()).Findings;

    private static double Middle(SectionSet set) => (set.Plan.CopingJoints[2] + set.Plan.CopingJoints[3]) / 2;

    // How far the walking surface lies under the coping's top, every 0.05 mm across the coping: what a ray from above meets first.
    private static IEnumerable<(double At, double Deep)> Steps(SectionSet set, double chainage)
    {
        var gauge = new Gauge(set.Sections.Single(s => s.From < chainage && s.To > chainage));
        double edge = set.Plan.CopingFront.Reach[0], top = gauge.Heights(new(chainage + 0.0137, edge + (Width / 2)))[0];
        for (double y = edge + 0.525; y < edge + Width; y += 0.05)
        {
            yield return (y, top - gauge.Heights(new(chainage + 0.0137, y))[0]);
        }
    }
}
