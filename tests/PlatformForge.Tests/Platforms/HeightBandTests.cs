using PlatformForge.Clearance.Vehicles;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>
/// A vehicle's part two millimetres tall is moved from below rail top to far over the platform: at each height exactly what stands at that height, or over it,
/// gives way. The coping is 12 above rail top, bodies may pass 1 mm over it, the start ramp falls 1 in 10 to rail top.
/// </summary>
public class HeightBandTests
{
    // What is always there reaches 18 mm; the part reaches 22; 1 mm is kept.
    private const double Always = 19, Needed = 23, Coping = 12, Gap = 1, PartHeight = 2;

    private static readonly CopingSpec Slab = new();

    private static readonly double[] Lows = [.. Enumerable.Range(0, 16).Select(i => (i * 2.0) - 4.5), 40, 60];

    public static TheoryData<double> Bands => [.. Lows];

    private static PlatformRequest Request(double low, Func<PlatformSpec, PlatformSpec> change)
    {
        var part = VehiclePart.Box("part", PartCarrier.Body, -50, 50, 44, low, low + PartHeight);
        var frames = VehiclePart.Box("frames", PartCarrier.Body, -50, 50, 36, -2, 10);
        var roof = VehiclePart.Box("roof", PartCarrier.Body, -50, 50, 4, 70, 72);
        var request = Bench.Straight(s => change(s with
        {
            Height = Coping,
            StartRamp = new(Gradient: 10),
            Face = s.Face with { BodiesPassOver = true, VerticalGap = Gap },
            Deck = s.Deck with { Width = 60 },
            Ribs = s.Ribs with { LongitudinalCount = 0 },
        }));
        return request with
        {
            Envelope = Bench.Envelope(request.Chart, Side.Left, _ => double.NegativeInfinity, new(part, _ => 22), new(frames, _ => 18),
            new(roof, _ => 2))
        };
    }

    // What passes over does not matter; what stays under the coping by the gap matters to the wall, which stands back by the overhang.
    private static double Expected(double low, double top) => low >= top + Gap ? Always : low + PartHeight <= top - Slab.Thickness - Gap
        ? Needed - Slab.Overhang : Needed;

    [Theory]
    [MemberData(nameof(Bands))]
    public void The_coping_gives_way_to_what_is_lower_than_its_top_and_the_gap(double low) =>
        Assert.Equal(Expected(low, Coping), Bench.Plan(Request(low, s => s)).CopingFront.At(500), 1e-3);

    /// <summary>Whatever stands first in the list of parts, the edge gives way to the same and it is told of the same places that the wall decides.</summary>
    [Theory]
    [InlineData(-0.5, true)]
    [InlineData(4.5, true)]
    [InlineData(11.5, false)]
    public void The_order_of_the_parts_is_no_matter(double low, bool atWall)
    {
        var request = Request(low, s => s);
        var envelope = request.Envelope;
        var traces = Enumerable.Range(0, envelope.Parts.Count).Select(k => Bench.Plan(request with
        {
            Envelope = new(envelope.From, envelope.Spacing, envelope.Count, [.. envelope.Parts.Skip(k), .. envelope.Parts.Take(k)], envelope.ErrorBound),
        }).Requirement).ToArray();
        int middle = traces[0].Stations.Length / 2; // on the level deck
        Assert.All(traces, t => Assert.Equal(atWall, t.AtWall![middle]));
        Assert.All(traces, t => Assert.Equal(traces[0].AtWall, t.AtWall));
        Assert.All(traces, t => Assert.Equal(traces[0].Swept, t.Swept));
    }

    [Theory]
    [MemberData(nameof(Bands))]
    public void A_ramp_gives_way_where_it_is_that_high_and_nowhere_lower(double low)
    {
        var plan = Bench.Plan(Request(low, s => s));
        for (double s = 202; s < 318; s += 4)
        {
            double top = (s - 200) / 10, near = plan.CopingFront.At(s);
            if (Expected(low, top - 0.6) == Expected(low, top + 0.6))
            {
                Assert.Equal(Expected(low, top), near, 1e-3); // but for the facet in which it first counts
            }
        }
    }

    [Theory]
    [MemberData(nameof(Bands))]
    public void Boards_posts_and_buildings_give_way_at_any_height(double low)
    {
        // Things whose near side stands 22.4 mm from the track's middle: over a coping at 19 they are in the way, behind one at 23 they are not.
        var things = new (string Key, Func<PlatformSpec, PlatformSpec> With)[]
        {
            ("platform[0].board[0]", s => s.With<SocketSpec>([new(500, 3.4 + 0.75, InsetFrom.Edge)])),
            ("platform[0].board[0]", s => s.With<SocketSpec>([new(500, 3.4 + 5, InsetFrom.Edge) { Along = 40, Across = 9.8, Depth = 0.5, Name = "building" }])),
            ("platform[0].hole[0]", s => s.With<HoleSpec>([new(500, 3.4 + 0.6, InsetFrom.Edge)])),
            ("platform[0].fence.pitch", s => s.With<FenceSpec>([new() { Inset = s.Deck.Width - 3.4 - 0.6, From = 330 }])),
        };
        foreach (var (key, with) in things)
        {
            var outcome = PlatformPlanner.Plan(Request(low, s => with(s with { Coping = s.Coping with { Width = 2, Overhang = 0 } })));
            Assert.DoesNotContain(outcome.Findings, f => f.Severity == Severity.Error && f.Code != "PF4023");
            Assert.Equal(low >= Coping + Gap, outcome.Findings.Any(f => f.Code == "PF4023" && f.Key == key));
        }
    }

    [Fact]
    public void Without_leave_to_pass_over_the_coping_gives_way_to_every_height()
    {
        foreach (double low in Lows)
        {
            var plan = Bench.Plan(Request(low, s => s with { Face = s.Face with { BodiesPassOver = false } }));
            double At(double top) => low + PartHeight <= top - Slab.Thickness - Gap ? Needed - Slab.Overhang : Needed;
            Assert.Equal((At(Coping), At(1)), (Math.Round(plan.CopingFront.At(500), 2), Math.Round(plan.CopingFront.At(210), 2)));
        }
    }
}
