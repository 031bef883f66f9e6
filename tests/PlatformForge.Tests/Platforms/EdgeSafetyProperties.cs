using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Tests.Clearance;
using PlatformForge.Track;
using PlatformForge.Track.Charts;
using PlatformForge.Units;

namespace PlatformForge.Tests.Platforms;

/// <summary>
/// Edges of real sweeps on random tracks (reverse curves, kinks, transitions, radii from 250 mm), a platform on either side, against a sweeper that shares
/// nothing with the product's.
/// </summary>
[Properties(Arbitrary = [typeof(RunCases)], QuietOnSuccess = true)]
public class EdgeSafetyProperties
{
    // The brute sweeper's step and spacing of stations, mm. What it finds is really touched, so it errs towards a larger distance only; rounding is left.
    private const double Step = 1.3, Apart = 4, Rounding = 1e-6;

    private static readonly ModelScale Scale = new(76.2);

    [Property(MaxTest = 10)]
    public void Every_style_keeps_the_budget_in_every_direction_closer_styles_are_nowhere_farther_and_the_faired_one_keeps_its_bend_and_taper(RunCase run)
    {
        var chart = KinkRounder.Chart(run.Kinked());
        var budget = ClearanceBudget.Of(0.7, 0.2);
        double from = chart.FromRide(run.From), to = chart.FromRide(run.To);
        var swept = EnvelopeSweeper.Sweep(new(chart.Line, from, to, [new TrackRun(chart.Ride, [run.Vehicle])]) { Tolerance = 0.01 });
        if (swept.Value is not { } envelope)
        {
            return; // a vehicle that can't run the curve: another test's matter
        }

        double[] stations = [.. Enumerable.Range(0, (int)((to - from) / Apart) + 1).Select(i => from + (i * Apart))];
        var touched = BruteSweep.Touched(chart.Ride, chart.Line, run.Vehicle, stations, Step);
        foreach (var side in new[] { Side.Left, Side.Right })
        {
            var spec = new PlatformSpec("up side", new FaceSpec("random", side, from, to, EdgeStyle.Faired) { LeastRadius = 600, Taper = 40 })
            {
                Deck =
                new() { Width = 20 }
            };
            var plan = Bench.Plan(new(spec, new PlatformSite(Scale, 8), chart.Line, envelope, budget) { StartsAtBuffers = true, EndsAtBuffers = true });
            Point2[] places = [.. touched.Where(p => (int)side * chart.Line.Locate(p).Offset > 0)];
            Assert.NotEmpty(places);
            foreach (var style in Enum.GetValues<EdgeStyle>())
            {
                Point2[] edge = [.. plan.Stations.Select((s, j) => plan.ToLayout(s, plan.Alternatives[(int)style].Reach[j]))];
                double least = places.Min(p => Distance(edge, p));
                Assert.True(least >= budget.Margin - Rounding, $"{style} on the {side}: {least}");
            }

            EdgeProperties.KeepsRadiusAndTaper(plan);
            for (int j = 0; j < plan.Stations.Length; j++)
            {
                double[] reach = [.. plan.Alternatives.Select(a => a.Reach[j])];
                Assert.True(reach[0] <= reach[1] && reach[1] <= reach[2]);
            }
        }
    }

    // Kinks that the chart rounds off, a corner's way that is hollow there, slopes of 1 in 8.
    [Property(MaxTest = 1, Replay = "6937958343294214255,589309143870955705,4")]
    public void A_nose_that_swings_in_steeply_after_a_kink_is_kept_off(RunCase run) =>
        Every_style_keeps_the_budget_in_every_direction_closer_styles_are_nowhere_farther_and_the_faired_one_keeps_its_bend_and_taper(run);

    private static double Distance(Point2[] line, Point2 p)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i + 1 < line.Length; i++)
        {
            var along = line[i + 1] - line[i];
            double share = Math.Clamp(Point2.Dot(p - line[i], along) / Point2.Dot(along, along), 0, 1);
            least = Math.Min(least, (line[i] + (along * share) - p).Length);
        }

        return least;
    }
}
