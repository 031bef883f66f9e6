using PlatformForge.Geometry;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Meshes;
using PlatformForge.Units;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>Blocks for the kernel's tests, and the check that every solid must pass.</summary>
internal static class Shapes
{
    public static ColumnBlock Box(double x0, double y0, double x1, double y1, double z0, double z1, BlockAction action = BlockAction.Add,
        Paint paint = Paint.Wall) =>
        new([new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)], new(z0), new(z1), action, paint);

    public static Point2[] Polygon(int corners, Point2 centre, double radius, double turn = 0) =>
        [.. Enumerable.Range(0, corners).Select(i => centre + (Point2.FromAngle(turn + (2 * Math.PI * i / corners)) * radius))];

    /// <summary>Raises the blocks and checks all that can be checked of the mesh alone.</summary>
    public static (Solid Solid, MeshReport Report) RaiseSound(params ColumnBlock[] blocks)
    {
        var solid = SolidRaiser.Raise(blocks);
        var report = MeshCheck.Inspect(solid.Mesh);
        Assert.True(report.IsSound, report.ToString());
        Agree(solid, report);
        return (solid, report);
    }

    /// <summary>Holds the mesh against its own polygons, and against columns that were never meshed.</summary>
    public static void Agree(Solid solid, MeshReport report)
    {
        Assert.Equal(solid.MeshVolume, report.Volume, 1e-9 * Math.Max(1, solid.MeshVolume));

        // A straight wall leaves out nodes that the grid moved by half a step at most; levels of one vertex lie at most as far apart as two steps.
        double moved = 2 * Tolerances.GridStep * Area(solid.Mesh);
        Assert.InRange(report.Volume - solid.ColumnVolume, -moved - 1e-9, moved + 1e-9);
    }

    private static double Area(Mesh mesh)
    {
        double sum = 0;
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[i]], b = mesh.Vertices[mesh.Triangles[i + 1]], c = mesh.Vertices[mesh.Triangles[i + 2]];
            sum += Point3.Cross(b - a, c - a).Length / 2;
        }

        return sum;
    }
}
