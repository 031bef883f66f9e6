using PlatformForge.Geometry;
using Xunit;

namespace PlatformForge.Tests.Meshes;

public class HullTests
{
    private const int Many = 6000;

    [Theory]
    [InlineData("disc")]
    [InlineData("oblong")]
    [InlineData("bow")]
    [InlineData("leaning line")]
    [InlineData("upright line")]
    [InlineData("grid")]
    public void Of_many_points_is_that_of_few_at_a_time(string shape)
    {
        var random = new Random(11);
        Point2[] points = [.. Enumerable.Range(0, Many).Select(i => Place(shape, random, i))];

        // Hulls of a few points at a time, which are not thinned first, and the hull of all their corners.
        var whole = ConvexRing.Hull(points);
        var parts = points.Chunk(500).SelectMany(ConvexRing.Hull).ToArray();
        Assert.Equal(ConvexRing.Hull(parts), whole);
        Assert.Subset(points.ToHashSet(), whole.ToHashSet());
        Assert.All(points, p => Assert.True(Outside(whole, p) < 1e-9));
    }

    // How far a point lies outside a ring, by the definition of a half-plane, mm.
    private static double Outside(Point2[] ring, Point2 p) => ring.Length < 3 ? 0 : Enumerable.Range(0, ring.Length)
        .Max(i => Point2.Cross(p - ring[i], ring[(i + 1) % ring.Length] - ring[i]) / (ring[(i + 1) % ring.Length] - ring[i]).Length);

    private static Point2 Place(string shape, Random random, int i)
    {
        double a = random.NextDouble(), b = random.NextDouble();
        return shape switch
        {
            "disc" => Point2.FromAngle(Math.Tau * a) * (150 * Math.Sqrt(b)),
            "oblong" => new(310 * a, i % 3 == 0 ? 0 : 40 * b),
            "bow" => Point2.FromAngle(0.5 * a) * (676 + (i % 2 == 0 ? 0 : 40 * b)),
            "leaning line" => new(4 * (i * 7 % Many), i * 7 % Many),
            "upright line" => new(7, 30 * a),
            _ => new(i % 60, i / 60 * 0.25),
        };
    }
}
