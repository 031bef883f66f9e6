using PlatformForge.Geometry;
using PlatformForge.Geometry.Meshes;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;

namespace PlatformForge.Sections.Poses;

/// <summary>
/// Measures what hangs free on the bed: faces that look down more steeply than 45 degrees and do not lie on the bed to within the first layer. Neighbouring
/// ones are taken
/// together; a patch that stands on walls along most of its border and is no wider than a bridge counts as bridged, else as unsupported.
/// </summary>
internal static class OverhangMeter
{
    /// <summary>Cosine of 43 degrees: a chamfer of 45 degrees is let through in a piece that lies on a slight slope. Published limits say "about 45".</summary>
    private const double Steepest = -0.7314;

    /// <summary>Share of a patch's border that must have a wall under it for the patch to be a bridge.</summary>
    private const double StandingShare = 0.5;

    /// <summary>Share of a net of channels' border that has to stand: where many meet, or at a cut, some of it is found to end too soon.</summary>
    private const double ChannelShare = 0.75;

    /// <summary>Lines of the nozzle that a wall over an opening is wide at most, where its sill or head may bridge it from end to end (common practice, no
    /// source).</summary>
    private const double LintelLines = 10;

    /// <summary>How far a side of a patch may bend, mm, as walls do on a curve: far less than a line.</summary>
    private const double Bow = 0.1;

    /// <summary>Triangles that a wall is followed over.</summary>
    private const int WallSteps = 32;

    /// <summary>A place this far outside a triangle, mm, still is on it.</summary>
    private const double Coplanar = 1e-4;

    /// <summary>What a ledge of exactly a line may be wider than that, mm: a hundredth, as files are rounded to and slicers leave out of account.</summary>
    private const double Slack = 0.01;

    /// <summary>Sine of half the sharpest angle at which walls meet, at an end that lies 40 degrees off the square.</summary>
    private static readonly double AcuteTip = Math.Sin(25 * Math.PI / 180);

    /// <summary>Cosine of the angle between triangles of one wall, at most.</summary>
    private const double SamePlane = 0.999;

    /// <summary>Least unsupported area worth telling, mm²: a nozzle's width square.</summary>
    public const double Worth = 0.2;

    /// <param name="mesh">Section in its print pose, least z at nil.</param>
    /// <param name="layer">Layer height, mm.</param>
    /// <param name="nozzle">A ledge no wider than one line, mm, holds itself and is left out.</param>
    /// <param name="longestBridge">Widest gap that is crossed between standing walls, mm.</param>
    public static OverhangReport Measure(Mesh mesh, double layer, double nozzle, double longestBridge)
    {
        var faces = Enumerable.Range(0, mesh.TriangleCount).Select(i => FaceOf(mesh, i)).ToArray();
        bool[] hanging = Array.ConvertAll(faces, f => f.Slope < Steepest && f.High > layer);
        var seen = new bool[mesh.TriangleCount];
        var patches = new Patches(mesh, faces, hanging, seen, HalfEdges.Opposites(mesh), layer);
        double unsupported = 0, bridged = 0, widest = 0, largest = 0;
        Point3 largestAt = default;
        foreach (int i in Enumerable.Range(0, mesh.TriangleCount).Where(i => hanging[i] && !seen[i]))
        {
            var (area, standing, span, middle) = patches.Grow(i);
            if (standing >= ChannelShare && patches.IsChannel(area, 2 * nozzle))
            {
                (bridged, widest) = (bridged + area, Math.Max(widest, patches.Widest));
                continue;
            }

            if (span <= nozzle + Slack || (standing < StandingShare && patches.IsLedge(area, nozzle)))
            {
                continue;
            }

            // Only a bridge that bends is narrower than its hull.
            span = standing >= StandingShare && span > longestBridge ? Math.Min(span, patches.BentSpan(longestBridge)) : span;
            if ((standing >= StandingShare && span <= longestBridge) || (span <= LintelLines * nozzle && patches.IsLintel(nozzle, longestBridge)))
            {
                bridged += area;
                widest = Math.Max(widest, span);
            }
            else
            {
                unsupported += area;
                (largest, largestAt) = area > largest ? (area, middle) : (largest, largestAt);
            }
        }

        return new(unsupported, bridged, widest) { Lift = Lift(mesh, faces, layer), Largest = largest, LargestAt = largestAt };
    }

    /// <summary>Neighbouring hanging triangles, taken together.</summary>
    private sealed class Patches(Mesh mesh, Face[] faces, bool[] hanging, bool[] seen, int[] across, double layer)
    {
        /// <summary>Whether there is wall under the middle of a side by half a layer, however the wall is cut: walks from triangle to triangle in its
        /// plane.</summary>
        private bool GoesDown(int t, Point3 middle)
        {
            var normal = faces[t].Normal;
            double flat = 1 - (normal.Z * normal.Z);
            if (flat < 1 - SamePlane)
            {
                return false;
            }

            var place = middle + (new Point3(normal.X * normal.Z, normal.Y * normal.Z, -flat) * (layer / (2 * flat)));
            for (int step = 0; step < WallSteps; step++)
            {
                int side = -1;
                double outside = -Coplanar;
                for (int k = 0; k < 3; k++)
                {
                    Point3 a = mesh.Vertices[mesh.Triangles[(3 * t) + k]], b = mesh.Vertices[mesh.Triangles[(3 * t) + ((k + 1) % 3)]];
                    double inside = Point3.Dot(Point3.Cross(b - a, place - a), normal) / (b - a).Length;
                    (side, outside) = inside < outside ? (k, inside) : (side, outside);
                }

                if (side < 0)
                {
                    return true;
                }

                t = across[(3 * t) + side] / 3;
                if (Point3.Dot(faces[t].Normal, normal) < SamePlane)
                {
                    return false;
                }
            }

            return false;
        }

        /// <summary>Widest triangle of the patch last grown, mm, square to its longest side.</summary>
        public double Widest { get; private set; }

        /// <summary>Whether the patch last grown is a net of channels no wider than a width, as joints of a paving are: so it is on the whole, and no
        /// triangle of it is
        /// wider than two that cross.</summary>
        public bool IsChannel(double area, double width) => 2 * area <= width * border && Widest <= Math.Sqrt(2) * width;

        private double Width(int t)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            return 2 * faces[t].Area / Math.Max((b - a).Length, Math.Max((c - b).Length, (a - c).Length));
        }

        // Of the patch last grown: its corners, three of each triangle, the sides of its border, and its border's length.
        private readonly List<Point2> corners = [];
        private readonly List<BorderSide> sides = [];
        private double border;

        /// <summary>Whether the patch last grown is a ledge no wider than a line however it turns: round a corner it is wider than a line over all,
        /// and its outer corner is farther off the wall, by a line over the sine of half the angle at which the walls meet.</summary>
        public bool IsLedge(double area, double line) => 2 * area <= (line + Slack) * border
            && corners.TrueForAll(c => sides.Exists(s => s.Stands && Distance(c, s.A, s.B) <= (line / AcuteTip) + Slack));

        /// <summary>Whether the patch last grown lies between walls that all its corners stand on, no farther apart than a bridge: as the sill or the head
        /// of an opening right through a wall does, whose lines run from side to side.</summary>
        public bool IsLintel(double line, double longest)
        {
            var all = ConvexRing.Hull(corners);
            Point2[] hull = [.. all.Where((c, i) => Distance(c, all[(i + all.Length - 1) % all.Length], all[(i + 1) % all.Length]) > Bow)];
            return hull.Length > 2 && hull.All(c => sides.Exists(s => s.Stands && Distance(c, s.A, s.B) <= line))
                && hull.Max(a => hull.Max(b => (a - b).Length)) <= longest;
        }

        /// <summary>Width of the patch last grown where it bends, mm (<see cref="BentBridge"/>).</summary>
        public double BentSpan(double longest) => BentBridge.Span(corners, sides, longest);

        /// <summary>The patch that hangs together from a triangle on: area in mm², share of its border that stands, least width and middle in mm.</summary>
        public (double Area, double Standing, double Span, Point3 Middle) Grow(int first)
        {
            double area = 0, standing = 0;
            Point3 middle = default;
            (border, Widest) = (0, 0);
            corners.Clear();
            sides.Clear();
            var open = new Stack<int>([first]);
            seen[first] = true;
            while (open.TryPop(out int t))
            {
                area += faces[t].Area;
                Widest = Math.Max(Widest, Width(t));
                middle += (mesh.Vertices[mesh.Triangles[3 * t]] + mesh.Vertices[mesh.Triangles[(3 * t) + 1]] + mesh.Vertices[mesh.Triangles[(3 * t) + 2]])
                    * (faces[t].Area / 3);
                for (int k = 0; k < 3; k++)
                {
                    int other = across[(3 * t) + k] / 3;
                    Point3 a = mesh.Vertices[mesh.Triangles[(3 * t) + k]], b = mesh.Vertices[mesh.Triangles[(3 * t) + ((k + 1) % 3)]];
                    corners.Add(new(a.X, a.Y));
                    if (!hanging[other])
                    {
                        standing += AddSide(other, a, b);
                    }
                    else if (!seen[other])
                    {
                        seen[other] = true;
                        open.Push(other);
                    }
                }
            }

            // Of a closed mesh no part looks down all round: a patch has a border.
            return (area, standing / border, LeastWidth(ConvexRing.Hull(corners)), middle * (1 / area));
        }

        // A side of the border, and how much of its length stands on a wall, mm.
        private double AddSide(int other, Point3 a, Point3 b)
        {
            double length = (b - a).Length;
            border += length;
            bool isWall = GoesDown(other, (a + b) * 0.5);
            sides.Add(new(new(a.X, a.Y), new(b.X, b.Y), isWall));
            return isWall ? length : 0;
        }
    }

    private static double Distance(Point2 p, Point2 a, Point2 b)
    {
        var along = b - a;
        double square = Point2.Dot(along, along), at = square > 0 ? Math.Clamp(Point2.Dot(p - a, along) / square, 0, 1) : 0;
        return (p - a - (along * at)).Length;
    }

    private static double Lift(Mesh mesh, Face[] faces, double layer)
    {
        double lift = 0;
        for (int i = 0; i < mesh.Paints.Length; i++)
        {
            bool lies = IsDeck(mesh.Paints[i]) && faces[i].Slope < Steepest && faces[i].High <= layer;
            lift = lies ? Math.Max(lift, faces[i].High) : lift;
        }

        return lift;
    }

    // A deck, or one that is paved.
    private static bool IsDeck(byte paint) => (Paint)paint is not (Paint.Coping or Paint.Line or Paint.Wall or Paint.Mortar or Paint.Render);

    /// <summary>Least distance between two parallel lines that hold a convex ring between them, mm: one of them lies along an edge.</summary>
    public static double LeastWidth(IReadOnlyList<Point2> hull) => hull.Count < 3 ? 0 : ConvexWidth.Of(hull);

    private readonly record struct Face(double Area, Point3 Normal, double Low, double High)
    {
        public double Slope => Normal.Z;
    }

    private static Face FaceOf(Mesh mesh, int t)
    {
        Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
        var normal = Point3.Cross(b - a, c - a);
        double size = normal.Length;
        return new(size / 2, size > 0 ? normal * (1 / size) : default, Math.Min(a.Z, Math.Min(b.Z, c.Z)), Math.Max(a.Z, Math.Max(b.Z, c.Z)));
    }
}
