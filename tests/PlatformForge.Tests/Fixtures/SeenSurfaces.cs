using System.Runtime.InteropServices;
using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Tests.Fixtures;

/// <summary>
/// What is seen of a platform's written pieces, each in its place beside its neighbours: faces that look up and have nothing over them, and upright faces
/// before which nothing stands. Asks rays alone, and nothing that the program knows of walls, piers or cuts.
/// </summary>
internal sealed class SeenSurfaces
{
    // Size of a cell of the search, mm; nothing that stands before a wall is farther away than the widest platform.
    private const double Cell = 3, Widest = 200;

    // Sides of piers see one another: one that is free so far and from the platform's side, slantwise, is seen too.
    private const double Free = 5;

    private readonly Dictionary<(int X, int Y, int Z), List<int>> cells = [];
    private readonly List<(Point3 A, Point3 B, Point3 C, byte Paint, bool IsTop)> triangles = [];
    private readonly int[] asked;
    private Point3 low = new(1e9, 1e9, 1e9), high = new(-1e9, -1e9, -1e9);
    private int question;

    /// <param name="set">The platform.</param>
    /// <param name="withStrips">Whether what stands on its sections is there too.</param>
    public SeenSurfaces(SectionSet set, bool withStrips = false)
    {
        var strips = set.Lines.Pieces.Where(p => withStrips && !p.IsInlay).Select(p => (Mesh: p.WrittenMesh(), p.ToLayout));
        foreach (var (mesh, toLayout) in set.Sections.Select(s => (Mesh: s.PrintMesh(), s.ToLayout)).Concat(strips))
        {
            for (int i = 0; i < mesh.TriangleCount; i++)
            {
                Point3[] print = [.. Enumerable.Range(3 * i, 3).Select(k => mesh.Vertices[mesh.Triangles[k]])];
                Point3[] p = [.. print.Select(toLayout.Apply)];
                var normal = Point3.Cross(p[1] - p[0], p[2] - p[0]);
                Enter((p[0], p[1], p[2], mesh.Paints[i], normal.Z > 0.5 * normal.Length));
            }
        }

        asked = new int[triangles.Count];
    }

    /// <summary>What bents under the deck show: of them all counts that a brush gets before and that does not look down; null where walls carry the
    /// deck.</summary>
    public PlatformForge.Solids.Paint? Bents { get; init; }

    /// <summary>What lies in the ground, by the middle of a face and its way out; null where nothing does.</summary>
    public Func<Point3, Point3, bool>? Buried { get; init; }

    // A fine brush's point is so wide, mm: far more than two sections are apart.
    private const double Brush = 0.4;

    // Lettering under a deck is shallower, mm, and wants no paint.
    private const double Lettering = 0.3;

    /// <summary>Areas by paint, mm².</summary>
    /// <param name="outward">A way square to the platform's long axis.</param>
    public double[] Areas(Func<Point3, Point2> outward)
    {
        double[] areas = new double[Enum.GetValues<PlatformForge.Solids.Paint>().Length];
        foreach (var (a, b, c, paint, isTop) in triangles)
        {
            var normal = Point3.Cross(b - a, c - a);
            double twice = normal.Length;
            if (twice > 1e-9)
            {
                var way = normal * (1 / twice);
                var middle = (a + b + c) * (1.0 / 3);
                bool seen = (isTop ? Hit(middle, new(0, 0, 1)) >= Widest : IsSeen(middle, way, outward)) || IsOfBent(paint, middle, way);
                areas[paint] += seen && Buried?.Invoke(middle, way) != true ? twice / 2 : 0;
            }
        }

        return areas;
    }

    private bool IsSeen(Point3 middle, Point3 way, Func<Point3, Point2> outward) => Math.Abs(way.Z) < 0.3 && IsFree(middle, way, outward);

    private bool IsOfBent(byte paint, Point3 middle, Point3 way) =>
        paint == (byte?)Bents && way.Z > -0.9 && Hit(middle, new(0, 0, 1)) is > Lettering and < Widest && Hit(middle, way) > Brush;

    private bool IsFree(Point3 middle, Point3 way, Func<Point3, Point2> outward)
    {
        double first = Hit(middle, way);
        if (first >= Widest)
        {
            return true;
        }

        var off = outward(middle);
        return first > Free && Math.Abs((off.X * way.X) + (off.Y * way.Y)) < 0.2
            && new[] { 1, -1 }.Any(s => Hit(middle, new Point3(way.X + (s * off.X), way.Y + (s * off.Y), 0) * Math.Sqrt(0.5)) >= Widest);
    }

    // How far it is to what a ray hits first, mm; the widest where it hits nothing.
    private double Hit(Point3 from, Point3 way)
    {
        question++;
        var all = CollectionsMarshal.AsSpan(triangles);
        double nearest = Widest;
        (int X, int Y, int Z)? last = null;
        for (double at = 0; at < Math.Min(Widest, nearest + Cell); at += Cell / 4)
        {
            var p = from + (way * at);
            if (p.X < low.X - Cell || p.X > high.X + Cell || p.Y < low.Y - Cell || p.Y > high.Y + Cell || p.Z > high.Z + Cell)
            {
                break;
            }

            var cell = Of(p);
            if (cell == last)
            {
                continue;
            }

            last = cell;
            foreach (int i in cells.GetValueOrDefault(cell) ?? [])
            {
                if (asked[i] != question)
                {
                    asked[i] = question;
                    ref readonly var met = ref all[i];
                    nearest = Math.Min(nearest, Distance(met.A, met.B, met.C, from + (way * 1e-3), way));
                }
            }
        }

        return nearest;
    }

    // Möller and Trumbore's test of a ray and a triangle.
    private static double Distance(Point3 a, Point3 b, Point3 c, Point3 from, Point3 way)
    {
        Point3 e1 = b - a, e2 = c - a, h = Point3.Cross(way, e2);
        double det = Point3.Dot(e1, h);
        if (Math.Abs(det) < 1e-12)
        {
            return Widest;
        }

        var s = from - a;
        double u = Point3.Dot(s, h) / det;
        if (u is < 0 or > 1)
        {
            return Widest;
        }

        var q = Point3.Cross(s, e1);
        double v = Point3.Dot(way, q) / det, at = Point3.Dot(e2, q) / det;
        return v < 0 || u + v > 1 || at <= 0 ? Widest : at;
    }

    private void Enter((Point3 A, Point3 B, Point3 C, byte Paint, bool IsTop) t)
    {
        Point3 Least(Point3 p, Point3 q) => new(Math.Min(p.X, q.X), Math.Min(p.Y, q.Y), Math.Min(p.Z, q.Z));
        Point3 Most(Point3 p, Point3 q) => new(Math.Max(p.X, q.X), Math.Max(p.Y, q.Y), Math.Max(p.Z, q.Z));
        Point3 least = Least(Least(t.A, t.B), t.C), most = Most(Most(t.A, t.B), t.C);
        (low, high) = (Least(low, least), Most(high, most));
        var (from, to) = (Of(least), Of(most));
        for (int x = from.X; x <= to.X; x++)
        {
            for (int y = from.Y; y <= to.Y; y++)
            {
                for (int z = from.Z; z <= to.Z; z++)
                {
                    (cells.TryGetValue((x, y, z), out var list) ? list : cells[(x, y, z)] = []).Add(triangles.Count);
                }
            }
        }

        triangles.Add(t);
    }

    private static (int X, int Y, int Z) Of(Point3 p) => ((int)Math.Floor(p.X / Cell), (int)Math.Floor(p.Y / Cell), (int)Math.Floor(p.Z / Cell));
}
