using NetTopologySuite.Geometries;
using NetTopologySuite.Noding.Snapround;
using NetTopologySuite.Operation.OverlayNG;
using NetTopologySuite.Operation.Polygonize;
using PlatformForge.Units;
using Shape = NetTopologySuite.Geometries.Geometry;

namespace PlatformForge.Geometry.Overlays;

/// <summary>
/// Set operations on plan regions, on the plan grid (<see cref="Tolerances.GridStep"/>) by snap rounding. The only door to the
/// plane-geometry library, so that it can be exchanged. Rings may run either way round and are given without repeating the first
/// point; results come sorted by their lowest outline point, so equal input gives equal output.
/// </summary>
public static class PlanOverlay
{
    private static readonly PrecisionModel Grid = new(1 / Tolerances.GridStep);
    private static readonly GeometryFactory Factory = new(Grid);

    /// <summary>All that lies in any of the rings.</summary>
    public static IReadOnlyList<PlanRegion> Union(params IReadOnlyList<Point2[]> rings) => Regions(Joined(rings));

    /// <summary>All that lies in any of the first rings but in none of the second.</summary>
    public static IReadOnlyList<PlanRegion> Difference(IReadOnlyList<Point2[]> from, IReadOnlyList<Point2[]> take) =>
        Regions(OverlayNG.Overlay(Joined(from), Joined(take), NetTopologySuite.Operation.Overlay.SpatialFunction.Difference, Grid));

    /// <summary>All that lies in any of the first rings and in any of the second.</summary>
    public static IReadOnlyList<PlanRegion> Intersection(IReadOnlyList<Point2[]> first, IReadOnlyList<Point2[]> second) =>
        Regions(OverlayNG.Overlay(Joined(first), Joined(second), NetTopologySuite.Operation.Overlay.SpatialFunction.Intersection, Grid));

    /// <summary>The bounded cells into which all the lines part the plane. A line that ends within a cell parts nothing.</summary>
    public static IReadOnlyList<PlanRegion> Cells(IEnumerable<Point2[]> lines)
    {
        var noder = new SnapRoundingNoder(Grid);
        noder.ComputeNodes([.. lines.Select(l => (NetTopologySuite.Noding.ISegmentString)new NetTopologySuite.Noding.NodedSegmentString(Coordinates(l, close: false), null))]);
        var edges = new SortedDictionary<(Coordinate, Coordinate), LineString>();
        foreach (var chain in noder.GetNodedSubstrings())
        {
            for (int i = 1; i < chain.Coordinates.Length; i++)
            {
                var (a, b) = (chain.Coordinates[i - 1], chain.Coordinates[i]);
                (a, b) = a.CompareTo(b) < 0 ? (a, b) : (b, a);
                edges[(a, b)] = Factory.CreateLineString([a, b]);
            }
        }

        var polygonizer = new Polygonizer();
        foreach (var edge in edges.Values)
        {
            polygonizer.Add(edge);
        }

        return Sorted(polygonizer.GetPolygons().Cast<Polygon>().Select(ToRegion));
    }

    private static Shape Joined(IReadOnlyList<Point2[]> rings) =>
        rings.Count == 0
            ? Factory.CreatePolygon()
            : UnaryUnionNG.Union(rings.Select(r => (Shape)Factory.CreatePolygon(Coordinates(r, close: true))), Factory, Grid);

    private static Coordinate[] Coordinates(Point2[] points, bool close) =>
        [.. points.Select(p => Rounded(p)), .. close ? new[] { Rounded(points[0]) } : []];

    private static Coordinate Rounded(Point2 p) => new(Grid.MakePrecise(p.X), Grid.MakePrecise(p.Y));

    private static PlanRegion[] Regions(Shape shape) =>
        Sorted(NetTopologySuite.Geometries.Utilities.PolygonExtracter.GetPolygons(shape).Cast<Polygon>().Where(p => !p.IsEmpty).Select(ToRegion));

    private static PlanRegion[] Sorted(IEnumerable<PlanRegion> regions) =>
        [.. regions.OrderBy(r => r.Outline.Min(p => (p.X, p.Y))).ThenBy(r => r.Area)];

    private static PlanRegion ToRegion(Polygon polygon)
    {
        var inside = polygon.InteriorPoint.Coordinate;
        var centre = polygon.Centroid.Coordinate;
        return new(
            Ring(polygon.Shell, counterClockwise: true), [.. polygon.Holes.Select(h => Ring(h, counterClockwise: false))], new(inside.X, inside.Y), polygon.Area, new(centre.X, centre.Y));
    }

    private static Point2[] Ring(LinearRing ring, bool counterClockwise)
    {
        var points = ring.Coordinates.Skip(1).Select(c => new Point2(c.X, c.Y));
        return [.. ring.IsCCW == counterClockwise ? points : points.Reverse()];
    }
}
