using FsCheck.Xunit;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
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
        request = request with { Spec = request.Spec.With<FenceSpec>([new() { Pitch = pitch, Gaps = [new(gap, gap + 40)] }]) };
        var plan = Bench.Plan(request);
        double[] posts = [.. plan.PostHoles.Select(h => h.Chainage)];
        Assert.Equal(face.From + 4, posts[0], 1e-9);
        Assert.Equal(face.To - 4, posts[^1], 1e-9);

        // The gate is 40 wide at the fence, about the middle of what is asked.
        int before = Array.FindLastIndex(posts, p => p < gap + 20);
        Assert.Equal(40, (At(plan, posts[before + 1]) - At(plan, posts[before])).Length, 1e-6);
        Assert.Equal(gap + 20, (posts[before] + posts[before + 1]) / 2, 1e-9);
        Assert.Equal(FenceBayKind.Gate, Assert.Single(plan.Fence!.Bays, b => b.Kind != FenceBayKind.Panel).Kind);

        foreach (var run in new[] { plan.PostHoles.Take(before + 1), plan.PostHoles.Skip(before + 1) })
        {
            double[] panels = [.. run.Zip(run.Skip(1), (a, b) => Along(plan, a.Chainage, b.Chainage))];
            Assert.InRange(panels.Max() - panels.Min(), 0, 0.001);

            // A whole number of panels, the nearest there is to the wish.
            Assert.Equal(Math.Max(1, Math.Round(panels.Sum() / pitch, MidpointRounding.AwayFromZero)), panels.Length);
        }
    }

    [Property(MaxTest = 40)]
    public void Whole_panels_are_all_the_pitch_and_the_odd_one_stands_where_it_is_asked_for(int seed)
    {
        var random = new Random(seed);
        var request = Bench.Request(seed, EdgeStyle.Fitted);
        var face = request.Spec.Face;
        double gap = face.From + ((face.To - face.From) * (0.3 + (random.NextDouble() * 0.3))), pitch = 15 + (random.NextDouble() * 30);
        var odd = (OddPanel)random.Next(2);
        request = request
            with
        { Spec = request.Spec.With<FenceSpec>([new() { Pitch = pitch, Panels = FencePanels.Whole, Odd = odd, Gaps = [new(gap, gap + 40)] }]) };
        var outcome = PlatformPlanner.Plan(request);
        var fence = outcome.Value!.Fence!;
        double[] lengths = [.. fence.Posts.Zip(fence.Posts.Skip(1), (a, b) => (At(outcome.Value!, b.Chainage) - At(outcome.Value!, a.Chainage)).Length)];
        Assert.Equal(lengths.Length, fence.Bays.Count);
        Assert.All(fence.Bays, (b, i) => Assert.Equal(lengths[i], b.Length, 1e-9));
        Assert.All(fence.Bays.Where(b => b.Kind == FenceBayKind.Panel), b => Assert.Equal(pitch, b.Length, 0.011));
        Assert.Equal(40, Assert.Single(fence.Bays, b => b.Kind == FenceBayKind.Gate).Length, 1e-6);

        int gate = fence.Bays.ToList().FindIndex(b => b.Kind == FenceBayKind.Gate), last = fence.Bays.Count - 1;
        int[] odds = [.. Enumerable.Range(0, fence.Bays.Count).Where(i => fence.Bays[i].Kind == FenceBayKind.Odd)];
        Assert.InRange(odds.Count(i => i < gate), 0, 2);
        Assert.InRange(odds.Count(i => i > gate), 0, 2);
        Assert.All(odds, i => Assert.InRange(fence.Bays[i].Length, 1.2 + 1.6, pitch));
        if (!outcome.Findings.Any(f => f.Code is "PF4102" or "PF4103"))
        {
            Assert.All(odds, i => Assert.Contains(i, odd == OddPanel.Ends ? new[] { 0, last } : [gate - 1, gate + 1]));
        }
    }

    [Fact]
    public void An_odd_panel_gives_way_to_a_ramps_head_and_says_so()
    {
        // Posts every 40 mm from 204 on, up to 764 and the end: one would stand at 404, beside a ramp's head at 405.
        var outcome =
            PlatformPlanner.Plan(Bench.Straight(s => (s with { Height = 12, StartRamp = new(Length: 205), Coping = s.Coping with { SlabLength = 12 } })
                .With<FenceSpec>([new() { Pitch = 40, Panels = FencePanels.Whole }])));
        Assert.Equal(405, outcome.Value!.Profile.StartHead, 1e-9);
        Assert.Contains(outcome.Findings, f => f.Code == "PF4102" && f.Severity == Severity.Note);
        Assert.Contains(outcome.Value.CutCandidates, c => c.Rank == CutRank.RampHead);
        Assert.Equal(14, outcome.Value.Fence!.Bays.Count(b => b.Kind == FenceBayKind.Panel));
        Assert.Equal(32, Assert.Single(outcome.Value.Fence!.Bays, b => b.Kind == FenceBayKind.Odd).Length, 1e-6);
    }

    [Fact]
    public void A_rest_too_short_for_a_panel_is_shared_by_two_odd_ones()
    {
        // 592 mm of fence: 19 panels of 31.05 leave 2.05, less than holes of 1.2 and 1.6 of material take.
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => s.With<FenceSpec>([new() { Pitch = 31.05, Panels = FencePanels.Whole }])));
        var bays = outcome.Value!.Fence!.Bays;
        Assert.Equal(18, bays.Count(b => b.Kind == FenceBayKind.Panel));
        Assert.All(bays.Where(b => b.Kind == FenceBayKind.Odd), b => Assert.Equal((31.05 + 2.05) / 2, b.Length, 1e-6));
        Assert.Equal(2, bays.Count(b => b.Kind == FenceBayKind.Odd));
        Assert.Contains(outcome.Findings, f => f.Code == "PF4103");
    }

    [Fact]
    public void A_hole_deeper_than_its_deck_stands_in_a_boss_or_says_what_depth_would_do()
    {
        var plan = Bench.Plan(Bench.Straight(s => s.With<FenceSpec>([new() { Depth = 3 }]).With<HoleSpec>([new(500, 12) { Depth = 3 }])));
        Assert.All(plan.PostHoles, h => Assert.Equal((3, 1.2), (h.Depth!.Value, h.BossWall)));
        Assert.All(Bench.Plan(Bench.Straight(s => s.With<FenceSpec>([new()]))).PostHoles, h => Assert.Equal(0, h.BossWall));

        double level = Bench.Site.RailTop + plan.Spec.Height;
        var deep = PlatformPlanner.Plan(Bench.Straight(s => s.With<FenceSpec>([new() { Depth = level }])));
        var finding = Assert.Single(deep.Findings, f => f.Code == "PF4101");
        Assert.Equal("platform[0].fence.depth", finding.Key);
        double offered = double.Parse(finding.Remedy.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(level - 1.2, offered, 0.001);
        Assert.True(PlatformPlanner.Plan(Bench.Straight(s => s.With<FenceSpec>([new() { Depth = offered }]))).Succeeded);
    }

    [Fact]
    public void A_post_keeps_off_a_ramps_head_and_off_a_cut_that_is_asked_for()
    {
        // 600 mm with posts 4 mm in from the ends: panels of 32.9 mm put a post at 302.6, beside a ramp that ends at 304; a cut asked for stands in the way of
        // another.
        var spec = Bench.Straight(s => (s with { StartRamp = new(Length: 104), ForcedCuts = [500] }).With<FenceSpec>([new() { Pitch = 32 }]));
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
        var plan = Bench.Plan(Bench.Straight(s => s.With<FenceSpec>([new() { PinDiameter = 1.2, Fit = 0.3, Inset = 3, Depth = 2 }])));
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
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => s.With<FenceSpec>([new() { Inset = inset }])));
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
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => s.With<FenceSpec>([new() { Gaps = [new(from, to)] }])));
        Assert.Equal("platform[0].fence.gap[0]", Assert.Single(outcome.Findings, f => f.Code == "PF4041").Key);
    }

    [Theory]
    [InlineData("at = 400")]
    [InlineData("width = 16")]
    [InlineData("from = 400")]
    [InlineData("to = 416")]
    [InlineData("at = 400, to = 416")]
    public void A_gap_of_half_its_figures_is_refused(string figures)
    {
        string gap = "[platform.fence]\n[[platform.fence.gap]]\n" + figures.Replace(", ", "\n", StringComparison.Ordinal) + "\n";
        Assert.Contains("neither at and width nor from and to", Assert.Single(Projects.Samples.Read(Projects.Samples.Small + gap).Findings).Message,
            StringComparison.Ordinal);
    }

    /// <summary>592 mm of fence: sixteen panels of 37 are all of it.</summary>
    [Fact]
    public void Whole_panels_that_fill_a_run_leave_no_odd_one()
    {
        var bays = Whole(new() { Pitch = 37, Panels = FencePanels.Whole }).Bays;
        Assert.Equal(16, bays.Count);
        Assert.All(bays, b => Assert.Equal((FenceBayKind.Panel, 37.0), (b.Kind, Math.Round(b.Length, 6))));
    }

    [Fact]
    public void A_fence_shorter_than_a_whole_panel_is_one_odd_panel()
    {
        var bay = Assert.Single(Whole(new() { Pitch = 32, Panels = FencePanels.Whole, From = 300, To = 320 }).Bays);
        Assert.Equal((FenceBayKind.Odd, 20.0), (bay.Kind, Math.Round(bay.Length, 6)));
    }

    [Fact]
    public void A_run_of_less_than_half_a_panel_is_one_panel_all_the_same()
    {
        var bay = Assert.Single(Whole(new() { Pitch = 32, From = 300, To = 312 }).Bays);
        Assert.Equal((FenceBayKind.Panel, 12.0), (bay.Kind, Math.Round(bay.Length, 6)));
    }

    /// <summary>
    /// Fourteen panels of 40 and 32 mm over. Counted from the start a post stands at 604, from the end one at 316, and at both the platform is cut: the odd
    /// one goes between.
    /// </summary>
    [Fact]
    public void The_odd_panel_goes_between_whole_ones_where_cuts_are_in_the_way_from_either_end()
    {
        var outcome =
            PlatformPlanner.Plan(Bench.Straight(s => (s with { ForcedCuts = [316, 604] }).With<FenceSpec>([new() { Pitch = 40, Panels = FencePanels.Whole }])));
        var fence = outcome.Value!.Fence!;
        Assert.Equal(14, fence.Bays.Count(b => b.Kind == FenceBayKind.Panel));
        Assert.Equal(32, Assert.Single(fence.Bays, b => b.Kind == FenceBayKind.Odd).Length, 1e-6);
        Assert.All(fence.Posts, p => Assert.True(Math.Min(Math.Abs(p.Chainage - 316), Math.Abs(p.Chainage - 604)) > 2.9, $"{p.Chainage}"));
        Assert.Contains(outcome.Findings, f => f.Code == "PF4102");
    }

    /// <summary>A hole of 1 mm on a deck of 48 behind a coping of 8: its middle may be 48 − 8 − 0.5 from the back, and no more.</summary>
    [Theory]
    [InlineData(39.5, false)]
    [InlineData(39.51, true)]
    public void A_fence_may_stand_right_behind_the_coping(double inset, bool isWrong)
    {
        var findings = PlatformPlanner.Plan(Bench.Straight(s => (s with { Deck = s.Deck with { Width = 48 }, Coping = s.Coping with { Width = 8 } })
            .With<FenceSpec>([new() { Inset = inset, PinDiameter = 0.75, Fit = 0.25 }]))).Findings;
        Assert.Equal(isWrong, findings.Any(f => f.Code == "PF4030"));
    }

    /// <summary>Places are told to a thousandth of a millimetre, what is drilled to a hundredth.</summary>
    [Fact]
    public void The_table_of_posts_tells_places_finer_than_drills()
    {
        var plan = Bench.Plan(Bench.Straight(s => s.With<FenceSpec>([new() { Depth = 2 }])));
        var table = plan.Features.SelectMany(f => f.Tables).Single();
        Assert.All(table.Rows, row => Assert.All(row, (cell, i) =>
        {
            string heading = table.Headings[i];
            int digits = heading == "post" ? 0 : heading is "pin_mm" or "hole_mm" or "hole_depth_mm" ? 2 : 3;
            Assert.True(cell.Figure is null ? i >= 9 : cell.Digits == digits, heading);
        }));
    }

    private static FoundFence Whole(FenceSpec fence) => Bench.Plan(Bench.Straight(s => s.With<FenceSpec>([fence]))).Fence!;

    // Where the fence is at a chainage.
    private static PlatformForge.Geometry.Point2 At(PlatformPlan plan, double s) => plan.ToLayout(s, plan.Back.At(s) - plan.Spec.Fence!.Inset);

    // Length of the line of posts between two chainages, from points a quarter millimetre apart.
    private static double Along(PlatformPlan plan, double from, double to)
    {
        int steps = (int)((to - from) * 4) + 1;
        var points = Enumerable.Range(0, steps + 1).Select(i => from + ((to - from) * i / steps))
            .Select(s => plan.ToLayout(s, plan.Back.At(s) - plan.Spec.Fence!.Inset)).ToArray();
        return points.Zip(points.Skip(1), (a, b) => (b - a).Length).Sum();
    }
}
