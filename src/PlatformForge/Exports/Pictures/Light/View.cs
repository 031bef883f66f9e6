using System.Runtime.CompilerServices;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures.Light;

/// <summary>
/// A view: where points fall on a sheet and how near they are. Sheet x runs right, y down, in whatever unit the scale gives; depth grows towards the
/// eye. Parallel, with depth in mm, or from an eye, with the inverse of the distance for depth, which is even along straight lines on the sheet.
/// </summary>
internal sealed record View(Point3 Right, Point3 Up, Point3 Toward, double Scale, double OriginX, double OriginY)
{
    /// <summary>Where the eye is; null for a parallel view.</summary>
    public Point3? Eye { get; init; }

    /// <summary>Nothing nearer to the eye than this, mm, is seen.</summary>
    public const double Near = 4;

    // What the depth is at a distance of 1 mm: single precision is enough then at any distance in a room.
    private const double Inverse = 1000;

    /// <summary>A view along a direction, with a line of space kept level on the sheet.</summary>
    /// <param name="toward">Direction to the eye.</param>
    /// <param name="level">Direction that shall run to the right on the sheet as far as it can.</param>
    public static View Along(Point3 toward, Point3 level)
    {
        var eye = Unit(toward);
        var right = Unit(level - (eye * Point3.Dot(level, eye)));
        return new(right, Point3.Cross(eye, right), eye, 1, 0, 0);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public Point3 Project(Point3 p)
    {
        if (Eye is not { } eye)
        {
            return new((Point3.Dot(Right, p) * Scale) + OriginX, OriginY - (Point3.Dot(Up, p) * Scale), Point3.Dot(Toward, p));
        }

        var from = p - eye;
        double ahead = Math.Max(-Point3.Dot(Toward, from), Near / 2), size = Scale / ahead;
        return new((Point3.Dot(Right, from) * size) + OriginX, OriginY - (Point3.Dot(Up, from) * size), Inverse / ahead);
    }

    /// <summary>Where many points fall: each as <see cref="Project(Point3)"/> has it, to the last bit.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Project(ReadOnlySpan<Point3> points, Span<Point3> to)
    {
        if (Eye is not null)
        {
            for (int i = 0; i < points.Length; i++)
            {
                to[i] = Project(points[i]);
            }

            return;
        }

        var (right, up, toward, scale, x, y) = this;
        for (int i = 0; i < points.Length; i++)
        {
            var p = points[i];
            to[i] = new((Point3.Dot(right, p) * scale) + x, y - (Point3.Dot(up, p) * scale), Point3.Dot(toward, p));
        }
    }

    /// <summary>How far ahead of the eye a point is, mm; without end for a parallel view.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Ahead(Point3 p) => Eye is { } eye ? -Point3.Dot(Toward, p - eye) : double.PositiveInfinity;

    /// <summary>Unit direction from a point to the eye.</summary>
    public Point3 TowardFrom(Point3 p) => Eye is { } eye ? Unit(eye - p) : Toward;

    /// <summary>What a step in space towards the eye, mm, is in depth where the depth is stated.</summary>
    public double DepthOf(double step, double depth) => Eye is null ? step : step * depth * depth / Inverse;

    /// <summary>Where the line of sight through a place of the sheet meets a level plane; null where it does not.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public Point3? OnLevel(double x, double y, double height)
    {
        var start = Eye ?? Unproject(x, y, 0);
        var along = Eye is null ? Toward * -1 : (Right * ((x - OriginX) / Scale)) + (Up * ((OriginY - y) / Scale)) - Toward;
        return along.Z < 0 ? start + (along * ((height - start.Z) / along.Z)) : null;
    }

    /// <summary>The point in space that falls on a place of the sheet at a depth.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public Point3 Unproject(double x, double y, double depth)
    {
        Point3 across = (Right * ((x - OriginX) / Scale)) + (Up * ((OriginY - y) / Scale));
        return Eye is { } eye ? eye + ((across - Toward) * (Inverse / depth)) : across + (Toward * depth);
    }

    /// <summary>Box of points on the sheet.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (double Left, double Top, double Right, double Bottom) Box(IEnumerable<Point3[]> bodies)
    {
        double left = double.PositiveInfinity, top = left, right = -left, bottom = -left;
        Span<Point3> some = stackalloc Point3[64];
        foreach (var body in bodies)
        {
            for (int i = 0; i < body.Length; i++)
            {
                if (i % some.Length == 0)
                {
                    Project(body.AsSpan(i, Math.Min(some.Length, body.Length - i)), some);
                }

                var q = some[i % some.Length];
                left = q.X < left ? q.X : left;
                right = q.X > right ? q.X : right;
                top = q.Y < top ? q.Y : top;
                bottom = q.Y > bottom ? q.Y : bottom;
            }
        }

        return (left, top, right, bottom);
    }

    /// <summary>The same view enlarged and shifted on the sheet.</summary>
    public View Enlarged(double by, double x, double y) => this with { Scale = Scale * by, OriginX = (OriginX * by) + x, OriginY = (OriginY * by) + y };

    internal static Point3 Unit(Point3 p) => p * (1 / p.Length);
}
