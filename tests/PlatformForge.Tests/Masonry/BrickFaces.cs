using PlatformForge.Geometry;

namespace PlatformForge.Tests.Masonry;

/// <summary>The outer faces of bricks, found in a mesh: what hangs together of the triangles in one upright plane.</summary>
internal static class BrickFaces
{
    /// <summary>Boxes in the plane (along it, up) of everything that lies in it, row by row from the top and from left to right in each, mm.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="origin">A place in the plane, in plan.</param>
    /// <param name="along">Unit direction along it.</param>
    public static List<List<(double From, double To, double Low, double High)>> In(Mesh mesh, Point2 origin, Point2 along)
    {
        const double near = 1e-3;
        var parent = new Dictionary<int, int>();
        int Root(int v) => parent[v] == v ? v : parent[v] = Root(parent[v]);
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            int[] corners = mesh.Triangles[(3 * t)..((3 * t) + 3)];
            if (Array.TrueForAll(corners, c => Math.Abs(Point2.Cross(along, new Point2(mesh.Vertices[c].X, mesh.Vertices[c].Y) - origin)) < near))
            {
                Array.ForEach(corners, c => parent.TryAdd(c, c));
                parent[Root(corners[0])] = Root(corners[1]);
                parent[Root(corners[1])] = Root(corners[2]);
            }
        }

        return [.. parent.Keys.ToArray().GroupBy(Root).Select(face => Box([.. face.Select(v => mesh.Vertices[v])]))
            .GroupBy(b => Math.Round(b.High, 2)).OrderByDescending(row => row.Key).Select(row => row.OrderBy(b => b.From).ToList())];

        (double From, double To, double Low, double High) Box(Point3[] places)
        {
            double[] at = Array.ConvertAll(places, p => Point2.Dot(along, new Point2(p.X, p.Y) - origin));
            return (at.Min(), at.Max(), places.Min(p => p.Z), places.Max(p => p.Z));
        }
    }
}
