using System.Runtime.InteropServices;
using PlatformForge.Geometry;
using PlatformForge.Geometry.Meshes;
using PlatformForge.Sections.Forms;

namespace PlatformForge.Sections.Forecasts;

/// <summary>Cuts a closed mesh at one height and goes round every ring of the cut, from triangle to triangle over the edges that they share.</summary>
internal sealed class LayerTracer(Mesh mesh, PrintSpeeds speeds)
{
    // A turn whose half sine is under this is taken at full speed by any printer: the facets of a curve.
    private const double Straight = 0.01;

    private readonly int[] across = HalfEdges.Opposites(mesh);
    private readonly int[] seenAt = new int[mesh.TriangleCount];
    private readonly List<(double Length, double Corner)> runs = [];
    private readonly Strokes strokes = new(speeds.Acceleration, speeds.CornerJump);
    private int layer;

    /// <param name="z">Height of the cut, mm.</param>
    /// <param name="crossing">Triangles that reach from below it to it or above.</param>
    /// <param name="first">Whether this is the first layer, which has one speed.</param>
    public LayerRings Trace(double z, ReadOnlySpan<int> crossing, bool first)
    {
        layer++;
        int count = 0;
        double length = 0, area = 0, outer = 0, inner = 0;
        foreach (int start in crossing)
        {
            if (seenAt[start] == layer)
            {
                continue;
            }

            var (around, inside) = GoRound(start, z);
            bool small = around < PrintSpeeds.SmallRing;
            double wall = first ? speeds.FirstLayer : small ? speeds.SmallWall : speeds.Wall;
            outer += Seconds(first ? speeds.FirstLayer : small ? speeds.SmallWall : speeds.OuterWall);
            inner += Seconds(wall);
            count++;
            length += around;
            area += inside;
        }

        return new(count, length, area, outer, inner);
    }

    // Outside seen, a triangle's right-hand edge runs upwards: leaving over it keeps the solid on the left.
    private (double Length, double Area) GoRound(int start, double z)
    {
        runs.Clear();
        double length = 0, area = 0, run = 0;
        Point2 from = default, heading = default, origin = default;
        int triangle = start;
        bool begun = false;
        do
        {
            seenAt[triangle] = layer;
            int edge = Rising(triangle, z);
            var at = Crossing(edge, z);
            origin = begun ? origin : at;
            var step = at - from;
            double size = begun ? step.Length : 0;
            from = at;
            begun = true;
            triangle = across[edge] / 3;
            if (size <= 0)
            {
                continue;
            }

            area += Point2.Cross(at - step - origin, at - origin) / 2;
            length += size;
            step *= 1 / size;
            run = Ended(run, step - heading) + size;
            heading = step;
        }
        while (triangle != start && seenAt[triangle] != layer);

        // The last step leads back to where the ring began.
        double last = begun ? (origin - from).Length : 0;
        runs.Add((run + last, 1));
        return (length + last, area);
    }

    // A run up to where the way turns by so much: it ends there, or goes on.
    private double Ended(double run, Point2 turn)
    {
        double corner = run > 0 ? turn.Length / 2 : 0;
        if (!(corner > Straight))
        {
            return run;
        }

        runs.Add((run, corner));
        return 0;
    }

    private int Rising(int triangle, double z)
    {
        for (int e = 3 * triangle; e < (3 * triangle) + 3; e++)
        {
            if (Height(e) < z && Height(HalfEdges.Next(e)) >= z)
            {
                return e;
            }
        }

        return 3 * triangle;
    }

    private double Height(int edge) => mesh.Vertices[mesh.Triangles[edge]].Z;

    private Point2 Crossing(int edge, double z)
    {
        Point3 a = mesh.Vertices[mesh.Triangles[edge]], b = mesh.Vertices[mesh.Triangles[HalfEdges.Next(edge)]];
        double k = b.Z > a.Z ? (z - a.Z) / (b.Z - a.Z) : 0;
        return new(a.X + (k * (b.X - a.X)), a.Y + (k * (b.Y - a.Y)));
    }

    private double Seconds(double speed)
    {
        double seconds = 0, enter = 0;
        foreach (var (length, corner) in CollectionsMarshal.AsSpan(runs))
        {
            double leave = strokes.Corner(corner, speed);
            seconds += strokes.Seconds(length, speed, enter, leave);
            enter = leave;
        }

        return seconds;
    }
}
