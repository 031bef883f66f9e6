using PlatformForge.Clearance;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Clearance;

public class OtherTrackTests
{
    [Fact]
    public void A_vehicle_of_another_track_is_told_in_the_platforms_chainage_whichever_way_that_track_runs()
    {
        var own = DemoStock.Lay("own", new StraightSpec(1000));
        var there = TrackLayer.Lay(new("there", new(0, 110), 0, [new StraightSpec(1000)])).Value!;
        var back = TrackLayer.Lay(new("back", new(1000, 110), Math.PI, [new StraightSpec(1000)])).Value!;
        foreach (var other in new[] { there, back })
        {
            var envelope =
                EnvelopeSweeper.Sweep(new(own, 400, 600,
                    [new(own, [DemoStock.Coach("a", 100, 60, 30)]), new(other, [DemoStock.Coach("b", 120, 80, 32)])])).Value!;
            Assert.All(envelope.Composite(Side.Left, run: 0).Reach, r => Assert.Equal(15, r, 0.01));
            Assert.All(envelope.Composite(Side.Left, run: 1).Reach, r => Assert.Equal(126, r, 0.01));
            Assert.All(envelope.Composite(Side.Right, run: 1).Reach, r => Assert.Equal(-94, r, 0.01));
        }
    }

    [Fact]
    public void A_vehicle_halts_before_the_buffers()
    {
        var own = DemoStock.Lay("own", new StraightSpec(1000));
        var bay = TrackLayer.Lay(new("bay", new(0, 60), 0, [new StraightSpec(500)])).Value!;
        var envelope =
            EnvelopeSweeper.Sweep(new(own, 400, 600, [new(own, [DemoStock.Coach("a", 100, 60, 30)]),
                new(bay, [DemoStock.Coach("b", 120, 80, 32)]) { EndsAtBuffers = true }])).Value!;
        var line = envelope.Composite(Side.Left, run: 1);
        Assert.Equal(76, line.At(499.9), 0.011);
        Assert.Equal(double.NegativeInfinity, line.At(502));
        Assert.Equal(-44, envelope.Composite(Side.Right, run: 1).At(499.9), 0.011);
    }

    [Fact]
    public void Concentric_curves_are_reached_as_two_circles()
    {
        var own = DemoStock.Lay("own", new CurveSpec(600, Hand.Left, Angle: 3));
        var outer = TrackLayer.Lay(new("outer", new(0, -60), 0, [new CurveSpec(660, Hand.Left, Angle: 3)])).Value!;
        var coach = DemoStock.Coach("coach", 200, 140, 32);
        var envelope = EnvelopeSweeper.Sweep(new(own, 700, 1000, [new(own, [coach]), new(outer, [coach])])).Value!;
        double h = Math.Sqrt((660.0 * 660) - (70.0 * 70));
        Assert.All(envelope.Composite(Side.Left, run: 1).Reach, r => Assert.InRange(r, 600 - (h - 16), 600 - (h - 16) + 0.01));
        double corner = Math.Sqrt(((h + 16) * (h + 16)) + (100.0 * 100));
        Assert.All(envelope.Composite(Side.Right, run: 1).Reach, r => Assert.InRange(r, corner - 600, corner - 600 + 0.01));
    }

    [Theory]
    [InlineData(0, -60, 0)]
    [InlineData(0, 60, 0)]
    [InlineData(0, 110, 0)]
    [InlineData(30, -50, 0.2)]
    [InlineData(-40, 70, -0.2)]
    public void A_curve_of_the_same_radius_about_another_centre_is_reached_within_the_bound(double x, double y, double heading)
    {
        var own = DemoStock.Lay("own", new CurveSpec(400, Hand.Left, Angle: 2.5));
        var other = TrackLayer.Lay(new("other", new(x, y), heading, [new CurveSpec(400, Hand.Left, Angle: 2.5)])).Value!;
        var coach = DemoStock.Coach("coach", 150, 100, 32) with { EitherWayRound = false }; // both ends alike
        var envelope = EnvelopeSweeper.Sweep(new(own, 400, 560, [new(own, [coach]), new(other, [coach])])).Value!;
        int[] stations = [.. Enumerable.Range(0, 60).Select(i => i * (envelope.Count - 1) / 59)];
        var truth = BruteSweep.Sweep(other, own, coach, [.. stations.Select(i => envelope.From + (i * envelope.Spacing))], 0.2)[0];
        double below = Enumerable.Range(0, stations.Length)
            .Max(k => Math.Max(truth.Left[k] - envelope.Parts[1].Left[stations[k]], truth.Right[k] - envelope.Parts[1].Right[stations[k]]));
        double over = Enumerable.Range(0, stations.Length)
            .Max(k => Math.Max(envelope.Parts[1].Left[stations[k]] - truth.Left[k], envelope.Parts[1].Right[stations[k]] - truth.Right[k]));
        Assert.InRange(below, double.NegativeInfinity, 0);
        Assert.InRange(over, 0, envelope.ErrorBound + 1e-5);
    }

    [Fact]
    public void Same_request_gives_the_same_bits_on_one_thread_and_on_many()
    {
        var track = DemoStock.PendlewickTrack();
        SweptEnvelope Sweep() => EnvelopeSweeper.Sweep(new(track, 270, 1000, [new(track, DemoStock.Pendlewick)]) { Play = new(0.2) }).Value!;
        var first = Sweep();
        var copies = Enumerable.Range(0, 4).AsParallel().WithDegreeOfParallelism(4).Select(_ => Sweep()).ToArray();
        foreach (var copy in copies)
        {
            for (int i = 0; i < first.Parts.Count; i++)
            {
                Assert.Equal(first.Parts[i].Left, copy.Parts[i].Left);
                Assert.Equal(first.Parts[i].Right, copy.Parts[i].Right);
            }
        }
    }
}
