using FsCheck.Xunit;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Holes, pillars, sockets and seats: the room they take, what goes on below them, and ribs beside them, by plain sums.</summary>
public class FurnitureTests
{
    /// <summary>A recess 4 deep in a deck of 1.5 with 1.2 mm of material round and under it, which hangs below the deck.</summary>
    [Fact]
    public void The_solid_gains_a_socket_s_boss_and_lacks_its_recess()
    {
        double Volume(params SocketSpec[] sockets) =>
            SolidRaiser.Raise(PlatformBody.Blocks(Workbench.Straight(600, change: s => s.With(sockets))).All).ColumnVolume;
        const double Along = 3.2, Across = 2.2, Depth = 4, Deck = 1.5;
        double boss = FeatureSite.Boss(new("p", new FaceSpec("up", Side.Left, 0, 1)) { Deck = new() { Thickness = Deck } }, Depth);
        double gained = ((Along + (2 * boss)) * (Across + (2 * boss)) * (Depth + boss - Deck)) - (Along * Across * Depth);

        // And the chamfer of its mouth: a prism along each side, and a pyramid in parts at each corner.
        double mouth = new DeckSpec().MouthChamfer;
        gained -= ((Along + Across) * mouth * mouth) + (4 * mouth * mouth * mouth / 3);
        Assert.Equal(gained, Volume(new SocketSpec(500, 25) { Along = Along - 0.2, Across = Across - 0.2, Fit = 0.2, Depth = Depth }) - Volume(), 0.01);
    }

    [Theory]
    [InlineData(null, 1)]
    [InlineData(1.0, 0)]
    public void A_hole_goes_on_into_the_board_where_it_goes_right_through_the_deck(double? depth, int holes)
    {
        var hole = Bench.Plan(Bench.Straight(s => s.With<HoleSpec>([new(500, 12) { Diameter = 1.5, Fit = 0.1, Depth = depth }]))).Features[0];
        Assert.Equal(holes, hole.BoardHoles.Count);
        Assert.AllOrNone(hole.BoardHoles, b => Assert.Equal((500, 1.6), (b.Place.Chainage, b.Diameter)));
    }

    /// <summary>A pillar is its pilot hole, three quarters of the screw and the fit, with its wall all round, wherever the curve draws chainages
    /// together.</summary>
    [Property(MaxTest = 8)]
    public void A_fixing_keeps_others_off_its_pillar_and_no_farther(int seed)
    {
        var plan =
            Bench.Plan(Bench.Request(seed, EdgeStyle.Fitted,
                s => s.With<FixingSpec>([new((s.Face.From + s.Face.To) / 2, 20) { Screw = 3, Wall = 2, Fit = 0.2 }])));
        var kept = Assert.Single(plan.Keepouts);
        double radius = (((0.75 * 3) + 0.2) / 2) + 2, reach = (kept.Near + kept.Far) / 2;
        Assert.Equal(2 * radius, kept.Far - kept.Near, 1e-9);
        Assert.Equal(2 * radius, (plan.ToLayout(kept.To, reach) - plan.ToLayout(kept.From, reach)).Length, 0.02);
    }

    /// <summary>Its pillar, 3.125 mm to either side of the screw, has to lie within the platform from end to end.</summary>
    [Theory]
    [InlineData(202, true)]
    [InlineData(210, false)]
    [InlineData(798, true)]
    public void A_fixing_whose_pillar_would_stand_out_of_the_end_is_refused(double at, bool isWrong) =>
        Assert.Equal(isWrong, !PlatformPlanner.Plan(Bench.Straight(s => s.With<FixingSpec>([new(at, 20)]))).Succeeded);

    [Theory]
    [InlineData(PlatformEnd.Start, 212)]
    [InlineData(PlatformEnd.End, 788)]
    public void A_channel_for_wires_is_as_wide_as_asked_and_leaves_the_end_wall_whole(PlatformEnd towards, double at)
    {
        var plan = Bench.Plan(Bench.Straight(s => s.With<LampSpec>([new(at, 15) { Towards = towards, Channel = 2.5 }])));
        var channel = plan.Keepouts.Single(k => k.Holds(KeptOff.Joints));
        Assert.Equal(2.5, channel.Far - channel.Near, 1e-9);
        double wall = plan.Spec.Walls.EndThickness;
        Assert.InRange(towards == PlatformEnd.End ? 800 - channel.To : channel.From - 200, wall, 2 * wall);
    }

    /// <summary>
    /// Vehicles reach 18 mm, and 26 over 40 mm near one end of a seat 60 long: it is told what it lacks there, and the inset that is offered gives it.
    /// </summary>
    [Theory]
    [InlineData(525)]
    [InlineData(475)]
    public void A_long_seat_is_held_to_vehicles_from_end_to_end(double bulge)
    {
        PlatformRequest With(double inset)
        {
            var request = Bench.Straight(s => (s with { Deck = s.Deck with { Width = 60 }, Face = s.Face with { BodiesPassOver = true } })
                .With<SocketSpec>([new(500, inset, InsetFrom.Edge) { Along = 60, Across = 10, Fit = 0, Depth = 0.5 }]));
            var low = VehiclePart.Box("cylinders", PartCarrier.Body, 20, 40, 34, 3, 10);
            var body = VehiclePart.Box("body", PartCarrier.Body, -50, 50, 40, 16, 50);
            var dense = Bench.Envelope(request.Chart, Side.Left, _ => double.NegativeInfinity, new(low, _ => 17),
                new(body, s => Math.Abs(s - bulge) < 20 ? 32 : 18));

            // Told every second millimetre.
            static double[] Half(double[] of) => [.. of.Where((_, i) => i % 2 == 0)];
            PartReach[] parts = [.. dense.Parts.Select(p => new PartReach(0, p.Vehicle, p.Part, Half(p.Left), Half(p.Right)))];
            return request with { Envelope = new(0, 2, parts[0].Left.Length, parts, 0.01) };
        }

        // The coping at 17 and 1; the seat's near side 13.5 behind it.
        var wrong = Assert.Single(PlatformPlanner.Plan(With(18.5)).Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF4023", "platform[0].board[0].inset"), (wrong.Code, wrong.Cure!.Key));
        double offered = double.Parse(wrong.Cure.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(32 + 1 - 18 + 5, offered, 0.002);
        Assert.DoesNotContain(PlatformPlanner.Plan(With(offered)).Findings, f => f.Severity == Severity.Error);
    }

    /// <summary>A rib along the middle gives way to a socket to the nearer side, and stands right beside it.</summary>
    [Theory]
    [InlineData(-0.4)]
    [InlineData(0.4)]
    public void A_rib_along_steps_aside_to_the_nearer_side(double off)
    {
        var free = Middle(Assert.Single(Along(Bench.Plan(Bench.Straight()))));
        var plan = Bench.Plan(Bench.Straight(s => s.With<SocketSpec>([new(500, Edge(s) - free + off)])));
        var socket = Assert.Single(plan.Sockets);
        var rib = Assert.Single(Along(plan));
        Assert.Equal(-Math.Sign(socket.Reach - free), Math.Sign(Middle(rib) - free));
        double half = (socket.Across / 2) + socket.BossWall;
        Assert.Equal(0, Math.Max(rib.Near.Reach[0] - (socket.Reach + half), socket.Reach - half - rib.Far.Reach[0]), 1e-6);
    }

    /// <summary>Two ribs 8 mm thick and a seat that pushes the first towards the second: where they would meet one is left out, and it says so.</summary>
    [Theory]
    [InlineData(6, true)]
    [InlineData(8, false)]
    public void Ribs_along_do_not_run_into_one_another(double thickness, bool both)
    {
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => (s with { Ribs = s.Ribs with { LongitudinalCount = 2, LongitudinalThickness = thickness } })
            .With<SocketSpec>([new(500, 48 - 2.6 - 11, InsetFrom.Back) { Along = 12, Across = 10, Fit = 0, Depth = 1.3 }])));
        PlanRib[] ribs = [.. Along(outcome.Value!)];
        Assert.Equal(both ? 2 : 1, ribs.Length);
        Assert.Equal(both, !outcome.Findings.Any(f => f.Code == "PF4061"));
        Assert.AllOrNone(ribs.Zip(ribs.Skip(1)), p => Assert.True(p.Second.Near.Reach[0] >= p.First.Far.Reach[0] - 1e-9));
    }

    /// <summary>Holes from 206 to 246 mm leave no place for a rib for longer than the pitch: it is told, and with the pitch that is offered it is
    /// well.</summary>
    [Fact]
    public void A_stretch_without_a_place_for_a_rib_is_told_with_its_length()
    {
        Outcome<PlatformPlan> With(double pitch) => PlatformPlanner.Plan(Bench.Straight(s => (s with { Ribs = s.Ribs with { Pitch = pitch } })
            .With<HoleSpec>([.. Enumerable.Range(0, 11).Select(i => new HoleSpec(206 + (4 * i), 12 + (8 * (i % 2))) { Diameter = 4 })])));
        var told = Assert.Single(With(30).Findings, f => f.Code == "PF4100");
        double offered = double.Parse(told.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(With(30).Value!.RibPitch.Greatest, offered, 0.01);
        Assert.DoesNotContain(With(offered).Findings, f => f.Code == "PF4100");
    }

    /// <summary>A cut through a board near the platform's end is offered a place with room for a joint before the end, not beyond the board.</summary>
    [Theory]
    [InlineData(790)]
    [InlineData(210)]
    public void A_cut_near_an_end_is_offered_a_place_with_room_for_its_joint(double at)
    {
        var told = Assert.Single(PlatformPlanner.Plan(Bench.Straight(s => (s with { ForcedCuts = [at] }).With<SocketSpec>([new(at, 10)]))).Findings,
            f => f.Code == "PF4051");
        double offered = double.Parse(told.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.True(Math.Min(offered - 200, 800 - offered) > Math.Abs(at - 500) - 285 && Math.Abs(offered - 500) < 290, $"{offered}");
        Assert.DoesNotContain(PlatformPlanner.Plan(Bench.Straight(s => (s with { ForcedCuts = [offered] }).With<SocketSpec>([new(at, 10)]))).Findings,
            f => f.Code == "PF4051");
    }

    /// <summary>A straight edge bends nowhere: between slabs of 150 mm it is parted for what has to hold on to it, every 60 mm at most, and no
    /// oftener.</summary>
    [Fact]
    public void Long_slabs_of_a_straight_edge_are_parted_in_as_few_facets_as_do()
    {
        var plan = Bench.Plan(Bench.Straight(s => s with { Coping = s.Coping with { SlabLength = 150 } }));
        Assert.All(plan.Stations.Zip(plan.Stations.Skip(1)), p => Assert.Equal(50, p.Second - p.First, 1e-6));
    }

    /// <summary>However the requirement wanders, facets are some millimetres long in the mean, and what the stated allowances come to is what is
    /// required.</summary>
    [Property(MaxTest = 10)]
    public void Facets_are_few_and_allowances_add_up(int seed)
    {
        var request = Bench.Request(seed, EdgeStyle.Fitted, s => s with { Coping = s.Coping with { SlabLength = 150 } });
        var plan = Bench.Plan(request);
        Assert.InRange(plan.Stations.Length, 2, (plan.Stations[^1] - plan.Stations[0]) / 2);
        var trace = plan.Requirement;
        var allowances = trace.Allowances;
        Assert.NotNull(allowances);
        Assert.All(Enumerable.Range(0, trace.Stations.Length), i =>
            Assert.Equal(trace.Required(i), allowances.Bare[i] + allowances.Costs.Sum(c => c.Amount[i]), 0.003));
    }

    private static double Edge(PlatformSpec spec) => 19 + spec.Deck.Width;

    private static IEnumerable<PlanRib> Along(PlatformPlan plan) => plan.Ribs.Where(r => r.Kind == RibKind.Longitudinal);

    private static double Middle(PlanRib rib) => (rib.Near.Reach[0] + rib.Far.Reach[0]) / 2;
}
