using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Edges;
using PlatformForge.Platforms.Islands;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Rules;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Laws of plane geometry that the parts of a plan keep, each where a plain figure tells it.</summary>
public class PlainLawTests
{
    /// <summary>Between two tracks about one centre the line across is a radius, however sharp the curves: both turn by the same angle.</summary>
    [Theory]
    [InlineData(20, 15, 100, 60)]
    [InlineData(600, 20, 700, 20)]
    public void Lines_across_two_tracks_about_one_centre_are_radii(double inner, double fromInner, double outer, double fromOuter)
    {
        Centreline About(double radius) => new("t", [new(new(0, -radius), 0, 3 * radius, 1 / radius, 1 / radius)]);
        var ladder = new CrossLadder(new(About(inner), Side.Right, fromInner), new(About(outer), Side.Left, fromOuter));
        foreach (double angle in (double[])[0.3, 1, 2.5])
        {
            Assert.Equal(angle * outer, ladder.Across(angle * inner, (angle + 0.05) * outer)!.Value, 1e-6);
            Assert.Equal(angle * inner, ladder.Swapped.Across(angle * outer, (angle - 0.05) * inner)!.Value, 1e-6);
        }
    }

    /// <summary>A curve has its curvature from its first to its last millimetre; beyond both the track goes on straight.</summary>
    [Fact]
    public void A_curve_bends_from_end_to_end_and_no_farther()
    {
        var track = new Centreline("t", [new(new(0, 0), 0, 300, 1 / 500.0, 1 / 500.0)]);
        Assert.Equal([0, 0.002, 0.002, 0.002, 0.002, 0], new[] { -0.5, 0, 0.5, 299.5, 300, 300.5 }.Select(s => track.CurvatureAt(s)));
    }

    /// <summary>An arch has its ring however little it rises; a flat head has none.</summary>
    [Theory]
    [InlineData(OpeningHead.Segmental, 3, 112.5 / 76.2)]
    [InlineData(OpeningHead.Segmental, 12, 112.5 / 76.2)]
    [InlineData(OpeningHead.Flat, 3, 0)]
    public void An_arch_has_a_ring_of_half_a_brick(OpeningHead head, double width, double ring)
    {
        var spec = Bench.Straight().Spec with { Facing = FacingSpec.For(Bench.Site.Scale) };
        Assert.Equal(ring, OpeningRule.Ring(spec, new() { Head = head, Width = width, Ratio = 76.2 }), 1e-9);
    }

    /// <summary>A chamfer may take half of the lesser of the coping's width and thickness: of 8 by 1.2 mm 0.6.</summary>
    [Theory]
    [InlineData(0.59, false)]
    [InlineData(0.61, true)]
    public void A_chamfer_may_take_half_of_the_coping(double chamfer, bool refused)
    {
        var request = Bench.Straight(s => s with { Coping = s.Coping with { Width = 8, Thickness = 1.2, ArrisChamfer = chamfer } });
        Assert.Equal(refused, PlatformPlanner.Check(request.Spec, Bench.Site, request.Chart, [Bench.Fleet]).Any(f => f.Code == "PF4011"));
    }

    /// <summary>A line that curves at one end needs there what it needs at the other when it is turned end for end.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2.5)]
    public void A_disc_rolls_back_as_it_rolled_there(double budget)
    {
        double[] stations = [.. Enumerable.Range(0, 41).Select(i => (double)i)], swept = [.. stations.Select(s => 18 + (0.3 * s) + Math.Sin(s))];
        double[] there = BudgetDisc.Roll(stations, swept, budget, s => s > 20.5 ? 1 / 60.0 : 0);
        double[] back = BudgetDisc.Roll(stations, [.. swept.Reverse()], budget, s => s < 19.5 ? 1 / 60.0 : 0);
        Assert.Equal(there, back.Reverse(), (a, b) => Math.Abs(a - b) < 1e-9);
    }

    /// <summary>Where bodies may pass over it, a coping that is hinged round a curve stands nowhere higher than it is told; elsewhere it may, by a
    /// little.</summary>
    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void A_hinged_coping_that_bodies_pass_over_is_nowhere_higher_than_told(Side side)
    {
        double Highest(bool over)
        {
            var track = TrackLayer.Lay(new("up", new(0, 0), 0, [new CurveSpec(600, Hand.Left, Length: 1000)])).Value!;
            var face = new FaceSpec("up", side, 200, 800, EdgeStyle.Fitted) { BodiesPassOver = over };
            var spec = new PlatformSpec("up side", face) { Height = 12, Deck = new() { Width = 60, Crossfall = 40 } };
            var cylinders = VehiclePart.Box("cylinders", PartCarrier.Body, 20, 40, 34, 3, 10);
            var envelope = Bench.Envelope(track, side, _ => 17, new KeyValuePair<VehiclePart, Func<double, double>>(cylinders, _ => 17));
            var plan = Bench.Plan(new(spec, Bench.Site, track, envelope, ClearanceBudget.Of(running: 1)));
            return plan.Stations.Max(s => plan.Surface.At(s).At(plan.ToLayout(s, plan.CopingFront.At(s))) - plan.Profile.At(s));
        }

        Assert.InRange(Highest(true), double.NegativeInfinity, 1e-9);
        Assert.InRange(Highest(false), 1e-4, 1);
    }

    /// <summary>The first place beside the level platform counts as the others do.</summary>
    [Fact]
    public void The_least_gap_may_be_at_the_very_beginning()
    {
        double[] sills = [17.5, .. Enumerable.Repeat(17.0, 300)];
        var plan = Bench.Plan(Bench.Straight() with { Sills = [new(Bench.Fleet, 16, 200, 2, sills, sills)] });
        var row = plan.Gaps.Rows.Single(r => r.Style == EdgeStyle.Fitted);
        Assert.Equal((plan.CopingFront.At(200) - 17.5, 200.0), (row.Least, row.LeastAt));
    }

    /// <summary>A stretch between tracks without room for a platform, at one end of it: what is offered begins beyond it, and works.</summary>
    [Fact]
    public void A_platform_that_begins_beyond_the_narrows_as_offered_has_room()
    {
        PlatformRequest From(double from)
        {
            var request = Bench.Straight(s => s with { Deck = s.Deck with { Width = 55 }, Face = s.Face with { From = from } });
            var first = request.Envelope.Parts[0];
            double[] near = [.. Enumerable.Range(0, request.Envelope.Count).Select(s => s <= 400 ? -25.0 : -200)],
                far = [.. Enumerable.Repeat(240.0, near.Length)];
            return request with { Envelope = request.Envelope with { Parts = [first, new(1, Bench.Fleet, Bench.Fleet.Parts[0], far, near)] } };
        }

        var finding = Assert.Single(PlatformPlanner.Plan(From(200)).Findings, f => f.Code == "PF4022");
        Assert.Equal("platform[0].face.from", finding.Cure!.Key);
        double offered = double.Parse(finding.Cure.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(offered, 400, 403);
        Assert.DoesNotContain(PlatformPlanner.Plan(From(offered)).Findings, f => f.Severity == Severity.Error);
    }

    /// <summary>
    /// Outside a curve a fence is longer than its track: a gate whose middle is nearer to the fence's end along the track than half its width still has room.
    /// </summary>
    [Fact]
    public void A_gate_has_room_outside_a_curve_where_the_fence_is_long_enough()
    {
        const double Radius = 300, Width = 40;
        var track = TrackLayer.Lay(new("up", new(0, 0), 0, [new CurveSpec(Radius, Hand.Right, Length: 800)])).Value!;
        PlatformPlan Plan(params FenceGapSpec[] gaps)
        {
            var spec = new PlatformSpec("up side", new FaceSpec("up", Side.Left, 200, 600, EdgeStyle.Fitted)) { Deck = new() { Width = 60 } };
            return Bench.Plan(new(spec.With<FenceSpec>([new() { Gaps = gaps }]), Bench.Site, track, Bench.Envelope(track, Side.Left, _ => 18),
                ClearanceBudget.Of(running: 1)));
        }

        var plain = Plan();
        double last = plain.PostHoles.Max(p => p.Chainage), stretch = 1 + (plain.PostHoles[0].Reach / Radius), middle = last - (Width / 2 / stretch) - 0.5;
        Assert.True(last - middle < Width / 2);
        double[] posts = [.. Plan(new FenceGapSpec(middle - (Width / 2), middle + (Width / 2))).PostHoles.Select(p => p.Chainage).Order()];
        Assert.Contains(posts, p => Math.Abs(p - (middle + (Width / 2 / stretch))) < 0.1);
        Assert.Contains(posts, p => Math.Abs(p - (middle - (Width / 2 / stretch))) < 0.1);
    }

    /// <summary>A hole of 3 mm whose middle is 20 mm from the edge stands 18.5 mm behind it for those who publish clear widths.</summary>
    [Fact]
    public void A_thing_stands_as_far_from_the_edge_as_its_near_side()
    {
        var plan = Bench.Plan(Bench.Straight(s => s.With<HoleSpec>([new(500, 20, InsetFrom.Edge) { Diameter = 3, Fit = 0 }])));
        var (_, _, behind) = Assert.Single(PublishedRules.Subject(16.5, plan).Standing);
        Assert.Equal(18.5, behind, 1e-9);
    }

    /// <summary>A place is the origin of its line and so much of its direction; what a millimetre of chainage moves it by is what it moves by.</summary>
    [Fact]
    public void Lines_that_fan_out_stretch_by_what_their_places_move()
    {
        double[] stations = [0, 50, 100];
        Point2[] aways = [.. new[] { 0, 0.3, 0.5 }.Select(a => Point2.FromAngle((Math.PI / 2) + a))];
        var spine = new Spine(Pieces(), Side.Left, new(stations, [.. stations.Select(s => new Point2(s, 0))], aways, stations));
        foreach (double s in (double[])[10, 25, 80])
        {
            Assert.Equal(1, spine.Away(s).Length, 1e-12);
            Assert.Equal(0, Point2.Dot(spine.Away(s), spine.Tangent(s)), 1e-12);
            foreach (double reach in (double[])[0, 20, 40])
            {
                var moved = spine.ToLayout(s + 1e-4, reach) - spine.ToLayout(s - 1e-4, reach);
                Assert.Equal(Point2.Dot(moved, spine.Tangent(s)) / 2e-4, spine.Stretch(s, reach), 1e-6);
            }
        }

        static Centreline Pieces() => TrackLayer.Lay(new("up", new(0, 0), 0, [new StraightSpec(100)])).Value!;
    }
}
