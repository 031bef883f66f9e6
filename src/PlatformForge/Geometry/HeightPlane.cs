namespace PlatformForge.Geometry;

/// <summary>An affine height over plan, mm: z = Z + X·x + Y·y, x and y in the frame of what it lies over.</summary>
public readonly record struct HeightPlane(double Z, double X = 0, double Y = 0)
{
    public double At(Point2 p) => Z + (X * p.X) + (Y * p.Y);

    /// <summary>It and another, one upon the other.</summary>
    public HeightPlane Plus(HeightPlane other) => new(Z + other.Z, X + other.X, Y + other.Y);

    /// <summary>The plane through three points that are not in line in plan.</summary>
    public static HeightPlane Through(Point3 a, Point3 b, Point3 c)
    {
        double ux = b.X - a.X, uy = b.Y - a.Y, uz = b.Z - a.Z, vx = c.X - a.X, vy = c.Y - a.Y, vz = c.Z - a.Z;
        double d = (ux * vy) - (uy * vx), gx = ((uz * vy) - (vz * uy)) / d, gy = ((ux * vz) - (uz * vx)) / d;
        return new(a.Z - (gx * a.X) - (gy * a.Y), gx, gy);
    }
}
