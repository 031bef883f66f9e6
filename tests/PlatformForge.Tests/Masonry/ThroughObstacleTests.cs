using System.Globalization;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>What may be behind a wall where an opening is to go right through it: each is named, with a place that is free, and there the opening is
/// made.</summary>
public class ThroughObstacleTests
{
    private static readonly ModelScale Scale = new(76.2);

    private static readonly OpeningSpec Cable = OpeningSpec.For(Scale) with { Kind = OpeningKind.Cable, IsThrough = true };

    public static TheoryData<string, double, bool, bool> Obstacles() => new()
    {
        { "the board's post", 275, true, false },
        { "the end wall", 204.5, false, false },
        { "a bend of the deck", double.NaN, false, true },
        { "another opening", 284, false, false },
    };

    [Theory]
    [MemberData(nameof(Obstacles))]
    public void What_is_in_the_way_is_named_and_the_remedy_makes_the_opening(string what, double at, bool post, bool ramps)
    {
        var spec = Cable with { IsBack = post };
        PlatformPlan Asked(double place)
        {
            // The second one is over another that goes right through at 281: one over the other, they fit the wall, but not their pads.
            var over = Cable with { Kind = OpeningKind.Weep, At = [281], Sill = 0.6, Height = 0.8, Width = 1 };
            OpeningSpec[] all = what == "another opening" ? [over, spec with { At = [place] }] : [spec with { At = [place] }];
            return Straight(
                FacingSpec.For(Scale) with { Openings = all, Ends = WallFinish.Plain },
                post ? [new SocketSpec(275, 2.4) { Name = "board's post", Along = 1.5, Across = 1.5, Depth = 5 }] : [],
                ramps);
        }

        double wish = double.IsNaN(at) ? Asked(250).Profile.StartHead : at;
        var told = PlatformPlanner.Divided(Asked(wish), [], 10);
        var finding = Assert.Single(told.Findings, f => f.Code is "PF4190" or "PF4160");
        Assert.Equal("PF4190", finding.Code);
        Assert.Contains(what, finding.Message, StringComparison.Ordinal);
        double moved = double.Parse(finding.Cure!.Value, CultureInfo.InvariantCulture);
        var cured = PlatformPlanner.Divided(Asked(moved), [], 10);
        Assert.DoesNotContain(cured.Findings, f => f.Code is "PF4190" or "PF4160");
        Assert.Equal(told.Value!.WallOpenings.Count + 1, cured.Value!.WallOpenings.Count);
        Assert.All(Workbench.Made(Asked(moved), Workbench.Printer, new()).Sections, SoundSection.Check);
    }

    [Fact]
    public void Posts_of_a_fence_keep_openings_off_and_each_is_told_with_a_place_that_is_free()
    {
        OpeningSpec back = Cable with { IsBack = true };
        PlatformPlan Asked(double place) => Straight(
            FacingSpec.For(Scale) with { Openings = [back with { At = [place] }], Ends = WallFinish.Plain }, [new FenceSpec { Pitch = 25 }], false);
        var told = Enumerable.Range(0, 25).Select(i => 240.0 + i).Select(at => PlatformPlanner.Divided(Asked(at), [], 10))
            .Select(o => o.Findings.SingleOrDefault(f => f.Code == "PF4190")).OfType<Finding>().ToArray();
        Assert.InRange(told.Length, 5, 20);
        Assert.All(told, f =>
        {
            double moved = double.Parse(f.Cure!.Value, CultureInfo.InvariantCulture);
            Assert.DoesNotContain(PlatformPlanner.Divided(Asked(moved), [], 10).Findings, g => g.Code == "PF4190");
        });
    }

    [Fact]
    public void Ribs_step_aside_and_are_never_told()
    {
        foreach (double at in new[] { 225.0, 250, 262, 275 })
        {
            var plan = Straight(FacingSpec.For(Scale) with { Openings = [Cable with { At = [at] }], Ends = WallFinish.Plain }, [], false, 25);
            var made = PlatformPlanner.Divided(plan, [], 10);
            Assert.DoesNotContain(made.Findings, f => f.Code is "PF4190" or "PF4160");
            var opening = Assert.Single(made.Value!.WallOpenings);
            Assert.NotEmpty(made.Value.Ribs);
            Assert.DoesNotContain(made.Value.Ribs, r => r.From < opening.Chainage + (Cable.Width / 2) && r.To > opening.Chainage - (Cable.Width / 2)
                && r.Near.At(opening.Chainage) < plan.WallBack.At(opening.Chainage) + 1);
        }
    }

    private static PlatformPlan Straight(FacingSpec facing, IReadOnlyList<FeatureSpec> features, bool ramps, double ribs = 0) =>
        Workbench.Straight(150, Side.Left, s => s with
        {
            Facing = facing,
            Features = [.. features],
            StartRamp = ramps ? new(Gradient: 8) : null,
            Ribs = s.Ribs with { Pitch = ribs },
        });
}
