using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Rules;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>What a printer cannot make of a facing is told, with what it can.</summary>
public class FacingRuleTests
{
    [Fact]
    public void Four_mm_scale_is_printed_whole_with_a_nozzle_of_four_tenths() => Assert.Empty(Of(FacingSpec.For(new(76.2))));

    [Theory]
    [InlineData(22.5)]
    [InlineData(43.5)]
    [InlineData(76.2)]
    [InlineData(87)]
    public void Nothing_is_said_of_what_is_laid_unasked_in_any_scale_that_shows_whole_bricks(double scale) =>
        Assert.Empty(Of(FacingSpec.For(new(scale)), scale: scale, change: s => s with { Height = (20 * 76.2 / scale) - 8 })); // as high in full size

    [Fact]
    public void Bricks_of_seven_mm_scale_hang_nowhere_free()
    {
        // 20 mm at 1:43.5 would be 0.46, more than a line of 0.4; under a ramp that lies on its slope a wall leans, and 0.4 would be too much too.
        Assert.Equal(0.35, FacingSpec.For(new(43.5)).Depth);
        var plan = Plan(FacingSpec.For(new(43.5)) with { Back = WallFinish.Plain }, 43.5, s => s with { StartRamp = new(Gradient: 8) });
        var made = SectionMaker.Make(plan, Workbench.Printer, new());
        Assert.DoesNotContain(made.Findings, f => f.Code is "PF5035" or "PF6007");
        Assert.All(made.Value!.Sections, s => Assert.InRange(s.Overhangs.Unsupported, 0, 0.2));
    }

    [Fact]
    public void Joints_deeper_than_the_wall_allows_are_refused_with_a_wall_that_is_taken()
    {
        var faults = Of(FacingSpec.For(new(76.2)) with { Depth = 1.2 }).Where(f => f.Code != "PF5035").ToList();
        Assert.Equal(3, faults.Count);
        Assert.All(faults, f => Assert.Equal(("PF5030", Severity.Error), (f.Code, f.Severity)));
        Assert.All(faults, f => Assert.Equal(("platform[0].facing.depth", "0.4"), (f.Cure!.Key, f.Cure.Value))); // a line: deeper ones would hang free
        Assert.All(faults, f => Assert.Contains("2 mm thick", f.Remedy, StringComparison.Ordinal));
        Assert.Empty(Of(FacingSpec.For(new(76.2)) with { Depth = 0.4 }));
        Assert.Equal(
            ["PF5035"],
            Of(FacingSpec.For(new(76.2)) with { Depth = 1.2 }, change: s => s with
            {
                Walls = new()
                {
                    FrontThickness = 2,
                    BackThickness = 2,
                    EndThickness = 2
                }
            }).Select(f => f.Code));
    }

    /// <summary>Pieces at a corner are mitred by their depth; what is offered can be made, all round a ramped platform.</summary>
    [Theory]
    [InlineData(WallFinish.Brick)]
    [InlineData(WallFinish.Stone)]
    [InlineData(WallFinish.Rubble)]
    [InlineData(WallFinish.UprightPlanks)]
    [InlineData(WallFinish.Panels)]
    public void Joints_deeper_than_a_piece_is_long_are_refused_with_a_depth_that_can_be_made(WallFinish finish)
    {
        var facing = FacingSpec.For(new(76.2)) with { Front = finish };
        static PlatformSpec Thick(PlatformSpec spec) => spec with
        {
            StartRamp = new(Gradient: 8),
            Walls = new() { FrontThickness = 6, BackThickness = 6, EndThickness = 6 }
        };
        var fault = Assert.Single(Of(facing with { Depth = 5 }, change: Thick), f => f.Severity == Severity.Error);
        Assert.Equal(("PF5065", FaultKind.DesignRule), (fault.Code, fault.Kind));
        double offered = double.Parse(fault.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        var made = SectionMaker.Make(Plan(facing with { Depth = offered }, 76.2, Thick), Workbench.Printer, new());
        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error);
        Assert.All(made.Value!.Sections, s => Assert.True(PlatformForge.Tests.Meshes.MeshCheck.Inspect(s.Solid.Mesh).IsSound));
    }

    /// <summary>Whatever figures a printer takes, of posts as wide as their bays and of joints as wide as the wall is high: they can be made.</summary>
    [Theory]
    [InlineData(23, 24.3, 0.25, 4)]
    [InlineData(30, 31.3, 0.25, 4)]
    [InlineData(2, 36.8, 17, 17.8)]
    public void Wide_posts_and_joints_that_are_taken_can_be_made(double post, double bay, double joint, double panel)
    {
        var facing = FacingSpec.For(new(76.2)) with { Front = WallFinish.Panels, PostWidth = post, Bay = bay, Joint = joint, PanelHeight = panel };
        Assert.DoesNotContain(Of(facing), f => f.Code == "PF5036");
        var made = SectionMaker.Make(Plan(facing, 76.2, s => s with { StartRamp = new(Gradient: 8) }), Workbench.Printer, new());
        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error);
        Assert.All(made.Value!.Sections, s => Assert.True(PlatformForge.Tests.Meshes.MeshCheck.Inspect(s.Solid.Mesh).IsSound));
    }

    [Fact]
    public void Joints_as_wide_as_a_closer_are_refused()
    {
        var fault = Assert.Single(Of(FacingSpec.For(new(76.2)) with { Joint = 0.8 }));
        Assert.Equal("PF5031", fault.Code);
        double offered = double.Parse(fault.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.DoesNotContain(Of(FacingSpec.For(new(76.2)) with { Joint = offered }), f => f.Severity == Severity.Error);
    }

    [Fact]
    public void Courses_of_less_than_four_layers_are_refused_with_a_layer_that_is_taken()
    {
        // 75 mm at 1:148 are 0.507 mm, two and a half layers of 0.2.
        var fault = Assert.Single(Of(FacingSpec.For(new(148)), scale: 148));
        Assert.Equal(("PF5032", Severity.Error, "0.12"), (fault.Code, fault.Severity, fault.Cure!.Value));
        Assert.All(Of(FacingSpec.For(new(148)), Workbench.Printer with { Layer = 0.12 }, 148), f => Assert.Equal("PF5033", f.Code));
    }

    [Fact]
    public void Where_headers_are_shorter_than_two_lines_bed_joints_alone_are_laid()
    {
        var printer = Workbench.Printer with { Layer = 0.12 };
        var plan = Plan(FacingSpec.For(new(148)), 148, s => s);
        var made = SectionMaker.Make(plan, printer, new());
        Assert.Contains(made.Findings, f => f.Code == "PF5033");
        Assert.All(made.Value!.Sections.SelectMany(s => s.Faced), wall =>
        {
            // One long field a course: round all corners where there are no stops.
            Assert.True(wall.Regions.Count < 1.1 * wall.Wall.Top.Max(p => p.Y) / (75.0 / 148));
            Assert.NotEmpty(wall.Regions);
        });
    }

    [Fact]
    public void Full_relief_is_laid_from_1_to_87_up() => Assert.DoesNotContain(Of(FacingSpec.For(new(87)), scale: 87), f => f.Code is "PF5032" or "PF5033");

    [Fact]
    public void Printed_upright_courses_that_are_no_whole_layers_are_told_with_a_layer_that_makes_them_so()
    {
        var note = Assert.Single(Of(FacingSpec.For(new(76.2)), sections: new SectionSpec { Pose = PrintPose.Upright }), f => f.Code == "PF5034");
        Assert.Contains("0.205", note.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain(
            Of(FacingSpec.For(new(76.2)) with { Gauge = BrickGauge.Imperial }, sections: new SectionSpec { Pose = PrintPose.Upright },
                change: s => s with { Height = s.Height - 0.45 }), f => // 18 courses of 1 mm
                f.Code == "PF5034");
    }

    /// <summary>75 mm to a course (BS EN 771 and joints of 10) at 1:22.5: 18.45 mm over the ground are five, drawn out by 18.45 / 16.67, eleven in a hundred.
    /// Six take 20 mm.</summary>
    [Fact]
    public void Courses_of_a_low_wall_that_are_drawn_far_are_told_with_heights_that_have_whole_ones_at_gauge()
    {
        const double course = 75 / 22.5, deck = 1.5, foot = 0.05;
        var told = Assert.Single(Of(FacingSpec.For(new(22.5)), scale: 22.5), f => f.Code == "PF5067");
        Assert.Equal(("platform[0].height", "platform[0].height"), (told.Key, told.Cure!.Key));
        Assert.Contains("11 %", told.Message, StringComparison.Ordinal);
        double rails = Plan(FacingSpec.For(new(22.5)), 22.5, s => s).Site.RailTop,
            cure = double.Parse(told.Cure.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(cure - ((6 * course) + foot + deck - rails), 0, 0.01);
        double lower = Math.Ceiling(((5 * course) + foot + deck - rails) * 100) / 100;
        Assert.Contains(FormattableString.Invariant($"At {lower:0.##} mm"), told.Remedy, StringComparison.Ordinal);
        foreach (var (height, count) in new[] { (cure, 6), (lower, 5) })
        {
            Assert.DoesNotContain(Of(FacingSpec.For(new(22.5)), scale: 22.5, change: s => s with { Height = height }), f => f.Code == "PF5067");
            double high = rails + height - deck - foot;
            Assert.Equal(count, Coursing.Count(course, high));
            Assert.Equal(course, Coursing.Even(course, high), 0.01 / count);
        }
    }

    [Fact]
    public void A_low_retaining_wall_is_told_by_its_own_height()
    {
        var told = Assert.Single(Of(FacingSpec.For(new(76.2)), change: s => s with { Back = new() { Retaining = new() { Height = 4.9 } } }),
            f => f.Code == "PF5067");
        Assert.Equal("platform[0].back.retaining.height", told.Cure!.Key);
        double cure = double.Parse(told.Cure.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.DoesNotContain(Of(FacingSpec.For(new(76.2)), change: s => s with { Back = new() { Retaining = new() { Height = cure } } }),
            f => f.Code == "PF5067");
    }

    // The rule alone: what sections are made of a facing is looked at elsewhere.
    private static List<Finding> Of(
        FacingSpec facing, PrinterSpec? printer = null, double scale = 76.2, SectionSpec? sections = null, Func<PlatformSpec, PlatformSpec>? change = null) =>
        [.. FacingRule.Check(Plan(facing, scale, change ?? (s => s)), printer ?? Workbench.Printer, sections ?? new())];

    private static PlatformPlan Plan(FacingSpec facing, double scale, Func<PlatformSpec, PlatformSpec> change)
    {
        var plan = Workbench.Straight(150, Side.Left, s => change(s with { Facing = facing }));
        return plan with { Site = plan.Site with { Scale = new(scale) } };
    }
}
