using FsCheck.Xunit;
using PlatformForge.Platforms;
using Xunit;

namespace PlatformForge.Tests.Platforms;

public class FenceTests
{
    [Property(MaxTest = 15)]
    public void Every_run_has_a_post_at_both_ends_and_even_panels_along_the_fence_itself(int seed)
    {
        var random = new Random(seed);
        var request = Bench.Request(seed, EdgeStyle.Fitted);
        var face = request.Spec.Face;
        double length = face.To - face.From, gap = face.From + (length * (0.3 + (random.NextDouble() * 0.3))), pitch = 15 + (random.NextDouble() * 30);
        request = request with { Spec = request.Spec with { Fence = new() { Pitch = pitch, Gaps = [new(gap, gap + 40)] } } };
        var plan = Bench.Plan(request);
        double[] posts = [.. plan.PostHoles.Select(h => h.Chainage)];
        Assert.Equal(face.From + 4, posts[0], 1e-9);
        Assert.Equal(face.To - 4, posts[^1], 1e-9);
        Assert.Contains(posts, p => Math.Abs(p - gap) < 1e-9);
        Assert.Contains(posts, p => Math.Abs(p - gap - 40) < 1e-9);
        Assert.DoesNotContain(posts, p => p > gap + 1e-6 && p < gap + 40 - 1e-6);

        foreach (var run in new[] { plan.PostHoles.Where(h => h.Chainage <= gap + 1e-9), plan.PostHoles.Where(h => h.Chainage >= gap + 40 - 1e-9) })
        {
            double[] panels = [.. run.Zip(run.Skip(1), (a, b) => Along(plan, a.Chainage, b.Chainage))];
            Assert.InRange(panels.Max() - panels.Min(), 0, 0.001);

            // A whole number of panels, the nearest there is to the wish.
            Assert.Equal(Math.Max(1, Math.Round(panels.Sum() / pitch, MidpointRounding.AwayFromZero)), panels.Length);
        }
    }

    [Fact]
    public void A_post_keeps_off_a_ramps_head_and_off_a_cut_that_is_asked_for()
    {
        // 600 mm with posts 4 mm in from the ends: panels of 32.9 mm put a post at 302.6, beside a ramp that ends at 304; a cut asked for stands in the way of another.
        var spec = Bench.Straight(s => s with { Fence = new() { Pitch = 32 }, StartRamp = new(Length: 104), ForcedCuts = [500] });
        var plan = Bench.Plan(spec);
        Assert.Equal(304, plan.Profile.StartHead, 1e-9);
        Assert.All(plan.PostHoles, h => Assert.True(Math.Abs(h.Chainage - 304) > 5.5 && Math.Abs(h.Chainage - 500) > 5.5, $"{h.Chainage}"));
        Assert.Contains(plan.CutCandidates, c => c.Chainage == 304 && c.Rank == CutRank.RampHead);
        double[] panels = [.. plan.PostHoles.Zip(plan.PostHoles.Skip(1), (a, b) => b.Chainage - a.Chainage)];
        Assert.InRange(panels.Max() - panels.Min(), 0, 0.001);
        Assert.InRange(panels[0], 32 / 1.25, 32 / 0.75);
    }

    [Fact]
    public void Holes_take_the_pin_and_its_allowance_and_stand_in_from_the_back()
    {
        var plan = Bench.Plan(Bench.Straight(s => s with { Fence = new() { PinDiameter = 1.2, Fit = 0.3, Inset = 3, Depth = 2 } }));
        Assert.All(plan.PostHoles, h =>
        {
            Assert.Equal(1.5, h.Diameter, 1e-12);
            Assert.Equal(plan.Back.At(h.Chainage) - 3, h.Reach, 1e-9);
            Assert.Equal(2, h.Depth);
        });
    }

    [Theory]
    [InlineData(0.5, "PF4031", "1.4")] // land 0.8 and half a hole of 1.2
    [InlineData(45, "PF4030", "39.525")] // 48 wide, coping 7.874, half a hole 0.6
    public void A_fence_off_the_deck_or_through_the_coping_says_what_inset_would_do(double inset, string code, string right)
    {
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => s with { Fence = new() { Inset = inset } }));
        var finding = Assert.Single(outcome.Findings, f => f.Code == code);
        Assert.Equal("platform[0].fence.inset", finding.Key);
        Assert.Contains(right, finding.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(500, 450)]
    [InlineData(100, 300)]
    [InlineData(700, 900)]
    [InlineData(500, 500.5)]
    public void Gaps_out_of_order_off_the_fence_or_too_small_are_errors(double from, double to)
    {
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => s with { Fence = new() { Gaps = [new(from, to)] } }));
        Assert.Equal("platform[0].fence.gaps[0]", Assert.Single(outcome.Findings, f => f.Code == "PF4041").Key);
    }

    // Length of the line of posts between two chainages, from points a quarter millimetre apart.
    private static double Along(PlatformPlan plan, double from, double to)
    {
        int steps = (int)((to - from) * 4) + 1;
        var points = Enumerable.Range(0, steps + 1).Select(i => from + ((to - from) * i / steps)).Select(s => plan.ToLayout(s, plan.Back.At(s) - plan.Spec.Fence!.Inset)).ToArray();
        return points.Zip(points.Skip(1), (a, b) => (b - a).Length).Sum();
    }
}
