using System.Runtime.CompilerServices;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures.Light;

/// <summary>
/// A strip of samples, each holding the nearest depth and, where wanted, what lies there. Samples sit at whole numbers and a half of the sheet.
/// </summary>
/// <param name="width">Samples of a row.</param>
/// <param name="rows">How many rows.</param>
/// <param name="shows">Whether it is kept what lies at a sample; a light asks for depths alone.</param>
/// <param name="depths">Where depths are kept, at least as long as there are samples; made where it is null.</param>
internal sealed class Raster(int width, int rows, bool shows = true, float[]? depths = null)
{
    public const int Nothing = -1;

    // Lines that rise by less than this many samples are level.
    private const double Level = 1e-9;

    private int top;
    private int end = rows;

    public float[] Depth { get; } = Filled(depths ?? new float[width * rows], width * rows, float.NegativeInfinity);

    public int[] Shown { get; } = shows ? Filled(new int[width * rows], width * rows, Nothing) : [];

    public bool[] Inked { get; } = shows ? new bool[width * rows] : [];

    /// <summary>Takes another strip, of no more rows, in place of the one it holds.</summary>
    /// <param name="first">First row.</param>
    /// <param name="count">How many rows.</param>
    public void Begin(int first, int count)
    {
        (top, end) = (first, first + count);
        Array.Fill(Depth, float.NegativeInfinity);
        Array.Fill(Shown, Nothing);
        Array.Clear(Inked);
    }

    /// <summary>Draws a triangle of sheet points with the depth as their third number; those that turn away are left out.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Fill(in Point3 a, in Point3 b, in Point3 c, int what)
    {
        double area = ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
        if (!(area < 0)) // the sheet's y runs down, so a front face is clockwise
        {
            return;
        }

        // Between the samples, where most triangles of the small grids lie that lights look at, nothing is drawn.
        int x0 = Math.Max(0, First(Least(a.X, b.X, c.X))), x1 = Math.Min(width - 1, Last(Most(a.X, b.X, c.X)));
        if (x0 > x1)
        {
            return;
        }

        int y0 = Math.Max(top, First(Least(a.Y, b.Y, c.Y))), y1 = Math.Min(end - 1, Last(Most(a.Y, b.Y, c.Y)));
        if (y0 > y1)
        {
            return;
        }

        double slopeX = (((b.Z - a.Z) * (c.Y - a.Y)) - ((c.Z - a.Z) * (b.Y - a.Y))) / area;
        double slopeY = (((c.Z - a.Z) * (b.X - a.X)) - ((b.Z - a.Z) * (c.X - a.X))) / area;
        for (int y = y0; y <= y1; y++)
        {
            double py = y + 0.5;
            double left = x0 + 0.5, right = x1 + 0.5;
            if (!(Clip(in a, in b, py, ref left, ref right) && Clip(in b, in c, py, ref left, ref right) && Clip(in c, in a, py, ref left, ref right)))
            {
                continue;
            }

            int from = Math.Max(x0, First(left)), to = Math.Min(x1, Last(right));
            int at = ((y - top) * width) + from;
            double depth = a.Z + (slopeX * (from + 0.5 - a.X)) + (slopeY * (py - a.Y));
            if (from <= to)
            {
                Nearer(Depth.AsSpan(at, to - from + 1), shows ? Shown.AsSpan(at, to - from + 1) : default, depth, slopeX, what);
            }
        }
    }

    // Along a row: what is nearer takes the place of what was there. Most rows of small triangles have a sample or two, so a call would cost as much as they
    // do.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Nearer(Span<float> kept, Span<int> shown, double depth, double slope, int what)
    {
        if (shown.IsEmpty)
        {
            for (int i = 0; i < kept.Length; i++, depth += slope)
            {
                if (depth > kept[i])
                {
                    kept[i] = (float)depth;
                }
            }

            return;
        }

        for (int i = 0; i < kept.Length; i++, depth += slope)
        {
            if (depth > kept[i])
            {
                kept[i] = (float)depth;
                shown[i] = what;
            }
        }
    }

    /// <summary>Inks a line of a width in samples wherever nothing lies nearer by more than a bias in mm.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Ink(Point3 a, Point3 b, double lineWidth, double bias)
    {
        double half = lineWidth / 2, dx = b.X - a.X, dy = b.Y - a.Y, square = (dx * dx) + (dy * dy);
        int y0 = Math.Max(top, First(Math.Min(a.Y, b.Y) - half)), y1 = Math.Min(end - 1, Last(Math.Max(a.Y, b.Y) + half));
        for (int y = y0; y <= y1; y++)
        {
            // Where the line runs within this row, widened by half its width either way.
            double low = y + 0.5 - half, high = y + 0.5 + half;
            double t0 = 0, t1 = 1;
            if (Math.Abs(dy) > Level)
            {
                double u = (low - a.Y) / dy, v = (high - a.Y) / dy;
                (t0, t1) = (Math.Max(0, Math.Min(u, v)), Math.Min(1, Math.Max(u, v)));
            }

            double xa = a.X + (dx * t0), xb = a.X + (dx * t1);
            int x0 = Math.Max(0, First(Math.Min(xa, xb) - half)), x1 = Math.Min(width - 1, Last(Math.Max(xa, xb) + half));
            for (int x = x0; x <= x1; x++)
            {
                double px = x + 0.5 - a.X, py = y + 0.5 - a.Y;
                double t = square > 0 ? Math.Clamp(((px * dx) + (py * dy)) / square, 0, 1) : 0;
                double ex = px - (dx * t), ey = py - (dy * t);
                int at = ((y - top) * width) + x;
                if ((ex * ex) + (ey * ey) <= half * half && a.Z + ((b.Z - a.Z) * t) + bias >= Depth[at])
                {
                    Inked[at] = true;
                }
            }
        }
    }

    /// <summary>Narrows a span of a row to the inner side of an edge of a clockwise triangle; false when nothing is left.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool Clip(in Point3 from, in Point3 to, double y, ref double left, ref double right)
    {
        // Inside where (to - from) x (p - from) <= 0.
        double dx = to.X - from.X, dy = to.Y - from.Y, rest = dx * (y - from.Y);
        if (dy == 0)
        {
            return rest <= 0;
        }

        double x = from.X + (rest / dy);
        if (dy > 0)
        {
            left = Math.Max(left, x);
        }
        else
        {
            right = Math.Min(right, x);
        }

        return left <= right;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Least(double a, double b, double c)
    {
        double least = a < b ? a : b;
        return c < least ? c : least;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Most(double a, double b, double c)
    {
        double most = a > b ? a : b;
        return c > most ? c : most;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int First(double from) => (int)Math.Ceiling(Math.Clamp(from, -1e8, 1e8) - 0.5);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Last(double to) => (int)Math.Floor(Math.Clamp(to, -1e8, 1e8) - 0.5);

    private static T[] Filled<T>(T[] array, int count, T value)
    {
        Array.Fill(array, value, 0, count);
        return array;
    }
}
