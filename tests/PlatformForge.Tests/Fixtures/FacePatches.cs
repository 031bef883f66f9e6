using PlatformForge.Geometry;

namespace PlatformForge.Tests.Fixtures;

/// <summary>Faces of bricks and stones by the mesh: patches of triangles that lie in one upright plane and hang together.</summary>
internal static class FacePatches
{
    /// <summary>Outlines of all of them, their hulls: along the plane and up, mm.</summary>
    /// <param name="mesh">A section in the layout.</param>
    /// <param name="normal">Unit normal of the plane in plan.</param>
    /// <param name="at">Its distance from nought along that.</param>
    public static IEnumerable<Point2[]> Of(Mesh mesh, Point2 normal, double at)
    {
        int[] of = [.. Enumerable.Range(0, mesh.Vertices.Length)];
        int Root(int v) => of[v] == v ? v : of[v] = Root(of[v]);
        bool Lies(int v) => Math.Abs(Point2.Dot(normal, new(mesh.Vertices[v].X, mesh.Vertices[v].Y)) - at) < 1e-3;
        var inPlane = new HashSet<int>();
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            int[] corners = [mesh.Triangles[3 * t], mesh.Triangles[(3 * t) + 1], mesh.Triangles[(3 * t) + 2]];
            if (Array.TrueForAll(corners, Lies))
            {
                inPlane.UnionWith(corners);
                (of[Root(corners[1])], of[Root(corners[2])]) = (Root(corners[0]), Root(corners[0]));
            }
        }

        var along = normal.Left;
        return inPlane.GroupBy(Root)
            .Select(g => ConvexRing.Hull(g.Select(v => new Point2(Point2.Dot(along, new(mesh.Vertices[v].X, mesh.Vertices[v].Y)), mesh.Vertices[v].Z))))
            .Where(r => r.Length > 2);
    }
}
