using PlatformForge.Clearance.Sweeping;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Charts;
using Xunit;

namespace PlatformForge.Tests.Clearance.Bounds;

/// <summary>Bounds are not only safe but near: held against the most that really happens, on the tracks that they are made for.</summary>
public class BoundSlackTests
{
    private const double Step = SweepBounds.LongestStep;

    // Shares of the tolerance that what lies between stations may take.
    private const double StationCornerShare = 0.08, StationEdgeShare = 0.25, KinkShare = 0.2;

    /// <summary>
    /// Where a straight meets a curve a corner's trace bends by (λ + 1)/2 times the curvature; twice that is the bound, with what first order leaves
    /// out.
    /// </summary>
    [Theory]
    [InlineData(760, 188, 0, 131)]
    [InlineData(450, 97, 0, 68)]
    [InlineData(500, 100, 24, 70)]
    public void At_a_joint_a_corner_comes_near_what_is_added_for_it(double radius, double pivots, double wheelbase, double half)
    {
        var own = On(Coach(pivots, half, wheelbase), new StraightSpec(1200), new CurveSpec(radius, Hand.Right, Length: 1200));
        double most = 0;
        for (double u = 1100; u < 1320; u += 1.5)
        {
            TrackPlace[] from = own.Places(u), middle = own.Places(u + (Step / 2)), to = own.Places(u + Step);
            double added = own.Bounds.CornerAllowance(u, Step, 0) - own.Bounds.CornerAllowance(u, 0, 0);
            most = Math.Max(most, Enumerable.Range(0, 4).Max(i => Math.Abs(middle[i].Offset - ((from[i].Offset + to[i].Offset) / 2)) / (added + 1e-9)));
        }

        Assert.InRange(most, 0.25, 1);
    }

    /// <summary>On an even curve an edge seen from a station bends by the curvature, and so is the bound, but for squares of slews and k·R.</summary>
    [Theory]
    [InlineData(760, 188, 131)]
    [InlineData(450, 97, 68)]
    public void On_an_even_curve_an_edge_comes_near_what_is_added_for_it(double radius, double pivots, double half)
    {
        var own = On(Coach(pivots, half), new CurveSpec(radius, Hand.Left, Length: 2400));
        Point2[] from = own.Corners(1200), middle = own.Corners(1200 + (Step / 2)), to = own.Corners(1200 + Step);
        var places = own.Places(1200 + (Step / 2));
        double most = Enumerable.Range(0, 4).Where(i => own.Form.Corners[i].EdgeSide != 0).Max(i =>
        {
            int next = own.Form.Corners[i].Next, side = own.Form.Corners[i].EdgeSide;
            double station = (places[i].Chainage + places[next].Chainage) / 2;
            double Seen(Point2[] at) => side * own.Crossing(at[i], at[next], station);
            return Seen(middle) - ((Seen(from) + Seen(to)) / 2);
        });
        double added = own.Bounds.EdgeAllowance(1200, Step, Step, 0) - own.Bounds.EdgeAllowance(1200, 0, 0, 0);
        Assert.InRange(most / added, 0.65, 1);
    }

    /// <summary>A place on the vehicle speeds up across itself as the curvature under it does.</summary>
    [Theory]
    [InlineData(760, 188, 131)]
    [InlineData(450, 97, 68)]
    public void At_a_joint_an_edge_is_left_at_near_the_speed_allowed_for(double radius, double pivots, double half)
    {
        var own = On(Coach(pivots, half), new StraightSpec(1200), new CurveSpec(radius, Hand.Right, Length: 1200));
        double most = 0;
        for (double u = 1100; u < 1320; u += 3)
        {
            for (int i = 0; i < 4; i++)
            {
                double Speed(double at)
                {
                    Point2[] a = own.Corners(at - 0.01), b = own.Corners(at + 0.01), on = own.Corners(at);
                    var edge = on[own.Form.Corners[i].Next] - on[i];
                    return own.Form.Corners[i].EdgeSide == 0 ? 0 : Point2.Cross(b[i] - a[i], edge) / (edge.Length * 0.02);
                }

                most = Math.Max(most, Math.Abs(Speed(u + Step) - Speed(u)) / (own.Bounds.EdgeDrift(u, 0, Step) + 1e-9));
            }
        }

        Assert.InRange(most, 0.25, 1);
    }

    /// <summary>
    /// All of a straight and of a curve is glided but for the vehicle's length with a fifth more, a step at both ends and a bin of 8 mm or two.
    /// </summary>
    [Fact]
    public void A_long_straight_and_a_long_curve_are_glided()
    {
        const double Half = 131;
        var own = On(Coach(188, Half), new StraightSpec(1500), new CurveSpec(800, Hand.Left, Length: 900), new StraightSpec(1500));
        double ahead = 1.2 * (Half - 94), behind = 1.2 * (Half + 94), lost = Step + (2 * RunSpan.Bin);
        foreach (var (from, to) in new[] { (own.Bounds.First, 1500.0), (1500.0 + behind + lost, 2400.0), (2400.0 + behind + lost, double.PositiveInfinity) })
        {
            Assert.InRange(own.Bounds.GlideEnd(from), Math.Min(to - ahead - lost, own.Bounds.Last), to - (Half - 94));
        }

        Assert.True(own.Bounds.GlideEnd(1500) <= 1500); // at the joint itself it turns
    }

    /// <summary>Stations are no closer than a bound asks for: what they are chosen for is all but used at some place.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.004)]
    public void Stations_are_no_closer_than_a_bound_asks_for(double kink)
    {
        AlignmentElementSpec[] specs = [new StraightSpec(1200), new CurveSpec(500, Hand.Left, Length: 150), new StraightSpec(1200)];
        var ride = RunCase.Lay(specs, [kink]);
        var own = new BoundCase(ride, KinkRounder.Chart(ride).Line, Coach(100, 70), (1150, 1400));
        double spacing = own.Bounds.Spacing, tolerance = BoundCase.Tolerance, used = 0;
        for (double u = own.Bounds.First; u < own.Bounds.Last; u += 4)
        {
            used = Math.Max(used, (own.Bounds.CornerAllowance(u, 0, spacing) - own.Bounds.CornerAllowance(u, 0, 0)) / (StationCornerShare * tolerance));
            used = Math.Max(used, (own.Bounds.EdgeAllowance(u, 0, 0, spacing) - own.Bounds.EdgeAllowance(u, 0, 0, 0)) / (StationEdgeShare * tolerance));
        }

        // A kink bends the trace of a corner, 70 from midway between points 100 apart, by 1.4 times its turn.
        used = Math.Max(used, kink * 1.4 * spacing / 4 / (KinkShare * tolerance));
        Assert.InRange(used, 0.6, 1.0001);
    }

    private static Vehicle Coach(double pivots, double half, double wheelbase = 0) =>
        new("coach", pivots, wheelbase, wheelbase, [VehiclePart.Box("body", PartCarrier.Body, -half, half, 30, 4, 50)]);

    private static BoundCase On(Vehicle vehicle, params AlignmentElementSpec[] specs)
    {
        var track = DemoStock.Lay("track", specs);
        return new(track, track, vehicle, (1000, track.Length - 1000));
    }
}
