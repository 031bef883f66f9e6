using System.Runtime.CompilerServices;
using PlatformForge.Exports.Pictures.Bodies;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures.Light;

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
    /// <param name="seen">Corners of what is looked at, which alone the grid has to hold; null for all.</param>
    /// <param name="on">Room for places of one body after another on the grid, made where it is null: two dozen lights would else leave as many of each body
    /// behind them.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public ShadowMap(
        IReadOnlyList<SceneBody> bodies, Point3 toward, Point3 level, double cells, IReadOnlyList<Point3>? seen = null, Point3[]? on = null)
    {
        on ??= new Point3[bodies.Count == 0 ? 0 : bodies.Max(b => b.Mesh.Vertices.Length)];
        var plain = View.Along(toward, level);
        var (left, top, right, bottom) = plain.Box(seen is null ? bodies.Select(b => b.Mesh.Vertices) : [[.. seen]]);
        double cell = Math.Sqrt((right - left) * (bottom - top) / cells);
        Toward = plain.Toward;
        view = plain.Enlarged(1 / cell, -left / cell, -top / cell);
        (width, height) = ((int)Math.Ceiling((right - left) / cell), (int)Math.Ceiling((bottom - top) / cell));
        bias = 1.5 * cell;
        var raster = new Raster(width, height, shows: false);
        foreach (var body in bodies)
        {
            var (vertices, triangles) = (body.Mesh.Vertices, body.Mesh.Triangles);
            view.Project(vertices, on);
            for (int i = 0; i < triangles.Length; i += 3)
            {
                raster.Fill(in on[triangles[i]], in on[triangles[i + 1]], in on[triangles[i + 2]], 0);
            }
        }

        depth = raster.Depth;
    }

    /// <summary>Unit direction to the light.</summary>
    public Point3 Toward { get; }

    /// <summary>How its grid lies, for those that ask many lights at once.</summary>
    public View View => view;

    /// <summary>How far a point is lifted off its surface before it is looked for, mm: a little more than a cell.</summary>
    public double Bias => bias;

    /// <summary>Whether the light sees what lies at a place of its grid at a depth.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool Sees(double floorX, double floorY, double z) => Lit((int)floorX, (int)floorY, z + bias);

    /// <summary>Share of the light that reaches a place of its grid at a depth, smoothed over three by three cells; where the outermost and the middle of
    /// these agree, theirs.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Soft(double across, double down, double z)
    {
        double px = across - 0.5, py = down - 0.5, deep = z + bias;
        int x = (int)Math.Floor(px), y = (int)Math.Floor(py);
        bool lit = Lit(x, y, deep), agreed = Lit(x - 1, y - 1, deep) == lit && Lit(x + 2, y - 1, deep) == lit && Lit(x - 1, y + 2, deep) == lit
            && Lit(x + 2, y + 2, deep) == lit;
        return agreed ? lit ? 1 : 0 : Smoothed(x, y, (px - x, py - y), deep);
    }

    /// <summary>Share of the light that reaches a point, smoothed over three by three cells.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Share(Point3 point, Point3 normal)
    {
        var p = view.Project(point + (normal * bias));
        double px = p.X - 0.5, py = p.Y - 0.5;
        int x = (int)Math.Floor(px), y = (int)Math.Floor(py);
        return Smoothed(x, y, (px - x, py - y), p.Z + bias);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double Smoothed(int x, int y, (double X, double Y) within, double z)
    {
        double u = within.X, v = within.Y, sum = 0;
        ReadOnlySpan<double> across = [1 - u, 1, 1, u], down = [1 - v, 1, 1, v];
        for (int j = 0; j < down.Length; j++)
        {
            for (int i = 0; i < across.Length; i++)
            {
                sum += Lit(x + i - 1, y + j - 1, z) ? across[i] * down[j] : 0;
            }
        }

        return sum / 9;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool Lit(int x, int y, double z) => (uint)x >= (uint)width || (uint)y >= (uint)height || z >= depth[(y * width) + x];
}
