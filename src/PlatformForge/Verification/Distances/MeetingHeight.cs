using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>
/// Whether what comes nearest to a part in plan stands at the part's own heights too. A platform may be held out from under bodies, and up an upright face
/// every height is as near as another.
/// </summary>
internal static class MeetingHeight
{
    /// <summary>Height above the baseboard, mm, within a band at which a mesh stands at a place in plan; the place's own where that is within it, null where
    /// nothing is.</summary>
    /// <param name="mesh">The mesh in the layout frame.</param>
    /// <param name="band">The part's heights.</param>
    /// <param name="place">A place on the mesh.</param>
    public static double? At(Mesh mesh, Slab band, Point3 place)
    {
        if (place.Z >= band.Low && place.Z <= band.High)
        {
            return place.Z;
        }

        double? found = null;
        var (vertices, triangles, _) = mesh;
        Span<Point3> corners = stackalloc Point3[Slab.MostCorners];
        for (int i = 0; i < triangles.Length; i += 3)
        {
            int count = band.Cut(vertices[triangles[i]], vertices[triangles[i + 1]], vertices[triangles[i + 2]], corners);
            for (int k = 0; k < count; k++)
            {
                if (HeightOn(corners[k], corners[(k + 1) % count], place) is { } height
                    && !(Math.Abs(height - place.Z) >= Math.Abs((found ?? double.PositiveInfinity) - place.Z)))
                {
                    found = height;
                }
            }
        }

        return found;
    }

    // Height of an edge where it passes the place in plan; the end nearer to the place's height where it is upright.
    private static double? HeightOn(Point3 a, Point3 b, Point3 place)
    {
        Point2 from = new(a.X, a.Y), along = new Point2(b.X, b.Y) - from, to = new Point2(place.X, place.Y) - from;
        double square = Point2.Dot(along, along);
        double t = square > 0 ? Math.Clamp(Point2.Dot(to, along) / square, 0, 1) : Math.Abs(a.Z - place.Z) <= Math.Abs(b.Z - place.Z) ? 0 : 1;
        return ((along * t) - to).Length <= Slab.Rounding ? a.Z + (t * (b.Z - a.Z)) : null;
    }
}
