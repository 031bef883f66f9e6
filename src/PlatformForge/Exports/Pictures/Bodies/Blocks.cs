using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures.Bodies;

/// <summary>Plain closed meshes of which a picture's furniture and vehicles are made.</summary>
internal static class Blocks
{
    /// <summary>An upright prism over a convex ring, counter-clockwise.</summary>
    public static Mesh Prism(IReadOnlyList<Point2> ring, double low, double high) => Loft(ring, low, ring, high);

    /// <summary>A body between two convex rings of as many corners, one over the other.</summary>
    public static Mesh Loft(IReadOnlyList<Point2> bottom, double low, IReadOnlyList<Point2> top, double high)
    {
        int n = bottom.Count;
        var triangles = new List<int>();
        for (int i = 0; i < n; i++)
        {
            int j = (i + 1) % n;
            triangles.AddRange([i, j, n + j, i, n + j, n + i]);
        }

        for (int i = 1; i + 1 < n; i++)
        {
            triangles.AddRange([0, i + 1, i, n, n + i, n + i + 1]);
        }

        return new([.. bottom.Select(p => new Point3(p.X, p.Y, low)), .. top.Select(p => new Point3(p.X, p.Y, high))], [.. triangles], []);
    }

    /// <summary>A beam from one point to another along its underside's middle, mm wide and high.</summary>
    public static Mesh Beam(Point3 from, Point3 to, double width, double height)
    {
        Point2 a = new(from.X, from.Y), b = new(to.X, to.Y);
        var side = (b - a).Left * (width / 2 / (b - a).Length);
        Point2[] ring = [a - side, b - side, b + side, a + side];
        double[] z = [from.Z, to.Z, to.Z, from.Z];
        var mesh = Loft(ring, 0, ring, height);
        return mesh with { Vertices = [.. mesh.Vertices.Select((v, i) => new Point3(v.X, v.Y, v.Z + z[i % 4]))] };
    }

    /// <summary>An oblong about a point, one side along a unit direction.</summary>
    public static Point2[] Square(Point2 at, Point2 along, double length, double width)
    {
        Point2 a = along * (length / 2), b = along.Left * (width / 2);
        return [at - a - b, at + a - b, at + a + b, at - a + b];
    }

    /// <summary>A wheel: a drum about a level axis.</summary>
    public static Mesh Drum(Point3 middle, Point2 axis, double radius, double width)
    {
        const int Sides = 18;
        var half = axis * (width / 2);
        var along = axis.Left;
        Point3[] Face(double sign) => [.. Enumerable.Range(0, Sides).Select(i => Math.SinCos(2 * Math.PI * i / Sides)).Select(t =>
            new Point3(middle.X + (along.X * radius * t.Cos) + (sign * half.X), middle.Y + (along.Y * radius * t.Cos) + (sign * half.Y),
                middle.Z + (radius * t.Sin)))];
        var triangles = new List<int>();
        for (int i = 0; i < Sides; i++)
        {
            int j = (i + 1) % Sides;
            triangles.AddRange([i, j, Sides + j, i, Sides + j, Sides + i]);
        }

        for (int i = 1; i + 1 < Sides; i++)
        {
            triangles.AddRange([0, i + 1, i, Sides, Sides + i, Sides + i + 1]);
        }

        return new([.. Face(-1), .. Face(1)], [.. triangles], []);
    }
}
