using PlatformForge.Exports.Stl;
using PlatformForge.Geometry;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Tests.Sections;

/// <summary>
/// A section as its STL says it, put back over the track: what is found on it was measured on triangles that were written, with nothing of the model in
/// between. Shares no code with the kernel.
/// </summary>
internal sealed class WrittenMesh
{
    // Ends of cut lines nearer than this, mm, are one; the file holds single-precision figures.
    private const double Same = 2e-3;

    private readonly Point3[][] triangles;

    public WrittenMesh(PlatformSection section)
    {
        var read = StlReader.Read(StlWriter.ToBytes(section.PrintMesh(), section.Name), section.Name).Value!.Mesh;
        triangles = [.. Enumerable.Range(0, read.TriangleCount)
            .Select(t => Enumerable.Range(0, 3).Select(k => section.ToLayout.Apply(read.Vertices[read.Triangles[(3 * t) + k]])).ToArray())];
    }

    /// <summary>Lines in which a level plane cuts the surface.</summary>
    public List<(Point2 A, Point2 B)> Level(double z)
    {
        var lines = new List<(Point2, Point2)>();
        foreach (var t in triangles)
        {
            var ends = new List<Point2>(2);
            for (int k = 0; k < 3; k++)
            {
                Point3 p = t[k], q = t[(k + 1) % 3];
                if ((p.Z > z) != (q.Z > z))
                {
                    double share = (z - p.Z) / (q.Z - p.Z);
                    ends.Add(new(p.X + (share * (q.X - p.X)), p.Y + (share * (q.Y - p.Y))));
                }
            }

            if (ends.Count == 2)
            {
                lines.Add((ends[0], ends[1]));
            }
        }

        return lines;
    }

    /// <summary>Stretches of a path that lie in the material at a height, told by the length along the path.</summary>
    public List<(double From, double To)> Along(IReadOnlyList<Point2> path, double z)
    {
        var lines = Level(z);
        var crossings = new List<double>();
        double at = 0;
        for (int i = 0; i + 1 < path.Count; i++)
        {
            var step = path[i + 1] - path[i];
            foreach (var (a, b) in lines)
            {
                double sa = Point2.Cross(step, a - path[i]), sb = Point2.Cross(step, b - path[i]);
                if ((sa > 0) != (sb > 0))
                {
                    double u = Point2.Dot(step, (a + ((b - a) * (sa / (sa - sb)))) - path[i]) / Point2.Dot(step, step);
                    if (u >= 0 && u < 1)
                    {
                        crossings.Add(at + (u * step.Length));
                    }
                }
            }

            at += step.Length;
        }

        crossings.Sort();
        return [.. crossings.Chunk(2).Where(c => c.Length == 2).Select(c => (c[0], c[1]))];
    }

    /// <summary>Round openings at a height, no larger than a size: middle, and diameter of the circle that goes in.</summary>
    public List<(Point2 Middle, double Diameter)> Holes(double z, double largest)
    {
        var holes = new List<(Point2, double)>();
        foreach (var loop in Loops(Level(z)))
        {
            Point2 low = new(loop.Min(l => Math.Min(l.A.X, l.B.X)), loop.Min(l => Math.Min(l.A.Y, l.B.Y))),
                high = new(loop.Max(l => Math.Max(l.A.X, l.B.X)), loop.Max(l => Math.Max(l.A.Y, l.B.Y)));
            if (high.X - low.X < largest && high.Y - low.Y < largest)
            {
                var middle = (low + high) * 0.5;
                double length = loop.Sum(l => (l.B - l.A).Length);
                var centre = loop.Aggregate(new Point2(0, 0), (sum, l) => sum + ((l.A + l.B - (middle * 2)) * ((l.B - l.A).Length / 2))) * (1 / length)
                    + middle;
                holes.Add((centre, 2 * loop.Where(l => (l.B - l.A).Length > Same)
                    .Min(l => Math.Abs(Point2.Cross((l.B - l.A) * (1 / (l.B - l.A).Length), centre - l.A)))));
            }
        }

        return holes;
    }

    // Lines that hang together by their ends.
    private static IEnumerable<List<(Point2 A, Point2 B)>> Loops(List<(Point2 A, Point2 B)> lines)
    {
        var at = new Dictionary<(long, long), List<int>>();
        static (long, long) Cell(Point2 p) => ((long)Math.Round(p.X / Same), (long)Math.Round(p.Y / Same));
        for (int i = 0; i < lines.Count; i++)
        {
            foreach (var end in new[] { lines[i].A, lines[i].B })
            {
                (at.TryGetValue(Cell(end), out var list) ? list : at[Cell(end)] = []).Add(i);
            }
        }

        var seen = new bool[lines.Count];
        for (int i = 0; i < lines.Count; i++)
        {
            var loop = new List<(Point2, Point2)>();
            var open = new Stack<int>(seen[i] ? [] : [i]);
            while (open.TryPop(out int k))
            {
                if (seen[k])
                {
                    continue;
                }

                seen[k] = true;
                loop.Add(lines[k]);
                foreach (var (x, y) in new[] { Cell(lines[k].A), Cell(lines[k].B) })
                {
                    for (long dx = -1; dx <= 1; dx++)
                    {
                        for (long dy = -1; dy <= 1; dy++)
                        {
                            at.GetValueOrDefault((x + dx, y + dy))?.ForEach(open.Push);
                        }
                    }
                }
            }

            if (loop.Count > 0)
            {
                yield return loop;
            }
        }
    }
}
