namespace PlatformForge.Geometry.Meshes;

/// <summary>
/// Takes triangles out of a closed mesh that are flatter than a file's numbers can carry: their normals would point anywhere. A flat triangle is
/// turned into its neighbour across its longest side; one with a side as short loses that side. Neither moves the surface by more than a
/// thousandth of a millimetre, and the mesh stays a closed 2-manifold by index.
/// </summary>
public static class SliverMender
{
    /// <summary>Least height in mm of a triangle over its longest side. Twice what is promised of files, since formats round once more.</summary>
    public const double Flat = 2e-4;

    /// <summary>The same as a share of the longest side: below it, single precision loses a normal's third digit.</summary>
    public const double FlatShare = 2e-5;

    // Mending one sliver can leave another beside it; a few rounds have always been enough.
    private const int Rounds = 24;

    /// <summary>The mesh with its corners as 32-bit floats and without flat triangles; what cannot be mended stays.</summary>
    public static Mesh AsFloats(Mesh mesh)
    {
        var rounded = mesh with { Vertices = Array.ConvertAll(mesh.Vertices, v => new Point3((float)v.X, (float)v.Y, (float)v.Z)) };
        var slivers = Slivers(rounded);
        if (slivers.Count == 0)
        {
            return rounded;
        }

        var surgery = new SliverSurgery(rounded);
        for (int round = 0; round < Rounds && slivers.Count > 0 && surgery.Mend(slivers); round++)
        {
        }

        return surgery.Result();
    }

    /// <summary>Whether three corners are too near to one line: whether twice their area is less than the longest side times the least height.</summary>
    internal static bool IsSliver(Point3 a, Point3 b, Point3 c)
    {
        Point3 ab = b - a, ac = c - a, bc = c - b, cross = Point3.Cross(ab, ac);
        double longest = Math.Max(Point3.Dot(ab, ab), Math.Max(Point3.Dot(ac, ac), Point3.Dot(bc, bc)));
        return Point3.Dot(cross, cross) < longest * Math.Max(Flat * Flat, FlatShare * FlatShare * longest);
    }

    /// <summary>Height of a triangle over its longest side, mm.</summary>
    internal static double Height(Point3 a, Point3 b, Point3 c) =>
        Point3.Cross(b - a, c - a).Length / Math.Max(double.Epsilon, Math.Max((b - a).Length, Math.Max((c - b).Length, (a - c).Length)));

    private static List<int> Slivers(Mesh mesh)
    {
        var found = new List<int>();
        var (v, t) = (mesh.Vertices, mesh.Triangles);
        for (int i = 0; i < t.Length; i += 3)
        {
            if (IsSliver(v[t[i]], v[t[i + 1]], v[t[i + 2]]))
            {
                found.Add(i / 3);
            }
        }

        return found;
    }
}
