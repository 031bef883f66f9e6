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
        var (total, mean) = Deck(mesh, _ => true);
        double bestShare = -1;
        var best = surface;
        foreach (var plane in new[] { surface, mean, Deck(mesh, paint => paint == (byte)Paint.Deck).Mean })
        {
            double share = Lying(mesh, PrintTurn.Lying(plane, along), layer / 2) / total;
            if (share > bestShare + LeastGain)
            {
                (bestShare, best) = (share, plane);
            }
        }

        bestShare = Lying(mesh, PrintTurn.Lying(best, along), layer) / total;
        return asked == PrintPose.DeckDown || bestShare >= LyingShare
            ? (PrintPose.DeckDown, PrintTurn.Lying(best, along))
            : (PrintPose.Upright, PrintTurn.Upright(along));
    }

    // Area of the faces that look up and show certain paints, and the plane whose slope is the mean of theirs.
    private static (double Area, HeightPlane Mean) Deck(Mesh mesh, Func<byte, bool> counts)
    {
        Point3 sum = default;
        double area = 0;
        int face = 0;
        foreach (var (normal, size, _) in Faces(mesh))
        {
            if (normal.Z > DeckSlope * size && counts(mesh.Paints.Length > 0 ? mesh.Paints[face] : (byte)Paint.Deck))
            {
                sum += normal;
                area += size / 2;
            }

            face++;
        }

        return (area, area == 0 ? new(0) : new(0, -sum.X / sum.Z, -sum.Y / sum.Z));
    }

    private static double Lying(Mesh mesh, RigidTransform turn, double within)
    {
        double floor = double.PositiveInfinity;
        foreach (var v in mesh.Vertices)
        {
            floor = Math.Min(floor, Point3.Dot(turn.Row2, v));
        }

        double area = 0;
        foreach (var (normal, size, highest) in Faces(mesh, turn.Row2))
        {
            if (Point3.Dot(turn.Row2, normal) < -DeckSlope * size && highest < floor + within)
            {
                area += size / 2;
            }
        }

        return area;
    }

    private static IEnumerable<(Point3 Normal, double Size, double Highest)> Faces(Mesh mesh, Point3 up = default)
    {
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[i]], b = mesh.Vertices[mesh.Triangles[i + 1]], c = mesh.Vertices[mesh.Triangles[i + 2]];
            var normal = Point3.Cross(b - a, c - a);
            yield return (normal, normal.Length, Math.Max(Point3.Dot(up, a), Math.Max(Point3.Dot(up, b), Point3.Dot(up, c))));
        }
    }
}
