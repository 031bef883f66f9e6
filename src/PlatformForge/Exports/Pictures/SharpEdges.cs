using PlatformForge.Exports.Pictures.Bodies;
using PlatformForge.Exports.Pictures.Light;
using PlatformForge.Geometry;
using PlatformForge.Geometry.Meshes;
using PlatformForge.Solids;

namespace PlatformForge.Exports.Pictures;

/// <summary>Edges worth inking: creases, and where a body turns away from the eye.</summary>
internal static class SharpEdges
{
    // Cosine of the least angle between faces that reads as a crease: facets of curves stay well below it.
    private const double CreaseCosine = 0.9;

    // Joints are less deep than a printed line is wide, mm.
    private const double DeepestJoint = 0.5;

    public static IEnumerable<InkLine> Of(Mesh mesh, View view)
    {
        var triangles = mesh.Triangles;
        int[] opposites = HalfEdges.Opposites(mesh);
        bool[] fine = Fine(mesh);
        for (int i = 0; i < triangles.Length; i++)
        {
            int a = triangles[i], b = triangles[HalfEdges.Next(i)], other = opposites[i] / 3;
            if (a < b && opposites[i] != i && view.Ahead(mesh.Vertices[a]) > View.Near
                && view.Ahead(mesh.Vertices[b]) > View.Near && Shows(mesh, i / 3, other, view.TowardFrom(mesh.Vertices[a])) is { } contour)
            {
                bool detail = fine[a] && fine[b] && IsJoint(mesh, a, b, i / 3, other);
                if (contour || !detail)
                {
                    yield return new(mesh.Vertices[a], mesh.Vertices[b], contour, detail);
                }
            }
        }
    }

    // Whether an edge goes round a brick, or into the joint at its corner: on one side of it a face goes no deeper than a joint does, or the edge itself does
    // not. Feet, tops and corners of walls have more on both.
    private static bool IsJoint(Mesh mesh, int a, int b, int one, int other)
    {
        double length = (mesh.Vertices[b] - mesh.Vertices[a]).Length;
        return length < DeepestJoint || Math.Min(Normal(mesh, one).Length, Normal(mesh, other).Length) < DeepestJoint * length;
    }

    // Corners of joints in brickwork and of the bricks beside them: their colours tell them apart, and ink would make one dark plane of them.
    private static bool[] Fine(Mesh mesh)
    {
        const byte mortar = (byte)Paint.Mortar;
        bool[] joint = new bool[mesh.Vertices.Length], fine = new bool[mesh.Vertices.Length];
        if (!mesh.Paints.AsSpan().Contains(mortar))
        {
            return fine;
        }

        Mark(t => mesh.Paints[t] == mortar, joint);
        Mark(t => mesh.Paints[t] is (byte)Paint.Wall or (byte)Paint.Stone && Enumerable.Range(3 * t, 3).Any(i => joint[mesh.Triangles[i]]), fine);
        return fine;

        void Mark(Func<int, bool> which, bool[] marks)
        {
            for (int t = 0; t < mesh.Paints.Length; t++)
            {
                if (which(t))
                {
                    (marks[mesh.Triangles[3 * t]], marks[mesh.Triangles[(3 * t) + 1]], marks[mesh.Triangles[(3 * t) + 2]]) = (true, true, true);
                }
            }
        }
    }

    // Whether the edge is a contour; null where it is neither that nor a crease that is seen.
    private static bool? Shows(Mesh mesh, int one, int other, Point3 toward)
    {
        var (m, n) = (Normal(mesh, one), Normal(mesh, other));
        double lengths = m.Length * n.Length, facing = Point3.Dot(m, toward), facingToo = Point3.Dot(n, toward);
        bool contour = facing * facingToo < 0;
        return lengths > 0 && (facing > 0 || facingToo > 0) && (contour || Point3.Dot(m, n) < CreaseCosine * lengths) ? contour : null;
    }

    internal static Point3 Normal(Mesh mesh, int triangle)
    {
        var a = mesh.Vertices[mesh.Triangles[3 * triangle]];
        return Point3.Cross(mesh.Vertices[mesh.Triangles[(3 * triangle) + 1]] - a, mesh.Vertices[mesh.Triangles[(3 * triangle) + 2]] - a);
    }
}
