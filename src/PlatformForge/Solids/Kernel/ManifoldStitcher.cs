using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel;

/// <summary>
/// Turns triangles between levels into a 2-manifold: pairs every directed edge with its opposite and gives each fan of triangles
/// around a level a vertex of its own. Where the solid only touches itself along an edge or at a point, the fans are apart and the
/// vertex is doubled.
/// </summary>
internal sealed class ManifoldStitcher
{
    private readonly LevelTriangle[] triangles;
    private readonly Func<int, Point3> place;
    private readonly int[] twin, start, member;
    private readonly GrowingArray<(int Forward, int Backward)> tangles = new(4);

    private ManifoldStitcher(LevelTriangle[] triangles, int levelCount, Func<int, Point3> place)
    {
        (this.triangles, this.place) = (triangles, place);
        twin = new int[3 * triangles.Length];
        Array.Fill(twin, -1);
        start = new int[levelCount + 2];
        for (int h = 0; h < twin.Length; h++)
        {
            start[Lower(h) + 2]++;
        }

        for (int i = 2; i < start.Length; i++)
        {
            start[i] += start[i - 1];
        }

        member = new int[twin.Length];
        for (int h = 0; h < twin.Length; h++)
        {
            member[start[Lower(h) + 1]++] = h;
        }
    }

    /// <summary>The finished mesh; fails if a directed edge has no opposite.</summary>
    public static Mesh Stitch(LevelTriangle[] triangles, int levelCount, Func<int, Point3> place)
    {
        var stitcher = new ManifoldStitcher(triangles, levelCount, place);
        for (int level = 0; level < levelCount; level++)
        {
            stitcher.Pair(level);
        }

        return stitcher.Build();
    }

    private int Corner(int h)
    {
        ref readonly var t = ref triangles[h / 3];
        return (h % 3) switch { 0 => t.A, 1 => t.B, _ => t.C };
    }

    private static int Onward(int h) => h % 3 == 2 ? h - 2 : h + 1;

    private static int Backward(int h) => h % 3 == 0 ? h + 2 : h - 1;

    private int Lower(int h) => Math.Min(Corner(h), Corner(Onward(h)));

    private int Higher(int h) => Math.Max(Corner(h), Corner(Onward(h)));

    private void Pair(int level)
    {
        var around = member.AsSpan(start[level], start[level + 1] - start[level]);
        for (int i = 0; i < around.Length; i++)
        {
            int h = around[i];
            if (twin[h] >= 0)
            {
                continue;
            }

            int other = Higher(h), found = -1, count = 1;
            for (int j = i + 1; j < around.Length; j++)
            {
                if (Higher(around[j]) == other)
                {
                    found = around[j];
                    count++;
                }
            }

            if (count == 2 && Corner(found) != Corner(h))
            {
                (twin[h], twin[found]) = (found, h);
            }
            else
            {
                PairMany(level, other, around);
            }
        }
    }

    /// <summary>
    /// Around an edge where more than two triangles meet, material lies between a triangle that has the edge backwards and the
    /// next counter-clockwise one that has it forwards: these two are paired, which parts the solids that touch.
    /// </summary>
    private void PairMany(int low, int high, ReadOnlySpan<int> around)
    {
        var meeting = new List<(double Angle, int Half)>();
        Point3 foot = place(low), axis = place(high) - foot, square = Square(axis), third = Point3.Cross(axis, square);
        double length = axis.Length * axis.Length;
        foreach (int h in around)
        {
            if (Higher(h) == high)
            {
                var p = place(Corner(Backward(h))) - foot;
                meeting.Add((Math.Atan2(Point3.Dot(p, third) * axis.Length, Point3.Dot(p, square) * length), h));
            }
        }

        meeting.Sort();
        int count = meeting.Count, balance = meeting.Sum(m => Corner(m.Half) == low ? 1 : -1);
        if (balance != 0)
        {
            throw new BrokenInvariantException(
                $"Solids: the {count} triangles along the edge from {place(low)} to {place(high)} mm do not close (law 1: every directed edge has one opposite).");
        }

        // Like brackets: a backward one opens material, a forward one closes it.
        var open = new Stack<int>();
        for (int i = 0; i < 2 * count; i++)
        {
            int h = meeting[i % count].Half;
            if (twin[h] >= 0)
            {
                continue;
            }

            if (Corner(h) != low)
            {
                if (i < count)
                {
                    open.Push(h);
                }
            }
            else if (open.TryPop(out int opener))
            {
                (twin[h], twin[opener]) = (opener, h);
                tangles.Add((h, opener));
            }
        }
    }

    /// <summary>A direction square to an axis, of the axis' length.</summary>
    private static Point3 Square(Point3 axis)
    {
        var away = Math.Abs(axis.X) < Math.Abs(axis.Z) || Math.Abs(axis.Y) < Math.Abs(axis.Z)
            ? (Math.Abs(axis.X) < Math.Abs(axis.Y) ? new Point3(1, 0, 0) : new Point3(0, 1, 0))
            : new Point3(0, 0, 1);
        var square = Point3.Cross(axis, away);
        return square * (axis.Length / square.Length);
    }

    private Mesh Build()
    {
        var indices = new int[twin.Length];
        Array.Fill(indices, -1);
        var vertices = new GrowingArray<Point3>(start.Length);
        for (int h = 0; h < twin.Length; h++)
        {
            if (indices[h] >= 0)
            {
                continue;
            }

            for (int turn = h; indices[turn] < 0; turn = twin[Backward(turn)])
            {
                indices[turn] = vertices.Count;
            }

            vertices.Add(place(Corner(h)));
        }

        var paints = new byte[triangles.Length];
        for (int t = 0; t < paints.Length; t++)
        {
            paints[t] = triangles[t].Paint;
        }

        var mesh = new Mesh(vertices.Span.ToArray(), indices, paints);
        return tangles.Count == 0 ? mesh : TangledEdges.Part(mesh, tangles.Span);
    }
}
