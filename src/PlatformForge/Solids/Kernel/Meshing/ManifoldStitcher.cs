using PlatformForge.Geometry;
using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Meshing.Polygons;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>
/// Turns polygons between levels into a 2-manifold: gives each fan of polygons around a level a vertex of its own. At a level every polygon's corner
/// has a side that comes in and one that goes out, and the fan goes on with the corner whose side goes out to where this one's comes from; so a level
/// is looked at by itself. Nearly always all of its corners are one fan. Where the solid only touches itself along an edge or at a point, the
/// fans are apart and the vertex is doubled. A polygon's triangles meet one another inside it, so with its sides paired the mesh is closed.
/// </summary>
internal sealed class ManifoldStitcher
{
    private readonly PolygonStore store;
    private readonly LevelCorner[] corners;
    private readonly int[] start;
    private readonly int levels;
    private readonly TouchingEdges touching;
    private readonly Dictionary<int, int> parted = [];
    private int fans;

    private ManifoldStitcher(PolygonStore store, GrowingArray<Point3> places)
    {
        (this.store, levels, fans) = (store, places.Count, places.Count);
        corners = Lent<LevelCorner>.Rent(store.Count);
        start = Lent<int>.Rent(levels + 2);
        start.AsSpan(0, levels + 2).Clear();
        touching = new(store, places);
    }

    /// <summary>The finished mesh; fails if a directed side has no opposite.</summary>
    /// <param name="store">The polygons.</param>
    /// <param name="places">Places of the levels.</param>
    public static Mesh Stitch(PolygonStore store, GrowingArray<Point3> places)
    {
        var stitcher = new ManifoldStitcher(store, places);
        stitcher.Gather();
        for (int level = 0; level < places.Count; level++)
        {
            var group = stitcher.Group(level);
            if (!IsOneFan(group))
            {
                stitcher.Part(level, group);
            }
        }

        Lent<LevelCorner>.GiveBack(stitcher.corners);
        Lent<int>.GiveBack(stitcher.start);
        var mesh = stitcher.Build(places.Span);
        return stitcher.touching.Tangles.Count == 0 ? mesh : TangledEdges.Part(mesh, stitcher.touching.Tangles);
    }

    /// <summary>Corners by level.</summary>
    private void Gather()
    {
        var level = store.Levels;
        foreach (int at in level)
        {
            start[at + 2]++;
        }

        for (int i = 2; i < levels + 2; i++)
        {
            start[i] += start[i - 1];
        }

        foreach (var loop in store.Loops)
        {
            var along = level.Slice(loop.Start, loop.Count);
            int before = along[^1];
            for (int i = 0; i < along.Length; i++)
            {
                int at = along[i], after = i + 1 < along.Length ? along[i + 1] : along[0], number = loop.Start + i;
                corners[start[at + 1]++] = loop.Backwards ? new(before, after, number) : new(after, before, number);
                before = at;
            }
        }
    }

    private ReadOnlySpan<LevelCorner> Group(int level) => corners.AsSpan(start[level], start[level + 1] - start[level]);

    /// <summary>Whether going round from corner to corner all of them are met, each once. Then no two sides lead to the same level.</summary>
    private static bool IsOneFan(ReadOnlySpan<LevelCorner> group)
    {
        if (group.Length == 3)
        {
            return IsFanOfThree(group[0], group[1], group[2]); // what nearly all are
        }

        if (group.IsEmpty)
        {
            return true;
        }

        int at = 0;
        for (int met = 1; met <= group.Length; met++)
        {
            int back = group[at].Back, next = 0;
            while (next < group.Length && group[next].Onward != back)
            {
                next++;
            }

            if (next is 0 || next == group.Length)
            {
                return next == 0 && met == group.Length;
            }

            at = next;
        }

        return false;
    }

    /// <summary>The same of three corners, without a question that the processor could guess wrongly.</summary>
    private static bool IsFanOfThree(in LevelCorner a, in LevelCorner b, in LevelCorner c) =>
        (((a.Back == b.Onward) & (b.Back == c.Onward) & (c.Back == a.Onward)) | ((a.Back == c.Onward) & (c.Back == b.Onward) & (b.Back == a.Onward)))
        & (a.Onward != b.Onward) & (b.Onward != c.Onward) & (c.Onward != a.Onward);

    /// <summary>Parts the corners of a level into fans.</summary>
    private void Part(int level, ReadOnlySpan<LevelCorner> group)
    {
        touching.Pair(level, group);
        var fan = new int[group.Length];
        for (int i = 0; i < group.Length; i++)
        {
            for (int turn = i; fan[turn] == 0; turn = touching.Next(group, turn))
            {
                fan[turn] = fans;
                parted[group[turn].Number] = fans;
            }

            fans += fan[i] == fans ? 1 : 0;
        }
    }

    private Mesh Build(ReadOnlySpan<Point3> places)
    {
        var level = store.Levels;
        int[] vertexOf = Lent<int>.Rent(level.Length), vertexOfFan = Lent<int>.Rent(fans);
        vertexOfFan.AsSpan(0, fans).Fill(-1);
        var levelOf = new GrowingArray<int>(levels);
        bool whole = parted.Count == 0;
        for (int c = 0; c < level.Length; c++)
        {
            int fan = !whole && parted.TryGetValue(c, out int own) ? own : level[c];
            if (vertexOfFan[fan] < 0)
            {
                vertexOfFan[fan] = levelOf.Count;
                levelOf.Add(level[c]);
            }

            vertexOf[c] = vertexOfFan[fan];
        }

        var indices = GC.AllocateUninitializedArray<int>(store.Triangles.Length);
        var corner = store.Triangles;
        for (int i = 0; i < indices.Length; i++)
        {
            indices[i] = vertexOf[corner[i]];
        }

        var vertices = GC.AllocateUninitializedArray<Point3>(levelOf.Count);
        for (int i = 0; i < vertices.Length; i++)
        {
            vertices[i] = places[levelOf[i]];
        }

        var mesh = new Mesh(vertices, indices, store.Paints.ToArray());
        levelOf.GiveBack();
        Lent<int>.GiveBack(vertexOf);
        Lent<int>.GiveBack(vertexOfFan);
        return mesh;
    }
}
