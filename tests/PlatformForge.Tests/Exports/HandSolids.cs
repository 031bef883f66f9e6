using PlatformForge.Geometry;

namespace PlatformForge.Tests.Exports;

/// <summary>Solids built by hand, whose volumes are school arithmetic.</summary>
internal static class HandSolids
{
    private static readonly int[] BoxTriangles =
    [
        0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7,
    ];

    /// <summary>The box of the published STL and 3MF samples: 10 × 20 × 30 mm, 12 triangles, 6000 mm³.</summary>
    public static Mesh Box(double x = 10, double y = 20, double z = 30) => new(
        [new(0, 0, 0), new(x, 0, 0), new(x, y, 0), new(0, y, 0), new(0, 0, z), new(x, 0, z), new(x, y, z), new(0, y, z)], BoxTriangles, []);

    /// <summary>A prism over an L of 3 squares of side 4, 5 high: 240 mm³. Painted: top Deck, wall at x = 0 Coping, rest Wall.</summary>
    public static Mesh Angle()
    {
        (double X, double Y)[] ring = [(0, 0), (8, 0), (8, 4), (4, 4), (4, 8), (0, 8)];
        int n = ring.Length;
        var vertices = ring.Select(p => new Point3(p.X, p.Y, 0)).Concat(ring.Select(p => new Point3(p.X, p.Y, 5))).ToArray();
        int[][] top = [[0, 1, 2], [0, 2, 3], [0, 3, 4], [0, 4, 5]];
        var triangles = new List<int>();
        var paints = new List<byte>();
        foreach (var t in top)
        {
            triangles.AddRange([t[0] + n, t[1] + n, t[2] + n, t[0], t[2], t[1]]);
            paints.AddRange([0, 3]);
        }

        for (int i = 0; i < n; i++)
        {
            int j = (i + 1) % n;
            triangles.AddRange([i, j, j + n, i, j + n, i + n]);
            byte paint = i == n - 1 ? (byte)1 : (byte)3;
            paints.AddRange([paint, paint]);
        }

        return new(vertices, [.. triangles], [.. paints]);
    }

    /// <summary>A corner cut off a cube of side 6: 36 mm³.</summary>
    public static Mesh Tetrahedron() => new([new(0, 0, 0), new(6, 0, 0), new(0, 6, 0), new(0, 0, 6)], [0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3], []);

    /// <summary>A bumpy closed surface of many triangles: a ball with latitude bands, radius 20 mm with waves.</summary>
    public static Mesh Ball(int bands)
    {
        var vertices = new List<Point3> { new(0, 0, -20) };
        for (int i = 1; i < bands; i++)
        {
            for (int j = 0; j < 2 * bands; j++)
            {
                double lat = (Math.PI * i / bands) - (Math.PI / 2), lon = Math.PI * j / bands, r = 20 + Math.Sin(5 * lon);
                vertices.Add(new(r * Math.Cos(lat) * Math.Cos(lon), r * Math.Cos(lat) * Math.Sin(lon), 20 * Math.Sin(lat)));
            }
        }

        vertices.Add(new(0, 0, 20));
        int row = 2 * bands, last = vertices.Count - 1;
        var triangles = new List<int>();
        for (int j = 0; j < row; j++)
        {
            int k = (j + 1) % row;
            triangles.AddRange([0, 1 + k, 1 + j, last, last - row + j, last - row + k]);
            for (int i = 0; i < bands - 2; i++)
            {
                int a = 1 + (i * row) + j, b = 1 + (i * row) + k;
                triangles.AddRange([a, b, b + row, a, b + row, a + row]);
            }
        }

        return new([.. vertices], [.. triangles], [.. triangles.Select((_, i) => (byte)(i % 4)).Take(triangles.Count / 3)]);
    }
}
