using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Platforms;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Every figure of random designs, measured from the written meshes and held against what was asked.</summary>
public class FoundAgainstAsked
{
    /// <summary>What a written figure may be off where nothing bends, mm: plan grid, floats, facets.</summary>
    private const double Off = 0.01;

    private readonly SectionSpec sections = new() { Engrave = false };
    private PlatformPlan plan = null!;
    private PlatformSpec asked = null!;
    private Gauge[] gauges = [];

    private double Crossfall => asked.Deck.Crossfall > 0 ? 1 / asked.Deck.Crossfall : 0;

    [Property(MaxTest = 3)]
    public void What_is_written_is_what_was_asked(int seed)
    {
        Design(seed);
        foreach (var gauge in gauges)
        {
            Deck(gauge);
            Edge(gauge);
            Ribs(gauge);
            Holes(gauge);
            Sockets(gauge);
            Line(gauge);
            Joints(gauge);
        }

        Falls();
        Ramps();
    }

    public static TheoryData<int> Sharp => [.. Simulations.TellsRates ? [7, 16, 27] : new[] { 11, 16 }];

    // Sharp curves, where an end is trimmed by another length away from the track than along it; 11: a rib in a facet in which a curve begins.
    [Theory]
    [MemberData(nameof(Sharp))]
    public void In_sharp_curves_too(int seed) => What_is_written_is_what_was_asked(seed);

    private void Design(int seed)
    {
        var random = new Random(seed);
        double Between(double low, double high) => low + (random.NextDouble() * (high - low));
        var request = Bench.Request(seed, (EdgeStyle)random.Next(3), s => (s with
        {
            Deck = new() { Thickness = Between(1.3, 2), Width = Between(40, 62), Crossfall = Between(50, 90) },
            Coping = s.Coping with
            {
                Width = Between(6, 9),
                Thickness = Between(1, 1.6),
                Overhang = Between(0.6, 1.2),
                ArrisChamfer = Between(0.2, 0.4),
                SlabLength = Between(10, 14)
            },
            StartRamp = new(Gradient: Between(8, 10)),
            EndRamp = random.Next(2) == 0 ? null : new(Length: Between(96, 120)),
            Ribs = s.Ribs with { Pitch = Between(25, 40), Thickness = Between(1, 1.6), LongitudinalCount = random.Next(2) },
            WhiteLine = new() { Inset = Between(1, 1.4), Width = Between(0.8, 1.2), GrooveDepth = 0.25 },
        }).With<FenceSpec>([new() { PinDiameter = Between(0.8, 1.4) }])
        .With<SocketSpec>([new((s.Face.From + s.Face.To) / 2, Between(8, 12)) { Along = Between(1.2, 3), Across = Between(1.2, 2.5), Depth = Between(3, 5) }]));
        (asked, plan) = (request.Spec, Bench.Plan(request));
        var set = Workbench.Made(plan, Workbench.Printer, sections);
        plan = set.Plan;
        gauges = [.. set.Sections.Select(s => new Gauge(s))];
    }

    private bool Level(double s) => s > plan.Profile.StartHead + 1 && s < plan.Profile.EndHead - 1;

    private static bool Holds(Gauge gauge, double s, double keep) => s > gauge.Section.From + keep && s < gauge.Section.To - keep;

    private Point3 Place(double s, double t, double z) => plan.ToLayout(s, t) is var p ? new(p.X, p.Y, z) : default;

    private Point2 Away(double s) => plan.Chart.At(s).Tangent.Left * (int)plan.Side;

    // Chainages between ribs, clear of joints, holes and sockets.
    private IEnumerable<double> Bays(Gauge gauge)
    {
        double[] walls = [gauge.Section.From, .. plan.Ribs.Where(r => r.Kind != RibKind.Longitudinal).Select(r => (r.From + r.To) / 2), gauge.Section.To];
        Array.Sort(walls);
        return walls.Zip(walls.Skip(1), (a, b) => (a + b) / 2).Where(s => Level(s) && Holds(gauge, s, 10)
            && plan.CopingJoints.All(j => Math.Abs(j - s) > 0.5) && plan.Sockets.All(k => Math.Abs(k.Chainage - s) > 5)
            && plan.PostHoles.All(h => Math.Abs(h.Chainage - s) > 2));
    }

    private double Height(double s, double t) => asked.Height + Bench.Site.RailTop - ((t - plan.CopingFront.At(s)) * Crossfall);

    private void Deck(Gauge gauge)
    {
        foreach (double s in Bays(gauge))
        {
            double front = plan.CopingFront.At(s), back = plan.Back.At(s), along = plan.Ribs.Where(r => r.Kind == RibKind.Longitudinal)
                .Select(r => r.Near.At(s)).DefaultIfEmpty(back - 8).Min();
            double middle = (plan.CopingBack.At(s) + along) / 2;
            Assert.Equal(asked.Deck.Width, back - front, Off);
            foreach (double t in new[] { front + asked.Coping.ArrisChamfer + 0.1, middle, back - 1 })
            {
                // The coping keeps its height within 0.15; across, a plane falls by a little more than at the joints.
                Assert.InRange(gauge.Heights(plan.ToLayout(s, t))[0] - Height(s, t), -0.17, 0.17);
            }

            double[] deck = gauge.Heights(plan.ToLayout(s, middle)),
                ledge = gauge.Heights(plan.ToLayout(s, front + Math.Max(asked.Coping.ArrisChamfer + 0.02, asked.Coping.Overhang / 2)));
            Assert.Equal(asked.Deck.Thickness, deck[0] - deck[1], Off);
            Assert.Equal(2, deck.Length);
            Assert.Equal(asked.Coping.Thickness, ledge[0] - ledge[1], Off);
        }
    }

    private void Edge(Gauge gauge)
    {
        foreach (double s in plan.Stations.Where(s => Level(s) && Holds(gauge, s, 1) && plan.CopingJoints.All(j => Math.Abs(j - s) > 0.5)))
        {
            double front = plan.CopingFront.At(s), top = gauge.Heights(plan.ToLayout(s, front + asked.Coping.ArrisChamfer + 0.05))[0],
                size = asked.Coping.ArrisChamfer;
            Assert.Equal(front, 1 + gauge.Feel(Place(s, 1, top - size - 0.1), Away(s)), Off);
            Assert.Equal(front + (size / 2), 1 + gauge.Feel(Place(s, 1, top - (size / 2)), Away(s)), Off);
        }
    }

    // Along the middle of the hollow everything that reaches from deck to baseboard is a rib, an end wall or a joint's wall, and each is as thick as asked.
    private void Ribs(Gauge gauge)
    {
        const double step = 0.2;
        var ribs = plan.Ribs.Where(r => r.Kind != RibKind.Longitudinal).ToArray();
        foreach (var rib in ribs.Where(r => r.From > gauge.Section.From + 5 && r.To < gauge.Section.To - 3 && Level(r.From)))
        {
            double t = (plan.WallBack.At(rib.From) + plan.CopingBack.At(rib.From)) / 2, s = rib.From - 2;
            double found = gauge.Feel(Place(s, t, 5), plan.Chart.At(s).Tangent), through = gauge.Along(Place(s, t, 5), Forward(s)).ElementAtOrDefault(1)
                - found;
            Assert.InRange(through, asked.Ribs.Thickness - Off, asked.Ribs.Thickness * 1.35);
        }

        double from = gauge.Section.From + 3, to = gauge.Section.To - 3, free = 0, widest = 0;
        for (double s = Math.Max(from, plan.Profile.StartHead + 1); s < Math.Min(to, plan.Profile.EndHead - 1); s += step)
        {
            double t = plan.WallBack.At(s) + 1;
            bool solid = gauge.Heights(plan.ToLayout(s, t)) is [_, < 1];
            bool near = ribs.Any(r => Math.Abs(s - r.From) < 2 * step || Math.Abs(s - r.To) < 2 * step);
            Assert.True(near || solid == ribs.Any(r => s > r.From && s < r.To),
                $"{(solid ? "solid" : "hollow")} at {s} of {gauge.Section.From} to {gauge.Section.To}");
            free = solid ? 0 : free + step;
            widest = Math.Max(widest, free);
        }

        Assert.InRange(widest, 0, asked.Ribs.Pitch + 5);
    }

    private void Holes(Gauge gauge)
    {
        foreach (var hole in plan.PostHoles.Where(h => Holds(gauge, h.Chainage, 3) && Level(h.Chainage)))
        {
            var middle = plan.ToLayout(hole.Chainage, hole.Reach);
            Assert.Equal(asked.Fence!.Inset, plan.Back.At(hole.Chainage) - hole.Reach, Off);
            double top = plan.TopAt(hole.Chainage, hole.Reach), radius = (asked.Fence!.PinDiameter + asked.Fence!.Fit) / 2, mouth = asked.Deck.MouthChamfer;
            Assert.DoesNotContain(gauge.Heights(middle), z => z > top - asked.Deck.Thickness - 0.1);
            for (int k = 0; k < 12; k++)
            {
                var way = Point2.FromAngle(Math.Tau * k / 12);
                Assert.InRange(gauge.Feel(new(middle.X, middle.Y, top - (asked.Deck.Thickness * 0.8)), way), radius - Off,
                    (radius / Math.Cos(Math.PI / 12)) + Off);
                Assert.InRange(gauge.Feel(new(middle.X, middle.Y, top - 0.1), way), radius + mouth - 0.1 - (2 * Off),
                    ((radius + mouth) / Math.Cos(Math.PI / 12)) - 0.1 + (2 * Off));
            }
        }
    }

    private void Sockets(Gauge gauge)
    {
        foreach (var (spec, at) in asked.Sockets.Zip(plan.Sockets).Where(p => Holds(gauge, p.Second.Chainage, 6) && Level(p.Second.Chainage)))
        {
            var middle = plan.ToLayout(at.Chainage, at.Reach);
            double top = plan.TopAt(at.Chainage, at.Reach), halfway = top - (spec.Depth / 2);
            var along = plan.Chart.At(at.Chainage).Tangent;
            Assert.Equal(spec.Inset, plan.Back.At(at.Chainage) - at.Reach, Off);
            Assert.Equal(top - spec.Depth, gauge.Heights(middle)[0], Off);
            foreach (var (way, size) in new[] { (along, spec.Along), (along * -1, spec.Along), (along.Left, spec.Across), (along.Left * -1, spec.Across) })
            {
                Assert.Equal((size + spec.Fit) / 2, gauge.Feel(new(middle.X, middle.Y, halfway), way), Off);
                Assert.Equal(((size + spec.Fit) / 2) + asked.Deck.MouthChamfer - 0.1, gauge.Feel(new(middle.X, middle.Y, top - 0.1), way), 0.04);
            }
        }
    }

    private void Line(Gauge gauge)
    {
        var line = asked.WhiteLine!;
        foreach (double s in Bays(gauge))
        {
            double middle = plan.CopingFront.At(s) + line.Inset + (line.Width / 2), beside = middle + line.Width;
            double floor = gauge.Heights(plan.ToLayout(s, middle))[0], deck = gauge.Heights(plan.ToLayout(s, beside))[0] + (line.Width * Crossfall);
            Assert.Equal(line.GrooveDepth, deck - floor, Off);
            foreach (int way in new[] { -1, 1 })
            {
                Assert.Equal(line.Width / 2, gauge.Feel(Place(s, middle, floor + 0.1), Away(s) * way), 0.02);
            }
        }
    }

    private void Joints(Gauge gauge)
    {
        foreach (var bore in gauge.Section.Bores)
        {
            Point2 inward = new(bore.Inward.X, bore.Inward.Y);
            Assert.Equal((sections.Joint.DowelLength / 2) - sections.Joint.EndTrim + sections.Joint.DepthAllowance, gauge.Feel(bore.Mouth, inward), Off);
            var inside = bore.Mouth + (bore.Inward * (bore.Depth / 2));
            double radius = (sections.Joint.DowelDiameter + sections.Joint.Fit) / 2, slot = bore.Slot / 2;
            Assert.All(new[] { 1, -1 }, way => Assert.Equal(radius, gauge.Along(inside, new(0, 0, way))[0], Off));
            Assert.All(new[] { 1, -1 }, way => Assert.Equal(radius + slot, gauge.Feel(inside, inward.Left * way), Off));

            // Midway between the two bores the end face is plain: trimmed, and relieved under the deck's top.
            var others = gauge.Section.Bores.Where(b => b.Chainage == bore.Chainage).ToArray();
            var face = (others[0].Mouth + others[1].Mouth) * 0.5;
            double Top(double deep) => gauge.Heights(new(face.X + (inward.X * deep), face.Y + (inward.Y * deep)))[0];
            double top = (2 * Top(1)) - Top(2);

            // Bores begin in the end face, which is trimmed along the track: as far off the cut in chainage at every reach.
            var (at, _) = plan.Chart.Locate(new(face.X, face.Y), bore.Chainage);
            Assert.Equal(sections.Joint.EndTrim, Math.Abs(at - bore.Chainage), Off);
            Assert.Equal(1, gauge.Feel(face - (bore.Inward * 1), inward), Off);
            Assert.Equal(1 + sections.Joint.FaceRelief - 0.1, gauge.Feel(new Point3(face.X - inward.X, face.Y - inward.Y, top - 0.1), inward), 0.05);
        }
    }

    // The fall at every joint of the level part, and the step from one piece to the next.
    private void Falls()
    {
        foreach (var (before, after) in gauges.Zip(gauges.Skip(1)))
        {
            double cut = before.Section.To;
            if (cut < plan.Profile.StartHead || cut > plan.Profile.EndHead)
            {
                continue;
            }

            double front = plan.CopingFront.At(cut), back = plan.Back.At(cut);
            double[] places = [front + 0.6, (front + back) / 2, back - 0.6];
            double[] At(Gauge gauge, int way) => [.. places.Select(t => OnLine(gauge, cut, way, t))];
            double[] low = At(before, -1), high = At(after, 1);
            if (plan.CopingJoints.Contains(cut))
            {
                // The groove between two slabs is cut into the coping.
                (low[0], high[0]) = (Double(low), Double(high));
            }

            Assert.All(low.Zip(high), p => Assert.Equal(p.First, p.Second, 0.005));
            double wide = back - front, found = (low[1] - low[2]) * wide / (places[2] - places[1]);
            Assert.InRange(found, (asked.Deck.Width * Crossfall) - 0.02 - Off, (asked.Deck.Width * Crossfall) + 0.02 + Off);
        }

        // In line with the other two.
        static double Double(double[] heights) => (2 * heights[1]) - heights[2];
    }

    // The deck's height on the cut itself, from two places behind the relief.
    private double OnLine(Gauge gauge, double cut, int way, double t)
    {
        double near = gauge.Heights(plan.ToLayout(cut + (way * 1), t))[0], far = gauge.Heights(plan.ToLayout(cut + (way * 2), t))[0];
        return near - (far - near);
    }

    private void Ramps()
    {
        var gauge = gauges[0];
        double foot = Bench.Site.RailTop, s = plan.Profile.From + 0.05, head = Math.Min(plan.Profile.StartHead, gauge.Section.To) - 3,
            t = asked.Coping.ArrisChamfer + 0.02;
        Assert.Equal(foot, gauge.Heights(plan.ToLayout(s, plan.CopingFront.At(s) + t))[0], 0.05);
        Assert.Equal(plan.Profile.At(head), gauge.Heights(plan.ToLayout(head, plan.CopingFront.At(head) + t))[0], 0.25);
    }

    private Point3 Forward(double s) => plan.Chart.At(s).Tangent is var p ? new(p.X, p.Y, 0) : default;
}
