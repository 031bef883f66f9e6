using PlatformForge.Geometry;

namespace PlatformForge.Outside.Tests;

/// <summary>A plan in dots, for areas of shapes that overlap any way they like.</summary>
internal sealed class Raster
{
    /// <summary>Dots a millimetre.</summary>
    private const double Fineness = 20;

    /// <summary>Free border, mm.</summary>
    private const double Border = 2;

    private readonly int width;
    private readonly int height;
    private readonly bool[] dots;

    /// <summary>An empty sheet from nil to a size in mm.</summary>
    public Raster(double x, double y)
    {
        (width, height) = ((int)((x + (2 * Border)) * Fineness), (int)((y + (2 * Border)) * Fineness));
        dots = new bool[width * height];
    }

    /// <summary>Area of the dots that are set, mm².</summary>
    public double Area => dots.Count(d => d) / (Fineness * Fineness);

    /// <summary>Area that this and another sheet of the same size have in common, mm².</summary>
    public double Common(Raster other) => dots.Where((d, i) => d && other.dots[i]).Count() / (Fineness * Fineness);

    /// <summary>Sets or clears what lies inside a ring, mm.</summary>
    public void Fill(IReadOnlyList<Point2> ring, bool set = true)
    {
        int first = Math.Max(0, Row(ring.Min(p => p.Y))), last = Math.Min(height - 1, Row(ring.Max(p => p.Y)));
        var meets = new List<double>();
        for (int row = first; row <= last; row++)
        {
            double y = ((row + 0.5) / Fineness) - Border;
            meets.Clear();
            for (int i = 0; i < ring.Count; i++)
            {
                Point2 a = ring[i], b = ring[(i + 1) % ring.Count];
                if (a.Y <= y != b.Y <= y)
                {
                    meets.Add(a.X + ((b.X - a.X) * (y - a.Y) / (b.Y - a.Y)));
                }
            }

            meets.Sort();
            for (int i = 0; i + 1 < meets.Count; i += 2)
            {
                // A dot counts by its middle.
                int from = Math.Max(0, (int)Math.Ceiling(((meets[i] + Border) * Fineness) - 0.5)),
                    to = Math.Min(width - 1, (int)Math.Ceiling(((meets[i + 1] + Border) * Fineness) - 0.5) - 1);
                if (to >= from)
                {
                    dots.AsSpan((row * width) + from, to - from + 1).Fill(set);
                }
            }
        }
    }

    /// <summary>Sets a thread of plastic: a line of a width with round ends, mm.</summary>
    public void Thread(Point2 from, Point2 to, double wide)
    {
        var along = to - from;
        double length = along.Length;
        var side = along.Left * (wide / 2 / length);
        Fill([from + side, from - side, to - side, to + side]);
        Fill(Disc(from, wide / 2));
        Fill(Disc(to, wide / 2));
    }

    public static Point2[] Disc(Point2 middle, double radius) =>
        [.. Enumerable.Range(0, 24).Select(k => middle + (Point2.FromAngle(Math.Tau * k / 24) * radius))];

    private static int Row(double y) => (int)Math.Floor((y + Border) * Fineness);
}
