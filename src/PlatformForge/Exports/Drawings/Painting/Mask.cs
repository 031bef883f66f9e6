using System.Runtime.CompilerServices;
using PlatformForge.Exports.Pictures;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Drawings.Painting;

/// <summary>How far each pixel is covered by what is being drawn, 0 to 1; only the rows and spans that were touched are kept.</summary>
internal sealed class Mask(int width, int height) : IDisposable
{
    private const int Parts = 5; // rows that a pixel's row is cut into for areas

    // Of a sheet some 12 MB, borrowed: of hundreds of sheets each would leave as much behind, faster than it is collected.
    private readonly float[] cover = Clean(width * height);
    private readonly int[] from = Filled(height, int.MaxValue), to = Filled(height, -1);
    private int top = int.MaxValue, bottom = -1;

    /// <summary>Gives back what was borrowed.</summary>
    public void Dispose() => LentFields.Own.GiveBack(cover);

    /// <summary>Draws a straight piece of a round pen, pixels; where pieces overlap the fuller one counts.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Stroke(Point2 a, Point2 b, double pen)
    {
        // A pen thinner than a pixel is drawn a pixel wide and fainter.
        double strength = Math.Min(1, pen), half = Math.Max(1, pen) / 2, rim = half + 0.5;
        double dx = b.X - a.X, dy = b.Y - a.Y, square = (dx * dx) + (dy * dy);
        for (int y = First(Math.Min(a.Y, b.Y) - rim); y <= Last(Math.Max(a.Y, b.Y) + rim, height); y++)
        {
            double t0 = 0, t1 = 1;
            if (Math.Abs(dy) > Flat)
            {
                double u = (y + 0.5 - rim - a.Y) / dy, v = (y + 0.5 + rim - a.Y) / dy;
                (t0, t1) = (Math.Clamp(Math.Min(u, v), 0, 1), Math.Clamp(Math.Max(u, v), 0, 1));
            }

            double xa = a.X + (dx * t0), xb = a.X + (dx * t1);
            int x0 = First(Math.Min(xa, xb) - rim), x1 = Last(Math.Max(xa, xb) + rim, width);
            for (int x = x0; x <= x1; x++)
            {
                double px = x + 0.5 - a.X, py = y + 0.5 - a.Y;
                double t = square > 0 ? Math.Clamp(((px * dx) + (py * dy)) / square, 0, 1) : 0;
                double ex = px - (dx * t), ey = py - (dy * t), far = Math.Sqrt((ex * ex) + (ey * ey));
                float part = (float)(strength * Math.Clamp(rim - far, 0, 1));
                int at = (y * width) + x;
                cover[at] = Math.Max(cover[at], part);
            }

            Touch(y, x0, x1);
        }
    }

    /// <summary>Fills what a ring winds round, pixels.</summary>
    public void Area(IReadOnlyList<Point2> ring)
    {
        double low = ring.Min(p => p.Y), high = ring.Max(p => p.Y);
        var crossings = new List<(double X, int Way)>();
        for (int y = First(low); y <= Last(high, height); y++)
        {
            int x0 = width, x1 = -1;
            for (int part = 0; part < Parts; part++)
            {
                double level = y + ((part + 0.5) / Parts);
                crossings.Clear();
                for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
                {
                    Point2 a = ring[j], b = ring[i];
                    if ((a.Y <= level) != (b.Y <= level))
                    {
                        crossings.Add((a.X + ((b.X - a.X) * (level - a.Y) / (b.Y - a.Y)), a.Y <= level ? 1 : -1));
                    }
                }

                crossings.Sort((a, b) => a.X.CompareTo(b.X));
                int winding = 0;
                for (int k = 0; k + 1 < crossings.Count; k++)
                {
                    winding += crossings[k].Way;
                    if (winding != 0)
                    {
                        Span(y, crossings[k].X, crossings[k + 1].X, ref x0, ref x1);
                    }
                }
            }

            Touch(y, x0, x1);
        }
    }

    /// <summary>Hands on every pixel that is covered, and clears the mask.</summary>
    public void Take(Action<int, float> paint)
    {
        for (int y = top; y <= bottom; y++)
        {
            for (int x = from[y], at = (y * width) + x; x <= to[y]; x++, at++)
            {
                if (cover[at] > 0)
                {
                    paint(at, Math.Min(1, cover[at]));
                    cover[at] = 0;
                }
            }

            (from[y], to[y]) = (int.MaxValue, -1);
        }

        (top, bottom) = (int.MaxValue, -1);
    }

    // Lines that rise by less than this many pixels are level.
    private const double Flat = 1e-9;

    private void Span(int y, double left, double right, ref int x0, ref int x1)
    {
        int first = First(left), last = Last(right, width);
        for (int x = first; x <= last; x++)
        {
            double part = Math.Min(right, x + 1) - Math.Max(left, x);
            cover[(y * width) + x] += (float)(Math.Max(0, part) / Parts);
        }

        (x0, x1) = (Math.Min(x0, first), Math.Max(x1, last));
    }

    private void Touch(int y, int x0, int x1)
    {
        if (x0 <= x1)
        {
            (from[y], to[y]) = (Math.Min(from[y], x0), Math.Max(to[y], x1));
            (top, bottom) = (Math.Min(top, y), Math.Max(bottom, y));
        }
    }

    private static int First(double x) => (int)Math.Max(0, Math.Floor(Math.Clamp(x, -1e6, 1e6)));

    private static int Last(double x, int count) => (int)Math.Min(count - 1, Math.Floor(Math.Clamp(x, -1e6, 1e6)));

    private static float[] Clean(int count)
    {
        float[] array = LentFields.Own.Rent(count);
        Array.Clear(array, 0, count);
        return array;
    }

    private static int[] Filled(int count, int value)
    {
        int[] array = new int[count];
        Array.Fill(array, value);
        return array;
    }
}
