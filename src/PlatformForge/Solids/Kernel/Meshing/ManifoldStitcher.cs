using System.Buffers;
using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Noding;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Turns triangles between levels into a 2-manifold: pairs every directed edge with its opposite and gives each fan of triangles
/// around a level a vertex of its own. Where the solid only touches itself along an edge or at a point, the fans are apart and the
/// vertex is doubled.
/// </summary>
internal sealed class ManifoldStitcher
{
    private readonly int[] corner, twin, start, member, other;
    private readonly Point3[] places;
    private readonly int count;
    private readonly GrowingArray<(int Forward, int Backward)> tangles = new(4);

    private ManifoldStitcher(ReadOnlySpan<LevelTriangle> triangles, Point3[] places)
    {
        this.places = places;
        count = 3 * triangles.Length;
        corner = ArrayPool<int>.Shared.Rent(count);
        start = ArrayPool<int>.Shared.Rent(places.Length + 2);
        start.AsSpan(0, places.Length + 2).Clear();
        for (int t = 0, h = 0; t < triangles.Length; t++, h += 3)
        {
            var (a, b, c, _) = triangles[t];
            (corner[h], corner[h + 1], corner[h + 2]) = (a, b, c);
            start[Math.Min(a, b) + 2]++;
            start[Math.Min(b, c) + 2]++;
            start[Math.Min(c, a) + 2]++;
        }

        for (int i = 2; i < places.Length + 2; i++)
        {
            start[i] += start[i - 1];
        }

        twin = ArrayPool<int>.Shared.Rent(count);
        member = ArrayPool<int>.Shared.Rent(count);
        other = ArrayPool<int>.Shared.Rent(count);
        for (int h = 0; h < count; h += 3)
        {
            Enter(h, corner[h], corner[h + 1]);
            Enter(h + 1, corner[h + 1], corner[h + 2]);
            Enter(h + 2, corner[h + 2], corner[h]);
        }
    }

    /// <summary>The finished mesh; fails if a directed edge has no opposite.</summary>
    public static Mesh Stitch(ReadOnlySpan<LevelTriangle> triangles, Point3[] places)
    {
        var stitcher = new ManifoldStitcher(triangles, places);
        for (int level = 0; level < places.Length; level++)
        {
            stitcher.Pair(level);
        }

        var paints = new byte[triangles.Length];
        for (int t = 0; t < paints.Length; t++)
        {
            paints[t] = triangles[t].Paint;
        }

        var mesh = stitcher.Build(paints);
        foreach (int[] lent in new[] { stitcher.corner, stitcher.start, stitcher.twin, stitcher.member, stitcher.other })
        {
            ArrayPool<int>.Shared.Return(lent);
        }

        return mesh;
    }

    private static int Backward(int h) => h % 3 == 0 ? h + 2 : h - 1;

    private void Enter(int h, int from, int to)
    {
        int at = start[Math.Min(from, to) + 1]++;
        member[at] = h;
        other[at] = Math.Max(from, to);
        twin[h] = -1;
    }

    /// <summary>Pairs the half-edges between a level and higher ones.</summary>
    private void Pair(int level)
    {
        int first = start[level], end = start[level + 1];
        for (int i = first; i < end; i++)
        {
            int h = member[i];
            if (twin[h] >= 0)
            {
                continue;
            }

            int found = -1, meeting = 1;
            for (int j = i + 1; j < end; j++) // those before it that meet the same level are paired
            {
                if (other[j] == other[i])
                {
                    found = member[j];
                    meeting++;
                }
            }

            if (meeting == 2 && corner[found] != corner[h])
            {
                (twin[h], twin[found]) = (found, h);
            }
            else
            {
                PairMany(level, other[i], first, end);
            }
        }
    }

    /// <summary>
    /// Around an edge where more than two triangles meet, material lies between a triangle that has the edge backwards and the
    /// next counter-clockwise one that has it forwards: these two are paired, which parts the solids that touch.
    /// </summary>
    private void PairMany(int low, int high, int first, int end)
    {
        var meeting = new List<(double Angle, int Half)>();
        Point3 foot = places[low], axis = places[high] - foot, square = Square(axis), third = Point3.Cross(axis, square);
        double length = axis.Length * axis.Length;
        for (int i = first; i < end; i++)
        {
            if (other[i] == high)
            {
                int h = member[i];
                var p = places[corner[Backward(h)]] - foot;
                meeting.Add((Math.Atan2(Point3.Dot(p, third) * axis.Length, Point3.Dot(p, square) * length), h));
            }
        }

        meeting.Sort();
        int meetingCount = meeting.Count, balance = meeting.Sum(m => corner[m.Half] == low ? 1 : -1);
        if (balance != 0)
        {
            throw new BrokenInvariantException(
                $"Solids: the {meetingCount} triangles along the edge from {foot} to {places[high]} mm do not close (law 1: every directed edge has one opposite).");
        }

        // Like brackets: a backward one opens material, a forward one closes it.
        var open = new Stack<int>();
        for (int i = 0; i < 2 * meetingCount; i++)
        {
            int h = meeting[i % meetingCount].Half;
            if (twin[h] >= 0)
            {
                continue;
            }

            if (corner[h] != low)
            {
                if (i < meetingCount)
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

    private Mesh Build(byte[] paints)
    {
        var indices = GC.AllocateUninitializedArray<int>(count);
        Array.Fill(indices, -1);
        var vertices = new GrowingArray<Point3>(places.Length);
        for (int h = 0; h < count; h++)
        {
            if (indices[h] >= 0)
            {
                continue;
            }

            for (int turn = h; indices[turn] < 0; turn = twin[Backward(turn)])
            {
                indices[turn] = vertices.Count;
            }

            vertices.Add(places[corner[h]]);
        }

        var mesh = new Mesh(vertices.Span.ToArray(), indices, paints);
        vertices.GiveBack();
        return tangles.Count == 0 ? mesh : TangledEdges.Part(mesh, tangles.Span);
    }
}
