using NetTopologySuite.Geometries;
using NetTopologySuite.Noding.Snapround;
using NetTopologySuite.Operation.Polygonize;
using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Tests.Solids.Kernel;

/// <summary>
/// The cells into which lines part the plane, on the plan grid (<see cref="Tolerances.GridStep"/>) by snap rounding: all of it the plane-geometry library's
/// work, so that the oracle built on it shares nothing with the kernel.
/// </summary>
internal static class PlanCells
{
    private static readonly PrecisionModel Grid = new(1 / Tolerances.GridStep);
    private static readonly GeometryFactory Factory = new(Grid);

    /// <summary>The bounded cells. A line that ends within a cell parts nothing.</summary>
    public static IReadOnlyList<PlanCell> Of(IEnumerable<Point2[]> lines)
    {
        var noder = new SnapRoundingNoder(Grid);
        noder.ComputeNodes(
            [.. lines.Select(l => (NetTopologySuite.Noding.ISegmentString)new NetTopologySuite.Noding.NodedSegmentString([.. l.Select(Rounded)], null))]);
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

        return [.. polygonizer.GetPolygons().Cast<Polygon>().Select(CellOf)];
    }

    private static Coordinate Rounded(Point2 p) => new(Grid.MakePrecise(p.X), Grid.MakePrecise(p.Y));

    private static PlanCell CellOf(Polygon polygon)
    {
        var inside = polygon.InteriorPoint.Coordinate;
        var centre = polygon.Centroid.Coordinate;
        return new(new(inside.X, inside.Y), polygon.Area, new(centre.X, centre.Y));
    }
}

/// <summary>One cell of the plan, mm.</summary>
/// <param name="Inside">A point well inside it.</param>
/// <param name="Area">Area without its holes, mm².</param>
/// <param name="Centroid">Centre of the area.</param>
internal sealed record PlanCell(Point2 Inside, double Area, Point2 Centroid);
