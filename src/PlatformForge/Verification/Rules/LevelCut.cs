using PlatformForge.Geometry;

namespace PlatformForge.Verification.Rules;

/// <summary>An edge of a level cut, with the material to its left; mm.</summary>
internal readonly record struct CutEdge(Point2 A, Point2 B)
{
    public double Length => (B - A).Length;
}

/// <summary>
/// A level cut through a mesh, its edges sorted into square cells, so that a way through the material looks only at what lies along it.
/// </summary>
internal sealed class LevelCut
{
    // Edges are entered into every cell that they come within this of, mm, so that what is met at a cell's border is in both.
    private const double Border = 1e-3;

    // Bounds of a cell's side, mm; between them there are about as many cells as edges.
    private const double LeastCell = 1, MostCell = 20;

    private readonly List<CutEdge> edges = [];
    private readonly List<(int Edge, int Next)> entries = [];
    private readonly double cell;
    private readonly Point2 corner;
    private readonly int columns, rows;
    private readonly int[] first; // of every cell, its first entry; -1 for none

    public LevelCut(Mesh mesh, double level)
    {
        Gather(mesh, level);
        double x0 = double.PositiveInfinity, y0 = x0, x1 = -x0, y1 = -x0;
        foreach (var (a, b) in edges)
        {
            (x0, x1) = (Math.Min(x0, Math.Min(a.X, b.X)), Math.Max(x1, Math.Max(a.X, b.X)));
            (y0, y1) = (Math.Min(y0, Math.Min(a.Y, b.Y)), Math.Max(y1, Math.Max(a.Y, b.Y)));
        }

        if (edges.Count == 0)
        {
            first = [];
            return;
        }

        corner = new(x0 - Border, y0 - Border);
        cell = Math.Clamp(Math.Sqrt((x1 - x0) * (y1 - y0) / edges.Count), LeastCell, MostCell);
        (columns, rows) = ((int)((x1 - x0 + (2 * Border)) / cell) + 1, (int)((y1 - y0 + (2 * Border)) / cell) + 1);
        first = new int[columns * rows];
        Array.Fill(first, -1);
        for (int i = 0; i < edges.Count; i++)
        {
            Enter(i);
        }
    }

    public IReadOnlyList<CutEdge> Edges => edges;

    /// <summary>
    /// The way through the material from the middle of an edge, square to it, to the first edge that it meets.
    /// </summary>
    /// <param name="edge">The edge.</param>
    /// <param name="from">Nearer than this is the edge itself, mm.</param>
    /// <returns>Its length in mm, not finite where it meets none, and the cosine between the two edges: -1 where they face one another.</returns>
    public (double Length, double Facing) Through(CutEdge edge, double from)
    {
        var along = (edge.B - edge.A) * (1 / edge.Length);
        Point2 middle = (edge.A + edge.B) * 0.5, inward = along.Left;
        double nearest = double.PositiveInfinity, facing = 0;
        int met = -1;
        var place = middle - corner;
        int x = (int)(place.X / cell), y = (int)(place.Y / cell), stepX = inward.X < 0 ? -1 : 1, stepY = inward.Y < 0 ? -1 : 1;
        while (x >= 0 && y >= 0 && x < columns && y < rows)
        {
            for (int e = first[(y * columns) + x]; e >= 0; e = entries[e].Next)
            {
                int i = entries[e].Edge;
                var other = edges[i];

                // In the frame of the edge: x along it, y into the material.
                Point2 a = other.A - middle, b = other.B - middle;
                double ax = Point2.Dot(along, a), bx = Point2.Dot(along, b);
                if ((ax > 0) == (bx > 0))
                {
                    continue;
                }

                double ay = Point2.Dot(inward, a), by = Point2.Dot(inward, b), far = ay + ((by - ay) * ax / (ax - bx));
                if (far > from && (far < nearest || (far == nearest && i < met)))
                {
                    (nearest, met, facing) = (far, i, (bx - ax) / other.Length);
                }
            }

            // The next cell is the one whose border the way comes to first.
            double toX = Leave(place.X, inward.X, x), toY = Leave(place.Y, inward.Y, y);
            if (nearest < Math.Min(toX, toY) - Border)
            {
                break;
            }

            (x, y) = toX < toY ? (x + stepX, y) : (x, y + stepY);
        }

        return (nearest, facing);
    }

    private double Leave(double place, double way, int index) =>
        way == 0 ? double.PositiveInfinity : (((way < 0 ? index : index + 1) * cell) - place) / way;

    private void Gather(Mesh mesh, double level)
    {
        Span<Point2> ends = stackalloc Point2[2];
        var (v, t, _) = mesh;
        for (int i = 0; i < t.Length; i += 3)
        {
            int count = 0;
            bool rises = false;
            for (int k = 0; k < 3; k++)
            {
                Point3 p = v[t[i + k]], q = v[t[i + ((k + 1) % 3)]];
                if ((p.Z > level) != (q.Z > level))
                {
                    double share = (level - p.Z) / (q.Z - p.Z);
                    ends[count++] = new(p.X + (share * (q.X - p.X)), p.Y + (share * (q.Y - p.Y)));
                    rises = count == 1 ? q.Z > p.Z : rises;
                }
            }

            // Where a triangle seen from outside is crossed first by a rising side, the second crossing lies to the left of it.
            if (count == 2 && ends[0] != ends[1])
            {
                edges.Add(rises ? new(ends[1], ends[0]) : new(ends[0], ends[1]));
            }
        }
    }

    // Column by column, into the cells that the edge crosses there.
    private void Enter(int edge)
    {
        Point2 a = edges[edge].A - corner, b = edges[edge].B - corner;
        (a, b) = a.X <= b.X ? (a, b) : (b, a);
        double slope = (b.Y - a.Y) / Math.Max(b.X - a.X, double.Epsilon);
        for (int x = (int)((a.X - Border) / cell); x <= Math.Min(columns - 1, (int)((b.X + Border) / cell)); x++)
        {
            double left = Math.Max(a.X, (x * cell) - Border), right = Math.Min(b.X, ((x + 1) * cell) + Border);
            double y0 = b.X - a.X > Border ? a.Y + ((left - a.X) * slope) : a.Y, y1 = b.X - a.X > Border ? a.Y + ((right - a.X) * slope) : b.Y;
            int last = Math.Min(rows - 1, (int)((Math.Max(y0, y1) + Border) / cell));
            for (int y = (int)(Math.Max(0, Math.Min(y0, y1) - Border) / cell); y <= last; y++)
            {
                entries.Add((edge, first[(y * columns) + x]));
                first[(y * columns) + x] = entries.Count - 1;
            }
        }
    }
}
