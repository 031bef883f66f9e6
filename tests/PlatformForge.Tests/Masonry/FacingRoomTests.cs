using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Rules;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>What of a facing is not stated goes together, in every scale; what is stated stays as it is.</summary>
public class FacingRoomTests
{
    // A platform 3 ft high over the rails, on track 8 in 4 mm scale over the baseboard.
    private static (PlatformSpec Spec, PlatformSite Site) Usual(double ratio, Func<ModelScale, FacingSpec> facing)
    {
        var scale = new ModelScale(ratio);
        var spec = new PlatformSpec("down", new FaceSpec("down", Side.Left, 600, 800))
        {
            Key = "platform[0]",
            Height = scale.ToModel(915),
            Deck = new() { Thickness = 1.6, Width = scale.ToModel(4000) },
            Facing = facing(scale),
        };
        return (spec.Seated, new PlatformSite(scale, 8 * 76.2 / ratio));
    }

    [Theory]
    [InlineData(43.5)]
    [InlineData(76.2)]
    [InlineData(87.1)]
    [InlineData(120)]
    [InlineData(148)]
    public void Plinth_corbel_and_openings_find_room_unasked(double ratio)
    {
        var (spec, site) = Usual(ratio, scale => FacingSpec.For(scale) with
        {
            Plinth = PlinthSpec.For(scale),
            Corbel = CorbelSpec.For(scale),
            Openings = [.. Enum.GetValues<OpeningKind>().Select(kind => OpeningSpec.For(scale) with { Kind = kind })],
        });
        var before = new List<Finding>();
        ProfileRule.Check(spec, site, before);
        Assert.Contains(before, f => f.Code == "PF4164");

        var settled = FacingRoom.Settled(spec, site);
        var found = new List<Finding>();
        ProfileRule.Check(settled, site, found);
        OpeningRule.Check(settled, site, found);
        Assert.Empty(found);
        Assert.All(settled.Facing!.Openings, o => Assert.True(o.Height >= o.Rise && o.Sill > 0));
    }

    [Fact]
    public void What_is_stated_stays_and_is_told()
    {
        var (spec, site) = Usual(76.2, scale => FacingSpec.For(scale) with
        {
            Plinth = PlinthSpec.For(scale) with { Steps = 2 },
            Openings = [OpeningSpec.For(scale) with { Sill = 2.5, Height = 20 }],
        });
        var settled = FacingRoom.Settled(spec, site);
        Assert.Equal((2.5, 20.0, 2), (settled.Facing!.Openings[0].Sill, settled.Facing.Openings[0].Height, settled.Facing.Plinth!.Steps));
        var found = new List<Finding>();
        ProfileRule.Check(settled, site, found);
        Assert.Contains(found, f => f.Code == "PF4164");
    }

    /// <summary>Each step of the foot, lean and plinth together, is no wider than a line of a nozzle of 0.4 mm.</summary>
    [Theory]
    [InlineData(43.5)]
    [InlineData(76.2)]
    [InlineData(87.1)]
    public void A_plinth_of_a_wall_that_leans_has_steps_that_print(double ratio)
    {
        var (spec, site) = Usual(ratio, scale => FacingSpec.For(scale) with
        {
            Plinth = PlinthSpec.For(scale),
            Corbel = CorbelSpec.For(scale),
            Batter = scale.ToModel(80),
        });
        var settled = FacingRoom.Settled(spec, site);
        double Widest(PlatformSpec of)
        {
            double wall = site.RailTop + of.Height - of.Deck.Thickness;
            var zones = WallProfile.Of(of.Facing!, WallProfiles.Courses(of, site, wall), of.Facing!.Joint).Zones;
            return zones.Zip(zones.Skip(1), (low, high) => low.Out - high.Out).Max();
        }

        Assert.InRange(Widest(settled), 0.1, 0.4);
        Assert.True(Widest(settled) <= Widest(spec));
    }

    /// <summary>A coping that is not stated lies on the whole of a wall that a batter deepens.</summary>
    [Theory]
    [InlineData(CopingKind.Bricks)]
    [InlineData(CopingKind.Slabs)]
    [InlineData(CopingKind.Timber)]
    public void A_coping_that_is_not_stated_lies_on_its_wall(CopingKind kind)
    {
        var scale = new ModelScale(148);
        var coping = CopingSpec.For(scale) with { Kind = kind };
        Assert.True((coping with { Seat = 5 }).Width >= 5 && coping.Width < 5);
        Assert.Equal(0, (coping with { Seat = 5 }).Overhang, 1e-12);
        Assert.Equal(5.5, (coping with { Seat = 5, Overhang = 0.5 }).Width, 1e-12);
        Assert.Equal(2, (coping with { Seat = 5, Width = 2 }).Width);
    }

    [Theory]
    [InlineData(0.05, 0.25, "platform[0].facing.depth")]
    [InlineData(0.26, 0.06, "platform[0].facing.joint")]
    public void Relief_that_no_print_shows_is_told(double depth, double joint, string key)
    {
        var facing = new FacingSpec { Depth = depth, Joint = joint };
        var plan = Workbench.Straight(60, Side.Left, s => s with { Facing = facing });
        var told = Assert.Single(SectionMaker.Make(plan, Workbench.Printer, new()).Findings, f => f.Code == "PF5070");
        Assert.Equal((key, "0.1"), (told.Key, told.Cure!.Value));
    }

    [Fact]
    public void A_coping_too_thin_for_joints_on_its_front_is_told_with_the_thickness_that_has_them()
    {
        PlatformPlan With(double thickness) => Workbench.Straight(60, Side.Left, s => s with { Coping = new() { Thickness = thickness } });
        Assert.Contains(CopingRule.Check(With(0.7), Workbench.Printer), f => f.Code == "PF5071");
        Assert.DoesNotContain(CopingRule.Check(With(0.73), Workbench.Printer), f => f.Code == "PF5071");
    }
}
