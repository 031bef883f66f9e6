using PlatformForge.Geometry;

namespace PlatformForge.Masonry;

/// <summary>An edge of a wall laid flat, straight between its points, raised by a distance in mm.</summary>
internal sealed class EdgeLine
{
    private readonly double[] along, height;

    public EdgeLine(IReadOnlyList<Point2> points, double raised)
    {
        along = [.. points.Select(p => p.X)];
        height = [.. points.Select(p => p.Y + raised)];
        (Lowest, Highest) = (height.Min(), height.Max());
    }

    public double Lowest { get; }

    public double Highest { get; }

    /// <summary>Its height at a place; beyond its ends, on a ring, that of the other end's side.</summary>
    public double At(double x)
    {
        double length = along[^1];
        x = x > length ? x - length : x;
        int next = Array.BinarySearch(along, x);
        if (next >= 0)
        {
            return height[next];
        }

        next = Math.Clamp(~next, 1, along.Length - 1);
        return height[next - 1] + ((height[next] - height[next - 1]) * (x - along[next - 1]) / (along[next] - along[next - 1]));
    }

    /// <summary>Its points strictly between two places.</summary>
    public IEnumerable<double> Within(double from, double to)
    {
        var found = new List<double>();
        Within(from, to, found);
        return found.Distinct();
    }

    /// <summary>Adds its points strictly between two places; the opening of a ring may come twice.</summary>
    public void Within(double from, double to, List<double> found)
    {
        for (int i = First(from); i < along.Length && along[i] < to; i++)
        {
            found.Add(along[i]);
        }

        double length = along[^1];
        for (int i = 0; to > length && i < along.Length && along[i] + length < to; i++)
        {
            if (along[i] + length > from)
            {
                found.Add(along[i] + length);
            }
        }
    }

    /// <summary>Least and greatest height between two places.</summary>
    public (double Low, double High) Range(double from, double to)
    {
        double a = At(from), b = At(to), length = along[^1];
        var (low, high) = (Math.Min(a, b), Math.Max(a, b));
        for (int i = First(from); i < along.Length && along[i] < to; i++)
        {
            (low, high) = (Math.Min(low, height[i]), Math.Max(high, height[i]));
        }

        for (int i = 0; to > length && i < along.Length && along[i] + length < to; i++)
        {
            double y = along[i] + length > from ? At(along[i] + length) : low;
            (low, high) = (Math.Min(low, y), Math.Max(high, y));
        }

        return (low, high);
    }

    // The first of its points beyond a place.
    private int First(double beyond)
    {
        int found = Array.BinarySearch(along, beyond);
        return found >= 0 ? found + 1 : ~found;
    }
}
