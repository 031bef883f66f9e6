namespace PlatformForge.Geometry;

/// <summary>A point or a displacement in plan, mm: x to the right, y up the sheet, layout frame unless said otherwise.</summary>
public readonly record struct Point2(double X, double Y)
{
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    public static Point2 operator +(Point2 a, Point2 b) => new(a.X + b.X, a.Y + b.Y);

    public static Point2 operator -(Point2 a, Point2 b) => new(a.X - b.X, a.Y - b.Y);

    public static Point2 operator *(Point2 a, double k) => new(a.X * k, a.Y * k);

    public static Point2 operator *(double k, Point2 a) => new(a.X * k, a.Y * k);

    /// <summary>The displacement turned a quarter turn to the left.</summary>
    public Point2 Left => new(-Y, X);

    public static double Dot(Point2 a, Point2 b) => (a.X * b.X) + (a.Y * b.Y);

    /// <summary>Positive when <paramref name="b"/> lies to the left of <paramref name="a"/>.</summary>
    public static double Cross(Point2 a, Point2 b) => (a.X * b.Y) - (a.Y * b.X);

    /// <summary>Unit displacement at an angle in radians from the x axis.</summary>
    public static Point2 FromAngle(double angle) => new(Math.Cos(angle), Math.Sin(angle));

    /// <summary>The record's own text would print <see cref="Left"/> of Left without end.</summary>
    public override string ToString() => FormattableString.Invariant($"({X}, {Y})");
}
