using PlatformForge.Geometry;
using PlatformForge.Solids;
using PlatformForge.Tests.Meshes;
using Xunit;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>Blocks for the kernel's tests, and the check that every solid must pass.</summary>
internal static class Shapes
{
    public static ColumnBlock Box(double x0, double y0, double x1, double y1, double z0, double z1, BlockAction action = BlockAction.Add, Paint paint = Paint.Wall) =>
        new([new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)], new(z0), new(z1), action, paint);

    public static Point2[] Polygon(int corners, Point2 centre, double radius, double turn = 0) =>
        [.. Enumerable.Range(0, corners).Select(i => centre + (Point2.FromAngle(turn + (2 * Math.PI * i / corners)) * radius))];

    /// <summary>Raises the blocks and checks all that can be checked of the mesh alone.</summary>
    public static (Solid Solid, MeshReport Report) RaiseSound(params ColumnBlock[] blocks)
    {
        var solid = SolidRaiser.Raise(blocks);
        var report = MeshCheck.Inspect(solid.Mesh);
        Assert.True(report.IsSound, report.ToString());
        Assert.Equal(solid.ColumnVolume, report.Volume, solid.ColumnVolume * 1e-9);
        return (solid, report);
    }
}
