using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>A straight platform 30 mm past a reverse curve, 1:148: vehicles still slew when they reach it. Figures of USERS.md (f) 3.</summary>
public class QuillhavenEdgeTests
{
    private const double CurveEnd = 260 + 78 + 78;

    private static readonly ModelScale Scale = new(148);

    private static readonly Centreline Track =
        TrackLayer.Lay(new("main", new Point2(0, 0), 0, [new StraightSpec(260), new CurveSpec(450, Hand.Left, Length: 78),
            new CurveSpec(450, Hand.Right, Length: 78), new StraightSpec(700)])).Value!;

    private static readonly Vehicle[] Vehicles =
    [
        new("long coach", 97, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -68, 68, 18.6, 7, 26)]),
        new("short coach", 82, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -59, 59, 18.4, 7, 26)]),
        new("tank engine", 30, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -36, 36, 18, 7, 25),
            VehiclePart.Box("cylinders", PartCarrier.Body, -34, 34, 19, 1.5, 5.5)]),
    ];

    private static PlatformPlan Plan(EdgeStyle edge)
    {
        var spec = PlatformSpec.For(Scale, "main face", new FaceSpec("main", Side.Left, CurveEnd + 30, 900, edge));
        var envelope = EnvelopeSweeper.Sweep(new EnvelopeRequest(Track, spec.Face.From, spec.Face.To, [new TrackRun(Track, Vehicles)])).Value!;
        return Bench.Plan(new(spec, new PlatformSite(Scale, 5), Track, envelope, ClearanceBudget.Of(0.5)));
    }

    [Theory]
    [InlineData(EdgeStyle.Fitted)]
    [InlineData(EdgeStyle.Faired)]
    public void An_edge_just_past_a_reverse_curve_is_eased_and_comes_back_to_what_plain_straight_needs(EdgeStyle edge)
    {
        var front = Plan(edge).CopingFront;

        // Reach 10.6 at 40 mm past the crossover, 10.0 at 60, 9.6 at 80 and 9.5 on plain straight, within 0.1 mm; half a millimetre is kept.
        Assert.InRange(front.At(CurveEnd + 40), 11.0, edge == EdgeStyle.Fitted ? 11.2 : 11.4);
        Assert.InRange(front.At(CurveEnd + 60), 10.4, edge == EdgeStyle.Fitted ? 10.6 : 11.0);
        Assert.Equal(10, front.At(CurveEnd + 200), 0.03);
        Assert.Equal(10, front.At(900), 0.03);
    }

    [Fact]
    public void A_platform_designed_from_plain_straight_would_be_fouled_and_the_long_coach_is_named()
    {
        var plan = Plan(EdgeStyle.Fitted);
        const double fromStraight = 9.5 + 0.5;
        Assert.True(plan.Requirement.Swept[0] > fromStraight, $"reach {plan.Requirement.Swept[0]}");
        Assert.Equal("long coach", plan.Requirement.Vehicles[plan.Requirement.GoverningVehicle[0]]);
        Assert.Equal("cylinders", plan.Requirement.GoverningPart[^1]);
    }

    [Fact]
    public void One_offset_for_all_of_it_costs_a_gap_that_the_faired_edge_does_not()
    {
        var plan = Plan(EdgeStyle.Faired);
        double uniform = plan.Alternatives[(int)EdgeStyle.Uniform].At(800), faired = plan.CopingFront.At(800);
        Assert.InRange(uniform - faired, 0.9, 1.6);
    }
}
