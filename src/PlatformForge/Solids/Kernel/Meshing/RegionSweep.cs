using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Meshing;

/// <summary>Cuts a surface with several borders, or one that turns back on itself, by a plane sweep over its own corners.</summary>
internal sealed class RegionSweep(NodedPlan plan)
{
    private readonly GrowingArray<int> level = new(64), node = new(64), next = new(64);
    private int loopStart;

    public void Clear()
    {
        level.Clear();
        node.Clear();
        next.Clear();
        loopStart = 0;
    }

    /// <summary>Appends a corner to the loop; the surface lies on the loop's left in plan.</summary>
    public void Add(int atLevel, int atNode)
    {
        level.Add(atLevel);
        node.Add(atNode);
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

    /// <summary>Stores the polygon and its triangles; false, with nothing stored, where its borders touch or cross one another.</summary>
    public bool Cut(PolygonStore store, bool isBottom, byte shown)
    {
        int n = node.Count;
        if (n < 3)
        {
            return false;
        }

        int[] order = Order(), rank = new int[n];
        for (int i = 0; i < n; i++)
        {
            rank[order[i]] = i;
            if (i > 0 && node[order[i]] == node[order[i - 1]])
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
        node.GiveBack();
        next.GiveBack();
    }

    private int[] Order()
    {
        var order = new int[node.Count];
        for (int i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        int[] keys = node.Span.ToArray();
        Array.Sort(keys, order);
        return order;
    }

    private NodedPlan Graph(int[] order, int[] rank)
    {
        int n = order.Length;
        int[] u = new int[n], v = new int[n], from = new int[n], to = new int[n];
        for (int i = 0; i < n; i++)
        {
            (u[i], v[i]) = (plan.U[node[order[i]]], plan.V[node[order[i]]]);
            int a = rank[i], b = rank[next[i]];
            (from[i], to[i]) = a < b ? (a, b) : (b, a);
        }

        return new() { U = u, V = v, From = from, To = to, ToggleStart = new int[n + 1], Toggle = [], Line = [], LineLength = [] };
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
        int start = store.Count, n = order.Length, loop = start;
        for (int i = 0; i < n; i++)
        {
            store.Add(level[i]);
            if (next[i] <= i)
            {
                store.Close(loop);
                loop = store.Count;
            }
        }

        if (isBottom)
        {
            store.Reverse(start);
        }

        foreach (var (a, b, c) in triangles.Span)
        {
            int i = Corner(a), j = Corner(b), k = Corner(c);
            store.AddTriangle(i, isBottom ? k : j, isBottom ? j : k, shown);
        }

        int Corner(int half) => start + order[pieces.Origin[half]];
    }
}
