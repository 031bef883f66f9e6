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

    private const int Few = 64;

    private readonly Slab slab;
    private readonly RideField field;
    private readonly double reach;
    private readonly HashSet<(Point3 Low, Point3 High)> known = [];
    private double nearest = double.PositiveInfinity;

    // Of a long fence there are a million: they lie in arrays that are made once and handed on, not in lists that grow and are copied.
    private PlanSegment[] kept = [];
    private double[] distances = [];
    private int count;

    private BandEdges(Slab slab, RideField field, double halfWidth) => (this.slab, this.field, reach) =
        (slab, field, halfWidth + (2 * RideField.Roughness) + Piece);

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

        edges.MakeRoom(placed.Select((m, i) => edges.Near(m, away[i])).Sum() * 3 / 2);
        for (int section = 0; section < placed.Count; section++)
        {
            edges.Gather(placed[section], away[section], section);
        }

        return edges.Nearest();
    }

    // How many triangles are within the band and near with all their corners: of a closed body there are three edges to two of them.
    private int Near(Mesh mesh, double[] away)
    {
        var (vertices, triangles, _) = mesh;
        double keep = Keep;
        int near = 0;
        for (int i = 0; i < triangles.Length; i += 3)
        {
            int a = triangles[i], b = triangles[i + 1], c = triangles[i + 2];
            near += away[a] <= keep && away[b] <= keep && away[c] <= keep && !slab.Misses(vertices[a].Z, vertices[b].Z, vertices[c].Z) ? 1 : 0;
        }

        return near;
    }

    private void MakeRoom(int most)
    {
        Array.Resize(ref kept, most);
        Array.Resize(ref distances, most);
    }

    // What is as near as can matter, now that the nearest is known, moved to the front.
    private SegmentTree Nearest()
    {
        double keep = Keep;
        int near = 0;
        for (int i = 0; i < count; i++)
        {
            if (distances[i] <= keep)
            {
                kept[near++] = kept[i];
            }
        }

        distances = [];
        return new(kept, near);
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

            int sides = slab.Cut(a, b, c, corners);
            for (int k = 0; k < sides; k++)
            {
                Add(corners[k], corners[(k + 1) % sides], section);
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
                if (count == kept.Length)
                {
                    MakeRoom(Math.Max(Few, 2 * count));
                }

                (kept[count], distances[count++]) = (new(p, q, section), distance);
            }
        }
    }
}
