using System.Globalization;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Rules;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>
/// The least that a printer shows of walls, by hand for a nozzle of 0.4 and layers of 0.2: two lines are 0.8, four layers 0.8. What is exactly as large is
/// taken, a hundredth less is not.
/// </summary>
public class PrintLimitTests
{
    private const double Joint = 0.3;

    private static readonly PlatformPlan Plain = Workbench.Straight(60);

    private static readonly FacingSpec Facing =
        FacingSpec.For(new(76.2)) with { Joint = Joint, Back = WallFinish.Plain, Ends = WallFinish.Plain };

    /// <summary>Upright or lengthwise a piece is two lines and its joint; a course of planks has a joint and what stands between two, two lines; a plank twice
    /// the length.</summary>
    [Theory]
    [InlineData("plank_width upright", 0.8 + Joint)]
    [InlineData("plank_width", 0.8 + Joint)]
    [InlineData("plank_length", 2 * (0.8 + Joint))]
    [InlineData("sleeper_width", 0.8 + Joint)]
    [InlineData("sleeper_length", 2 * (0.8 + Joint))]
    [InlineData("post_width", 0.8)]
    [InlineData("panel_height", 0.8 + Joint)]
    [InlineData("bay", 3 + 0.8 + Joint + Joint)]
    public void A_piece_of_the_least_size_is_taken(string what, double least)
    {
        FacingSpec With(double size) => what switch
        {
            "plank_width" => Facing with { Front = WallFinish.Planks, PlankWidth = size },
            "plank_length" => Facing with { Front = WallFinish.Planks, PlankLength = size },
            "sleeper_width" => Facing with { Front = WallFinish.Sleepers, SleeperWidth = size },
            "sleeper_length" => Facing with { Front = WallFinish.Sleepers, SleeperLength = size },
            "post_width" => Facing with { Front = WallFinish.Panels, PostWidth = size },
            "panel_height" => Facing with { Front = WallFinish.Panels, PanelHeight = size },
            "bay" => Facing with { Front = WallFinish.Panels, PostWidth = 3, Bay = size },
            _ => Facing with { Front = WallFinish.UprightPlanks, PlankWidth = size },
        };
        Assert.DoesNotContain(Of(With(least)), f => f.Code == "PF5036");
        var told = Assert.Single(Of(With(least - 0.01)), f => f.Code == "PF5036");
        Assert.Equal(least, double.Parse(told.Cure!.Value, CultureInfo.InvariantCulture), 1e-9);
    }

    /// <summary>A joint as wide as a closer with its joint, a quarter of a brick, leaves nothing of it: 112.5 / 2 at 1:76.2.</summary>
    [Fact]
    public void A_joint_as_wide_as_a_closer_is_refused_to_the_last_digit()
    {
        double closer = 112.5 / 2 / 76.2;
        Assert.Contains(Of(Facing with { Joint = closer }), f => f.Code == "PF5031");
        Assert.DoesNotContain(Of(Facing with { Joint = closer - 0.001 }), f => f.Code == "PF5031");
    }

    /// <summary>A header at 1:148 is 112.5 / 148 with its joint; what is left without it takes two lines of half that, and the widest nozzle sold that lays
    /// them is told.</summary>
    [Fact]
    public void The_nozzle_that_prints_headers_is_told()
    {
        var facing = FacingSpec.For(new(148)) with { Joint = 0.2 };
        var plan = Workbench.Straight(60, Side.Left, s => s with { Facing = facing });
        plan = plan with { Site = plan.Site with { Scale = new(148) } };
        var told = Assert.Single(FacingRule.Check(plan, Workbench.Printer with { Layer = 0.12 }, new()), f => f.Code == "PF5033");
        Assert.Contains("nozzle of 0.25 mm", told.Remedy, StringComparison.Ordinal); // (0.760 - 0.2) / 2 = 0.28
        Assert.DoesNotContain(FacingRule.Check(plan, Workbench.Printer with { Layer = 0.12, Nozzle = 0.25 }, new()), f => f.Code == "PF5033");
    }

    [Fact]
    public void A_pier_of_two_lines_beside_its_joints_is_taken()
    {
        double narrow = 0.8 + (2 * Facing.Depth);
        IEnumerable<Finding> With(double width, double projection) =>
            FittingPrintRule.Check(
                Faced(Facing with { Piers = PierSpec.For(new(76.2)) with { Width = width, Projection = projection } }), Workbench.Printer);
        Assert.Empty(With(narrow, 0.4));
        Assert.Equal("platform[0].facing.piers.width", Assert.Single(With(narrow - 0.01, 0.4)).Key);
        Assert.Equal("platform[0].facing.piers.projection", Assert.Single(With(narrow, 0.39)).Key);
    }

    [Fact]
    public void An_opening_of_two_lines_is_taken()
    {
        IEnumerable<Finding> With(double width) => FittingPrintRule.Check(
            Faced(Facing with { Openings = [OpeningSpec.For(new(76.2)) with { Kind = OpeningKind.Cable, Width = width, Height = 2, Depth = 0.65 }] }),
            Workbench.Printer);
        Assert.Empty(With(0.8));
        Assert.Equal(("PF5053", "platform[0].facing.opening[0].width"), Assert.Single(With(0.79)) is var told ? (told.Code, told.Key) : default);
    }

    /// <summary>A slab 12 by 8 with joints of 0.4 has (8 - 0.8 - 0.8) / 2 for a margin that leaves two lines in its middle; a line beside the joint is the
    /// least.</summary>
    [Theory]
    [InlineData(0.79, "0.8")]
    [InlineData(3.21, "3.2")]
    public void A_margin_is_told_from_joint_and_middle(double margin, string taken)
    {
        List<Finding> With(double wide) => [.. CopingRule.Check(
            Workbench.Straight(60, change: s => s with { Coping = s.Coping with { SlabLength = 12, JointWidth = 0.4, Margin = wide } }), Workbench.Printer)];
        Assert.Equal(("PF5048", taken), Assert.Single(With(margin)) is var told ? (told.Code, told.Cure!.Value) : default);
        Assert.Empty(With(double.Parse(taken, CultureInfo.InvariantCulture)));
    }

    /// <summary>A retaining wall is as thick as its oversail, what is laid on its front, and two lines behind that; what the platform's back is laid with is no
    /// matter.</summary>
    [Theory]
    [InlineData(0.01, false)]
    [InlineData(-0.01, true)]
    public void A_retaining_wall_has_two_lines_behind_what_is_laid_on_it(double more, bool isNarrow)
    {
        double thick = 0.375 + Facing.Depth + 0.8 + more;
        var plan = Workbench.Straight(100, Side.Left, s => s with
        {
            Facing = Facing,
            Back = new() { Retaining = new() { Height = 16, Thickness = thick, Oversail = 0.375, Coping = 1, Plinth = 3, Depth = 0.75, Fit = 0.125 } },
        });
        Assert.Equal(isNarrow, LineRule.Check(plan, Workbench.Printer).Any(f => f.Code == "PF5042"));
    }

    /// <summary>What is found when the walls are shared out between cuts is told with the sections: an opening so near to the platform's end is left
    /// out.</summary>
    [Fact]
    public void An_opening_that_is_left_out_is_told_with_the_sections()
    {
        var facing = Facing with { Openings = [OpeningSpec.For(new(76.2)) with { At = [201, 275] }] };
        Assert.Contains(SectionMaker.Make(Workbench.Straight(150, Side.Left, s => s with { Facing = facing }), Workbench.Printer, new()).Findings,
            f => f.Code == "PF4160");
    }

    /// <summary>Plates are refused at the joints of a trestle, and where it has none there is nothing to refuse.</summary>
    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    public void Plates_are_refused_where_a_trestle_is_cut(int cuts, bool isRefused)
    {
        var plan = Plain with { Spec = Plain.Spec with { Trestle = TrestleSpec.For(new(76.2)) } };
        Assert.Equal(isRefused, TrestlePrintRule.Check(plan, Workbench.Printer, new() { Kind = JointKind.Plate }, cuts).Any(f => f.Code == "PF5059"));
    }

    /// <summary>What has no face of its own shows what the front is made of; a wall that is left plain keeps its own paint, and so does all else.</summary>
    [Fact]
    public void A_plain_wall_keeps_its_paint()
    {
        var solid = SolidRaiser.Raise([new([new(0, 0), new(9, 0), new(9, 9), new(0, 9)], new(0), new(9), BlockAction.Add, Paint.Wall)]);
        byte[] given = [.. solid.Mesh.Paints.Select((_, i) => i % 3 == 0 ? (byte)Paint.Wall : i % 3 == 1 ? FacingRelief.OwnWall : (byte)Paint.Deck)];
        var shown = WallPaints.Shown(solid with { Mesh = solid.Mesh with { Paints = given } }, WallFinish.Stone).Mesh.Paints;
        byte stone = (byte)FacingRelief.PaintOf(WallFinish.Stone);
        Assert.NotEqual((byte)Paint.Wall, stone);
        Assert.Equal(given.Select((_, i) => i % 3 == 0 ? stone : i % 3 == 1 ? (byte)Paint.Wall : (byte)Paint.Deck), shown);
    }

    /// <summary>Boards behind their joints are held to two lines where there are any.</summary>
    [Theory]
    [InlineData(BoardedSides.None, false)]
    [InlineData(BoardedSides.Both, true)]
    public void Thin_boards_are_told_where_there_are_boards(BoardedSides boarded, bool isTold)
    {
        var plan = Plain with { Spec = Plain.Spec with { Trestle = TrestleSpec.For(new(76.2)) with { Boarded = boarded, Boards = 0.5 } } };
        Assert.Equal(isTold, TrestlePrintRule.Check(plan, Workbench.Printer, new(), 1).Any(f => f.Key.EndsWith(".boards", StringComparison.Ordinal)));
    }

    /// <summary>Two pieces of a retaining wall meet in one joint: what both stop short by and what both are trimmed by is its width. What the front is faced
    /// with is said of the whole.</summary>
    [Fact]
    public void Where_two_pieces_meet_there_is_one_joint()
    {
        var plan = Workbench.Straight(100, Side.Left, s => s with
        {
            Facing = Facing,
            Back = new() { Retaining = new() { Height = 16, Thickness = 2.5, Oversail = 0.375, Coping = 1, Plinth = 3, Depth = 0.75, Fit = 0.125 } },
        });
        var wall = PrintedFacing.OfRetaining(plan, Workbench.Printer, 0.04)!;
        Assert.Equal(Joint, 2 * (Assert.Single(wall.Finishes).Work.Laying.Stop + 0.04), 1e-12);
        Assert.Equal(Facing.Front, PrintedFacing.Of(plan, Workbench.Printer, new())!.Front);
        Assert.NotEqual(WallFinish.Plain, Facing.Front);
    }

    private static List<Finding> Of(FacingSpec facing) =>
        [.. FacingRule.Check(Workbench.Straight(60, Side.Left, s => s with { Facing = facing }), Workbench.Printer, new())];

    // A plan of which a rule looks at the figures alone.
    private static PlatformPlan Faced(FacingSpec facing) => Plain with { Spec = Plain.Spec with { Facing = facing } };
}
