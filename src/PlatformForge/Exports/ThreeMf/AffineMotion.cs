using PlatformForge.Geometry;

namespace PlatformForge.Exports.ThreeMf;

/// <summary>
/// The placement of 3MF: a point as a row times the matrix, translation last, so that the rows are the images of the axes.
/// </summary>
/// <param name="X">Where the x axis goes: m00 m01 m02.</param>
/// <param name="Y">Where the y axis goes: m10 m11 m12.</param>
/// <param name="Z">Where the z axis goes: m20 m21 m22.</param>
/// <param name="Shift">Where the origin goes: m30 m31 m32, mm.</param>
public readonly record struct AffineMotion(Point3 X, Point3 Y, Point3 Z, Point3 Shift)
{
    public static AffineMotion Identity { get; } = new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), default);

    /// <summary>Volume of the unit cube's image; negative when it mirrors.</summary>
    public double Determinant => Point3.Dot(X, Point3.Cross(Y, Z));

    public Point3 Apply(Point3 p) => (X * p.X) + (Y * p.Y) + (Z * p.Z) + Shift;

    /// <summary>This motion first, then <paramref name="next"/>.</summary>
    public AffineMotion Then(AffineMotion next)
    {
        Point3 Turn(Point3 p) => next.Apply(p) - next.Shift;
        return new(Turn(X), Turn(Y), Turn(Z), next.Apply(Shift));
    }

    public static AffineMotion Of(RigidTransform motion)
    {
        var (a, b, c) = (motion.Row0, motion.Row1, motion.Row2);
        return new(new(a.X, b.X, c.X), new(a.Y, b.Y, c.Y), new(a.Z, b.Z, c.Z), motion.Translation);
    }
}
