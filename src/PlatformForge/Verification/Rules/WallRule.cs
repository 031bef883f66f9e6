using PlatformForge.Geometry;
using PlatformForge.Sections;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Verification.Rules;

/// <summary>
/// Upright walls are thick enough for the nozzle. The print is cut level at a few heights; from the middle of each
/// edge of the cut the way through the material to a face turned the other way is measured. What is thin there but not, at the same place, a little nearer
/// to the middle is the lip of a chamfer, or a slope that the cut grazes (the roof of a bore, the foot of a ramp on its slope), and no wall.
/// </summary>
internal static class WallRule
{
    // Shares of the height at which the print is cut.
    private static readonly double[] Levels = [0.31, 0.53, 0.77];

    // Shorter edges are chords of small bores and lettering, where the far side is no wall's other face, mm.
    private const double ShortestEdge = 0.8;

    // Faces count as two sides of a wall when they are parallel to within about 8 degrees.
    private const double Opposed = -0.99;

    // A cut at exactly a vertex's height is ambiguous; files have no level at this odd fraction, mm.
    private const double OffLevel = 0.000_137;

    // A wall is as thin over at least this height, mm: two lines of the usual nozzle. The lip of a chamfer of 45 degrees grows by as much.
    private const double Lasting = 0.8;

    // Every long edge of a cut is held against every other; sections have some hundreds.
    private const int MostEdges = 10_000;

    // Two cuts meet the same wall within this of one another in plan, mm.
    private const double SamePlace = 1;

    /// <summary>Least thickness found in a mesh in print coordinates, mm, and where; null when no wall was met, not a number when a level cut has more edges
    /// than are held against one another.</summary>
    public static (double Thickness, Point3 At)? Thinnest(Mesh mesh)
    {
        var (low, high) = mesh.Box();
        (double Thickness, Point3 At)? least = null;
        foreach (double level in Levels)
        {
            double height = low.Z + (level * (high.Z - low.Z)) + OffLevel, second = height + (level < 0.6 ? Lasting : -Lasting);
            if (WallsAt(mesh, height) is not { } walls || WallsAt(mesh, second) is not { } lasting)
            {
                return (double.NaN, default);
            }

            foreach (var wall in walls.OrderBy(w => w.Thickness).TakeWhile(w => least is not { } found || w.Thickness < found.Thickness))
            {
                double thickness = Math.Max(wall.Thickness, lasting.Where(o => o.Beside(wall)).Select(o => o.Thickness).DefaultIfEmpty(double.PositiveInfinity).Min());
                if (double.IsFinite(thickness) && (least is not { } known || thickness < known.Thickness))
                {
                    least = (thickness, new(wall.Middle.X, wall.Middle.Y, height));
                }
            }
        }

        return least;
    }

    private static Wall[]? WallsAt(Mesh mesh, double level)
    {
        var cut = Cut(mesh, level);
        return cut.Count > MostEdges ? null : [.. cut.Where(e => (e.B - e.A).Length >= ShortestEdge).Select(e => new Wall(Through(e, cut), e)).Where(w => double.IsFinite(w.Thickness))];
    }

    public static IEnumerable<Finding> Check(SectionVerdict section, PrinterSpec printer)
    {
        if (section.ThinnestWall is double.NaN)
        {
            yield return Finding.Warning("PF8070", "", Invariant($"The walls of {section.Section} were not measured: a level cut through it has more than {MostEdges} edges, which is the limit."), "Sections of this program have some hundreds: build the folder again.");
        }

        if (section.ThinnestWall is { } wall && printer.Nozzle > 0 && wall < printer.LeastWall - OffLevel)
        {
            yield return Finding.Warning("PF8016", "", Invariant($"{section.Section} has a wall of {wall:F2} mm; two lines of a {printer.Nozzle:F2} mm nozzle take {printer.LeastWall:F2} mm.{Place(section.ThinnestAt)}"), "Make the thin wall thicker in the project, or print it with a finer nozzle.");
        }
    }

    // Edges of the level cut, with the material to their left.
    private static List<Edge> Cut(Mesh mesh, double level)
    {
        var edges = new List<Edge>();
        Span<Point2> ends = stackalloc Point2[2];
        var (v, t, _) = mesh;
        for (int i = 0; i < t.Length; i += 3)
        {
            int count = 0;
            bool rises = false;
            for (int k = 0; k < 3; k++)
            {
                Point3 p = v[t[i + k]], q = v[t[i + ((k + 1) % 3)]];
                if ((p.Z > level) != (q.Z > level))
                {
                    double share = (level - p.Z) / (q.Z - p.Z);
                    ends[count++] = new(p.X + (share * (q.X - p.X)), p.Y + (share * (q.Y - p.Y)));
                    rises = count == 1 ? q.Z > p.Z : rises;
                }
            }

            // Where a triangle seen from outside is crossed first by a rising side, the second crossing lies to the left of it.
            if (count == 2 && ends[0] != ends[1])
            {
                edges.Add(rises ? new(ends[1], ends[0]) : new(ends[0], ends[1]));
            }
        }

        return edges;
    }

    private static double Through(Edge edge, List<Edge> cut)
    {
        var along = (edge.B - edge.A) * (1 / (edge.B - edge.A).Length);
        Point2 middle = (edge.A + edge.B) * 0.5, inward = along.Left;
        double nearest = double.PositiveInfinity, facing = 0;
        foreach (var other in cut)
        {
            // In the frame of the edge: x along it, y into the material.
            Point2 a = other.A - middle, b = other.B - middle;
            double ax = Point2.Dot(along, a), bx = Point2.Dot(along, b);
            if ((ax > 0) == (bx > 0))
            {
                continue;
            }

            double ay = Point2.Dot(inward, a), by = Point2.Dot(inward, b), y = ay + ((by - ay) * ax / (ax - bx));
            if (y > OffLevel && y < nearest)
            {
                nearest = y;
                facing = (bx - ax) / (other.B - other.A).Length;
            }
        }

        return facing < Opposed ? nearest : double.PositiveInfinity;
    }

    private static string Place(Point3? at) => at is { } p ? Invariant($" It is at x {p.X:F1}, y {p.Y:F1} as it lies on the bed, {p.Z:F1} mm above it.") : "";

    private readonly record struct Edge(Point2 A, Point2 B);

    // A way through the material from the middle of an edge.
    private readonly record struct Wall(double Thickness, Edge Side)
    {
        public Point2 Middle => (Side.A + Side.B) * 0.5;

        // The other's middle lies along this side, on the same line and turned the same way.
        public bool Beside(Wall other)
        {
            double length = (Side.B - Side.A).Length;
            var along = (Side.B - Side.A) * (1 / length);
            double far = Point2.Dot(along, other.Middle - Side.A);
            return Math.Abs(Point2.Cross(along, other.Middle - Side.A)) <= SamePlace && far >= -SamePlace && far <= length + SamePlace
                && Point2.Dot(along, other.Side.B - other.Side.A) > 0;
        }
    }
}
