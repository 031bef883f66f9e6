using PlatformForge.Geometry;
using PlatformForge.Verification.Rules;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>The ways through a level cut, found cell by cell, against looking at every edge.</summary>
public class LevelCutTests
{
    private const double Level = 5, From = 1e-4;

    [Theory]
    [InlineData(1, 1, 30)]
    [InlineData(2, 60, 200)]
    [InlineData(3, 400, 200)]
    [InlineData(4, 12, 0.5)]
    [InlineData(5, 1, 900)]
    [InlineData(6, 1, 900)]
    [InlineData(7, 2, 900)]
    public void The_first_edge_met_is_the_first_of_all(int seed, int count, double size)
    {
        var cut = new LevelCut(Prisms(new Random(seed), count, size), Level);
        Assert.True(cut.Edges.Count >= 3 * count);
        Assert.All(cut.Edges, e => Assert.Equal(OfAll(e, cut.Edges), cut.Through(e, From)));
        Assert.Contains(cut.Edges, e => double.IsFinite(cut.Through(e, From).Length));
    }

    [Fact]
    public void A_cut_above_everything_has_no_edges() => Assert.Empty(new LevelCut(Prisms(new Random(1), 3, 30), 11).Edges);

    private static (double, double) OfAll(CutEdge edge, IReadOnlyList<CutEdge> edges)
    {
        var along = (edge.B - edge.A) * (1 / edge.Length);
        Point2 middle = (edge.A + edge.B) * 0.5, inward = along.Left;
        double nearest = double.PositiveInfinity, facing = 0;
        foreach (var other in edges)
        {
            Point2 a = other.A - middle, b = other.B - middle;
            double ax = Point2.Dot(along, a), bx = Point2.Dot(along, b);
            if ((ax > 0) != (bx > 0))
            {
                double ay = Point2.Dot(inward, a), by = Point2.Dot(inward, b), far = ay + ((by - ay) * ax / (ax - bx));
                if (far > From && far < nearest)
                {
                    (nearest, facing) = (far, (bx - ax) / other.Length);
                }
            }
        }

        return (nearest, facing);
    }

    // Upright prisms over random quadrangles and slivers, some square to the axes and some of them twice in the same place; ten high, sides only.
    private static Mesh Prisms(Random random, int count, double size)
    {
        var vertices = new List<Point3>();
        var triangles = new List<int>();
        Point2[] ring = [];
        for (int i = 0; i < count; i++)
        {
            var middle = new Point2(random.NextDouble() * size, random.NextDouble() * size);
            double length = size * (0.01 + (0.5 * random.NextDouble())), width = length * Math.Pow(random.NextDouble(), 4),
                turn = random.Next(3) == 0 ? 0 : random.NextDouble() * 7;
            Point2 x = Point2.FromAngle(turn) * length, y = Point2.FromAngle(turn).Left * width;
            ring = i % 10 == 9 ? ring : [middle - x - y, middle + x - y, middle + x + y, middle - x + y];
            int first = vertices.Count;
            vertices.AddRange(ring.Select(p => new Point3(p.X, p.Y, 0)).Concat(ring.Select(p => new Point3(p.X, p.Y, 10))));
            for (int k = 0; k < ring.Length; k++)
            {
                int a = first + k, b = first + ((k + 1) % ring.Length), up = ring.Length;
                triangles.AddRange([a, b, b + up, a, b + up, a + up]);
            }
        }

        return new([.. vertices], [.. triangles], []);
    }
}
