using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using Xunit;

namespace PlatformForge.Tests.Platforms;

public class EdgeProperties
{
    // Rounding of places found on a track by Newton's rule, mm.
    private const double Rounding = 1e-7;

    [Theory]
    [InlineData(1)] // the swept line jumps where another vehicle begins to govern
    public void The_edge_is_never_nearer_where_the_swept_line_jumps(int seed) => The_edge_drawn_as_chords_is_never_nearer_to_the_track_than_required(seed);

    [Property(MaxTest = 20)]
    public void The_edge_drawn_as_chords_is_never_nearer_to_the_track_than_required(int seed)
    {
        foreach (var style in Enum.GetValues<EdgeStyle>())
        {
            var plan = Bench.Plan(Bench.Request(seed, style));
            for (int j = 0; j + 1 < plan.Stations.Length; j++)
            {
                var from = plan.ToLayout(plan.Stations[j], plan.CopingFront.Reach[j]);
                var to = plan.ToLayout(plan.Stations[j + 1], plan.CopingFront.Reach[j + 1]);
                for (int k = 0; k <= 8; k++)
                {
                    var place = plan.Chart.Locate(from + ((to - from) * (k / 8.0)), plan.Stations[j]);
                    Assert.True((int)plan.Side * place.Offset >= Required(plan, place.Chainage) - Rounding, $"{style} at {place.Chainage}");
                }
            }
        }
    }

    [Property(MaxTest = 20)]
    public void The_fitted_edge_follows_the_requirement_within_three_facet_versines(int seed)
    {
        // One for the chord over a bent requirement, one for the arc, one for a lift shared by both facets of a vertex.
        var plan = Bench.Plan(Bench.Request(seed, EdgeStyle.Fitted));
        for (double s = plan.Stations[0]; s <= plan.Stations[^1]; s += 0.7)
        {
            Assert.InRange(plan.CopingFront.At(s) - Required(plan, s), 0, 3 * Units.Tolerances.FacetVersine);
        }
    }

    [Property(MaxTest = 20)]
    public void Fitted_is_no_farther_than_faired_and_faired_no_farther_than_uniform(int seed)
    {
        var plan = Bench.Plan(Bench.Request(seed, EdgeStyle.Faired));
        for (int j = 0; j < plan.Stations.Length; j++)
        {
            Assert.True(plan.Alternatives[(int)EdgeStyle.Fitted].Reach[j] <= plan.Alternatives[(int)EdgeStyle.Faired].Reach[j]);
            Assert.True(plan.Alternatives[(int)EdgeStyle.Faired].Reach[j] <= plan.Alternatives[(int)EdgeStyle.Uniform].Reach[j]);
        }
    }

    [Property(MaxTest = 20)]
    public void A_uniform_edge_is_less_than_two_steps_beyond_the_largest_requirement(int seed)
    {
        var plan = Bench.Plan(Bench.Request(seed, EdgeStyle.Uniform));
        Assert.Equal(plan.CopingFront.Reach.Min(), plan.CopingFront.Reach.Max());
        Assert.InRange(plan.CopingFront.Reach[0] - plan.Alternatives[0].Reach.Max(), 0, 0.02);
    }

    [Theory]
    [InlineData(21)] // a curve that ends without a transition, between two vertices
    public void A_faired_edge_keeps_its_radius_where_curvature_jumps(int seed) => A_faired_edge_keeps_its_radius_and_its_taper_as_measured_in_the_layout(seed);

    [Property(MaxTest = 20)]
    public void A_faired_edge_keeps_its_radius_and_its_taper_as_measured_in_the_layout(int seed)
    {
        KeepsRadiusAndTaper(Bench.Plan(Bench.Request(seed, EdgeStyle.Faired)));
    }

    /// <summary>The faired edge as measured in the layout, three vertices at a time.</summary>
    internal static void KeepsRadiusAndTaper(PlatformPlan plan)
    {
        var (s, t) = (plan.Stations, plan.Alternatives[(int)EdgeStyle.Faired].Reach);
        for (int j = 1; j + 1 < s.Length; j++)
        {
            Assert.InRange(Math.Abs(t[j + 1] - t[j]) / (s[j + 1] - s[j]), 0, 1 / plan.Spec.Face.Taper);

            var (a, b, c) = (plan.ToLayout(s[j - 1], t[j - 1]), plan.ToLayout(s[j], t[j]), plan.ToLayout(s[j + 1], t[j + 1]));
            var (u, v) = (b - a, c - b);
            double bend = Math.Atan2(Point2.Cross(u, v), Point2.Dot(u, v)) / ((u.Length + v.Length) / 2);

            // The track's own bend over the same two facets, at the edge's reach: where curvature changes, the chords see a mean of it, and an
            // edge that changes its reach there bends by t′(κ′t + 2κt′) more than the track.
            double[] tracks = [.. Enumerable.Range(0, 9).Select(k => plan.Chart.At(s[j - 1] + ((s[j + 1] - s[j - 1]) * k / 8)).Curvature)];
            double[] concentric = [.. tracks.Select(k => k / (1 - (k * (int)plan.Side * t[j])))];
            double slope = Math.Abs(t[j + 1] - t[j - 1]) / (s[j + 1] - s[j - 1]), growth = (tracks.Max() - tracks.Min()) / (s[j + 1] - s[j - 1]);
            double slanted = 1.2 * slope * ((growth * t[j]) + (2 * tracks.Max(Math.Abs) * slope));
            double radius = plan.Spec.Face.LeastRadius!.Value, slack = 0.02 / radius;
            Assert.InRange(bend, Math.Min(-1 / radius, concentric.Min() - slanted) - slack, Math.Max(1 / radius, concentric.Max() + slanted) + slack);
        }
    }

    [Property(MaxTest = 10)]
    public void A_mirrored_layout_has_the_same_plan(int seed)
    {
        foreach (var style in Enum.GetValues<EdgeStyle>())
        {
            PlatformSpec Furnish(PlatformSpec spec) => (spec with { WhiteLine = new(), StartRamp = new(Gradient: 8) }).With<FenceSpec>([new()]);
            var plan = Bench.Plan(Bench.Request(seed, style, Furnish));
            var mirrored = Bench.Plan(Bench.Request(seed, style, Furnish, mirrored: true));
            Assert.NotEqual(plan.Side, mirrored.Side);
            Same(plan.Stations, mirrored.Stations);
            Same(plan.CopingFront.Reach, mirrored.CopingFront.Reach);
            Same(plan.Back.Reach, mirrored.Back.Reach);
            Same(plan.CopingJoints, mirrored.CopingJoints);
            Same(plan.PostHoles.SelectMany(h => new[] { h.Chainage, h.Reach }), mirrored.PostHoles.SelectMany(h => new[] { h.Chainage, h.Reach }));
            Same(plan.Ribs.SelectMany(r => new[] { r.From, r.To }), mirrored.Ribs.SelectMany(r => new[] { r.From, r.To }));
            Same(plan.CutCandidates.Select(c => c.Chainage), mirrored.CutCandidates.Select(c => c.Chainage));
        }
    }

    [Property(MaxTest = 20)]
    public void A_larger_budget_moves_the_fitted_and_the_uniform_edge_by_as_much(int seed)
    {
        var request = Bench.Request(seed, EdgeStyle.Fitted, s => s with { Coping = s.Coping with { SlabLength = 6 } });
        var wider = request with { Budget = ClearanceBudget.Of(request.Budget.Margin + 0.5) };
        var (plan, moved) = (Bench.Plan(request), Bench.Plan(wider));
        for (double s = plan.Stations[0]; s < plan.Stations[^1]; s += 3)
        {
            Assert.Equal(plan.CopingFront.At(s) + 0.5, moved.CopingFront.At(s), 2 * Units.Tolerances.FacetVersine);
        }
    }

    [Property(MaxTest = 20)]
    public void Easing_the_radius_or_the_taper_never_brings_the_faired_edge_farther_away_on_average(int seed)
    {
        double Mean(PlatformPlan plan) => plan.Stations.Zip(plan.Stations.Skip(1))
            .Sum(p => (p.Second - p.First) * (plan.CopingFront.At(p.First) + plan.CopingFront.At(p.Second)) / 2) / (plan.Stations[^1] - plan.Stations[0]);
        var strict = Bench.Plan(Bench.Request(seed, EdgeStyle.Faired));
        var eased =
            Bench.Plan(Bench.Request(seed, EdgeStyle.Faired,
                s => s with { Face = s.Face with { LeastRadius = s.Face.LeastRadius * 0.8, Taper = s.Face.Taper * 0.8 } }));
        Assert.True(Mean(eased) <= Mean(strict) + 2e-6);
    }

    private static double Required(PlatformPlan plan, double chainage)
    {
        var trace = plan.Requirement;
        double place = Math.Clamp(chainage - trace.Stations[0], 0, trace.Stations.Length - 1);
        int i = Math.Min((int)place, trace.Stations.Length - 2);
        return trace.Required(i) + ((place - i) * (trace.Required(i + 1) - trace.Required(i)));
    }

    private static void Same(IEnumerable<double> expected, IEnumerable<double> found)
    {
        double[] a = [.. expected], b = [.. found];
        Assert.Equal(a.Length, b.Length);
        for (int i = 0; i < a.Length; i++)
        {
            Assert.Equal(a[i], b[i], 1e-6);
        }
    }
}
