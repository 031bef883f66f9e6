using PlatformForge.Geometry;
using PlatformForge.Solids;

namespace PlatformForge.Tests.Fixtures;

/// <summary>What somebody sees of a mesh who looks along the y axis, square to a wall along x.</summary>
internal sealed class SeenAlongY
{
    private readonly Dictionary<int, List<(Point3 A, Point3 B, Point3 C, Paint Paint)>> columns = [];
    private readonly int way;

    /// <param name="mesh">The mesh.</param>
    /// <param name="way">1 towards greater y, -1 towards lesser.</param>
    /// <param name="deep">What lies beyond this y is not looked at, mm.</param>
    public SeenAlongY(Mesh mesh, int way, double deep)
    {
        this.way = way;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3[] p = [.. Enumerable.Range(3 * t, 3).Select(k => mesh.Vertices[mesh.Triangles[k]])];
            if (p.Min(q => way * q.Y) < way * deep && way * Point3.Cross(p[1] - p[0], p[2] - p[0]).Y < -1e-9)
            {
                for (int x = (int)Math.Floor(p.Min(q => q.X)); x <= (int)Math.Floor(p.Max(q => q.X)); x++)
                {
                    (columns.TryGetValue(x, out var list) ? list : columns[x] = []).Add((p[0], p[1], p[2], (Paint)mesh.Paints[t]));
                }
            }
        }
    }

    /// <summary>What is met first at a place, and its y; null where nothing is.</summary>
    public (Paint Paint, double Y)? At(double x, double z)
    {
        (Paint Paint, double Y)? nearest = null;
        foreach (var (a, b, c, paint) in columns.GetValueOrDefault((int)Math.Floor(x)) ?? [])
        {
            double whole = ((b.X - a.X) * (c.Z - a.Z)) - ((c.X - a.X) * (b.Z - a.Z));
            double v = (((x - a.X) * (c.Z - a.Z)) - ((c.X - a.X) * (z - a.Z))) / whole, w = (((b.X - a.X) * (z - a.Z)) - ((x - a.X) * (b.Z - a.Z))) / whole;
            if (v >= 0 && w >= 0 && v + w <= 1 && a.Y + (v * (b.Y - a.Y)) + (w * (c.Y - a.Y)) is var y && (nearest is not { } n || way * y < way * n.Y))
            {
                nearest = (paint, y);
            }
        }

        return nearest;
    }
}
