namespace PlatformForge.Geometry;

/// <summary>
/// A proper rigid motion p ↦ R·p + t in mm, R given by its three rows. Never mirrors.
/// </summary>
public sealed record RigidTransform(Point3 Row0, Point3 Row1, Point3 Row2, Point3 Translation)
{
    public static RigidTransform Identity { get; } = new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), default);

    public Point3 Apply(Point3 p) =>
        new(Point3.Dot(Row0, p) + Translation.X, Point3.Dot(Row1, p) + Translation.Y, Point3.Dot(Row2, p) + Translation.Z);

    /// <summary>Shift by a displacement.</summary>
    public static RigidTransform Shift(double x, double y, double z) => Identity with { Translation = new(x, y, z) };

    /// <summary>Turn about the z axis by an angle in radians, to the left.</summary>
    public static RigidTransform AboutZ(double angle)
    {
        var (s, c) = Math.SinCos(angle);
        return new(new(c, -s, 0), new(s, c, 0), new(0, 0, 1), default);
    }

    /// <summary>This motion first, then <paramref name="next"/>.</summary>
    public RigidTransform Then(RigidTransform next)
    {
        Point3 column0 = new(Row0.X, Row1.X, Row2.X), column1 = new(Row0.Y, Row1.Y, Row2.Y), column2 = new(Row0.Z, Row1.Z, Row2.Z);
        Point3 Row(Point3 r) => new(Point3.Dot(r, column0), Point3.Dot(r, column1), Point3.Dot(r, column2));
        return new(Row(next.Row0), Row(next.Row1), Row(next.Row2), next.Apply(Translation));
    }

    /// <summary>The motion that undoes this one.</summary>
    public RigidTransform Inverse()
    {
        Point3 r0 = new(Row0.X, Row1.X, Row2.X), r1 = new(Row0.Y, Row1.Y, Row2.Y), r2 = new(Row0.Z, Row1.Z, Row2.Z);
        return new(r0, r1, r2, new(-Point3.Dot(r0, Translation), -Point3.Dot(r1, Translation), -Point3.Dot(r2, Translation)));
    }
}
