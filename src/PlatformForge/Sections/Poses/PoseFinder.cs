using PlatformForge.Geometry;
using PlatformForge.Solids;

namespace PlatformForge.Sections.Poses;

/// <summary>
/// Finds how a section stands on the bed. Deck down wherever most of what faces up comes to lie on the bed's first layer, which gives the flat, even
/// deck; the choice is measured on the mesh, not taken from the plan.
/// </summary>
internal static class PoseFinder
{
    /// <summary>Share of all upward faces that must lie on the bed for the deck-down pose.</summary>
    private const double LyingShare = 0.8;

    /// <summary>A plane is preferred to a simpler one only if it brings this share more to lie.</summary>
    private const double LeastGain = 0.01;

    /// <summary>Faces steeper than this (cosine of the angle to the vertical) are not deck.</summary>
    private const double DeckSlope = 0.9;

    /// <summary>Chosen pose and the turn that leads to it.</summary>
    /// <param name="mesh">Section in the layout frame.</param>
    /// <param name="surface">Walking surface half-way along it, a first guess at the plane to lie on.</param>
    /// <param name="along">Long axis in plan.</param>
    /// <param name="asked">What the user wants.</param>
    /// <param name="layer">Layer height, mm; what is nearer to the bed than it lies on the bed.</param>
    public static (PrintPose Pose, RigidTransform Turn) Find(Mesh mesh, HeightPlane surface, Point2 along, PrintPose asked, double layer)
    {
        if (asked == PrintPose.Upright)
        {
            return (PrintPose.Upright, PrintTurn.Upright(along));
        }

        // Level coping before a deck with crossfall is a fold: lying on the deck lifts the coping's edge by a hair, lying between the two lifts both.
        var faces = FacesOf(mesh);
        var (total, mean) = Deck(faces, _ => true);
        double bestShare = -1;
        var best = surface;
        foreach (var plane in new[] { surface, mean, Deck(faces, paint => paint == (byte)Paint.Deck).Mean })
        {
            double share = Lying(mesh, faces, PrintTurn.Lying(plane, along), layer / 2) / total;
            if (share > bestShare + LeastGain)
            {
                (bestShare, best) = (share, plane);
            }
        }

        bestShare = Lying(mesh, faces, PrintTurn.Lying(best, along), layer) / total;
        return asked == PrintPose.DeckDown || bestShare >= LyingShare
            ? (PrintPose.DeckDown, PrintTurn.Lying(best, along))
            : (PrintPose.Upright, PrintTurn.Upright(along));
    }

    private readonly record struct Face(Point3 Normal, double Size, byte Paint);

    private static Face[] FacesOf(Mesh mesh)
    {
        var faces = new Face[mesh.TriangleCount];
        for (int i = 0; i < faces.Length; i++)
        {
            var a = mesh.Vertices[mesh.Triangles[3 * i]];
            var normal = Point3.Cross(mesh.Vertices[mesh.Triangles[(3 * i) + 1]] - a, mesh.Vertices[mesh.Triangles[(3 * i) + 2]] - a);
            faces[i] = new(normal, normal.Length, mesh.Paints.Length > 0 ? mesh.Paints[i] : (byte)Paint.Deck);
        }

        return faces;
    }

    // Area of the faces that look up and show certain paints, and the plane whose slope is the mean of theirs.
    private static (double Area, HeightPlane Mean) Deck(Face[] faces, Func<byte, bool> counts)
    {
        Point3 sum = default;
        double area = 0;
        foreach (var face in faces)
        {
            if (face.Normal.Z > DeckSlope * face.Size && counts(face.Paint))
            {
                sum += face.Normal;
                area += face.Size / 2;
            }
        }

        return (area, area == 0 ? new(0) : new(0, -sum.X / sum.Z, -sum.Y / sum.Z));
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
