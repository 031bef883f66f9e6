using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>Gathers the edges in plan of everything that stands in a height band and near enough to a track.</summary>
/// <remarks>
/// An edge that two triangles share is kept once.
/// </remarks>
internal sealed class BandEdges
{
    // Longer edges are measured piece by piece, which keeps the tree's circles small, mm.
    private const double Piece = 8;

    private readonly Slab slab;
    private readonly RideField field;
    private readonly double reach;
    private readonly List<PlanSegment> kept = [];
    private readonly List<double> distances = [];
    private readonly HashSet<(Point3 Low, Point3 High)> known = [];
    private double nearest = double.PositiveInfinity;

    private BandEdges(Slab slab, RideField field, double halfWidth) => (this.slab, this.field, reach) = (slab, field, halfWidth + (2 * RideField.Roughness) + Piece);

    // Nothing farther from the track than this, mm, can be nearest to a vehicle.
    private double Keep => nearest + reach;

    /// <summary>A tree of the edges; those that lie further from the track than the nearest by more than the vehicles'
    /// half width and throw cannot be nearest to a vehicle, and are left out.</summary>
    /// <param name="placed">Meshes in the layout frame, one a section.</param>
    /// <param name="away">Rough distance to the track of every corner of every mesh, mm.</param>
    /// <param name="slab">The band.</param>
    /// <param name="field">Distance to the track.</param>
    /// <param name="halfWidth">How far any part of any vehicle reaches from the track's middle, mm.</param>
    public static SegmentTree Of(IReadOnlyList<Mesh> placed, double[][] away, Slab slab, RideField field, double halfWidth)
    {
        var edges = new BandEdges(slab, field, halfWidth);
        for (int section = 0; section < placed.Count; section++)
        {
            edges.Look(placed[section], away[section]);
        }

        for (int section = 0; section < placed.Count; section++)
        {
            edges.Gather(placed[section], away[section], section);
        }

        double keep = edges.Keep;
        return new([.. edges.kept.Where((_, i) => edges.distances[i] <= keep)]);
    }

    // Corners within the band tell roughly how near the nearest edge is before any is taken.
    private void Look(Mesh mesh, double[] away)
    {
        for (int i = 0; i < away.Length; i++)
        {
            if (away[i] < nearest && slab.Holds(mesh.Vertices[i].Z))
            {
                nearest = away[i];
            }
        }
    }

    private void Gather(Mesh mesh, double[] away, int section)
    {
        known.Clear();
        var (vertices, triangles, _) = mesh;
        Span<Point3> corners = stackalloc Point3[Slab.MostCorners];
        for (int i = 0; i < triangles.Length; i += 3)
        {
            Point3 a = vertices[triangles[i]], b = vertices[triangles[i + 1]], c = vertices[triangles[i + 2]];
            if (slab.Misses(a.Z, b.Z, c.Z) || IsFar(a, b, c, Math.Max(away[triangles[i]], Math.Max(away[triangles[i + 1]], away[triangles[i + 2]]))))
            {
                continue;
            }

            int count = slab.Cut(a, b, c, corners);
            for (int k = 0; k < count; k++)
            {
                Add(corners[k], corners[(k + 1) % count], section);
            }
        }
    }

    // No point of a triangle is farther from any of its corners than its longest side.
    private bool IsFar(Point3 a, Point3 b, Point3 c, double farthest)
    {
        if (farthest <= Keep)
        {
            return false;
        }

        Point2 p = Plan(a), q = Plan(b), r = Plan(c);
        return farthest - Math.Max((q - p).Length, Math.Max((r - q).Length, (p - r).Length)) - (2 * RideField.Roughness) > Keep;
    }

    private static Point2 Plan(Point3 p) => new(p.X, p.Y);

    private static Point2 Middle(Point3 a, Point3 b) => new((a.X + b.X) / 2, (a.Y + b.Y) / 2);

    private static (Point3 Low, Point3 High) Key(Point3 a, Point3 b) => (a.X, a.Y, a.Z).CompareTo((b.X, b.Y, b.Z)) < 0 ? (a, b) : (b, a);

    private void Add(Point3 a, Point3 b, int section)
    {
        // An edge that is too far off as a whole is not taken to pieces.
        if (field.Distance(Middle(a, b)) - ((b - a).Length / 2) > Keep || !known.Add(Key(a, b)))
        {
            return;
        }

        int pieces = Math.Max(1, (int)Math.Ceiling((b - a).Length / Piece));
        for (int i = 0; i < pieces; i++)
        {
            Point3 p = a + ((b - a) * ((double)i / pieces)), q = i + 1 == pieces ? b : a + ((b - a) * ((i + 1.0) / pieces));
            double distance = field.Distance(Middle(p, q));
            if (distance <= Keep)
            {
                nearest = Math.Min(nearest, distance);
                kept.Add(new(p, q, section));
                distances.Add(distance);
            }
        }
    }
}
