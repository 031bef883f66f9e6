using PlatformForge.Exports.Pictures.Light;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.LineArt;

/// <summary>Solids of what joins sections, mm.</summary>
internal static class LooseBodies
{
    // So many that none of a dowel's long edges is a crease.
    private const int Sides = 16;

    /// <summary>A round rod.</summary>
    /// <param name="middle">Its middle.</param>
    /// <param name="along">Direction of its axis, of any length but nil.</param>
    /// <param name="radius">Its radius.</param>
    /// <param name="half">Half its length.</param>
    public static Mesh Rod(Point3 middle, Point3 along, double radius, double half)
    {
        var axis = along * (1 / along.Length);
        Point3 side = View.Unit(Point3.Cross(axis, new(0, 0, 1))), up = Point3.Cross(side, axis);
        Point3 Corner(int k, double end)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * k / Sides);
            return middle + (axis * end) + (side * (radius * cos)) + (up * (radius * sin));
        }

        var points = Enumerable.Range(0, Sides).Select(k => Corner(k, -half)).Concat(Enumerable.Range(0, Sides).Select(k => Corner(k, half))).ToArray();
        var triangles = new List<int>();
        for (int k = 0; k < Sides; k++)
        {
            int next = (k + 1) % Sides;
            triangles.AddRange([k, k + Sides, next, next, k + Sides, next + Sides]);
            triangles.AddRange(k is > 0 and < Sides - 1 ? [0, k, k + 1, Sides, Sides + k + 1, Sides + k] : []);
        }

        return new(points, [.. triangles], []);
    }

    /// <summary>A flat strip that lies level.</summary>
    /// <param name="middle">Its middle.</param>
    /// <param name="half">From there to the middle of its end, level.</param>
    /// <param name="width">Half its width.</param>
    /// <param name="thickness">Half its thickness.</param>
    public static Mesh Strip(Point3 middle, Point3 half, double width, double thickness)
    {
        var side = View.Unit(Point3.Cross(new(0, 0, 1), half)) * width;
        Point3 Corner(int i) => middle + (half * (i is 0 or 3 ? -1 : 1)) + (side * (i < 2 ? -1 : 1));
        Point3 up = new(0, 0, thickness);
        Point3[] points = [.. Enumerable.Range(0, 4).Select(i => Corner(i) - up), .. Enumerable.Range(0, 4).Select(i => Corner(i) + up)];
        var triangles = new List<int>([0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7]);
        for (int i = 0; i < 4; i++)
        {
            int next = (i + 1) % 4;
            triangles.AddRange([i, next, next + 4, i, next + 4, i + 4]);
        }

        return new(points, [.. triangles], []);
    }
}
