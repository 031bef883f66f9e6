using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;

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

        HeightPlane[] known = [.. planes];
        Bed[] beds = Array.ConvertAll(known, p => Bed.Of(mesh, PrintTurn.Lying(p, along).Row2, layer));
        double total = Upward(mesh, beds) - ledges;
        var (bestShare, best) = known.Select((p, i) => (Share: beds[i].Lying / total, Plane: p)).MaxBy(p => p.Share);
        return asked == PrintPose.DeckDown || bestShare >= LyingShare
            ? (PrintPose.DeckDown, PrintTurn.Lying(best, along))
            : (PrintPose.Upright, PrintTurn.Upright(along));
    }

    /// <summary>Area that faces up, mm², while what lies on each bed is added up there.</summary>
    private static double Upward(Mesh mesh, Bed[] beds)
    {
        var (vertices, corners) = (mesh.Vertices, mesh.Triangles);
        double upward = 0;
        for (int i = 0; i + 2 < corners.Length; i += 3)
        {
            Point3 a = vertices[corners[i]], b = vertices[corners[i + 1]], c = vertices[corners[i + 2]];
            var normal = Point3.Cross(b - a, c - a);
            if (normal.Z > 0)
            {
                double size = normal.Length;
                upward += normal.Z > DeckSlope * size ? size / 2 : 0;
            }

            foreach (ref var bed in beds.AsSpan())
            {
                bed.Add(a, b, c, normal);
            }
        }

        return upward;
    }

    /// <summary>What of a section lies on the bed where a plane of its walking surface does.</summary>
    private struct Bed
    {
        private Point3 up;
        private double limit;

        /// <summary>Area that lies on it, mm².</summary>
        public double Lying { get; private set; }

        public static Bed Of(Mesh mesh, Point3 up, double within)
        {
            double lowest = double.PositiveInfinity;
            foreach (var v in mesh.Vertices)
            {
                lowest = Math.Min(lowest, Point3.Dot(up, v));
            }

            return new() { up = up, limit = lowest + within };
        }

        public void Add(Point3 a, Point3 b, Point3 c, Point3 normal)
        {
            double down = Point3.Dot(up, normal);
            if (down < 0 && Point3.Dot(up, a) < limit && Point3.Dot(up, b) < limit && Point3.Dot(up, c) < limit)
            {
                double size = normal.Length;
                Lying += down < -DeckSlope * size ? size / 2 : 0;
            }
        }
    }
}
