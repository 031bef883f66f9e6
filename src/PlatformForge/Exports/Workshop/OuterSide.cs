using PlatformForge.Geometry;

namespace PlatformForge.Exports.Workshop;

/// <summary>A straight piece of an outline in the layout's plan, mm, and the way that is out.</summary>
internal readonly record struct OuterSide(Point2 A, Point2 Along, double Length, Point2 Out)
{
    /// <summary>An upright surface so near to the outline, mm, and turned as it is, is an outer one; reliefs lie within.</summary>
    public const double OutlineNear = 1;

    /// <summary>Far less than a brick, far more than a facet's rounding, mm.</summary>
    public const double Hair = 0.05;

    // Turned as it is: the cosine of some 25 degrees.
    private const double SameWay = 0.9;

    /// <summary>How far under the top, mm, what belongs to it begins.</summary>
    public double Below { get; init; } = double.NegativeInfinity;

    /// <summary>How far before or behind it, mm, what belongs to it may lie.</summary>
    public double Near { get; init; } = OutlineNear;

    /// <summary>How far before it, mm, what belongs to it may stand besides: plinths and corbelled courses go round fronts.</summary>
    public double Before { get; init; }

    /// <summary>Whether what lies beyond its ends is hidden, as the foot of a front's side is by the panel's bricks.</summary>
    public bool EndsThere { get; init; }

    public static OuterSide Of(Point2 a, Point2 b, double turn)
    {
        double length = (b - a).Length;
        var along = (b - a) * (1 / length);
        return new(a, along, length, along.Left * turn);
    }

    /// <summary>How much of a triangle belongs to it, as a share.</summary>
    public double Share(Point3[] corners, Point2 middle, Point2 way)
    {
        double before = Point2.Dot(middle - A, Out);
        if (Point2.Dot(Out, way) < SameWay || before <= -Near || before >= Math.Max(Near, Before))
        {
            return 0;
        }

        double at = Point2.Dot(middle - A, Along);
        return EndsThere ? Between(corners) : at > -OutlineNear && at < Length + OutlineNear ? 1 : 0;
    }

    // The part between both ends: the triangle as a half square, in shares of two of its sides.
    private double Between(Point3[] corners)
    {
        OuterSide side = this;
        double[] at = Array.ConvertAll(corners, c => Point2.Dot(new Point2(c.X, c.Y) - side.A, side.Along));
        List<(Point2 P, double At)> ring = [(new(0, 0), at[0]), (new(1, 0), at[1]), (new(0, 1), at[2])];
        foreach (var (end, turn) in new[] { (-Hair, 1), (Length + Hair, -1) })
        {
            var kept = new List<(Point2 P, double At)>();
            for (int i = 0; i < ring.Count; i++)
            {
                var (p, q) = (ring[i], ring[(i + 1) % ring.Count]);
                double a = (p.At - end) * turn, b = (q.At - end) * turn;
                if (a >= 0)
                {
                    kept.Add(p);
                }

                if (a >= 0 != b >= 0)
                {
                    kept.Add((p.P + ((q.P - p.P) * (a / (a - b))), end));
                }
            }

            ring = kept;
        }

        return Enumerable.Range(0, ring.Count).Sum(i => Point2.Cross(ring[i].P, ring[(i + 1) % ring.Count].P));
    }
}
