using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Cuts;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Joints;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>What keeps a cut from a place, by hand.</summary>
public class CutRuleTests
{
    /// <summary>Where joints are kept off too, a cut stays as far as its joint is deep: 0.1 of trim, half a dowel of 12 less that, 0.5 of allowance and a wall
    /// of 0.8 make 7.3.</summary>
    [Theory]
    [InlineData(KeptOff.Cuts | KeptOff.Joints, 2, 7.25, false)]
    [InlineData(KeptOff.Cuts | KeptOff.Joints, 2, 7.35, true)]
    [InlineData(KeptOff.Cuts, 0.5, 0.7, true)]
    [InlineData(KeptOff.Cuts, 0.5, 0.4, false)]
    [InlineData(KeptOff.Lettering, 2, 0, true)]
    public void A_cut_keeps_its_distance(KeptOff by, double clearance, double distance, bool isTaken)
    {
        var plan = Workbench.Straight(300) with
        {
            Features = [new("box", "box") { Keepouts = [new("box", "box", 300, 310, 20, 40) { By = by }] }],
            CutCandidates = [new(310 + distance, CutRank.Joint)],
        };
        var chosen = new CutChooser(new FacetedPlan(plan), Workbench.Printer, new() { CutClearance = clearance }).Choose();
        Assert.Equal(isTaken, chosen.Value is not null);
    }

    /// <summary>Ten millimetres of level deck between two ramps hold one joint of 7.3, and not one at either end: the platform is cut at one of its
    /// heads.</summary>
    [Fact]
    public void A_level_deck_too_short_for_two_joints_is_cut_off_at_one_end()
    {
        var plan = Workbench.Straight(310, change: s => s with { StartRamp = new(Length: 150), EndRamp = new(Length: 150) }) with
        {
            CutCandidates = [new(350, CutRank.RampHead), new(360, CutRank.RampHead)],
        };
        Assert.Equal(3, new CutChooser(new FacetedPlan(plan), Workbench.Printer, new()).Choose().Value!.Length);
    }

    [Fact]
    public void A_ramp_s_head_that_is_no_place_for_a_cut_is_told_with_what_is_in_the_way()
    {
        var plan = Workbench.Straight(150, change: s => s with { StartRamp = new(Length: 60) }) with { CutCandidates = [new(300, CutRank.Joint)] };
        static (string Words, Units.Cure? Cure) Told(PlatformPlan plan) => new HeadCuts(new FacetedPlan(plan), Workbench.Printer, new()).For(200, 350);
        Assert.Contains("no place for a cut is there", Told(plan).Words, StringComparison.Ordinal);
        var blocked = plan with { Features = [new("lamp", "lamp") { Keepouts = [new("lamp", "lamp", 258, 266, 20, 40)] }] };
        Assert.Contains("the lamp at 262 mm is in the way: move it", Told(blocked).Words, StringComparison.Ordinal);
        var free = plan with { CutCandidates = [new(260, CutRank.RampHead)] };
        Assert.Equal("[260]", Told(free).Cure!.Value);
    }

    /// <summary>Without dowels an end wall alone stands behind a cut, however thin.</summary>
    [Fact]
    public void A_plain_joint_is_as_deep_as_its_trim_and_its_wall()
    {
        JointSpec thin = new() { EndWall = 0.5 };
        Assert.Equal(0.6, JointRoom.Depth(thin, Workbench.Printer, dowels: false), 1e-12);
        Assert.Equal(0.6, JointRoom.Depth(thin with { Kind = JointKind.None }, Workbench.Printer, dowels: true), 1e-12);
        Assert.Equal(7.3, JointRoom.Depth(thin, Workbench.Printer, dowels: true), 1e-12);
    }

    /// <summary>A wish that is kept is no part of what is told where the bed is too small.</summary>
    [Fact]
    public void A_longest_section_that_is_kept_is_not_told()
    {
        var plan = Workbench.Straight(900, change: s => s with { Deck = s.Deck with { Width = 250 }, Coping = s.Coping with { SlabLength = 100 } });
        var outcome = new CutChooser(new FacetedPlan(plan), Workbench.Printer, new() { LongestSection = 150 }).Choose();
        Assert.Equal(["PF6001"], outcome.Findings.Select(f => f.Code));
    }

    /// <summary>
    /// By hand, 20 mm of clear width: bores at 0.28 and 0.82 of it are 10.8 apart, and the outer one has 3.6 to either side of it before the back. A mouth of
    /// 0.4 and two lines of 0.8 on both sides, 0.2 of fit and 1 of play are taken off: 7.2 between two bores, 3.6 where no wall stands behind.
    /// </summary>
    [Theory]
    [InlineData(true, 7.2)]
    [InlineData(false, 3.6)]
    public void Where_no_wall_stands_behind_a_bore_ends_before_the_back(bool isWalled, double largest)
    {
        JointPlace place = new(300, new(1, 0), new(0, 1), new(300, 25.6), new(300, 36.4), 20, 40, 20) { Deck = 1.5, IsWalled = isWalled };
        Assert.Empty(JointRule.Check(place, new() { DowelDiameter = largest - 0.01 }, Workbench.Printer));
        var told = Assert.Single(JointRule.Check(place, new() { DowelDiameter = largest + 0.01 }, Workbench.Printer));
        Assert.Equal(FormattableString.Invariant($"{largest}"), told.Cure!.Value);
    }

    /// <summary>
    /// On a trestle bores hang as near under the deck as their bosses have room: half of 1.95, a mouth of 0.4 and 0.8 of wall. Round either mouth stands a
    /// collar, to both sides as wide as bore, mouth and wall, the slotted one by its millimetre of play more.
    /// </summary>
    [Fact]
    public void On_a_trestle_bores_hang_under_the_deck_in_collars()
    {
        var chart = new FacetedPlan(Workbench.Straight(400, change: s => s with { Trestle = TrestleSpec.For(new(76.2)) }));
        JointSpec joint = new();
        var place = JointPlace.At(chart, 400, joint);
        Assert.Equal(place.Headroom - (1.95 / 2) - 0.4 - 0.8, place.Height, 1e-9);
        Assert.Equal(place.Headroom / 2, JointPlace.At(chart, 400, joint with { DowelDiameter = 17 }).Height, 1e-9); // so large a one lies midway all the same
        double half = (1.95 / 2) + 0.8 + 0.4;
        var wide = new JointBlocks(chart, place, joint, 0.8, atStart: true, dowels: true).Added().Select(b => b.Outline.Max(p => p.Y) - b.Outline.Min(p => p.Y))
            .ToList();
        Assert.Contains(wide, w => Math.Abs(w - (2 * half)) < 1e-6);
        Assert.Contains(wide, w => Math.Abs(w - (2 * half) - 1) < 1e-6);
    }

    /// <summary>What the kernel is given are rings that run counter-clockwise, at both sides of a cut and on both sides of the track.</summary>
    [Theory]
    [InlineData(Side.Left, true)]
    [InlineData(Side.Left, false)]
    [InlineData(Side.Right, true)]
    [InlineData(Side.Right, false)]
    public void Blocks_of_a_joint_run_counter_clockwise(Side side, bool atStart)
    {
        var chart = new FacetedPlan(Workbench.Straight(400, side));
        var blocks = new JointBlocks(chart, JointPlace.At(chart, 400, new()), new(), 0.8, atStart, dowels: true);
        Assert.All([.. blocks.Added(), .. blocks.Removed(), .. blocks.Relief(true, true)], b => Assert.True(ConvexRing.Area(b.Outline) > 0));
    }
}
