using System.Runtime.InteropServices;
using System.Text.Json;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Outside.Tests;

/// <summary>A section as its STL file has it, read here and by nothing of the program, and cut by planes to be measured.</summary>
internal sealed class WrittenSolid
{
    private readonly Point3[][] triangles;
    private readonly double[][] rows;
    private double? farthest;

    private WrittenSolid(string platform, int number, Point3[][] triangles, double[][] rows, (double From, double To) chainage)
    {
        (Platform, Number, this.triangles, this.rows, Chainage) = (platform, number, triangles, rows, chainage);
    }

    public string Platform { get; }

    public int Number { get; }

    /// <summary>From where to where the manifest says that it goes.</summary>
    public (double From, double To) Chainage { get; }

    public IReadOnlyList<Point3[]> Triangles => triangles;

    /// <summary>
    /// Outline in plan of a print that lies on its deck, below mouths and reliefs of what lies on the bed: the larger one of two heights, since joints of a
    /// coping stop a layer short of its underside. Told at a height, to which it is moved along what stands upright on the layout.
    /// </summary>
    public Point2[] Outline(double z) => [.. At(Farthest).Select(p => p + (new Point2(rows[2][0], rows[2][1]) * ((z - Farthest) / rows[2][2])))];

    /// <summary>The height in the print at which it is measured, mm.</summary>
    public double Farthest => farthest ??= new[] { 0.7, 1.1 }.MaxBy(z => Plane.Area(At(z)));

    private Point2[] At(double z) => Cut(new(0, 0, z), new(1, 0, 0), new(0, 1, 0)).MaxBy(Plane.Area)!;

    /// <summary>All sections of a built folder.</summary>
    public static IReadOnlyList<WrittenSolid> Of(string built) =>
    [
        .. Written.Parse(File.ReadAllText(Path.Combine(built, "manifest.json"))).GetProperty("sections").EnumerateArray().Select(s => new WrittenSolid(
            s.Text("platform"), (int)s.Number("number"), Read(File.ReadAllBytes(Path.Combine(built, s.Text("stl")))),
            [.. s.GetProperty("to_layout").EnumerateArray().Select(r => r.EnumerateArray().Select(v => v.GetDouble()).ToArray())],
            (s.Number("from"), s.Number("to")))),
    ];

    /// <summary>A gauge's triangles where the manifest says that it stands.</summary>
    public static IReadOnlyList<Point3[]> Gauge(string built, JsonElement proof)
    {
        double[][] places = [.. proof.GetProperty("to_layout").EnumerateArray().Select(r => r.EnumerateArray().Select(v => v.GetDouble()).ToArray())];
        return new WrittenSolid("", 0, Read(File.ReadAllBytes(Path.Combine(built, proof.Text("stl")))), places, default).OnLayout().Triangles;
    }

    public Point3 ToLayout(Point3 p) => new(Row(0, p), Row(1, p), Row(2, p));

    /// <summary>The same as it lies on the layout.</summary>
    public WrittenSolid OnLayout() => new(
        Platform, Number, Array.ConvertAll<Point3[], Point3[]>(triangles, t => [ToLayout(t[0]), ToLayout(t[1]), ToLayout(t[2])]),
        [[1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 1, 0]], Chainage);

    private double Row(int i, Point3 p) => (rows[i][0] * p.X) + (rows[i][1] * p.Y) + (rows[i][2] * p.Z) + rows[i][3];

    private static Point3[][] Read(byte[] stl)
    {
        var all = new Point3[(stl.Length - 84) / 50][];
        for (int t = 0; t < all.Length; t++)
        {
            var corners = MemoryMarshal.Cast<byte, float>(stl.AsSpan(84 + (50 * t) + 12, 36));
            all[t] = [new(corners[0], corners[1], corners[2]), new(corners[3], corners[4], corners[5]), new(corners[6], corners[7], corners[8])];
        }

        return all;
    }

    /// <summary>
    /// Its section by a plane through a point along two unit directions square to one another: closed lines in those two, material to their left, so that
    /// outlines run to the left and holes to the right.
    /// </summary>
    public IReadOnlyList<Point2[]> Cut(Point3 on, Point3 u, Point3 v)
    {
        var n = Point3.Cross(u, v);
        var next = new Dictionary<Point3, List<Point3>>();
        var at = new Point3[3];
        foreach (var t in triangles)
        {
            // A plane through a corner is moved aside by less than is measured.
            double d0 = Beyond(t[0]), d1 = Beyond(t[1]), d2 = Beyond(t[2]);
            if (d0 > 0 == d1 > 0 && d1 > 0 == d2 > 0)
            {
                continue;
            }

            int count = 0;
            Meet(t[0], d0, t[1], d1);
            Meet(t[1], d1, t[2], d2);
            Meet(t[2], d2, t[0], d0);
            var way = Point3.Cross(n, Point3.Cross(t[1] - t[0], t[2] - t[0]));
            var (from, to) = Point3.Dot(at[1] - at[0], way) > 0 ? (at[0], at[1]) : (at[1], at[0]);
            (next.TryGetValue(from, out var ends) ? ends : next[from] = []).Add(to);

            void Meet(Point3 a, double da, Point3 b, double db)
            {
                if (da > 0 != db > 0)
                {
                    at[count++] = Crossing(a, da, b, db);
                }
            }
        }

        double Beyond(Point3 p) => Point3.Dot(p - on, n) is var x && x == 0 ? 1e-9 : x;

        return Loops(next, on, u, v);
    }

    private static IReadOnlyList<Point2[]> Loops(Dictionary<Point3, List<Point3>> next, Point3 on, Point3 u, Point3 v)
    {
        var loops = new List<Point2[]>();
        while (next.Count > 0)
        {
            var (start, loop) = (next.Keys.First(), new List<Point2>());
            for (var p = start; next.TryGetValue(p, out var ends);)
            {
                loop.Add(new(Point3.Dot(p - on, u), Point3.Dot(p - on, v)));
                var to = ends[^1];
                ends.RemoveAt(ends.Count - 1);
                _ = ends.Count == 0 && next.Remove(p);
                p = to;
            }

            loops.Add(Plane.Bare([.. loop]));
        }

        return [.. loops.Where(l => l.Length > 2)];
    }

    // The same for both triangles at an edge, whichever way it is told.
    private static Point3 Crossing(Point3 a, double da, Point3 b, double db)
    {
        if ((a.X, a.Y, a.Z).CompareTo((b.X, b.Y, b.Z)) > 0)
        {
            (a, da, b, db) = (b, db, a, da);
        }

        return a + ((b - a) * (da / (da - db)));
    }
}

/// <summary>Arithmetic in a plane.</summary>
internal static class Plane
{
    public static double Area(IReadOnlyList<Point2> ring) => Enumerable.Range(0, ring.Count).Sum(i => Point2.Cross(ring[i], ring[(i + 1) % ring.Count])) / 2;

    public static Point2 Middle(IReadOnlyList<Point2> ring)
    {
        double area = Area(ring), x = 0, y = 0;
        for (int i = 0; i < ring.Count; i++)
        {
            Point2 a = ring[i], b = ring[(i + 1) % ring.Count];
            double cross = Point2.Cross(a, b);
            (x, y) = (x + ((a.X + b.X) * cross), y + ((a.Y + b.Y) * cross));
        }

        return new(x / (6 * area), y / (6 * area));
    }

    /// <summary>Without corners at which nothing turns.</summary>
    public static Point2[] Bare(Point2[] ring)
    {
        const double Straight = 1e-3; // radians
        var kept = ring.ToList();
        kept = [.. kept.Where((p, i) => (p - kept[(i + 1) % kept.Count]).Length > 1e-5)];
        return [.. kept.Where((p, i) => Math.Abs(Turn(kept[(i + kept.Count - 1) % kept.Count], p, kept[(i + 1) % kept.Count])) > Straight)];
    }

    /// <summary>Without whatever leaves the line between its neighbours by less than a depth, as joints of brickwork do: corners of the ring that are
    /// left.</summary>
    public static Point2[] WithoutNotches(IReadOnlyList<Point2> ring, double depth)
    {
        // Its two corners farthest apart stay; between them, and so on, the corner farthest from the straight line.
        int a = Enumerable.Range(0, ring.Count).MaxBy(i => (ring[i] - ring[0]).Length),
            b = Enumerable.Range(0, ring.Count).MaxBy(i => (ring[i] - ring[a]).Length);
        return [.. Part(a, b), .. Part(b, a)];

        IEnumerable<Point2> Part(int from, int to)
        {
            int[] between = [.. Enumerable.Range(1, ((to - from + ring.Count) % ring.Count) - 1).Select(i => (from + i) % ring.Count)];
            int far = between.Length == 0 ? -1 : between.MaxBy(i => ToLine(ring[i], [ring[from], ring[to]]));
            return far < 0 || ToLine(ring[far], [ring[from], ring[to]]) < depth ? [ring[from]] : Part(from, far).Concat(Part(far, to));
        }
    }

    public static double Turn(Point2 a, Point2 b, Point2 c) => Math.Atan2(Point2.Cross(b - a, c - b), Point2.Dot(b - a, c - b));

    public static double ToLine(Point2 p, IReadOnlyList<Point2> line) => Enumerable.Range(0, line.Count - 1).Min(i =>
    {
        var d = line[i + 1] - line[i];
        double share = Math.Clamp(Point2.Dot(p - line[i], d) / Point2.Dot(d, d), 0, 1);
        return (p - line[i] - (d * share)).Length;
    });

    /// <summary>Square distance from a straight line through two points.</summary>
    public static double FromLine(Point2 p, Point2 a, Point2 b) => Math.Abs(Point2.Cross(b - a, p - a)) / (b - a).Length;

    /// <summary>Whether a ring goes round a point.</summary>
    public static bool Holds(IReadOnlyList<Point2> ring, Point2 p) => Enumerable.Range(0, ring.Count).Count(i =>
    {
        Point2 a = ring[i], b = ring[(i + 1) % ring.Count];
        return a.Y > p.Y != b.Y > p.Y && p.X < a.X + ((p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X));
    }) % 2 == 1;
}

/// <summary>The four sides of a section's outline, found by its corners and told apart by where they lie along and beside the track.</summary>
internal sealed record SectionSides(IReadOnlyList<Point2> Front, IReadOnlyList<Point2> Lower, IReadOnlyList<Point2> Upper)
{
    private const double Corner = 0.7; // radians

    /// <summary>Sides of a ring; null where it has not four corners.</summary>
    public static SectionSides? Of(IReadOnlyList<Point2> ring, Func<Point2, TrackPlace> place)
    {
        int[] at = [.. Enumerable.Range(0, ring.Count)
            .Where(i => Math.Abs(Plane.Turn(ring[(i + ring.Count - 1) % ring.Count], ring[i], ring[(i + 1) % ring.Count])) > Corner)];
        if (at.Length != 4)
        {
            return null;
        }

        IReadOnlyList<Point2>[] sides =
            [.. Enumerable.Range(0, 4).Select(k => (IReadOnlyList<Point2>)[.. Walk(at[k], at[(k + 1) % 4], ring.Count).Select(i => ring[i])])];
        double Along(IReadOnlyList<Point2> side) => (place(side[0]).Chainage + place(side[^1]).Chainage) / 2;
        double Beside(IReadOnlyList<Point2> side) => Math.Abs(place(side[0]).Offset) + Math.Abs(place(side[^1]).Offset);
        var (lower, upper) = (sides.MinBy(Along)!, sides.MaxBy(Along)!);
        return new(sides.Where(s => s != lower && s != upper).MinBy(Beside)!, lower, upper);
    }

    private static IEnumerable<int> Walk(int from, int to, int count)
    {
        for (int i = from; ; i = (i + 1) % count)
        {
            yield return i;
            if (i == to)
            {
                yield break;
            }
        }
    }
}
