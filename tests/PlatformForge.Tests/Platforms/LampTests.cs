using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Sections;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>A lamp's hole, and the channel that leads its wires on past the next rib: in the plan, in the solid, among ribs and cuts.</summary>
public class LampTests
{
    private const double Deck = 1.5, Channel = 2, Groove = Deck - 0.8;

    private static PlatformSpec With(PlatformSpec spec, params LampSpec[] lamps) =>
        spec.With(lamps) with { Ribs = new() { Pitch = 30, LongitudinalCount = 0 } };

    private static PlatformPlan Divided(PlatformPlan plan, params double[] cuts) => PlatformPlanner.Divided(plan, cuts).Value!;

    [Theory]
    [InlineData(PlatformEnd.Start)]
    [InlineData(PlatformEnd.End)]
    public void A_channel_goes_from_the_hole_through_the_next_rib_on_its_way_and_no_other(PlatformEnd towards)
    {
        var plan = Divided(Bench.Plan(Bench.Straight(s => With(s, new LampSpec(500, 15) { Towards = towards }))));
        var lamp = Assert.Single(plan.Features);
        var ring = lamp.Marks.OfType<HiddenMark>().Single().Ring;
        double[] along = [.. ring.Select(p => plan.Chart.PointAt(500, 0)).Zip(ring, (o, p) => Point2.Dot(p - o, plan.Chart.At(500).Tangent))];
        var through = plan.Ribs.Where(r => r.Kind == RibKind.Transverse && r.From < 500 + along.Max() && r.To > 500 + along.Min()).ToArray();
        var rib = Assert.Single(through);
        Assert.Equal(towards == PlatformEnd.End, rib.From > 500);
        Assert.Equal(towards == PlatformEnd.End ? rib.To - 500 + 0.5 : rib.From - 500 - 0.5, towards == PlatformEnd.End ? along.Max() : along.Min(), 6);
        Assert.Equal(0, towards == PlatformEnd.End ? along.Min() : along.Max(), 6);

        // Wires come down beyond the rib and clear of it, into a hole in the board as wide as the channel.
        double down = Assert.Single(lamp.Wires).To.Chainage, beyond = towards == PlatformEnd.End ? down - rib.To : rib.From - down;
        Assert.InRange(beyond - (Channel / 2), 0.1, 2 * Channel);
        Assert.Contains(lamp.BoardHoles, h => h.Place.Chainage == down && h.Diameter == Channel);
    }

    [Fact]
    public void The_solid_lacks_the_hole_the_groove_and_the_pointed_opening_through_the_rib()
    {
        var plan = Divided(Workbench.Straight(600, change: s => With(s, new LampSpec(300, 20) { Channel = Channel })));
        var without = Divided(Workbench.Straight(600, change: s => With(s, new LampSpec(300, 20) { Channel = 0 })));
        Assert.Equal(without.Ribs.Count, plan.Ribs.Count);
        var lamp = Assert.Single(plan.Features);
        var hidden = lamp.Marks.OfType<HiddenMark>().Single();
        double length = ConvexRing.Area(hidden.Ring) / Channel;

        // From the hole's middle; its own polygon, 12 sides about a circle, takes half of itself out of the groove where the channel is as wide.
        double radius = (2 + 0.2) / 2, strip = Strip(radius, Channel / 2);
        var rib = plan.Ribs.Where(r => r.Kind == RibKind.Transverse && r.From > 300).MinBy(r => r.From)!;

        // Under the deck the roof falls from the channel's height in the middle by 1.2 in 1 to either side.
        double opening = (rib.To - rib.From) * Channel * (Channel - (1.2 * Channel / 4));
        double taken = (((length * Channel) - strip) * Groove) + opening;
        Assert.Equal(taken, Volume(without) - Volume(plan), 2e-3 * taken);
    }

    [Fact]
    public void The_opening_through_a_rib_prints_without_support()
    {
        var plan = Workbench.Straight(300, change: s => With(s, new LampSpec(350, 20)));
        var made = SectionMaker.Make(plan, Workbench.Printer, new());
        Assert.DoesNotContain(made.Findings, f => f.Code == "PF6007");
        Assert.Contains(made.Value!.Plan.Features[0].Marks, m => m is HiddenMark);
    }

    [Fact]
    public void No_cut_falls_on_a_channel_or_nearer_than_its_joint_is_deep()
    {
        var joint = new JointSpec();
        for (double at = 330; at <= 470; at += 7)
        {
            var plan = Workbench.Straight(500, change: s => With(s, new LampSpec(at, 20)));
            var made = SectionMaker.Make(plan, Workbench.Printer with { Bed = [new(0, 0), new(150, 0), new(150, 150), new(0, 150)] }, new()).Value!;
            var channel = made.Plan.Keepouts.Single(k => k.Holds(KeptOff.Joints));
            Assert.All(made.Cuts, c => Assert.True(c < channel.From - joint.BoreDepth || c > channel.To + joint.BoreDepth,
                $"cut at {c}, channel from {channel.From} to {channel.To}"));
        }
    }

    [Fact]
    public void Where_no_rib_stands_on_the_way_it_says_so_and_what_it_offers_works()
    {
        var plan = Bench.Plan(Bench.Straight(s => With(s, new LampSpec(s.Face.To - 12, 15))));
        var finding = Assert.Single(PlatformPlanner.Divided(plan, []).Findings, f => f.Code == "PF4150");
        Assert.Equal(("platform[0].lamp[0].towards", Severity.Warning, "\"start\""), (finding.Key, finding.Severity, finding.Cure!.Value));
        var back = Bench.Plan(Bench.Straight(s => With(s, new LampSpec(s.Face.To - 12, 15) { Towards = PlatformEnd.Start })));
        Assert.DoesNotContain(PlatformPlanner.Divided(back, []).Findings, f => f.Code == "PF4150");
    }

    [Fact]
    public void It_stands_clear_of_other_features_and_of_vehicles_like_any_hole()
    {
        var twice = PlatformPlanner.Plan(Bench.Straight(s => With(s, new LampSpec(500, 15), new LampSpec(501, 15))));
        Assert.Equal("PF4033", Assert.Single(twice.Findings, f => f.Severity == Severity.Error).Code);
        var near = PlatformPlanner.Plan(Bench.Straight(s => With(s, new LampSpec(500, 3, InsetFrom.Edge))));
        Assert.Equal("platform[0].lamp[0].inset", Assert.Single(near.Findings, f => f.Severity == Severity.Error).Key);
        var wrong = PlatformPlanner.Plan(Bench.Straight(s => With(s, new LampSpec(500, 15) { Channel = -1 })));
        Assert.Equal("platform[0].lamp[0].channel", Assert.Single(wrong.Findings).Key);
    }

    private static double Volume(PlatformPlan plan) => SolidRaiser.Raise(PlatformBody.Blocks(plan).All).ColumnVolume;

    // Area of the part of a regular polygon of 12 sides about a circle that lies ahead of its middle and within a half-width of it: summed in thin slices.
    private static double Strip(double radius, double half)
    {
        const int Slices = 20000;
        double sum = 0, step = 2 * half / Slices;
        for (int i = 0; i < Slices; i++)
        {
            double u = -half + ((i + 0.5) * step);
            double reach = Enumerable.Range(0, 12).Select(k => 2 * Math.PI * k / 12).Where(a => Math.Cos(a) > 1e-9)
                .Min(a => (radius - (u * Math.Sin(a))) / Math.Cos(a));
            sum += reach * step;
        }

        return sum;
    }
}
