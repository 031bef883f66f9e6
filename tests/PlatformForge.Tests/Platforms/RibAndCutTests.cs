using FsCheck.Xunit;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

public class RibAndCutTests
{
    /// <summary>Seeds that once failed.</summary>
    [Theory]
    [InlineData(37)]
    public void Nothing_that_stood_in_a_rib_or_a_cut_does_so_again(int seed) => Nothing_that_stands_in_the_deck_meets_a_rib_or_a_cut(seed);

    [Property(MaxTest = 25)]
    public void Nothing_that_stands_in_the_deck_meets_a_rib_or_a_cut(int seed)
    {
        var random = new Random(seed);
        var request = Bench.Request(seed, EdgeStyle.Faired, s => (s with
        {
            Ribs = s.Ribs with { Pitch = 14 + (random.NextDouble() * 30), LongitudinalCount = random.Next(0, 3) },
        })
        .With<SocketSpec>(
            [.. Enumerable.Range(1, 4)
                .Select(i => new SocketSpec(s.Face.From + ((s.Face.To - s.Face.From) * (i + (random.NextDouble() / 3)) / 6), 8 + (random.NextDouble() * 20)))])
                .With<FenceSpec>([new() { Pitch = 25 + (random.NextDouble() * 20) }]));
        var plan = Bench.Plan(request);
        foreach (var rib in plan.Ribs.Where(r => r.Kind != RibKind.EndWall))
        {
            foreach (var socket in plan.Sockets)
            {
                double half = ((socket.Along / 2) + socket.BossWall) / Stretch(plan, socket.Chainage, socket.Reach),
                    across = (socket.Across / 2) + socket.BossWall;
                Assert.True(Apart(rib, socket.Chainage, half, socket.Reach, across),
                    $"{rib.Kind} rib at {rib.From} to {rib.To}, {rib.Near.At(socket.Chainage)} to {rib.Far.At(socket.Chainage)}; socket "
                        + $"at {socket.Chainage}, {socket.Reach}, within {half} along and {across} across");
            }

            foreach (var post in plan.PostHoles)
            {
                Assert.True(Apart(rib, post.Chainage, post.Diameter / 2 / Stretch(plan, post.Chainage, post.Reach), post.Reach, post.Diameter / 2),
                    $"rib at {rib.From}, post at {post.Chainage}");
            }
        }

        foreach (var cut in plan.CutCandidates)
        {
            Assert.Contains(cut.Chainage, plan.Stations);
            Assert.Contains(cut.Chainage, plan.CopingJoints);
            Assert.DoesNotContain(plan.Ribs, r => r.Kind == RibKind.EndWall && cut.Chainage > r.From - 2.9 && cut.Chainage < r.To + 2.9);
            Assert.DoesNotContain(plan.PostHoles, h => Math.Abs(h.Chainage - cut.Chainage) < 2.9);
            Assert.DoesNotContain(plan.Sockets, k => Math.Abs(k.Chainage - cut.Chainage) < 2.9);
        }
    }

    [Fact]
    public void A_rib_under_a_socket_steps_aside_and_says_so()
    {
        // 20 spaces of 30 mm under a pitch of 31: room to step aside without a rib more.
        PlatformSpec Wide(PlatformSpec s) => s with { Ribs = s.Ribs with { Pitch = 31 } };
        var free = Bench.Plan(Bench.Straight(Wide));
        var rib = free.Ribs.First(r => r.Kind == RibKind.Transverse && r.From > 450);
        double at = (rib.From + rib.To) / 2;
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => Wide(s).With<SocketSpec>([new(at, 15)])));
        Assert.True(outcome.Succeeded);
        var note = Assert.Single(outcome.Findings, f => f.Code == "PF4060");
        Assert.Equal(Severity.Note, note.Severity);
        Assert.Contains("running-in board", note.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(outcome.Value!.Ribs, r => r.Kind == RibKind.Transverse && r.From < at + 2 && r.To > at - 2);
    }

    [Fact]
    public void Ribs_are_no_farther_apart_than_the_pitch_and_the_ends_are_walled()
    {
        var plan = Bench.Plan(Bench.Straight(s => s with { Ribs = s.Ribs with { Pitch = 30 } }));
        double[] middles = [200, .. plan.Ribs.Where(r => r.Kind == RibKind.Transverse).Select(r => (r.From + r.To) / 2).Order(), 800];
        Assert.All(middles.Zip(middles.Skip(1), (a, b) => b - a), gap => Assert.Equal(30, gap, 1e-6));
        Assert.Equal((30, 19), (plan.RibPitch.Asked, plan.RibPitch.Count));
        Assert.Equal(30, plan.RibPitch.Greatest, 1e-6);
        Assert.Equal(2, plan.Ribs.Count(r => r.Kind == RibKind.EndWall));
        Assert.All(plan.Ribs.Where(r => r.Kind == RibKind.EndWall), w => Assert.Null(w.Depth));
    }

    [Fact]
    public void Ribs_keep_off_end_walls_where_one_there_would_not_keep_the_pitch()
    {
        // Holes from 206 to 246 part the first stretch by more than the pitch, whatever stands before them.
        var plan = Bench.Plan(Bench.Straight(s => Holed(s, 206, 246)));
        double[] middles = Middles(plan);
        Assert.All(middles, m => Assert.InRange(m, 200 + 5 + (plan.Spec.Ribs.Thickness / 2), 800 - 5 - (plan.Spec.Ribs.Thickness / 2)));
        Assert.InRange(plan.RibPitch.Greatest, 48, 49);
    }

    [Fact]
    public void A_rib_stands_beside_an_end_wall_where_that_keeps_the_pitch()
    {
        // The free places next to the holes lie less than the pitch apart, and the farther one lies beyond it from the wall.
        var plan = Bench.Plan(Bench.Straight(s => Holed(s, 206, 230)));
        Assert.InRange(Middles(plan)[0], 202, 205);
        Assert.InRange(plan.RibPitch.Greatest, 0, 30 + 1e-6);
    }

    private static PlatformSpec Holed(PlatformSpec s, int from, int to) => (s with
    {
        Ribs = s.Ribs with { Pitch = 30 },
    }).With<HoleSpec>([.. Enumerable.Range(0, ((to - from) / 4) + 1).Select(i => new HoleSpec(from + (4 * i), 12 + (8 * (i % 2))) { Diameter = 4 })]);

    private static double[] Middles(PlatformPlan plan) => [.. plan.Ribs.Where(r => r.Kind == RibKind.Transverse).Select(r => (r.From + r.To) / 2).Order()];

    [Property(MaxTest = 15)]
    public void A_rib_across_is_at_least_as_thick_in_the_layout_as_stated(int seed)
    {
        var plan = Bench.Plan(Bench.Request(seed, EdgeStyle.Fitted));
        foreach (var rib in plan.Ribs.Where(r => r.Kind == RibKind.Transverse))
        {
            foreach (var line in new[] { rib.Near, rib.Far })
            {
                double t = line.At(rib.From), thick = (plan.ToLayout(rib.To, t) - plan.ToLayout(rib.From, t)).Length;
                Assert.InRange(thick, plan.Spec.Ribs.Thickness * 0.999, plan.Spec.Ribs.Thickness * 1.5);
            }
        }
    }

    [Fact]
    public void Slabs_are_whole_and_even_between_ends_ramp_heads_and_cuts()
    {
        var plan =
            Bench.Plan(Bench.Straight(s => s with
            {
                Height = 12,
                StartRamp = new(Gradient: 8),
                ForcedCuts = [540],
                Coping = s.Coping with { SlabLength = 12 }
            }));
        double[] joints = [200, .. plan.CopingJoints, 800];
        double[] slabs = [.. joints.Zip(joints.Skip(1), (a, b) => b - a)];
        foreach (var (from, to, count) in new[] { (200.0, 296.0, 8), (296, 540, 20), (540, 800, 22) })
        {
            double[] own = [.. joints.Zip(slabs).Where(p => p.First >= from - 1e-6 && p.First < to - 1e-6).Select(p => p.Second)];
            Assert.Equal(count, own.Length);
            Assert.Equal((to - from) / count, own.Min(), 1e-9);
            Assert.Equal((to - from) / count, own.Max(), 1e-9);
        }

        Assert.Contains(plan.CutCandidates, c => c is { Rank: CutRank.Forced, Chainage: 540, IsStated: true });
        Assert.Contains(plan.CutCandidates, c => c.Rank == CutRank.RampHead && Math.Abs(c.Chainage - 296) < 1e-9);
    }

    [Fact]
    public void Without_slabs_there_are_no_grooves_but_still_places_to_cut()
    {
        var plan = Bench.Plan(Bench.Straight(s => s with { Coping = s.Coping with { SlabLength = 0 } }));
        Assert.Empty(plan.CopingJoints);
        Assert.NotEmpty(plan.CutCandidates);
        Assert.All(plan.CutCandidates, c => Assert.Contains(c.Chainage, plan.Stations));
    }

    /// <summary>A hole where a rib would be moves it aside: the note tells how far the farthest one went from where it is without the hole.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    public void What_is_told_of_ribs_that_stepped_aside_is_how_far_they_went(double diameter)
    {
        static double[] Middles(PlatformPlan plan) => [.. plan.Ribs.Where(r => r.Kind == RibKind.Transverse).Select(r => (r.From + r.To) / 2).Order()];
        PlatformSpec Wide(PlatformSpec s) => s with { Ribs = s.Ribs with { Pitch = 31 } };
        var even = Middles(Bench.Plan(Bench.Straight(Wide)));
        var spec = new HoleSpec(even[even.Length / 2], 20, InsetFrom.Edge) { Diameter = diameter, Fit = 0 };
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => Wide(s).With<HoleSpec>([spec])));
        double[] moved = Middles(outcome.Value!);
        Assert.Equal(even.Length, moved.Length);
        string told = Assert.Single(outcome.Findings, f => f.Code == "PF4060").Message;
        double most = moved.Zip(even, (a, b) => Math.Abs(a - b)).Max();
        Assert.Contains(FormattableString.Invariant($"by up to {most:0.#} mm"), told, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(500, 501)]
    [InlineData(792, 788)]
    [InlineData(208, 212)]
    public void A_forced_cut_through_a_socket_is_an_error_that_says_where_it_would_do(double cut, double socket)
    {
        PlatformRequest Cut(double at) => Bench.Straight(s => (s with { ForcedCuts = [at] }).With<SocketSpec>([new(socket, 10)]));
        var outcome = PlatformPlanner.Plan(Cut(cut));
        var finding = Assert.Single(outcome.Findings, f => f.Code == "PF4051");
        Assert.Equal("platform[0].board[0]", finding.Key);
        Assert.Equal(FaultKind.DesignRule, finding.Kind);

        double offered = double.Parse(finding.Remedy.Split(' ')[3], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(offered, 200 + CutMargin, 800 - CutMargin);
        Assert.True(PlatformPlanner.Plan(Cut(offered)).Succeeded, finding.Remedy);
    }

    // From either end: the wall there, and as much again as a cut keeps from it.
    private const double CutMargin = 2 * 3;

    // Length in the layout for a millimetre of chainage.
    private static double Stretch(PlatformPlan plan, double s, double t) => 1 - ((int)plan.Side * plan.Chart.At(s).Curvature * t);

    private static bool Apart(PlanRib rib, double chainage, double along, double reach, double across) =>
        rib.Kind == RibKind.Transverse
            ? chainage + along <= rib.From + 1e-9 || chainage - along >= rib.To - 1e-9
            : reach + across <= rib.Near.At(chainage) + 1e-9 || reach - across >= rib.Far.At(chainage) - 1e-9;
}
