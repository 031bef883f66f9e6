using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using PlatformForge.Verification.Written;
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

    // Thicknesses are told to the hundredth: what would be told as two lines is two lines, mm.
    private const double Told = 0.005;

    // Shorter edges are chords of small bores and lettering, where the far side is no wall's other face, mm.
    private const double ShortestEdge = 0.8;

    // Faces count as two sides of a wall when they are parallel to within about 8 degrees.
    private const double Opposed = -0.99;

    // A cut at exactly a vertex's height is ambiguous; files have no level at this odd fraction, mm.
    private const double OffLevel = 0.000_137;

    // A wall is as thin over at least this height, mm: two lines of the usual nozzle. The lip of a chamfer of 45 degrees grows by as much.
    private const double Lasting = 0.8;

    // Sections have some hundreds of edges in a cut.
    private const int MostEdges = 10_000;

    // Two cuts meet the same wall within this of one another in plan, mm.
    private const double SamePlace = 1;

    /// <summary>Least thickness found in a mesh in print coordinates, mm, and where; null when no wall was met, not a number when a level cut has more edges
    /// than are measured.</summary>
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
                double thickness = Math.Max(wall.Thickness, lasting.Where(o => o.Beside(wall)).Select(o => o.Thickness).DefaultIfEmpty(double.PositiveInfinity)
                    .Min());
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
        var cut = new LevelCut(mesh, level);
        return cut.Edges.Count > MostEdges ? null
            : [.. cut.Edges.Where(e => e.Length >= ShortestEdge).Select(e => new Wall(Through(e, cut), e)).Where(w => double.IsFinite(w.Thickness))];
    }

    private static double Through(CutEdge edge, LevelCut cut)
    {
        var (length, facing) = cut.Through(edge, OffLevel);
        return facing < Opposed ? length : double.PositiveInfinity;
    }

    public static IEnumerable<Finding> Check(SectionVerdict section, PrinterSpec printer)
    {
        if (section.ThinnestWall is double.NaN)
        {
            yield return Finding.Warning("PF8070", "",
                Invariant($"The walls of {section.Section} were not measured: a level cut through it has more than {MostEdges} edges, which is the limit."),
                "Sections of this program have some hundreds: build the folder again.");
        }

        if (section.ThinnestWall is { } wall && printer.Nozzle > 0 && wall < printer.LeastWall - Told)
        {
            yield return Finding.Warning("PF8016", "",
                Invariant($"{section.Section} has a wall of {wall:F2} mm; two lines of a {printer.Nozzle:F2} mm nozzle take {printer.LeastWall:F2} ")
                    + Invariant($"mm.{Place(section.ThinnestAt)}"),
                "Make the thin wall thicker in the project, or print it with a finer nozzle.");
        }
    }

    private static string Place(Point3? at) => at is { } p ? Invariant($" It is at x {p.X:F1}, y {p.Y:F1} as it lies on the bed, {p.Z:F1} mm above it.") : "";

    // A way through the material from the middle of an edge.
    private sealed record Wall(double Thickness, CutEdge Side)
    {
        public Point2 Middle => (Side.A + Side.B) * 0.5;

        // The other's middle lies along this side, on the same line and turned the same way.
        public bool Beside(Wall other)
        {
            double length = Side.Length;
            var along = (Side.B - Side.A) * (1 / length);
            double far = Point2.Dot(along, other.Middle - Side.A);
            return Math.Abs(Point2.Cross(along, other.Middle - Side.A)) <= SamePlace && far >= -SamePlace && far <= length + SamePlace
                && Point2.Dot(along, other.Side.B - other.Side.A) > 0;
        }
    }
}
