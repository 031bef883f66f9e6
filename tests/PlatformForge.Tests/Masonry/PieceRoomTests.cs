using System.Globalization;
using PlatformForge.Masonry;
using PlatformForge.Sections;
using PlatformForge.Sections.Rules;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>What is larger than its wall is refused, and what is offered covers the wall, by the areas of what is laid.</summary>
public class PieceRoomTests
{
    private const double Length = 60;

    private static readonly FacingSpec Facing = FacingSpec.For(new(76.2)) with { Back = WallFinish.Plain, Ends = WallFinish.Plain };

    [Theory]
    [InlineData("rubble_size", 90)]
    [InlineData("rubble_size", 25)]
    [InlineData("stone_course", 40)]
    [InlineData("stone_course", 16)]
    [InlineData("plank_width", 22)]
    [InlineData("sleeper_width", 22)]
    [InlineData("panel_height", 22)]
    [InlineData("stone_length", 90)]
    [InlineData("plank_length", 90)]
    [InlineData("sleeper_length", 90)]
    [InlineData("bay", 90)]
    [InlineData("plank_width upright", 90)]
    public void Pieces_larger_than_their_wall_are_refused_with_a_figure_that_covers_it(string what, double size)
    {
        var fault = Assert.Single(Check(With(what, size)), f => f.Code is "PF5079" or "PF5081");
        Assert.Equal((Severity.Error, FaultKind.DesignRule, "platform[0].facing." + what.Split(' ')[0]), (fault.Severity, fault.Kind, fault.Key));
        double offered = double.Parse(fault.Cure!.Value, CultureInfo.InvariantCulture);
        Assert.InRange(offered, 1, size);
        var plan = Plan(With(what, offered));
        Assert.DoesNotContain(FacingRule.Check(plan, Workbench.Printer, new()), f => f.Severity == Severity.Error);

        // Pieces and the joints round them: seven tenths of the wall are pieces even of small stones, all of large ones.
        var made = SectionMaker.Make(plan, Workbench.Printer, new());
        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error);
        var laid = made.Value!.Sections.SelectMany(s => s.Faced).Where(w => w.Regions.Count > 0).ToList();
        double covered = laid.SelectMany(w => w.Regions).Sum(r => Area(r.Outline));
        Assert.InRange(covered / (Length * 18.45), 0.7, 1);
    }

    [Fact]
    public void Sizes_that_are_laid_unasked_are_taken_on_a_usual_wall() =>
        Assert.All(Enum.GetValues<WallFinish>(), f => Assert.DoesNotContain(Check(Facing with { Front = f }), x => x.Code is "PF5079" or "PF5080" or "PF5081"));

    /// <summary>Stones, planks and panels of 1:43.5 before walls of 3.5 mm: their courses are made as low as the wall is and cover it.</summary>
    [Theory]
    [InlineData(WallFinish.Stone)]
    [InlineData(WallFinish.Rubble)]
    [InlineData(WallFinish.Planks)]
    [InlineData(WallFinish.Sleepers)]
    [InlineData(WallFinish.Panels)]
    public void Courses_that_are_not_stated_are_no_higher_than_their_wall(WallFinish finish)
    {
        var facing = FacingSpec.For(new(43.5)) with { Front = finish, Back = WallFinish.Plain, Ends = WallFinish.Plain };
        var plan = Low(facing, 5);
        Assert.DoesNotContain(FacingRule.Check(plan, Workbench.Printer, new()), f => f.Severity == Severity.Error);
        var made = SectionMaker.Make(plan, Workbench.Printer, new());
        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error);
        var laid = made.Value!.Sections.SelectMany(s => s.Faced).Where(w => w.Regions.Count > 0).ToList();
        Assert.InRange(laid.SelectMany(w => w.Regions).Sum(r => Area(r.Outline)) / (2 * Length * 3.45), 0.7, 1);

        // The same figure stated stays, and is told.
        double stone = facing.StoneCourse, rubble = facing.RubbleSize, plank = facing.PlankWidth, sleeper = facing.SleeperWidth, panel = facing.PanelHeight;
        var stated = facing with { StoneCourse = stone, RubbleSize = rubble, PlankWidth = plank, SleeperWidth = sleeper, PanelHeight = panel };
        Assert.Equal("PF5079", Assert.Single(FacingRule.Check(Low(stated, 5), Workbench.Printer, new()), f => f.Severity == Severity.Error).Code);
    }

    [Fact]
    public void A_wall_that_has_room_for_nothing_that_prints_is_told_so_once()
    {
        var told = Assert.Single(FacingRule.Check(Low(Facing with { Front = WallFinish.Rubble }, 2.9), Workbench.Printer, new()),
            f => f.Severity == Severity.Error);
        Assert.Equal(("PF5079", "platform[0].facing"), (told.Code, told.Cure!.Key));
    }

    [Fact]
    public void A_length_of_stone_that_is_not_stated_follows_a_higher_course() =>
        Assert.Equal((12.0, 450 / 76.2), ((Facing with { StoneCourse = 6 }).StoneLength, (Facing with { StoneCourse = 2 }).StoneLength));

    private static PlatformForge.Platforms.Plans.PlatformPlan Low(FacingSpec facing, double height) =>
        Workbench.Straight(2 * Length, Side.Left, s => s with { Height = height, Facing = facing }, railTop: 0);

    [Fact]
    public void Stones_that_stand_on_end_are_told_with_a_length_that_is_not()
    {
        var told = Assert.Single(Check(Facing with { Front = WallFinish.Stone, StoneCourse = 6, StoneLength = 2 }), f => f.Code == "PF5080");
        Assert.Equal((Severity.Warning, "6"), (told.Severity, told.Cure!.Value));
        Assert.DoesNotContain(Check(Facing with { Front = WallFinish.Stone, StoneCourse = 6, StoneLength = 6 }), f => f.Code == "PF5080");
    }

    private static FacingSpec With(string what, double size) => what switch
    {
        "rubble_size" => Facing with { Front = WallFinish.Rubble, RubbleSize = size },
        "stone_course" => Facing with { Front = WallFinish.Stone, StoneCourse = size, StoneLength = 20 },
        "stone_length" => Facing with { Front = WallFinish.Stone, StoneLength = size },
        "plank_width" => Facing with { Front = WallFinish.Planks, PlankWidth = size },
        "plank_length" => Facing with { Front = WallFinish.Planks, PlankLength = size },
        "sleeper_width" => Facing with { Front = WallFinish.Sleepers, SleeperWidth = size },
        "sleeper_length" => Facing with { Front = WallFinish.Sleepers, SleeperLength = size },
        "panel_height" => Facing with { Front = WallFinish.Panels, PanelHeight = size },
        "bay" => Facing with { Front = WallFinish.Panels, Bay = size },
        _ => Facing with { Front = WallFinish.UprightPlanks, PlankWidth = size },
    };

    // mm², of corners that run counter-clockwise.
    private static double Area(PlatformForge.Geometry.Point2[] ring) =>
        ring.Select((p, i) => PlatformForge.Geometry.Point2.Cross(p, ring[(i + 1) % ring.Length])).Sum() / 2;

    private static PlatformForge.Platforms.Plans.PlatformPlan Plan(FacingSpec facing) => Workbench.Straight(Length, Side.Left, s => s with { Facing = facing });

    private static IEnumerable<Finding> Check(FacingSpec facing) => FacingRule.Check(Plan(facing), Workbench.Printer, new());
}
