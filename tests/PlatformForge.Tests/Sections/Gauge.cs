using PlatformForge.Exports.Stl;
using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Tests.Sections;

/// <summary>
/// Measures a section as a builder would with a rule and feeler gauges: from the bytes of its STL file, put back in place by its motion. Knows triangles,
/// nothing of plans and blocks.
/// </summary>
internal sealed class Gauge
{
    // A ray that grazes an edge may hit both its triangles, mm.
    private const double Same = 1e-6;

    private readonly Point3[] corners;

    // Least and greatest corner of each triangle: most lie beside a ray, upright or level.
    private readonly (Point3 Least, Point3 Most)[] boxes;

    public Gauge(PlatformSection section)
    {
        Section = section;
        var mesh = StlReader.Read(StlWriter.ToBytes(section.PrintMesh(), section.Name), section.Name).Value!.Mesh.Moved(section.ToLayout);
        corners = Array.ConvertAll(mesh.Triangles, i => mesh.Vertices[i]);
        boxes =
            [.. corners.Chunk(3)
                .Select(t => (new Point3(t.Min(p => p.X), t.Min(p => p.Y), t.Min(p => p.Z)), new Point3(t.Max(p => p.X), t.Max(p => p.Y), t.Max(p => p.Z))))];
    }

    public PlatformSection Section { get; }

    /// <summary>Heights at which the surface is met over a place in plan, highest first, mm.</summary>
    public double[] Heights(Point2 p) => [.. Along(new(p.X, p.Y, 1000), new(0, 0, -1)).Select(d => 1000 - d)];

    /// <summary>Distances from a place at which the surface is met in a direction, nearest first, mm.</summary>
    public double[] Along(Point3 from, Point3 direction)
    {
        direction *= 1 / direction.Length;
        var met = new List<double>();
        bool isLevel = direction.Z == 0, isUpright = direction is { X: 0, Y: 0 };
        for (int i = 0; i < corners.Length; i += 3)
        {
            if ((isLevel && IsBeside(from.Z, boxes[i / 3].Least.Z, boxes[i / 3].Most.Z))
                || (isUpright && (IsBeside(from.X, boxes[i / 3].Least.X, boxes[i / 3].Most.X) || IsBeside(from.Y, boxes[i / 3].Least.Y, boxes[i / 3].Most.Y))))
            {
                continue;
            }

            Point3 a = corners[i], ab = corners[i + 1] - a, ac = corners[i + 2] - a, n = Point3.Cross(direction, ac);
            double det = Point3.Dot(ab, n);
            if (Math.Abs(det) < 1e-12)
            {
                continue;
            }

            var s = from - a;
            double u = Point3.Dot(s, n) / det;
            var q = Point3.Cross(s, ab);
            double v = Point3.Dot(direction, q) / det, d = Point3.Dot(ac, q) / det;
            if (u >= 0 && v >= 0 && u + v <= 1 && d > 0)
            {
                met.Add(d);
            }
        }

        met.Sort();
        return [.. met.Where((d, i) => i == 0 || d - met[i - 1] > Same)];
    }

    private static bool IsBeside(double at, double least, double most) => at < least - Same || at > most + Same;

    /// <summary>Distance to the surface in a level direction, mm; infinite when nothing is met.</summary>
    public double Feel(Point3 from, Point2 direction) => Along(from, new(direction.X, direction.Y, 0)).DefaultIfEmpty(double.PositiveInfinity).First();
}
