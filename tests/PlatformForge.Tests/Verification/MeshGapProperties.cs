using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Verification.Distances;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>The gap between two surfaces, against points sown all over both.</summary>
public class MeshGapProperties
{
    private const int Sown = 8;

    private const double Rounding = 1e-9;

    [Property(MaxTest = 30)]
    public void No_two_points_are_nearer_than_the_gap_and_some_are_as_near(int seed)
    {
        var random = new Random(seed);
        Mesh a = Tetrahedron(random, default), b = Tetrahedron(random, new(Of(random, -30, 30), Of(random, -30, 30), Of(random, -30, 30)));
        Point3[] onA = [.. Points(a)], onB = [.. Points(b)];
        double sown = onA.Min(p => onB.Min(q => (p - q).Length)), apart = 20.0 / Sown;
        var (gap, _) = MeshGap.Between(a, b, 100);
        Assert.InRange(gap, Math.Max(0, sown - (2 * apart)), sown + Rounding);

        // Told from the other side it is the same.
        Assert.Equal(gap, MeshGap.Between(b, a, 100).Gap, Rounding);

        // What is a hundredth as large is a hundredth as far apart.
        Assert.Equal(gap / 100, MeshGap.Between(Hundredth(a), Hundredth(b), 1).Gap, Rounding);

        // A limit that is hardly farther leaves it as it is; beyond a limit it is of no interest.
        Assert.Equal(gap, MeshGap.Between(a, b, gap + 0.01).Gap, Rounding);
        Assert.Equal(gap > 0 ? gap / 2 : 0, MeshGap.Between(a, b, gap / 2).Gap, Rounding);
    }

    /// <summary>A triangle alone has each of its sides once: whichever of them the other comes near, and whichever corner is told first, the gap is the
    /// same.</summary>
    [Property(MaxTest = 20)]
    public void Every_side_of_a_triangle_counts_wherever_it_begins(int seed)
    {
        var random = new Random(seed);
        Point3 P(Point3 middle) => middle + new Point3(Of(random, -10, 10), Of(random, -10, 10), Of(random, -10, 10));
        Point3[] a = [P(default), P(default), P(default)], b = [P(new(6, 0, 0)), P(new(6, 0, 0)), P(new(6, 0, 0))];
        double[] told = [.. from i in Enumerable.Range(0, 3) from k in Enumerable.Range(0, 3)
            select MeshGap.Between(new([a[i], a[(i + 1) % 3], a[(i + 2) % 3]], [0, 1, 2], []), new([b[k], b[(k + 1) % 3], b[(k + 2) % 3]], [0, 1, 2], []),
                100).Gap];
        Assert.All(told, g => Assert.Equal(told[0], g, Rounding));
    }

    [Theory]
    [InlineData(3, 0, 0)]
    [InlineData(0, -4, 0)]
    [InlineData(0, 0, 2.5)]
    [InlineData(3, 4, 0)]
    [InlineData(-1, 2, 2)]
    public void Two_boxes_are_as_far_apart_as_their_sides_edges_or_corners(double x, double y, double z)
    {
        Point3 shift = new(x + (10 * Math.Sign(x)), y + (10 * Math.Sign(y)), z + (10 * Math.Sign(z)));
        double apart = new Point3(x, y, z).Length;
        Assert.Equal(apart, MeshGap.Between(Box(default), Box(shift), 50).Gap, Rounding);
        Assert.Equal(1, MeshGap.Between(Box(default), Box(shift), 1).Gap);
        Assert.Equal(0, MeshGap.Between(Box(default), Box(shift * 0.4), 50).Gap);
    }

    /// <summary>Beside the foot of a tall post the gap is that to its foot.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(28)]
    [InlineData(-2)]
    public void A_low_thing_beside_a_tall_one_is_as_far_off_as_its_side(double height)
    {
        var post = Box(default);
        post = post with { Vertices = Array.ConvertAll(post.Vertices, v => v with { Z = 4 * v.Z }) };
        var low = Box(new(13, 2, 0));
        low = low with { Vertices = Array.ConvertAll(low.Vertices, v => v with { Z = height + (v.Z / 10) }) };
        Assert.Equal(Math.Sqrt(9 + Math.Pow(Math.Max(0, -height - 1), 2)), MeshGap.Between(low, post, 5).Gap, Rounding);
    }

    /// <summary>Of two pairs far apart in height the lower one counts where it is nearer, and the upper one where that is.</summary>
    [Theory]
    [InlineData(3, 4)]
    [InlineData(4, 3)]
    public void The_nearer_of_two_pairs_counts_wherever_it_is(double low, double high)
    {
        Mesh Pair(double x, double above)
        {
            Mesh lower = Box(new(x, 0, 0)), upper = Box(new(above, 0, 60));
            return new([.. lower.Vertices, .. upper.Vertices], [.. lower.Triangles, .. upper.Triangles.Select(t => t + lower.Vertices.Length)], []);
        }

        Assert.Equal(Math.Min(low, high), MeshGap.Between(Pair(0, 0), Pair(10 + low, 10 + high), 5).Gap, Rounding);
    }

    /// <summary>A place beside any of a triangle's edges, beyond any of its corners or over its face lies on it within its distance and no less.</summary>
    [Theory]
    [InlineData(12, -2, 0)]
    [InlineData(-2, 5, 0)]
    [InlineData(14, 8, 0)]
    [InlineData(-3, -4, 0)]
    [InlineData(6, 3, 1.5)]
    public void A_place_lies_on_a_face_within_its_distance(double x, double y, double z)
    {
        Point3[] corners = [default, new(20, 0, 0), new(0, 10, 0)];
        double off = z > 0 ? z : x < 0 && y < 0 ? 5 : x < 0 || y < 0 ? 2 : Math.Abs((x * 10) + (y * 20) - 200) / Math.Sqrt(500);
        for (int first = 0; first < 3; first++)
        {
            var face = new Mesh([corners[first], corners[(first + 1) % 3], corners[(first + 2) % 3]], [0, 1, 2], []);
            Assert.True(MeshGap.LiesOn([new(x, y, z)], face, off + 1e-6));
            Assert.False(MeshGap.LiesOn([new(x, y, z)], face, off - 1e-6));
        }
    }

    [Property(MaxTest = 60)]
    public void Within_solids_is_every_corner_in_one_or_near_it(int seed)
    {
        var random = new Random(seed);
        double outside = Of(random, 0.01, 2);
        Mesh[] solids = [Box(default), Box(new(9, 3, 1))];
        var mesh = Tetrahedron(random, new(Of(random, -8, 20), Of(random, -8, 14), Of(random, -8, 12)), 6);
        double Off(Point3 p, Point3 corner) => new Point3(Beyond(p.X - corner.X), Beyond(p.Y - corner.Y), Beyond(p.Z - corner.Z)).Length;
        double[] off = [.. mesh.Vertices.Select(p => Math.Min(Off(p, default), Off(p, new(9, 3, 1))))];
        Assert.Equal(Array.TrueForAll(off, d => d <= outside), MeshGap.IsWithin(mesh.Vertices, solids, outside));
    }

    // Beyond an interval from 0 to 10.
    private static double Beyond(double x) => Math.Max(0, Math.Max(-x, x - 10));

    private static IEnumerable<Point3> Points(Mesh mesh)
    {
        for (int t = 0; t < mesh.Triangles.Length; t += 3)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[t]], u = mesh.Vertices[mesh.Triangles[t + 1]] - a, v = mesh.Vertices[mesh.Triangles[t + 2]] - a;
            for (int i = 0; i <= Sown; i++)
            {
                for (int k = 0; k <= Sown - i; k++)
                {
                    yield return a + (u * ((double)i / Sown)) + (v * ((double)k / Sown));
                }
            }
        }
    }

    private static Mesh Tetrahedron(Random random, Point3 middle, double reach = 10)
    {
        Point3 P() => middle + new Point3(Of(random, -reach, reach), Of(random, -reach, reach), Of(random, -reach, reach));
        return new([P(), P(), P(), P()], [0, 1, 2, 0, 2, 3, 0, 3, 1, 1, 3, 2], []);
    }

    private static Mesh Hundredth(Mesh mesh) => mesh with { Vertices = Array.ConvertAll(mesh.Vertices, v => v * 0.01) };

    private static Mesh Box(Point3 corner) => new(
        [.. from z in new[] { 0, 10 } from y in new[] { 0, 10 } from x in new[] { 0, 10 } select corner + new Point3(x, y, z)],
        [0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5],
        []);

    private static double Of(Random random, double low, double high) => low + (random.NextDouble() * (high - low));
}
