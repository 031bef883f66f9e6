using PlatformForge.Geometry;
using PlatformForge.Solids;

namespace PlatformForge.Proofs;

/// <summary>Short ways to state the blocks that gauges are made of. All mm.</summary>
internal static class Shape
{
    // How far a relief reaches out of the material.
    private const double Overshoot = 0.5;

    /// <summary>Sides of a round thing: its facets leave a circle of 10 mm by 0.003 mm.</summary>
    private const int Sides = 48;

    public static Point2[] Box(double x0, double y0, double x1, double y1) => [new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)];

    /// <summary>A ring round a circle, outside it, so that what goes in does.</summary>
    public static Point2[] Around(Point2 middle, double radius) => Ring(middle, radius / Math.Cos(Math.PI / Sides));

    /// <summary>A ring within a circle, so that it goes between what is as far apart.</summary>
    public static Point2[] Within(Point2 middle, double radius) => Ring(middle, radius);

    public static ColumnBlock Added(Point2[] ring, double low, double high) => new(ring, new(low), new(high), BlockAction.Add, Paint.Wall);

    public static ColumnBlock Taken(Point2[] ring, double low, double high) => new(ring, new(low), new(high), BlockAction.Remove, Paint.Wall);

    /// <summary>
    /// Takes the foot of an upright face off at 45 degrees, against the squashed first layer, so that the face measures true.
    /// </summary>
    /// <param name="from">One end of the face's foot.</param>
    /// <param name="to">Its other end, the material on the left.</param>
    /// <param name="size">Size of the chamfer.</param>
    public static ColumnBlock Relieved(Point2 from, Point2 to, double size)
    {
        var inward = (to - from).Left * (1 / (to - from).Length);
        Point2[] ring = [from - (inward * Overshoot), to - (inward * Overshoot), to + (inward * size), from + (inward * size)];
        return new(ring, new(-1), new HeightPlane(size + Point2.Dot(from, inward), -inward.X, -inward.Y), BlockAction.Remove, Paint.Wall);
    }

    private static Point2[] Ring(Point2 middle, double radius) =>
        [.. Enumerable.Range(0, Sides).Select(i => middle + (Point2.FromAngle(2 * Math.PI * (i + 0.5) / Sides) * radius))];
}
