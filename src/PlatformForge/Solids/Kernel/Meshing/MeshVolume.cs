using PlatformForge.Geometry;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>What a mesh encloses, as in <see cref="Mesh.Volume()"/>, in halves where two threads share the work: to hold against the polygons' volume.</summary>
internal static class MeshVolume
{
    /// <summary>Volume in mm³.</summary>
    public static double Of(Mesh mesh, SideBySide sides)
    {
        var parts = new double[sides.Parts(mesh.TriangleCount, 2)];
        if (parts.Length == 1)
        {
            return mesh.Volume();
        }

        sides.Run(parts.Length, part =>
        {
            var (from, end) = SideBySide.Range(part, parts.Length, mesh.TriangleCount);
            parts[part] = mesh.Volume(from, end);
        });
        return parts.Sum();
    }
}
