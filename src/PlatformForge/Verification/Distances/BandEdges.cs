using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>Gathers the edges in plan of everything that stands in a height band and near enough to a track.</summary>
internal static class BandEdges
{
    // Longer edges are measured piece by piece, which keeps the tree's circles small, mm.
    private const double Piece = 8;

    /// <summary>A tree of the edges; those that lie further from the track than the nearest by more than the vehicles'
    /// half width and throw cannot be nearest to a vehicle, and are left out.</summary>
    /// <param name="placed">Meshes in the layout frame, one a section.</param>
    /// <param name="slab">The band.</param>
    /// <param name="field">Distance to the track.</param>
    /// <param name="halfWidth">How far any part of any vehicle reaches from the track's middle, mm.</param>
    public static SegmentTree Of(IReadOnlyList<Mesh> placed, Slab slab, RideField field, double halfWidth)
    {
        var all = new List<PlanSegment>();
        double nearest = double.PositiveInfinity;
        Span<Point3> corners = stackalloc Point3[Slab.MostCorners];
        for (int section = 0; section < placed.Count; section++)
        {
            var (vertices, triangles, _) = placed[section];
            for (int i = 0; i < triangles.Length; i += 3)
            {
                int count = slab.Cut(vertices[triangles[i]], vertices[triangles[i + 1]], vertices[triangles[i + 2]], corners);
                for (int k = 0; k < count; k++)
                {
                    Add(all, corners[k], corners[(k + 1) % count], section, field, halfWidth, ref nearest);
                }
            }
        }

        double keep = Keep(nearest, halfWidth);
        return new([.. all.Where(s => field.Distance(Middle(s.A, s.B)) <= keep)]);
    }

    private static double Keep(double nearest, double halfWidth) => nearest + halfWidth + (2 * RideField.Roughness) + Piece;

    private static Point2 Middle(Point3 a, Point3 b) => new((a.X + b.X) / 2, (a.Y + b.Y) / 2);

    private static void Add(List<PlanSegment> all, Point3 a, Point3 b, int section, RideField field, double halfWidth, ref double nearest)
    {
        // An edge that is too far off as a whole is not taken to pieces.
        if (field.Distance(Middle(a, b)) - ((b - a).Length / 2) > Keep(nearest, halfWidth))
        {
            return;
        }

        int pieces = Math.Max(1, (int)Math.Ceiling((b - a).Length / Piece));
        for (int i = 0; i < pieces; i++)
        {
            Point3 p = a + ((b - a) * ((double)i / pieces)), q = i + 1 == pieces ? b : a + ((b - a) * ((i + 1.0) / pieces));
            double distance = field.Distance(Middle(p, q));
            if (distance <= Keep(nearest, halfWidth))
            {
                nearest = Math.Min(nearest, distance);
                all.Add(new(p, q, section));
            }
        }
    }
}
