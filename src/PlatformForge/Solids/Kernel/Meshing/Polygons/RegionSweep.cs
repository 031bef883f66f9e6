using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Meshing.Cutting;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing.Polygons;

/// <summary>Cuts a flat polygon with several borders, or one that turns back on itself, by a plane sweep over its own corners.</summary>
internal sealed class RegionSweep
{
    private readonly GrowingArray<int> level = new(64), next = new(64);
    private readonly GrowingArray<(int U, int V)> place = new(64);
    private int loopStart;

    public int Count => level.Count;

    /// <summary>Level of each corner.</summary>
    public ReadOnlySpan<int> Levels => level.Span;

    public void Clear()
    {
        level.Clear();
        place.Clear();
        next.Clear();
        loopStart = 0;
    }

    /// <summary>Appends a corner to the loop; the polygon lies on the loop's left.</summary>
    public void Add(int atLevel, int u, int v)
    {
        level.Add(atLevel);
        place.Add((u, v));
        next.Add(next.Count + 1);
    }

    public void Close()
    {
        if (next.Count > loopStart)
        {
            next[next.Count - 1] = loopStart;
            loopStart = next.Count;
        }
    }

    /// <summary>States which corner follows another along a border, for corners that come in any order.</summary>
    public void Follow(int corner, int after) => next[corner] = after;

    /// <summary>Stores the polygon and its triangles; false, with nothing stored, where its borders touch or cross one another.</summary>
    public bool Cut(PolygonStore store, bool isBottom, byte shown)
    {
        int n = level.Count;
        if (n < 3)
        {
            return false;
        }

        int[] order = GridOrder.Of(place.Span), rank = new int[n];
        for (int i = 0; i < n; i++)
        {
            rank[order[i]] = i;
            if (i > 0 && place[order[i]] == place[order[i - 1]])
            {
                return false; // it touches itself here
            }
        }

        var own = Graph(order, rank);
        if (MonotoneSweep.Diagonals(own) is not { } diagonals)
        {
            return false;
        }

        var pieces = new PlanFaces(own, diagonals);
        var triangles = new GrowingArray<(int A, int B, int C)>(2 * n);
        bool sound = Inside(pieces, rank, triangles);
        if (sound)
        {
            Emit(store, pieces, order, triangles, isBottom, shown);
        }

        triangles.GiveBack();
        return sound;
    }

    public void GiveBack()
    {
        level.GiveBack();
        place.GiveBack();
        next.GiveBack();
    }

    private NodedPlan Graph(int[] order, int[] rank)
    {
        int n = order.Length;
        int[] u = new int[n], v = new int[n], from = new int[n], to = new int[n];
        for (int i = 0; i < n; i++)
        {
            (u[i], v[i]) = place[order[i]];
            int a = rank[i], b = rank[next[i]];
            (from[i], to[i]) = a < b ? (a, b) : (b, a);
        }

        return new() { U = u, V = v, From = from, To = to, ToggleStart = new int[n + 1], Toggle = [], Line = [], LineLength = [], OnRight = [], OnLeft = [] };
    }

    /// <summary>Cuts the pieces on the surface's side of its borders; they follow one another over diagonals.</summary>
    private bool Inside(PlanFaces pieces, int[] rank, GrowingArray<(int A, int B, int C)> triangles)
    {
        var inside = new bool[pieces.FaceCount];
        var queue = new Stack<int>();
        for (int i = 0; i < rank.Length; i++)
        {
            Enter(pieces.Face[(2 * i) + (rank[i] < rank[next[i]] ? 0 : 1)]);
        }

        var triangulator = new MonotoneTriangulator(pieces);
        while (queue.TryPop(out int face))
        {
            if (pieces.FaceIsOuter[face])
            {
                return false;
            }

            triangulator.Cut(face, triangles);
            int first = pieces.FaceStart[face], h = first;
            do
            {
                if (h >> 1 >= pieces.Plan.EdgeCount)
                {
                    Enter(pieces.Face[h ^ 1]);
                }

                h = pieces.Next[h];
            }
            while (h != first);
        }

        return true;

        void Enter(int face)
        {
            if (!inside[face])
            {
                inside[face] = true;
                queue.Push(face);
            }
        }
    }

    private void Emit(PolygonStore store, PlanFaces pieces, int[] order, GrowingArray<(int A, int B, int C)> triangles, bool isBottom, byte shown)
    {
        int start = store.Count;
        int[] stored = StoreLoops(store, isBottom);
        foreach (var (a, b, c) in triangles.Span)
        {
            int i = Corner(a), j = Corner(b), k = Corner(c);
            store.AddTriangle(i, isBottom ? k : j, isBottom ? j : k, shown);
        }

        int Corner(int half) => start + stored[order[pieces.Origin[half]]];
    }

    /// <summary>Stores all corners loop by loop, and tells where in that order each came to stand.</summary>
    private int[] StoreLoops(PolygonStore store, bool isBottom)
    {
        int start = store.Count;
        var at = new int[level.Count];
        Array.Fill(at, -1);
        for (int first = 0; first < at.Length; first++)
        {
            int loop = store.Count;
            for (int i = first; at[i] < 0; i = next[i])
            {
                at[i] = store.Count - start;
                store.Add(level[i]);
            }

            if (store.Count > loop)
            {
                store.Close(loop, isBottom);
            }
        }

        return at;
    }
}
