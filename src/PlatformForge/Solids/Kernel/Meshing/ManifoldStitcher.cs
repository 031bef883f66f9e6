using System.Buffers;
using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Noding;
using PlatformForge.Units;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Turns polygons between levels into a 2-manifold: pairs every directed side with its opposite and gives each fan of polygons around a
/// level a vertex of its own. Where the solid only touches itself along an edge or at a point, the fans are apart and the vertex is
/// doubled. A polygon's triangles meet one another inside it, so with its sides paired the mesh is closed.
/// </summary>
internal sealed class ManifoldStitcher
{
    private readonly PolygonStore store;
    private readonly Point3[] places;
    private readonly int[] level, next, last, twin, start, member;
    private readonly int count;
    private readonly List<(int Forward, int Backward)> tangles = [];
    private Dictionary<(int From, int To), int>? sides;

    private ManifoldStitcher(PolygonStore store, Point3[] places)
    {
        (this.store, this.places, count) = (store, places, store.Count);
        (level, next, last) = (store.Level.Items, store.Next.Items, store.Last.Items);
        start = ArrayPool<int>.Shared.Rent(places.Length + 2);
        twin = ArrayPool<int>.Shared.Rent(count);
        member = ArrayPool<int>.Shared.Rent(count);
        start.AsSpan(0, places.Length + 2).Clear();
        twin.AsSpan(0, count).Fill(-1);
    }

    /// <summary>The finished mesh; fails if a directed side has no opposite.</summary>
    public static Mesh Stitch(PolygonStore store, ReadOnlySpan<Point3> places)
    {
        var stitcher = new ManifoldStitcher(store, places.ToArray());
        stitcher.Sort();
        for (int low = 0; low < places.Length; low++)
        {
            stitcher.Pair(low);
        }

        var mesh = stitcher.Build();
        ArrayPool<int>.Shared.Return(stitcher.start);
        ArrayPool<int>.Shared.Return(stitcher.twin);
        ArrayPool<int>.Shared.Return(stitcher.member);
        return mesh;
    }

    /// <summary>Sides by the lower of their two levels.</summary>
    private void Sort()
    {
        for (int c = 0; c < count; c++)
        {
            start[Math.Min(level[c], level[next[c]]) + 2] += IsFolded(c) ? 0 : 1;
        }

        for (int i = 2; i < places.Length + 2; i++)
        {
            start[i] += start[i - 1];
        }

        for (int c = 0; c < count; c++)
        {
            if (!IsFolded(c))
            {
                member[start[Math.Min(level[c], level[next[c]]) + 1]++] = c;
            }
        }
    }

    /// <summary>A polygon of which merged levels left two corners goes there and back: it has no triangles, and its neighbours meet one another.</summary>
    private bool IsFolded(int corner) => next[next[corner]] == corner;

    private int Higher(int side) => Math.Max(level[side], level[next[side]]);

    /// <summary>Pairs the sides between a level and higher ones.</summary>
    private void Pair(int low)
    {
        int first = start[low], end = start[low + 1];
        for (int i = first; i < end; i++)
        {
            int c = member[i];
            if (twin[c] >= 0)
            {
                continue;
            }

            int high = Higher(c), found = -1, meeting = 1;
            for (int j = i + 1; j < end; j++) // those before it that meet the same level are paired
            {
                if (Higher(member[j]) == high)
                {
                    found = member[j];
                    meeting++;
                }
            }

            if (meeting == 2 && level[found] != level[c])
            {
                (twin[c], twin[found]) = (found, c);
            }
            else
            {
                PairMany(low, high, first, end);
            }
        }
    }

    /// <summary>
    /// Around an edge where more than two polygons meet, material lies between a polygon that has the edge backwards and the
    /// next counter-clockwise one that has it forwards: these two are paired, which parts the solids that touch.
    /// </summary>
    private void PairMany(int low, int high, int first, int end)
    {
        var meeting = new List<(double Angle, int Side)>();
        Point3 foot = places[low], axis = places[high] - foot, square = Square(axis), third = Point3.Cross(axis, square);
        double length = axis.Length * axis.Length;
        for (int i = first; i < end; i++)
        {
            if (Higher(member[i]) == high)
            {
                var p = places[level[Opposite(member[i])]] - foot;
                meeting.Add((Math.Atan2(Point3.Dot(p, third) * axis.Length, Point3.Dot(p, square) * length), member[i]));
            }
        }

        meeting.Sort();
        int meetingCount = meeting.Count, balance = meeting.Sum(m => level[m.Side] == low ? 1 : -1);
        if (balance != 0)
        {
            throw new BrokenInvariantException(
                $"Solids: the {meetingCount} polygons along the edge from {foot} to {places[high]} mm do not close (law 1: every directed edge has one opposite).");
        }

        // Like brackets: a backward one opens material, a forward one closes it.
        var open = new Stack<int>();
        for (int i = 0; i < 2 * meetingCount; i++)
        {
            int c = meeting[i % meetingCount].Side;
            if (twin[c] >= 0)
            {
                continue;
            }

            if (level[c] != low)
            {
                if (i < meetingCount)
                {
                    open.Push(c);
                }
            }
            else if (open.TryPop(out int opener))
            {
                (twin[c], twin[opener]) = (opener, c);
                tangles.Add((SideOf(c), SideOf(opener)));
            }
        }
    }

    /// <summary>The third corner of the triangle that has a side.</summary>
    private int Opposite(int side) => store.Triangle[SideOf(side) is var at && at % 3 == 0 ? at + 2 : at - 1];

    /// <summary>Where a side begins in the list of triangles.</summary>
    private int SideOf(int side)
    {
        if (sides is null)
        {
            var triangles = store.Triangle.Span;
            sides = new(triangles.Length);
            for (int at = 0; at < triangles.Length; at++)
            {
                sides[(triangles[at], triangles[at % 3 == 2 ? at - 2 : at + 1])] = at;
            }
        }

        return sides[(side, next[side])];
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
        int[] vertexOf = member; // no longer needed as it was
        vertexOf.AsSpan(0, count).Fill(-1);
        var vertices = new GrowingArray<Point3>(count);
        for (int c = 0; c < count; c++)
        {
            if (vertexOf[c] >= 0 || IsFolded(c))
            {
                continue;
            }

            for (int turn = c; vertexOf[turn] < 0; turn = twin[last[turn]])
            {
                vertexOf[turn] = vertices.Count;
            }

            vertices.Add(places[level[c]]);
        }

        var triangles = store.Triangle.Span;
        var indices = GC.AllocateUninitializedArray<int>(triangles.Length);
        for (int i = 0; i < indices.Length; i++)
        {
            indices[i] = vertexOf[triangles[i]];
        }

        var mesh = new Mesh(vertices.Span.ToArray(), indices, store.Paint.Span.ToArray());
        vertices.GiveBack();
        return tangles.Count == 0 ? mesh : TangledEdges.Part(mesh, tangles.ToArray());
    }
}
