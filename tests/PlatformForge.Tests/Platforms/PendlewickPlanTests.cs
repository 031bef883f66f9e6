using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>The first demo place from its list of elements to a plan, with vehicles really swept.</summary>
public class PendlewickPlanTests
{
    private static readonly SweptEnvelope Envelope = EnvelopeSweeper.Sweep(new EnvelopeRequest(Pendlewick.Track, 270, 1000, [Pendlewick.Run])).Value!;

    private static PlatformRequest Request(EdgeStyle edge) => new(Pendlewick.Platform(edge), Pendlewick.Site, Pendlewick.Track, Envelope, Pendlewick.Budget);

    [Theory]
    [InlineData(270, 18.5)]
    [InlineData(350, 20.1)]
    [InlineData(450, 21.8)]
    [InlineData(550, 22.46)]
    [InlineData(800, 22.46)]
    public void The_fitted_edge_is_the_expected_reach_and_the_budget(double chainage, double reach)
    {
        // Reach figures of an independent simulation, within 0.1 mm: USERS.md (f) 1. They step the vehicles by 2 mm.
        var plan = Bench.Plan(Request(EdgeStyle.Fitted));
        Assert.Equal(reach + Pendlewick.Budget.Margin, plan.CopingFront.At(chainage), 0.1);
    }

    [Fact]
    public void The_long_coach_governs_the_outside_of_the_curve()
    {
        var trace = Bench.Plan(Request(EdgeStyle.Fitted)).Requirement;
        for (int i = 0; i < trace.Stations.Length; i++)
        {
            if (trace.Stations[i] is > 550 and < 950)
            {
                Assert.Equal("long coach", trace.Vehicles[trace.GoverningVehicle[i]]);
                Assert.Equal("body", trace.GoverningPart[i]);
            }
        }
    }

    [Fact]
    public void Everything_asked_for_is_in_the_plan()
    {
        var plan = Bench.Plan(Request(EdgeStyle.Faired));
        Assert.Equal(270 + 96, plan.Profile.StartHead, 1e-9);
        Assert.Equal(1000 - 96, plan.Profile.EndHead, 1e-9);
        Assert.Equal(2, plan.Sockets.Count);
        Assert.Equal(6, plan.PostHoles.Count); // four panels in two runs
        Assert.NotNull(plan.WhiteLine);
        Assert.Equal(60, plan.CopingJoints.Length);
        Assert.InRange(plan.CutCandidates.Count, 30, 60);
        Assert.Equal(2, plan.CutCandidates.Count(c => c.Rank == CutRank.RampHead));
        Assert.All(plan.Back.Reach.Zip(plan.CopingFront.Reach), w => Assert.Equal(62, w.First - w.Second, 1e-9));
    }

    [Fact]
    public void All_five_vehicles_standing_anywhere_keep_the_running_clearance_to_the_edge()
    {
        // Poses of this test's own, corner by corner, not those of the envelope.
        var plan = Bench.Plan(Request(EdgeStyle.Fitted));
        double least = double.PositiveInfinity;
        foreach (var vehicle in Pendlewick.Vehicles)
        {
            for (double s = 100; s < 1350; s += 3.7)
            {
                if (!PoseSolver.TryPlace(Pendlewick.Track, vehicle, s, out var pose))
                {
                    continue;
                }

                foreach (var corner in vehicle.Parts.SelectMany(p => p.Outline.Select(o => pose.Of(p.Carrier).Apply(o))))
                {
                    var place = plan.Chart.Locate(corner, s);
                    if (place.Chainage > 270 && place.Chainage < 1000 && (int)plan.Side * place.Offset > 0)
                    {
                        least = Math.Min(least, plan.CopingFront.At(place.Chainage) - ((int)plan.Side * place.Offset));
                    }
                }
            }
        }

        Assert.InRange(least, Pendlewick.Budget.Margin - 1e-6, Pendlewick.Budget.Margin + (4 * Tolerances.FacetVersine));
    }

    [Fact]
    public void On_the_even_curve_the_gap_runs_from_the_doors_at_the_ends_to_those_at_mid_length()
    {
        // By hand, R = 760: the long coach (pivots 188 apart, half width 17.25, doors to 121 from its middle) has its middle at h = √(R² − 94²) from the
        // curve's centre. A door x from the middle then reaches √((h + 17.25)² + x²) − R outwards (STANDARDS F1, F3).
        var request = new EnvelopeRequest(Pendlewick.Track, 270, 1000, [Pendlewick.Run]);
        var plan = Bench.Plan(Request(EdgeStyle.Fitted) with { Sills = SillSurvey.Over(request, Side.Right) });
        double h = Math.Sqrt((760 * 760) - (94 * 94)) + 17.25, edge = plan.CopingFront.At(700);
        var trace = plan.Gaps.Traces.Single(t => t.Vehicle == "long coach");
        int at = Array.FindIndex(trace.Stations, s => s > 700);
        Assert.Equal(edge - (Math.Sqrt((h * h) + (121 * 121)) - 760), trace.Nearest[at], 0.03);
        Assert.Equal(edge - (h - 760), trace.Farthest[at], 0.03);

        // Two coaches have sills; three styles; the largest gap is the one at mid-length on the curve, far over the 275 mm of full size.
        Assert.Equal(6, plan.Gaps.Rows.Count);
        var row = plan.Gaps.Rows.Single(r => r is { Style: EdgeStyle.Fitted, Vehicle: "long coach" });
        Assert.Equal(edge - (h - 760), row.Largest, 0.04);
        Assert.InRange(row.Mean, row.Least, row.Largest);
        Assert.False(row.HorizontalWithinLimit);
    }

    [Fact]
    public void The_straight_halt_stands_at_the_cylinders_reach_and_the_budget()
    {
        var envelope = EnvelopeSweeper.Sweep(new EnvelopeRequest(StraightHalt.Track, 200, 380, [StraightHalt.Run])).Value!;
        var plan = Bench.Plan(new(StraightHalt.Platform, StraightHalt.Site, StraightHalt.Track, envelope, StraightHalt.Budget));

        // Tank engine's cylinders, 36 wide: 18 on plain straight (USERS.md (f) 1).
        Assert.All(plan.CopingFront.Reach, t => Assert.InRange(t, 19, 19 + (2 * Tolerances.EnvelopeError)));
        Assert.All(plan.Requirement.GoverningPart, p => Assert.Equal("cylinders", p));
    }
}
