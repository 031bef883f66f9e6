using System.Runtime.CompilerServices;
using PlatformForge.Geometry;

namespace PlatformForge.Exports.Pictures;

/// <summary>
/// A parallel view: where points fall on a sheet and how near they are. Sheet x runs right, y down, in whatever unit the
/// scale gives; depth grows towards the eye, mm.
/// </summary>
internal sealed record View(Point3 Right, Point3 Up, Point3 Toward, double Scale, double OriginX, double OriginY)
{
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
    public Point3 Project(Point3 p) => new(
        (Point3.Dot(Right, p) * Scale) + OriginX, OriginY - (Point3.Dot(Up, p) * Scale), Point3.Dot(Toward, p));

    /// <summary>The point in space that falls on a place of the sheet at a depth.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public Point3 Unproject(double x, double y, double depth) =>
        (Right * ((x - OriginX) / Scale)) + (Up * ((OriginY - y) / Scale)) + (Toward * depth);

    /// <summary>Box of points on the sheet.</summary>
    public (double Left, double Top, double Right, double Bottom) Box(IEnumerable<Point3[]> bodies)
    {
        double left = double.PositiveInfinity, top = left, right = -left, bottom = -left;
        foreach (var p in bodies.SelectMany(b => b))
        {
            var q = Project(p);
            (left, right, top, bottom) = (Math.Min(left, q.X), Math.Max(right, q.X), Math.Min(top, q.Y), Math.Max(bottom, q.Y));
        }

        return (left, top, right, bottom);
    }

    /// <summary>The same view enlarged and shifted on the sheet.</summary>
    public View Enlarged(double by, double x, double y) => this with { Scale = Scale * by, OriginX = (OriginX * by) + x, OriginY = (OriginY * by) + y };

    internal static Point3 Unit(Point3 p) => p * (1 / p.Length);
}
