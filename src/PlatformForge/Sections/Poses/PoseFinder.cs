using PlatformForge.Geometry;

namespace PlatformForge.Sections.Poses;

/// <summary>
/// Finds how a section stands on the bed. Deck down wherever most of what faces up comes to lie on the bed's first layer, which gives the flat, even
/// deck; the choice is measured on the mesh, not taken from the plan.
/// </summary>
internal static class PoseFinder
{
    /// <summary>Share of all upward faces that must lie on the bed for the deck-down pose.</summary>
    private const double LyingShare = 0.8;

    /// <summary>Faces steeper than this (cosine of the angle to the vertical) are not deck.</summary>
    private const double DeckSlope = 0.9;

    /// <summary>Chosen pose and the turn that leads to it.</summary>
    /// <param name="mesh">Section in the layout frame.</param>
    /// <param name="planes">Planes of its walking surface: one, or those on both sides of a ramp's head.</param>
    /// <param name="along">Long axis in plan.</param>
    /// <param name="asked">What the user wants.</param>
    /// <param name="layer">Layer height, mm; what is nearer to the bed than it lies on the bed.</param>
    /// <param name="ledges">What looks up and is narrower than a line, mm²: the tops of bricks.</param>
    public static (PrintPose Pose, RigidTransform Turn) Find(Mesh mesh, IEnumerable<HeightPlane> planes, Point2 along, PrintPose asked,
        double layer, double ledges)
    {
        if (asked == PrintPose.Upright)
        {
            return (PrintPose.Upright, PrintTurn.Upright(along));
        }

        var faces = FacesOf(mesh);
        double total = faces.Sum(f => f.Normal.Z > DeckSlope * f.Size ? f.Size / 2 : 0) - ledges;
        var (bestShare, best) = planes.Select(p => (Share: Lying(mesh, faces, PrintTurn.Lying(p, along), layer) / total, Plane: p)).MaxBy(p => p.Share);
        return asked == PrintPose.DeckDown || bestShare >= LyingShare
            ? (PrintPose.DeckDown, PrintTurn.Lying(best, along))
            : (PrintPose.Upright, PrintTurn.Upright(along));
    }

    private readonly record struct Face(Point3 Normal, double Size);

    private static Face[] FacesOf(Mesh mesh)
    {
        var faces = new Face[mesh.TriangleCount];
        for (int i = 0; i < faces.Length; i++)
        {
            var a = mesh.Vertices[mesh.Triangles[3 * i]];
            var normal = Point3.Cross(mesh.Vertices[mesh.Triangles[(3 * i) + 1]] - a, mesh.Vertices[mesh.Triangles[(3 * i) + 2]] - a);
            faces[i] = new(normal, normal.Length);
        }

        return faces;
    }

    private static double Lying(Mesh mesh, Face[] faces, RigidTransform turn, double within)
    {
        var up = turn.Row2;
        var height = Array.ConvertAll(mesh.Vertices, v => Point3.Dot(up, v));
        double limit = height.Min() + within, area = 0;
        for (int i = 0; i < faces.Length; i++)
        {
            bool low = height[mesh.Triangles[3 * i]] < limit && height[mesh.Triangles[(3 * i) + 1]] < limit && height[mesh.Triangles[(3 * i) + 2]] < limit;
            area += low && Point3.Dot(up, faces[i].Normal) < -DeckSlope * faces[i].Size ? faces[i].Size / 2 : 0;
        }

        return area;
    }
}
