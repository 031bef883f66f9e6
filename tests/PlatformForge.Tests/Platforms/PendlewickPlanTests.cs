using PlatformForge.Clearance;
using PlatformForge.Platforms;
using PlatformForge.Tests.Fixtures;
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
    public void The_straight_halt_stands_at_the_cylinders_reach_and_the_budget()
    {
        var envelope = EnvelopeSweeper.Sweep(new EnvelopeRequest(StraightHalt.Track, 200, 380, [StraightHalt.Run])).Value!;
        var plan = Bench.Plan(new(StraightHalt.Platform, StraightHalt.Site, StraightHalt.Track, envelope, StraightHalt.Budget));

        // Tank engine's cylinders, 36 wide: 18 on plain straight (USERS.md (f) 1).
        Assert.All(plan.CopingFront.Reach, t => Assert.InRange(t, 19, 19 + (2 * Tolerances.EnvelopeError)));
        Assert.All(plan.Requirement.GoverningPart, p => Assert.Equal("cylinders", p));
    }
}
