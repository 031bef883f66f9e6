using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Track;

namespace PlatformForge.Solids.Bodies.Layers;

/// <summary>
/// A plan laid out in the layout frame by its facets: every line of the plan is straight between its points at neighbouring
/// stations, and a chainage between two stations is one straight line across. So a line drawn in the plan and the solid built from it are
/// the same polyline, and whatever is cut at one chainage is cut along one straight line.
/// </summary>
public sealed class FacetedPlan
{
    private readonly Point2[] centre;
    private readonly Point2[] across;
    private readonly Side side;
    private readonly Lazy<WallProfile> profile;

    public FacetedPlan(PlatformPlan plan)
        : this(plan, plan.Spine, plan.Stations)
    {
    }

    private FacetedPlan(PlatformPlan plan, Spine spine, double[] stations)
    {
        (Plan, Stations, side) = (plan, stations, spine.Side);
        profile = new(() => WallProfiles.Of(plan));
        var lines = Array.ConvertAll(Stations, spine.LineAt);
        centre = Array.ConvertAll(lines, l => l.Origin);
        across = Array.ConvertAll(lines, l => l.Away);
    }

    /// <summary>A face of a plan by its own facets, for what is square to its own edge.</summary>
    public static FacetedPlan OfFace(PlatformPlan plan, FacePlan face) => new(plan, new(face.Chart, face.Side), face.Stations);

    public PlatformPlan Plan { get; }

    /// <summary>Chainages of the plan's facets, mm, rising.</summary>
    public double[] Stations { get; }

    /// <summary>How far its walls stand out at each height.</summary>
    public WallProfile Profile => profile.Value;

    /// <summary>Whether rings that run forward along the track side and back along the far side are counter-clockwise.</summary>
    public bool RunsLeft => side == Side.Left;

    /// <summary>Index of the facet that holds a chainage, 0 to the number of stations less two; at a station the later one.</summary>
    public int FacetAt(double chainage)
    {
        int found = Array.BinarySearch(Stations, chainage);
        return Math.Clamp(found >= 0 ? found : ~found - 1, 0, Stations.Length - 2);
    }

    /// <summary>The straight line across the platform at a chainage: its point on the centreline's chord and its direction away from the track (about a unit
    /// long).</summary>
    public (Point2 Origin, Point2 Across) CrossLine(double chainage)
    {
        int i = FacetAt(chainage);
        double f = (chainage - Stations[i]) / (Stations[i + 1] - Stations[i]);
        return (Between(centre[i], centre[i + 1], f), Between(across[i], across[i + 1], f));
    }

    /// <summary>Point of a line of the plan at a chainage: where its chord meets the cross line.</summary>
    public Point2 On(PlanLine line, double chainage)
    {
        int i = FacetAt(chainage);
        if (chainage == Stations[i])
        {
            return Corner(line, i);
        }

        if (chainage == Stations[i + 1])
        {
            return Corner(line, i + 1);
        }

        var (origin, direction) = CrossLine(chainage);
        Point2 a = Corner(line, i), chord = Corner(line, i + 1) - a;
        return a + (chord * (Point2.Cross(origin - a, direction) / Point2.Cross(chord, direction)));
    }

    /// <summary>Chainages of a stretch with every station inside it.</summary>
    public double[] Chainages(double from, double to) => [from, .. Stations.Where(s => s > from && s < to), to];

    /// <summary>Counter-clockwise ring of a strip between two lines, one point a chainage on each side.</summary>
    public Point2[] Ring(PlanLine near, PlanLine far, IReadOnlyList<double> chainages)
    {
        int n = chainages.Count;
        var ring = new Point2[2 * n];
        for (int i = 0; i < n; i++)
        {
            ring[i] = On(near, chainages[i]);
            ring[(2 * n) - 1 - i] = On(far, chainages[i]);
        }

        if (!RunsLeft)
        {
            Array.Reverse(ring);
        }

        return ring;
    }

    /// <summary>The part of a convex counter-clockwise ring between the lines across at two chainages; empty where nothing of it lies there.</summary>
    public Point2[] Within(Point2[] ring, double from, double to)
    {
        foreach (var (s, before) in new[] { (from, false), (to, true) })
        {
            var origin = CrossLine(s).Origin;
            var ahead = Forward(s).Left * (before ? 1 : -1);
            ring = ring.Length == 0 ? ring : ConvexRing.LeftOf(ring, origin, origin + ahead);
        }

        return ring;
    }

    /// <summary>Unit direction of increasing chainage, square to the cross line at a chainage.</summary>
    public Point2 Forward(double chainage)
    {
        var direction = CrossLine(chainage).Across;
        return direction.Left * (side.Outward(-1) / direction.Length);
    }

    private static Point2 Between(Point2 a, Point2 b, double share) => a + ((b - a) * share);

    private Point2 Corner(PlanLine line, int station) => centre[station] + (across[station] * line.Reach[station]);
}
