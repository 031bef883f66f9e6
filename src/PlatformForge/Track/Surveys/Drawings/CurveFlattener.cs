using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>
/// Collects the points of a drawn line, curves as points on them. A curve gets so many points that its chords stay within
/// <see cref="RelativeError"/> of its own size.
/// </summary>
internal sealed class CurveFlattener(DrawingBudget budget)
{
    /// <summary>Greatest height of a curve over its chords, as a part of the curve's size: 0.001 mm in half a metre.</summary>
    public const double RelativeError = 2e-6;

    private const int MostSteps = 2000;

    private readonly List<Point2> points = [];

    public bool Straights { get; private set; } = true;

    public int Count => points.Count;

    public Point2 Last => points[^1];

    public Point2[] ToArray() => [.. points];

    public void LineTo(Point2 point)
    {
        budget.Point();
        if (!(DrawingBudget.Holds(point.X) && DrawingBudget.Holds(point.Y)))
        {
            throw new UnreadableDrawingException("A coordinate is out of range: "
                + System.FormattableString.Invariant($"the largest taken is {Units.InputLimits.DrawingCoordinate:0}."));
        }

        if (points.Count == 0 || points[^1] != point)
        {
            points.Add(point);
        }
    }

    /// <summary>A cubic Bézier from the last point.</summary>
    public void CubicTo(Point2 c1, Point2 c2, Point2 end)
    {
        var start = Last;
        double bend = Math.Max((start - (2 * c1) + c2).Length, (c1 - (2 * c2) + end).Length) * 6;
        Sample(bend, 1, Extent(start, c1, c2, end), t =>
        {
            double u = 1 - t;
            return (u * u * u * start) + (3 * u * u * t * c1) + (3 * u * t * t * c2) + (t * t * t * end);
        });
    }

    /// <summary>A quadratic Bézier from the last point.</summary>
    public void QuadraticTo(Point2 control, Point2 end)
    {
        var start = Last;
        CubicTo(start + ((control - start) * (2.0 / 3)), end + ((control - end) * (2.0 / 3)), end);
    }

    /// <summary>A stretch of an ellipse told by two conjugate half axes: centre + cos t · u + sin t · v.</summary>
    public void EllipseTo(Point2 centre, Point2 u, Point2 v, double from, double sweep)
    {
        double size = Math.Max(u.Length, v.Length);
        Sample(size * sweep * sweep, 1, size, t =>
        {
            var (sin, cos) = Math.SinCos(from + (sweep * t));
            return centre + (cos * u) + (sin * v);
        });
    }

    /// <summary>An arc from the last point told by its bulge, the tangent of a quarter of its turn, left positive.</summary>
    public void BulgeTo(Point2 end, double bulge)
    {
        var start = Last;
        var chord = end - start;
        if (bulge == 0 || !double.IsFinite(bulge) || chord.Length == 0)
        {
            LineTo(end);
            return;
        }

        var centre = ((start + end) * 0.5) + (chord.Left * ((1 - (bulge * bulge)) / (4 * bulge)));
        var spoke = start - centre;
        EllipseTo(centre, spoke, spoke.Left, 0, 4 * Math.Atan(bulge));
    }

    /// <summary>Any curve from parameter 0 to <paramref name="last"/>, with a bound on its second derivative.</summary>
    public void Sample(double secondDerivative, double last, double size, Func<double, Point2> curve)
    {
        Straights = false;
        double steps = Math.Sqrt(secondDerivative * last * last / (8 * RelativeError * Math.Max(size, double.Epsilon)));
        int count = double.IsFinite(steps) ? (int)Math.Clamp(Math.Ceiling(steps), 1, MostSteps) : MostSteps;
        for (int i = 1; i <= count; i++)
        {
            LineTo(curve(last * i / count));
        }
    }

    private static double Extent(params ReadOnlySpan<Point2> points)
    {
        double extent = 0;
        foreach (var point in points)
        {
            extent = Math.Max(extent, (point - points[0]).Length);
        }

        return extent;
    }
}
