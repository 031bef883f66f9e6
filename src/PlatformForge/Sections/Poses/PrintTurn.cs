using PlatformForge.Geometry;

namespace PlatformForge.Sections.Poses;

/// <summary>Turns from the layout frame towards the bed: rotations only, the shift comes later.</summary>
internal static class PrintTurn
{
    /// <summary>As on the layout, its long axis along x.</summary>
    public static RigidTransform Upright(Point2 along)
    {
        double k = 1 / along.Length;
        return new(new(along.X * k, along.Y * k, 0), new(-along.Y * k, along.X * k, 0), new(0, 0, 1), default);
    }

    /// <summary>Right way up, so that a plane parallel to a sloping one becomes level.</summary>
    /// <param name="surface">The plane.</param>
    /// <param name="along">Long axis in plan.</param>
    public static RigidTransform Standing(HeightPlane surface, Point2 along)
    {
        double k = 1 / Math.Sqrt((surface.X * surface.X) + (surface.Y * surface.Y) + 1);
        Point3 up = new(-surface.X * k, -surface.Y * k, k);
        Point3 axis = new(along.X, along.Y, 0);
        axis -= up * Point3.Dot(axis, up);
        axis *= 1 / axis.Length;
        return new(axis, Point3.Cross(up, axis), up, default);
    }

    /// <summary>Half a turn about the long axis for a level deck; for a slope, so that its plane becomes level and faces down.</summary>
    /// <param name="surface">Plane that is to lie on the bed.</param>
    /// <param name="along">Long axis in plan.</param>
    public static RigidTransform Lying(HeightPlane surface, Point2 along)
    {
        double k = 1 / Math.Sqrt((surface.X * surface.X) + (surface.Y * surface.Y) + 1);
        Point3 down = new(surface.X * k, surface.Y * k, -k);
        Point3 axis = new(along.X, along.Y, 0);
        axis -= down * Point3.Dot(axis, down);
        axis *= 1 / axis.Length;
        return new(axis, Point3.Cross(down, axis), down, default);
    }
}
