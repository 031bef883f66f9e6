using System.Runtime.CompilerServices;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures;

/// <summary>What a far light sees of the bodies: its nearest depths on a grid square to its direction.</summary>
internal sealed class ShadowMap
{
    private readonly View view;
    private readonly int width;
    private readonly int height;
    private readonly float[] depth;
    private readonly double bias;

    /// <param name="bodies">What throws shadows.</param>
    /// <param name="toward">Direction to the light.</param>
    /// <param name="level">The bodies' longest direction, which the grid is laid along.</param>
    /// <param name="cells">Cells of the grid, about.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public ShadowMap(IReadOnlyList<SceneBody> bodies, Point3 toward, Point3 level, double cells)
    {
        var plain = View.Along(toward, level);
        var (left, top, right, bottom) = plain.Box(bodies.Select(b => b.Mesh.Vertices));
        double cell = Math.Sqrt((right - left) * (bottom - top) / cells);
        Toward = plain.Toward;
        view = plain.Enlarged(1 / cell, -left / cell, -top / cell);
        (width, height) = ((int)Math.Ceiling((right - left) / cell), (int)Math.Ceiling((bottom - top) / cell));
        bias = 1.5 * cell;
        var raster = new Raster(width, 0, height);
        foreach (var body in bodies)
        {
            var on = Array.ConvertAll(body.Mesh.Vertices, view.Project);
            var triangles = body.Mesh.Triangles;
            for (int i = 0; i < triangles.Length; i += 3)
            {
                raster.Fill(on[triangles[i]], on[triangles[i + 1]], on[triangles[i + 2]], 0);
            }
        }

        depth = raster.Depth;
    }

    /// <summary>Unit direction to the light.</summary>
    public Point3 Toward { get; }

    /// <summary>Whether the light sees a point, lifted off its surface by a little more than a cell.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool Sees(Point3 point, Point3 normal)
    {
        var p = view.Project(point + (normal * bias));
        int x = (int)Math.Floor(p.X), y = (int)Math.Floor(p.Y);
        return x < 0 || y < 0 || x >= width || y >= height || p.Z + bias >= depth[(y * width) + x];
    }

    /// <summary>Share of the light that reaches a point, smoothed over three by three cells.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Share(Point3 point, Point3 normal)
    {
        var p = view.Project(point + (normal * bias));
        double px = p.X - 0.5, py = p.Y - 0.5;
        int x = (int)Math.Floor(px), y = (int)Math.Floor(py);
        double u = px - x, v = py - y, sum = 0;
        for (int j = -1; j <= 2; j++)
        {
            double wy = j == -1 ? 1 - v : j == 2 ? v : 1;
            for (int i = -1; i <= 2; i++)
            {
                double wx = i == -1 ? 1 - u : i == 2 ? u : 1;
                sum += wx * wy * Lit(x + i, y + j, p.Z);
            }
        }

        return sum / 9;
    }

    private int Lit(int x, int y, double z) => x < 0 || y < 0 || x >= width || y >= height || z + bias >= depth[(y * width) + x] ? 1 : 0;
}
