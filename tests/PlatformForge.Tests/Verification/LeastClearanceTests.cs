using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Verification;
using Xunit;

namespace PlatformForge.Tests.Verification;

public class LeastClearanceTests
{
    private const double Rounding = 1e-6;

    [Fact]
    public void On_straight_track_the_clearance_is_the_reach_less_half_the_width()
    {
        var track = Pieces.Straight(1200);
        var verdict = SectionsVerifier.Verify([Pieces.Section(Pieces.Bar(track, 400, 800, 19, 70, 0, 20))], Pieces.Facts(track, Pieces.Coach(width: 34.5)));
        Assert.Empty(verdict.Findings);
        Assert.Equal(19 - 17.25, verdict.Closest!.Clearance, Rounding);
        Assert.Equal(19, verdict.Closest.Offset, Rounding);
        Assert.InRange(verdict.Closest.Chainage, 400, 800);
        Assert.InRange(verdict.Closest.Height, 2, 12);
        Assert.Equal(("coach", "body", "up", "Pendlewick 1 of 1"),
            (verdict.Closest.Vehicle, verdict.Closest.Part, verdict.Closest.Track, verdict.Closest.Section));
    }

    // The centre of a body rides inside its pivots' circle by R - sqrt(R² - (a/2)²), its corner lies at sqrt((sqrt(R² - (a/2)²) + w/2)² + (l/2)²)
    // from the centre of the curve: plain geometry of a chord.
    [Theory]
    [InlineData(760, 262, 188, 34.5)]
    [InlineData(610, 228, 162, 34)]
    [InlineData(450, 136, 97, 18.6)]
    public void On_a_curve_the_clearance_is_that_of_the_chord(double radius, double length, double pivots, double width)
    {
        var track = Pieces.Curve(1500, radius);
        const double Reach = 40;
        const int Facets = 40;
        var outside = SectionsVerifier.Verify([Pieces.Section(Pieces.Bar(track, 600, 800, -Reach, -Reach - 10, 0, 20, Facets))],
            Pieces.Facts(track, Pieces.Coach(length, pivots, width)));
        var inside = SectionsVerifier.Verify([Pieces.Section(Pieces.Bar(track, 600, 800, Reach, Reach + 10, 0, 20, Facets))],
            Pieces.Facts(track, Pieces.Coach(length, pivots, width)));

        double middle = Math.Sqrt((radius * radius) - (pivots * pivots / 4));
        double corner = Math.Sqrt(Math.Pow(middle + (width / 2), 2) + (length * length / 4));

        // On the outside the bar's facets come nearer midway, by their versine; on the inside their corners are nearest.
        double facet = 200.0 / Facets * (radius + Reach) / radius, versine = facet * facet / (8 * (radius + Reach));
        Assert.Equal(radius + Reach - versine - corner, outside.Closest!.Clearance, 1e-3);
        Assert.Equal(middle - (width / 2) - (radius - Reach), inside.Closest!.Clearance, 1e-3);
    }

    /// <summary>
    /// A straight bar in one piece on the inside of a curve is nearest at its ends, which lie on its circle: nothing beyond them counts, and nothing between.
    /// The body's middle sweeps a circle of √(R² − (a/2)²) − w/2.
    /// </summary>
    [Theory]
    [InlineData(760, 600, 800)]
    [InlineData(760, 640, 660)]
    [InlineData(450, 500, 740)]
    public void A_straight_bar_inside_a_curve_is_nearest_at_its_ends(double radius, double from, double to)
    {
        const double Reach = 30, Pivots = 97, Width = 18.6;
        var track = Pieces.Curve(1500, radius);
        var verdict = SectionsVerifier.Verify([Pieces.Section(Pieces.Bar(track, from, to, Reach, Reach + 10, 0, 20))],
            Pieces.Facts(track, Pieces.Coach(136, Pivots, Width)));
        double middle = Math.Sqrt((radius * radius) - (Pivots * Pivots / 4));
        Assert.Equal(middle - (Width / 2) - (radius - Reach), verdict.Closest!.Clearance, 1e-3);
        Assert.Contains(new[] { from, to }, end => Math.Abs(end - verdict.Closest.Chainage) < 1);
    }

    [Fact]
    public void A_bogie_draws_the_pivot_inside_the_curve_by_the_versine_of_its_wheelbase()
    {
        const double Radius = 600, Pivots = 180, Wheelbase = 36, Width = 34, Reach = 40;
        var track = Pieces.Curve(1500, Radius);
        var verdict = SectionsVerifier.Verify([Pieces.Section(Pieces.Bar(track, 600, 800, Reach, Reach + 10, 0, 20, 40))],
            Pieces.Facts(track, Pieces.Coach(250, Pivots, Width, Wheelbase)));
        double pivotCircle = Math.Sqrt((Radius * Radius) - (Wheelbase * Wheelbase / 4));
        double middle = Math.Sqrt((pivotCircle * pivotCircle) - (Pivots * Pivots / 4));
        Assert.Equal(middle - (Width / 2) - (Radius - Reach), verdict.Closest!.Clearance, 1e-3);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(3)]
    public void A_section_moved_toward_the_track_loses_as_much(double moved)
    {
        var track = Pieces.Straight(1200);
        var mesh = Pieces.Bar(track, 400, 800, 19, 70, 0, 20);
        var verdict = SectionsVerifier.Verify([Pieces.Section(mesh) with { ToLayout = RigidTransform.Shift(0, -moved, 0) }],
            Pieces.Facts(track, Pieces.Coach(width: 34.5)));
        Assert.Equal(1.75 - moved, verdict.Closest!.Clearance, Rounding);
        Assert.Equal(moved <= 1.75, verdict.Passed);
    }

    [Fact]
    public void A_vehicle_that_runs_into_a_section_is_a_broken_design_rule_with_figures()
    {
        var track = Pieces.Straight(1200);
        var verdict = SectionsVerifier.Verify([Pieces.Section(Pieces.Bar(track, 400, 800, 17, 70, 0, 20))], Pieces.Facts(track, Pieces.Coach(width: 34.5)));
        var finding = Assert.Single(verdict.Findings);
        Assert.Equal(("PF8020", PlatformForge.Units.FaultKind.DesignRule), (finding.Code, finding.Kind));
        Assert.Contains("0.25 mm", finding.Message, StringComparison.Ordinal);
        Assert.Contains("Pendlewick 1 of 1", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_section_across_the_track_is_as_deep_as_half_the_vehicle()
    {
        var track = Pieces.Straight(1200);
        var verdict = SectionsVerifier.Verify([Pieces.Section(Pieces.Bar(track, 500, 600, -60, 60, 0, 20))], Pieces.Facts(track, Pieces.Coach(width: 34.5)));
        Assert.InRange(verdict.Closest!.Clearance, -17.25 - Rounding, -17.2);
    }

    [Fact]
    public void What_lies_below_or_above_a_part_is_no_matter_to_it()
    {
        var track = Pieces.Straight(1200);
        var low = Pieces.Bar(track, 400, 800, 10, 70, 0, Pieces.RailTop + 1.5);
        var high = Pieces.Bar(track, 400, 800, 5, 70, Pieces.RailTop + 41, Pieces.RailTop + 50);
        Assert.Null(SectionsVerifier.Verify([Pieces.Section(low), Pieces.Section(high)], Pieces.Facts(track, Pieces.Coach())).Closest);
    }

    [Fact]
    public void A_vertical_allowance_makes_a_part_taller_both_ways()
    {
        var track = Pieces.Straight(1200);
        var low = Pieces.Bar(track, 400, 800, 10, 70, 0, Pieces.RailTop + 1.5);
        var verdict = SectionsVerifier.Verify([Pieces.Section(low)], Pieces.Facts(track, Pieces.Coach()) with { VerticalAllowance = 0.6 });
        Assert.Equal(10 - 17.25, verdict.Closest!.Clearance, Rounding);
    }

    [Fact]
    public void A_body_above_the_coping_counts_where_it_may_not_pass_over()
    {
        var track = Pieces.Straight(1200);
        var vehicle = new Vehicle("coach", 188, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -130, 130, 34, 14, 45),
            VehiclePart.Box("steps", PartCarrier.Body, -130, 130, 30, 3, 10)]);
        var section = Pieces.Section(Pieces.Bar(track, 400, 800, 18.5, 70, 0, Pieces.RailTop + 12));
        var facts = Pieces.Facts(track, vehicle);
        Assert.Equal(3.5, SectionsVerifier.Verify([section], facts).Closest!.Clearance, Rounding);
        Assert.Equal(1.5, SectionsVerifier.Verify([section], facts with { HeldDownTo = -Pieces.RailTop }).Closest!.Clearance, Rounding);
    }

    [Theory]
    [InlineData(12, true)]
    [InlineData(14, true)]
    [InlineData(16, false)]
    public void A_height_is_named_that_the_part_has_or_it_is_said_to_be_in_plan(double top, bool inPlan)
    {
        var track = Pieces.Straight(1200);
        var vehicle = new Vehicle("coach", 188, 0, 0, [VehiclePart.Box("body", PartCarrier.Body, -130, 130, 34, 14, 45)]);
        var section = Pieces.Section(Pieces.Bar(track, 400, 800, 18.5, 70, 0, Pieces.RailTop + top));
        var near = SectionsVerifier.Verify([section], Pieces.Facts(track, vehicle) with { HeldDownTo = -Pieces.RailTop }).Closest!;
        Assert.Equal((1.5, inPlan, 14.0, section.Platform), (Math.Round(near.Clearance, 3), near.InPlan, Math.Round(near.Underside, 9), near.Platform));
        Assert.Equal(!inPlan, near.Height >= near.Underside - Rounding && near.Height <= top + Rounding);
    }

    [Fact]
    public void Play_and_budget_are_asked_of_every_point()
    {
        var track = Pieces.Straight(1200);
        var facts = Pieces.Facts(track, Pieces.Coach(262, 188, 34.5)) with { Play = new RunningPlay(0.2), Asked = 1.2 };
        double yaw = Math.Asin(2 * 0.2 / 188), played = (17.25 * Math.Cos(yaw)) + (131 * Math.Sin(yaw)); // yawed by its play: furthest at the ends
        var kept = SectionsVerifier.Verify([Pieces.Section(Pieces.Bar(track, 400, 800, played + 1.2, 70, 0, 20))], facts);
        Assert.Empty(kept.Findings);
        Assert.Equal(0, kept.Tightest!.Clearance, Rounding);
        var broken = SectionsVerifier.Verify([Pieces.Section(Pieces.Bar(track, 400, 800, played + 1.19, 70, 0, 20))], facts);
        Assert.Equal("PF8021", Assert.Single(broken.Findings).Code);
        Assert.Equal(-0.01, broken.Tightest!.Clearance, Rounding);
    }

    [Fact]
    public void The_order_of_the_vehicles_is_no_matter()
    {
        var track = Pieces.Curve(1500, 700);
        Vehicle[] fleet = [Pieces.Coach(), Pieces.Coach(142, 66, 36, 0, "tank engine"), Pieces.Coach(84, 40, 32.5, 0, "van")];
        var section = Pieces.Section(Pieces.Bar(track, 500, 900, -24, -60, 0, 20, 40));
        var one = SectionsVerifier.Verify([section], Pieces.Facts(track, fleet));
        var other = SectionsVerifier.Verify([section], Pieces.Facts(track, [.. fleet.Reverse()]));
        Assert.Equal(one.Closest, other.Closest);
        Assert.Equal(one.Vehicles, other.Vehicles.Reverse());
    }

    [Fact]
    public void An_unequal_vehicle_is_also_tried_the_other_way_round()
    {
        var track = Pieces.Straight(1200);
        var engine = new Vehicle("engine", 74, 0, 0, [VehiclePart.Box("frames", PartCarrier.Body, -75, 75, 30, 2, 40),
            new("left cylinder", PartCarrier.Body, [new(62, 10), new(84, 10), new(84, 17.75), new(62, 17.75)], 2, 9)]);
        var right = Pieces.Section(Pieces.Bar(track, 400, 800, -20, -70, 0, 20));
        var verdict = SectionsVerifier.Verify([right], Pieces.Facts(track, engine));
        Assert.Equal(2.25, verdict.Closest!.Clearance, Rounding);
        Assert.True(verdict.Closest.Backwards);
        Assert.Equal(5, SectionsVerifier.Verify([right], Pieces.Facts(track, engine with { EitherWayRound = false })).Closest!.Clearance, Rounding);
    }

    [Fact]
    public void A_vehicle_longer_than_its_track_is_told_so()
    {
        var track = Pieces.Straight(150);
        var verdict = SectionsVerifier.Verify([Pieces.Section(Pieces.Bar(track, 20, 100, 24, 70, 0, 20))], Pieces.Facts(track, Pieces.Coach()));
        Assert.Equal("PF8022", Assert.Single(verdict.Findings).Code);
    }
}
