namespace PlatformForge.Geometry.Meshes;

/// <summary>One pass over a mesh: slivers that do not touch one another are mended, the rest is left to the next pass.</summary>
internal sealed class SliverRound
{
    /// <summary>Cosine of the angle by which a good triangle may turn: what is moved is far smaller than what is seen.</summary>
    private const double Turn = 0.9;

    /// <summary>A sliver that takes another's place is higher by this factor, so that turning comes to an end.</summary>
    private const double Better = 2;

    /// <summary>Sides shorter than this, mm, may go: a two-hundredth of the finest nozzle's line.</summary>
    private const double Short = 1e-3;

    /// <summary>A neighbour lower than this, mm, may be what keeps a sliver from being turned.</summary>
    private const double Thin = 0.02;

    private readonly Point3[] vertices;
    private readonly int[] corners;
    private readonly byte[] paints;
    private readonly int[] first;
    private readonly int[] around;
    private readonly bool[] touched;
    private readonly bool[] gone;

    public SliverRound(Mesh mesh)
    {
        (vertices, corners, paints) = (mesh.Vertices, [.. mesh.Triangles], [.. mesh.Paints]);
        (touched, gone) = (new bool[vertices.Length], new bool[mesh.TriangleCount]);

        // Triangles round every vertex, one after another.
        first = new int[vertices.Length + 1];
        foreach (int v in corners)
        {
            first[v + 1]++;
        }

        for (int v = 0; v < vertices.Length; v++)
        {
            first[v + 1] += first[v];
        }

        int[] next = [.. first];
        around = new int[corners.Length];
        for (int i = 0; i < corners.Length; i++)
        {
            around[next[corners[i]]++] = i / 3;
        }
    }

    /// <summary>The mended mesh; null when nothing could be done.</summary>
    public Mesh? Mend()
    {
        int[] slivers = [.. Enumerable.Range(0, gone.Length).Where(IsSliver)];
        bool mended = Each(t => Close(t) || TurnOver(t, Longest(t))) || Each(MakeRoom);
        return mended ? Compact() : null;

        bool Each(Func<int, bool> way)
        {
            bool done = false;
            foreach (int t in slivers)
            {
                done |= !gone[t] && !Touched(t) && way(t);
            }

            return done;
        }
    }

    private bool IsSliver(int t) => SliverMender.IsSliver(Corner(t, 0), Corner(t, 1), Corner(t, 2));

    private Point3 Corner(int t, int k) => vertices[corners[(3 * t) + (k % 3)]];

    private int Index(int t, int k) => corners[(3 * t) + (k % 3)];

    private bool Touched(int t) => touched[Index(t, 0)] || touched[Index(t, 1)] || touched[Index(t, 2)];

    private double Side(int t, int k) => (Corner(t, k + 1) - Corner(t, k)).Length;

    private int Longest(int t) => Enumerable.Range(0, 3).MaxBy(k => Side(t, k));

    private ReadOnlySpan<int> Around(int v) => around.AsSpan(first[v], first[v + 1] - first[v]);

    // Side a-b of triangle a, b, p becomes p-q, q being the far corner of the neighbour.
    private bool TurnOver(int t, int side)
    {
        int a = Index(t, side), b = Index(t, side + 1), p = Index(t, side + 2), other = Across(t, a, b);
        if (other < 0 || Touched(other))
        {
            return false;
        }

        int at = Enumerable.Range(0, 3).First(k => Index(other, k) == b && Index(other, k + 1) == a), q = Index(other, at + 2);
        if (p == q || Joined(p, q) || !Stands(t, other, vertices[p], vertices[a], vertices[q]) || !Stands(t, other, vertices[q], vertices[b], vertices[p]))
        {
            return false;
        }

        Set(t, p, a, q);
        Set(other, q, b, p);
        if (paints.Length > 0)
        {
            paints[t] = paints[other];
        }

        Touch(a, b, p, q);
        return true;
    }

    // More corners on one line: the neighbour across is thin too and has to be turned first.
    private bool MakeRoom(int t)
    {
        int side = Longest(t), other = Across(t, Index(t, side), Index(t, side + 1));
        return other >= 0 && SliverMender.Height(Corner(other, 0), Corner(other, 1), Corner(other, 2)) < Thin && TurnOver(other, Longest(other));
    }

    // A short side goes, the shortest if it can: one of its corners becomes the other.
    private bool Close(int t) => Enumerable.Range(0, 3).Where(k => Side(t, k) < Short).OrderBy(k => Side(t, k))
        .Any(k => Merge(t, Index(t, k), Index(t, k + 1)) || Merge(t, Index(t, k + 1), Index(t, k)));

    private bool Merge(int t, int keep, int drop)
    {
        int p = Enumerable.Range(0, 3).Select(k => Index(t, k)).First(v => v != keep && v != drop), other = Across(t, keep, drop) is >= 0 and var one ? one : Across(t, drop, keep);
        if (other < 0 || Neighbours(drop).Any(v => touched[v]) || Neighbours(keep).Any(v => touched[v]))
        {
            return false;
        }

        int q = Enumerable.Range(0, 3).Select(k => Index(other, k)).First(v => v != keep && v != drop);
        var common = Neighbours(keep).Intersect(Neighbours(drop)).ToArray();
        if (p == q || common.Length != 2 || !common.Contains(p) || !common.Contains(q))
        {
            return false; // the surface would touch itself
        }

        foreach (int n in Around(drop).ToArray().Where(n => n != t && n != other))
        {
            Point3[] moved = [.. Enumerable.Range(0, 3).Select(k => vertices[Index(n, k) == drop ? keep : Index(n, k)])];
            if (!IsSliver(n) && (SliverMender.IsSliver(moved[0], moved[1], moved[2]) || !LooksAs(n, moved[0], moved[1], moved[2])))
            {
                return false;
            }
        }

        int[] near = [.. Neighbours(keep), .. Neighbours(drop)];
        foreach (int n in Around(drop))
        {
            for (int k = 0; k < 3; k++)
            {
                corners[(3 * n) + k] = corners[(3 * n) + k] == drop ? keep : corners[(3 * n) + k];
            }
        }

        (gone[t], gone[other]) = (true, true);
        Touch([keep, drop, .. near]);
        return true;
    }

    // A new triangle will do when it looks as the neighbour did and is no sliver, or a much better one that another turn mends.
    private bool Stands(int sliver, int neighbour, Point3 a, Point3 b, Point3 c) =>
        (IsSliver(neighbour) || LooksAs(neighbour, a, b, c))
        && (!SliverMender.IsSliver(a, b, c) || SliverMender.Height(a, b, c) > Better * SliverMender.Height(Corner(sliver, 0), Corner(sliver, 1), Corner(sliver, 2)));

    private bool LooksAs(int old, Point3 a, Point3 b, Point3 c)
    {
        Point3 before = Point3.Cross(Corner(old, 1) - Corner(old, 0), Corner(old, 2) - Corner(old, 0)), after = Point3.Cross(b - a, c - a);
        return Point3.Dot(before, after) > Turn * before.Length * after.Length;
    }

    private int Across(int t, int a, int b)
    {
        foreach (int n in Around(a))
        {
            for (int k = 0; k < 3 && n != t; k++)
            {
                if (Index(n, k) == b && Index(n, k + 1) == a)
                {
                    return n;
                }
            }
        }

        return -1;
    }

    private bool Joined(int p, int q) => Neighbours(p).Contains(q);

    private HashSet<int> Neighbours(int v)
    {
        var found = new HashSet<int>();
        foreach (int n in Around(v))
        {
            for (int k = 0; k < 3; k++)
            {
                if (Index(n, k) != v)
                {
                    found.Add(Index(n, k));
                }
            }
        }

        return found;
    }

    private void Set(int t, int a, int b, int c) => (corners[3 * t], corners[(3 * t) + 1], corners[(3 * t) + 2]) = (a, b, c);

    private void Touch(params IEnumerable<int> all)
    {
        foreach (int v in all)
        {
            touched[v] = true;
        }
    }

    private Mesh Compact()
    {
        var number = new int[vertices.Length];
        Array.Fill(number, -1);
        var kept = new List<Point3>();
        var left = new List<int>();
        var shown = new List<byte>();
        for (int t = 0; t < gone.Length; t++)
        {
            for (int k = 0; k < 3 && !gone[t]; k++)
            {
                int v = Index(t, k);
                if (number[v] < 0)
                {
                    number[v] = kept.Count;
                    kept.Add(vertices[v]);
                }

                left.Add(number[v]);
            }

            if (!gone[t] && paints.Length > 0)
            {
                shown.Add(paints[t]);
            }
        }

        return new([.. kept], [.. left], [.. shown]);
    }
}
