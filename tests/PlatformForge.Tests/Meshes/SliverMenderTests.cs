using FsCheck.Xunit;
using PlatformForge.Exports.Stl;
using PlatformForge.Geometry;
using PlatformForge.Geometry.Meshes;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Solids.Kernel;
using Xunit;

namespace PlatformForge.Tests.Meshes;

public class SliverMenderTests
{
    /// <summary>What is promised of files, mm.</summary>
    private const double Flattest = 1e-4;

    [Fact]
    public void A_corner_near_a_long_side_is_turned_into_the_neighbour()
    {
        // A block whose top has a corner 0.00001 mm beside its long edge.
        var mesh = Mended(Prism([new(0, 0), new(50, 0.00001), new(100, 0), new(100, 20), new(0, 20)]));
        Assert.Equal(10, mesh.Vertices.Length);
        Assert.Equal(16, mesh.TriangleCount);
    }

    [Fact]
    public void Two_corners_at_nearly_one_place_become_one()
    {
        var mesh = Mended(Prism([new(0, 0), new(100, 0), new(100, 20), new(99.99999, 20.00001), new(0, 20)]));
        Assert.Equal(8, mesh.Vertices.Length);
        Assert.Equal(12, mesh.TriangleCount);
    }

    [Fact]
    public void A_mesh_without_slivers_only_becomes_floats()
    {
        var prism = Prism([new(0, 0), new(100.1, 0), new(100, 20), new(0, 20)]);
        var mesh = SliverMender.AsFloats(prism);
        Assert.Equal(prism.Triangles, mesh.Triangles);
        Assert.All(mesh.Vertices, v => Assert.Equal((float)v.X, v.X));
    }

    [Property(MaxTest = 300)]
    public void Whatever_the_kernel_raises_is_written_without_flat_triangles(int seed)
    {
        var random = new Random(seed);
        var solid = SolidRaiser.Raise(RandomBlocks.From(seed));
        if (solid.Mesh.TriangleCount > 0)
        {
            var turn = RigidTransform.AboutZ(7 * random.NextDouble()).Then(AboutX(7 * random.NextDouble()))
                .Then(RigidTransform.Shift(100, 100, 100));
            Mended(solid.Mesh.Moved(turn));
        }
    }

    /// <summary>Height of the flattest triangle of a written file, mm.</summary>
    internal static double FlattestOf(Mesh mesh)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[i]], b = mesh.Vertices[mesh.Triangles[i + 1]], c = mesh.Vertices[mesh.Triangles[i + 2]];
            least = Math.Min(least, Point3.Cross(b - a, c - a).Length / Math.Max((b - a).Length, Math.Max((c - b).Length, (a - c).Length)));
        }

        return least;
    }

    private static Mesh Mended(Mesh before)
    {
        var mesh = SliverMender.AsFloats(before);
        var report = MeshCheck.Inspect(mesh);
        Assert.True(report is { OpenEdges: 0, PinchedVertices: 0, DegenerateTriangles: 0 }, report.ToString());
        Assert.Equal(MeshCheck.Inspect(before).Genus, report.Genus);
        double area = Area(before);
        Assert.Equal(before.Volume(), mesh.Volume(), 1e-4 * area);

        // Borders of paint go with a corner only where they run on through the one that it becomes.
        Assert.AllOrNone(before.Paints.Distinct(), paint => Assert.Equal(Area(before, paint), Area(mesh, paint), 1e-4 * area));
        var written = StlReader.Read(StlWriter.ToBytes(mesh, ""), "").Value!.Mesh;
        Assert.Equal(mesh.TriangleCount, written.TriangleCount);
        Assert.InRange(FlattestOf(written), Flattest, double.PositiveInfinity);
        return mesh;
    }

    private static double Area(Mesh mesh, byte? paint = null)
    {
        double sum = 0;
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            if (paint is { } only && mesh.Paints[i / 3] != only)
            {
                continue;
            }

            var a = mesh.Vertices[mesh.Triangles[i]];
            sum += Point3.Cross(mesh.Vertices[mesh.Triangles[i + 1]] - a, mesh.Vertices[mesh.Triangles[i + 2]] - a).Length / 2;
        }

        return sum;
    }

    // An upright prism, 5 mm high, its ends cut into a fan from the first corner.
    private static Mesh Prism(Point2[] ring)
    {
        int n = ring.Length;
        var triangles = new List<int>();
        for (int i = 0; i < n; i++)
        {
            int next = (i + 1) % n;
            triangles.AddRange([i, next, n + next, i, n + next, n + i]);
            if (i > 0 && i + 1 < n)
            {
                triangles.AddRange([0, i + 1, i, n, n + i, n + i + 1]);
            }
        }

        return new([.. ring.Select(p => new Point3(p.X, p.Y, 0)), .. ring.Select(p => new Point3(p.X, p.Y, 5))], [.. triangles], []);
    }

    private static RigidTransform AboutX(double angle)
    {
        var (s, c) = Math.SinCos(angle);
        return new(new(1, 0, 0), new(0, c, -s), new(0, s, c), default);
    }
}
