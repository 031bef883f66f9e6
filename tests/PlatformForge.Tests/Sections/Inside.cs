using PlatformForge.Geometry;

namespace PlatformForge.Tests.Sections;

/// <summary>Whether points lie inside a closed mesh, by counting the faces above them: knows nothing of columns or blocks.</summary>
internal sealed class Inside(Mesh mesh)
{
    public bool Holds(Point3 p)
    {
        int crossings = 0;
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[i]] - p, b = mesh.Vertices[mesh.Triangles[i + 1]] - p, c = mesh.Vertices[mesh.Triangles[i + 2]] - p;
            double u = Flat(b, c), v = Flat(c, a), w = Flat(a, b), sum = u + v + w;
            bool hit = sum != 0 && ((u > 0 && v > 0 && w > 0) || (u < 0 && v < 0 && w < 0));
            crossings += hit && ((u * a.Z) + (v * b.Z) + (w * c.Z)) / sum > 0 ? 1 : 0;
        }

        return crossings % 2 == 1;
    }

    private static double Flat(Point3 a, Point3 b) => (a.X * b.Y) - (a.Y * b.X);
}
