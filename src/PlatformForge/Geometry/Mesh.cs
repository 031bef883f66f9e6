namespace PlatformForge.Geometry;

/// <summary>
/// An indexed triangle mesh in mm. Triangles run counter-clockwise seen from outside. Closedness is a fact of the
/// indices, never of comparing coordinates.
/// </summary>
/// <param name="Vertices">Corner points.</param>
/// <param name="Triangles">Three vertex indices a triangle; length is three times the triangle count.</param>
/// <param name="Paints">One byte a triangle: the index of what it shows (see <c>Solids.Paint</c>); empty when all are alike.</param>
public sealed record Mesh(Point3[] Vertices, int[] Triangles, byte[] Paints)
{
    public int TriangleCount => Triangles.Length / 3;

    /// <summary>Enclosed volume in mm³ by the divergence theorem about the first vertex; positive for outward triangles.</summary>
    public double Volume()
    {
        if (Triangles.Length == 0)
        {
            return 0;
        }

        var origin = Vertices[0];
        double sum = 0, lost = 0; // compensated: thousands of terms of either sign
        for (int i = 0; i < Triangles.Length; i += 3)
        {
            var a = Vertices[Triangles[i]] - origin;
            var b = Vertices[Triangles[i + 1]] - origin;
            var c = Vertices[Triangles[i + 2]] - origin;
            double term = Point3.Dot(a, Point3.Cross(b, c)) - lost;
            double next = sum + term;
            lost = next - sum - term;
            sum = next;
        }

        return sum / 6;
    }

    /// <summary>Least and greatest corner of the axis-parallel box around the mesh.</summary>
    public (Point3 Low, Point3 High) Box()
    {
        var low = new Point3(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity);
        var high = low * -1;
        foreach (var v in Vertices)
        {
            low = new(Math.Min(low.X, v.X), Math.Min(low.Y, v.Y), Math.Min(low.Z, v.Z));
            high = new(Math.Max(high.X, v.X), Math.Max(high.Y, v.Y), Math.Max(high.Z, v.Z));
        }

        return (low, high);
    }

    /// <summary>The mesh made longer about the origin along x and y, heights as they are.</summary>
    public Mesh Stretched(Point2 by) => by == new Point2(1, 1) ? this
        : this with { Vertices = Array.ConvertAll(Vertices, v => new Point3(v.X * by.X, v.Y * by.Y, v.Z)) };

    /// <summary>The mesh after a rigid motion.</summary>
    public Mesh Moved(RigidTransform motion) => this with { Vertices = Array.ConvertAll(Vertices, motion.Apply) };
}
