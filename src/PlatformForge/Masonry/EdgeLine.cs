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
        double length = along[^1];
        return along.Where(x => x > from && x < to).Concat(to > length ? along.Select(x => x + length).Where(x => x > from && x < to) : []).Distinct();
    }

    /// <summary>Least and greatest height between two places.</summary>
    public (double Low, double High) Range(double from, double to)
    {
        double a = At(from), b = At(to);
        var (low, high) = (Math.Min(a, b), Math.Max(a, b));
        foreach (double x in Within(from, to))
        {
            double y = At(x);
            (low, high) = (Math.Min(low, y), Math.Max(high, y));
        }

        return (low, high);
    }
}
