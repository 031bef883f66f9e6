using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Verification.Distances;
using Xunit;

namespace PlatformForge.Tests.Verification;

public class RideFieldTests
{
    [Fact]
    public void Many_threads_at_once_are_told_what_one_is_told()
    {
        var ride = TrackLayer.Lay(new("t", new(0, 0), 0, [new StraightSpec(200), new CurveSpec(610, Hand.Left, 600)])).Value!;
        for (int trial = 0; trial < 20; trial++)
        {
            var random = new Random(trial);
            Point2[] points = [.. Enumerable.Range(0, 4000).Select(_ => new Point2((random.NextDouble() * 900) - 50, (random.NextDouble() * 500) - 50))];
            RideField alone = new(ride), shared = new(ride);
            var told = new (double Distance, double Chainage)[points.Length];
            Parallel.For(0, points.Length, i => told[i] = (shared.Distance(points[i]), shared.Chainage(points[i])));
            Assert.All(points.Zip(told), p => Assert.Equal((alone.Distance(p.First), alone.Chainage(p.First)), p.Second));
        }
    }
}
