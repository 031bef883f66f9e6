using PlatformForge.Geometry;

namespace PlatformForge.Outside.Tests;

/// <summary>Triangles in slices by height, so that a ray across need not ask all of them.</summary>
internal sealed class Heights
{
    // Height of a slice, mm: a course of bricks is a few times as high.
    private const double Slice = 0.25;

    private readonly Dictionary<int, List<int>> slices = [];
    private readonly Point3[][] triangles;

    public Heights(Point3[][] triangles)
    {
        this.triangles = triangles;
        for (int i = 0; i < triangles.Length; i++)
        {
            for (int at = Of(triangles[i].Min(p => p.Z)); at <= Of(triangles[i].Max(p => p.Z)); at++)
            {
                (slices.TryGetValue(at, out var list) ? list : slices[at] = []).Add(i);
            }
        }
    }

    /// <summary>All that reach between two heights, and a few more.</summary>
    public IEnumerable<Point3[]> Between(double a, double b)
    {
        for (int at = Of(Math.Min(a, b)); at <= Of(Math.Max(a, b)); at++)
        {
            foreach (int i in slices.GetValueOrDefault(at) ?? [])
            {
                yield return triangles[i];
            }
        }
    }

    private static int Of(double z) => (int)Math.Floor(z / Slice);
}
