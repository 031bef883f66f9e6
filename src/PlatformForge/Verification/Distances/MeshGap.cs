using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>The distance between two surfaces, triangle by triangle: nil where they cross. For small meshes: only what lies near is looked at.</summary>
internal static class MeshGap
{
    /// <summary>Least distance in mm, and the point of the first mesh where it is; <paramref name="beyond"/> where they are farther apart than that.</summary>
    /// <param name="a">A mesh.</param>
    /// <param name="b">Another, in the same frame.</param>
    /// <param name="beyond">What is farther apart than this, mm, is of no interest.</param>
    public static (double Gap, Point3 At) Between(Mesh a, Mesh b, double beyond)
    {
        // Of each only what is near the other's box, the second's then told again by what is left of it.
        var (low, high) = a.Box();
        var second = Triangles(b, low, high, beyond);
        double best = beyond;
        Point3 at = default;
        if (second.Count == 0)
        {
            return (best, at);
        }

        var around = Corners.Around(second);
        foreach (var t in Triangles(a, around.Low, around.High, beyond))
        {
            if (t.Apart(around) >= best)
            {
                continue;
            }

            foreach (var u in second)
            {
                if (t.Apart(u) < best && Distance(t, u, ref best) is { } near)
                {
                    at = near;
                    if (best == 0)
                    {
                        return (0, at);
                    }
                }
            }
        }

        return (best, at);
    }

    /// <summary>Whether every point lies within one of several solids, or outside it by so many mm at most.</summary>
    public static bool IsWithin(IReadOnlyList<Point3> points, IReadOnlyList<Mesh> solids, double outside)
    {
        if (points.Count == 0)
        {
            return true;
        }

        Point3 low = new(points.Min(p => p.X), points.Min(p => p.Y), double.NegativeInfinity), high = new(points.Max(p => p.X), points.Max(p => p.Y),
            double.PositiveInfinity);
        Corners[][] near = [.. solids.Select(s => Triangles(s, low, high, outside).ToArray())];
        return points.All(p => near.Any(solid => IsUnderOddly(p, solid)
            || Array.Exists(solid, t => t.Apart(new(p, p, p)) <= outside && ToTriangle(p, t) <= outside)));
    }

    /// <summary>Whether every point lies on a solid's surface, mm apart by so much at most.</summary>
    public static bool LiesOn(IReadOnlyList<Point3> points, Mesh solid, double within)
    {
        Point3 low = new(points.Min(p => p.X), points.Min(p => p.Y), points.Min(p => p.Z)), high = new(points.Max(p => p.X), points.Max(p => p.Y),
            points.Max(p => p.Z));
        Corners[] near = [.. Triangles(solid, low, high, within)];
        return points.All(p => Array.Exists(near, t => t.Apart(new(p, p, p)) <= within && ToTriangle(p, t) <= within));
    }

    // Whether a line straight up from a point goes through a solid's faces an odd number of times.
    private static bool IsUnderOddly(Point3 p, Corners[] solid)
    {
        bool inside = false;
        foreach (var t in solid)
        {
            if (Passes(t.A, t.B, p) ^ Passes(t.B, t.C, p) ^ Passes(t.C, t.A, p))
            {
                double area = Turn(t.A, t.B, t.C), u = Turn(t.B, t.C, p), v = Turn(t.C, t.A, p), w = Turn(t.A, t.B, p);
                inside ^= area != 0 && ((u * t.A.Z) + (v * t.B.Z) + (w * t.C.Z)) / area > p.Z;
            }
        }

        return inside;
    }

    // Whether an edge passes a point in plan on the side of greater x. It is worked out alike for both triangles at the edge, and has its lower end and not its
    // upper one: so a line up through an edge or a corner goes through one of the faces that meet there, and through no second one.
    private static bool Passes(Point3 a, Point3 b, Point3 p)
    {
        if (a.Y > p.Y == b.Y > p.Y)
        {
            return false;
        }

        var (low, high) = a.Y < b.Y ? (a, b) : (b, a);
        return p.X < low.X + ((p.Y - low.Y) / (high.Y - low.Y) * (high.X - low.X));
    }

    private static double Turn(Point3 a, Point3 b, Point3 c) => ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));

    private static double ToTriangle(Point3 p, Corners t) =>
        Math.Min(ToFace(p, t), Math.Min(EdgeToEdge(p, p, t.A, t.B), Math.Min(EdgeToEdge(p, p, t.B, t.C), EdgeToEdge(p, p, t.C, t.A))));

    private static List<Corners> Triangles(Mesh mesh, Point3 low, Point3 high, double beyond)
    {
        var all = new List<Corners>();
        var box = new Corners(low, high, low);
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            var t = new Corners(mesh.Vertices[mesh.Triangles[i]], mesh.Vertices[mesh.Triangles[i + 1]], mesh.Vertices[mesh.Triangles[i + 2]]);
            if (t.Apart(box) <= beyond)
            {
                all.Add(t);
            }
        }

        return all;
    }

    // The nearest points of two triangles are a corner and a face, or two edges; where an edge goes through a face they meet.
    private static Point3? Distance(Corners t, Corners u, ref double best)
    {
        Point3? at = null;
        for (int i = 0; i < 3; i++)
        {
            Point3 p = t[i], q = t[(i + 1) % 3];
            if ((Through(p, q, u) ?? Through(u[i], u[(i + 1) % 3], t)) is { } hole)
            {
                best = 0;
                return hole;
            }

            Take(p, ToFace(p, u), ref best, ref at);
            Take(u[i], ToFace(u[i], t), ref best, ref at);
            for (int k = 0; k < 3; k++)
            {
                Take(p, EdgeToEdge(p, q, u[k], u[(k + 1) % 3]), ref best, ref at);
            }
        }

        return at;
    }

    private static void Take(Point3 place, double distance, ref double best, ref Point3? at) => (best, at) = distance < best ? (distance, place) : (best, at);

    private static Point3? Through(Point3 p, Point3 q, Corners t)
    {
        var normal = Point3.Cross(t.B - t.A, t.C - t.A);
        double from = Point3.Dot(p - t.A, normal), to = Point3.Dot(q - t.A, normal);
        if (from * to >= 0)
        {
            return null;
        }

        var at = p + ((q - p) * (from / (from - to)));
        return Inside(at, t, normal) ? at : null;
    }

    private static bool Inside(Point3 p, Corners t, Point3 normal) =>
        Point3.Dot(Point3.Cross(t.B - t.A, p - t.A), normal) >= 0 && Point3.Dot(Point3.Cross(t.C - t.B, p - t.B), normal) >= 0
            && Point3.Dot(Point3.Cross(t.A - t.C, p - t.C), normal) >= 0;

    private static double ToFace(Point3 p, Corners t)
    {
        var normal = Point3.Cross(t.B - t.A, t.C - t.A);
        double size = normal.Length;
        if (size == 0)
        {
            return double.PositiveInfinity;
        }

        double off = Point3.Dot(p - t.A, normal) / size;
        return Inside(p - (normal * (off / size)), t, normal) ? Math.Abs(off) : double.PositiveInfinity;
    }

    // Of segments, by the nearest points of their lines held within both ends.
    private static double EdgeToEdge(Point3 p, Point3 q, Point3 r, Point3 s)
    {
        Point3 u = q - p, v = s - r, w = p - r;
        double a = Point3.Dot(u, u), b = Point3.Dot(u, v), c = Point3.Dot(v, v), d = Point3.Dot(u, w), e = Point3.Dot(v, w), det = (a * c) - (b * b);
        double x = det > 0 ? Math.Clamp(((b * e) - (c * d)) / det, 0, 1) : 0;
        double y = c > 0 ? Math.Clamp(((b * x) + e) / c, 0, 1) : 0;
        x = a > 0 ? Math.Clamp(((b * y) - d) / a, 0, 1) : 0;
        return (w + (u * x) - (v * y)).Length;
    }

    private readonly struct Corners(Point3 a, Point3 b, Point3 c)
    {
        private readonly Point3 low = new(Math.Min(a.X, Math.Min(b.X, c.X)), Math.Min(a.Y, Math.Min(b.Y, c.Y)), Math.Min(a.Z, Math.Min(b.Z, c.Z)));
        private readonly Point3 high = new(Math.Max(a.X, Math.Max(b.X, c.X)), Math.Max(a.Y, Math.Max(b.Y, c.Y)), Math.Max(a.Z, Math.Max(b.Z, c.Z)));

        /// <summary>The box round several.</summary>
        public static Corners Around(List<Corners> all) => new(
            new(all.Min(t => t.low.X), all.Min(t => t.low.Y), all.Min(t => t.low.Z)),
            new(all.Max(t => t.high.X), all.Max(t => t.high.Y), all.Max(t => t.high.Z)), all[0].A);

        public Point3 Low => low;

        public Point3 High => high;

        public Point3 A => a;

        public Point3 B => b;

        public Point3 C => c;

        public Point3 this[int i] => i == 0 ? a : i == 1 ? b : c;

        /// <summary>Least distance that the boxes round both allow.</summary>
        public double Apart(Corners other)
        {
            double x = Math.Max(0, Math.Max(low.X - other.high.X, other.low.X - high.X)), y = Math.Max(0, Math.Max(low.Y - other.high.Y, other.low.Y - high.Y));
            double z = Math.Max(0, Math.Max(low.Z - other.high.Z, other.low.Z - high.Z));
            return Math.Sqrt((x * x) + (y * y) + (z * z));
        }
    }
}
