namespace PlatformForge.Geometry.Meshes;

/// <summary>Mends slivers one after another. What it costs goes by the number of slivers: the mesh around them is looked at, no other part.</summary>
internal sealed class SliverSurgery
{
    /// <summary>Cosine of the angle by which a good triangle may turn: what is moved is far smaller than what is seen.</summary>
    private const double Turn = 0.9;

    /// <summary>A sliver that takes another's place is higher by this factor, so that turning comes to an end.</summary>
    private const double Better = 2;

    /// <summary>Sides shorter than this, mm, may go: a two-hundredth of the finest nozzle's line.</summary>
    private const double Short = 1e-3;

    /// <summary>Sides shorter than this, mm, may go along an edge that runs on.</summary>
    private const double Long = 0.5;

    /// <summary>A corner that is moved off a line goes so many times as far as it has to.</summary>
    private const double Higher = 1.25;

    /// <summary>A neighbour lower than this, mm, may be what keeps a sliver from being turned.</summary>
    private const double Thin = 0.02;

    private readonly Mesh mesh;
    private readonly Point3[] vertices;
    private readonly int[] corners;
    private readonly byte[] paints;
    private readonly VertexFans fans;
    private readonly bool[] gone;
    private readonly List<int> touched = [];
    private bool any;

    public SliverSurgery(Mesh mesh)
    {
        this.mesh = mesh;
        (vertices, corners, paints) = (mesh.Vertices, [.. mesh.Triangles], [.. mesh.Paints]);
        fans = new(vertices.Length, corners);
        gone = new bool[mesh.TriangleCount];
    }

    /// <summary>One round over slivers, which are replaced by those that are left; false when nothing could be done.</summary>
    public bool Mend(List<int> slivers)
    {
        touched.Clear();
        bool mended = Each(slivers, t => Close(t) || TurnOver(t, Longest(t))) || Each(slivers, MakeRoom) || Each(slivers, Slide) || Each(slivers, Lift);
        int[] candidates = [.. slivers, .. touched];
        slivers.Clear();
        slivers.AddRange(candidates.Where(t => !gone[t] && IsSliver(t)).Distinct().Order());
        any |= mended;
        return mended;
    }

    /// <summary>The mended mesh.</summary>
    public Mesh Result()
    {
        if (!any)
        {
            return mesh;
        }

        var (number, kept) = Numbered();
        int[] left = new int[corners.Length];
        byte[] shown = new byte[paints.Length];
        int triangles = 0;
        for (int t = 0; t < gone.Length; t++)
        {
            if (gone[t])
            {
                continue;
            }

            for (int k = 0; k < 3; k++)
            {
                left[(3 * triangles) + k] = number[corners[(3 * t) + k]];
            }

            if (paints.Length > 0)
            {
                shown[triangles] = paints[t];
            }

            triangles++;
        }

        return new(kept, left[..(3 * triangles)], paints.Length > 0 ? shown[..triangles] : []);
    }

    // The vertices that are left, in the order in which triangles come to them, and what number each has among them.
    private (int[] Number, Point3[] Kept) Numbered()
    {
        int[] number = new int[vertices.Length];
        Array.Fill(number, -1);
        var kept = new Point3[vertices.Length];
        int points = 0;
        for (int c = 0; c < corners.Length; c++)
        {
            int v = corners[c];
            if (!gone[c / 3] && number[v] < 0)
            {
                number[v] = points;
                kept[points++] = vertices[v];
            }
        }

        return (number, kept[..points]);
    }

    private bool Each(List<int> slivers, Func<int, bool> way)
    {
        bool done = false;
        foreach (int t in slivers)
        {
            done |= !gone[t] && IsSliver(t) && way(t);
        }

        return done;
    }

    private bool IsSliver(int t) => SliverMender.IsSliver(Corner(t, 0), Corner(t, 1), Corner(t, 2));

    private Point3 Corner(int t, int k) => vertices[corners[(3 * t) + (k % 3)]];

    private int Index(int t, int k) => corners[(3 * t) + (k % 3)];

    private double Side(int t, int k) => (Corner(t, k + 1) - Corner(t, k)).Length;

    private int Longest(int t) => Enumerable.Range(0, 3).MaxBy(k => Side(t, k));

    // Side a-b of triangle a, b, p becomes p-q, q being the far corner of the neighbour.
    private bool TurnOver(int t, int side)
    {
        int a = Index(t, side), b = Index(t, side + 1), p = Index(t, side + 2), other = Across(t, a, b);
        if (other < 0)
        {
            return false;
        }

        int at = Enumerable.Range(0, 3).First(k => Index(other, k) == b && Index(other, k + 1) == a), q = Index(other, at + 2);
        if (p == q || Neighbours(p).Contains(q) || !Stands(t, other, vertices[p], vertices[a], vertices[q])
            || !Stands(t, other, vertices[q], vertices[b], vertices[p]))
        {
            return false;
        }

        Set(t, p, a, q);
        Set(other, q, b, p);
        fans.Remove(b, t);
        fans.Remove(a, other);
        fans.Add(q, t);
        fans.Add(p, other);
        if (paints.Length > 0)
        {
            paints[t] = paints[other];
        }

        touched.AddRange([t, other]);
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

    // A longer one goes where what meets at one corner runs on through the other, as along an edge: the surface stays where it is.
    private bool Slide(int t) => Enumerable.Range(0, 3).Where(k => Side(t, k) < Long).OrderBy(k => Side(t, k)).Any(k =>
        (RunsOn(Index(t, k + 1), Index(t, k)) && Merge(t, Index(t, k), Index(t, k + 1)))
        || (RunsOn(Index(t, k), Index(t, k + 1)) && Merge(t, Index(t, k + 1), Index(t, k))));

    // Where nothing can be turned or closed, as between borders of paint, the corner over the longest side is moved off it, in its own plane, by what a file's
    // numbers carry: by less than the shortest side that may go.
    private bool Lift(int t)
    {
        int side = Longest(t), corner = Index(t, side + 2);
        Point3 a = Corner(t, side), along = Corner(t, side + 1) - a, at = vertices[corner] - a;
        double length = along.Length;
        Point3 off = at - (along * (Point3.Dot(at, along) / (length * length)));
        double rise = Higher * Math.Max(SliverMender.Flat, SliverMender.FlatShare * length);
        if (off.Length <= double.Epsilon || rise > Short)
        {
            return false;
        }

        var moved = vertices[corner] + (off * ((rise / off.Length) - 1));
        moved = new((float)moved.X, (float)moved.Y, (float)moved.Z);
        int[] around = fans.Of(corner).ToArray();
        foreach (int n in around)
        {
            Point3[] place = [.. Enumerable.Range(0, 3).Select(k => Index(n, k) == corner ? moved : Corner(n, k))];
            if (SliverMender.IsSliver(place[0], place[1], place[2]) ? n == t || !IsSliver(n) : !IsSliver(n) && !LooksAs(n, place[0], place[1], place[2]))
            {
                return false;
            }
        }

        vertices[corner] = moved;
        touched.AddRange(around);
        return true;
    }

    // Whether all triangles at a corner lie in planes through another, and all borders of paint there on a line through it, but for less than the shortest
    // side that may go.
    private bool RunsOn(int corner, int through)
    {
        var along = vertices[through] - vertices[corner];
        foreach (int n in fans.Of(corner))
        {
            Point3 normal = Point3.Cross(Corner(n, 1) - Corner(n, 0), Corner(n, 2) - Corner(n, 0));
            int at = Enumerable.Range(0, 3).First(k => Index(n, k) == corner), next = Index(n, at + 1);
            if ((!IsSliver(n) && Math.Abs(Point3.Dot(normal, along)) > Short * normal.Length)
                || (PaintOf(n) != PaintOf(Across(n, corner, next)) && Point3.Cross(along, vertices[next] - vertices[corner]).Length > Short * Side(n, at)))
            {
                return false;
            }
        }

        return true;
    }

    private int PaintOf(int t) => t < 0 || paints.Length == 0 ? 0 : paints[t];

    private bool Merge(int t, int keep, int drop)
    {
        int p = Third(t, keep, drop), other = Across(t, keep, drop) is >= 0 and var one ? one : Across(t, drop, keep);
        if (other < 0)
        {
            return false;
        }

        int q = Third(other, keep, drop);
        var common = Neighbours(keep).Intersect(Neighbours(drop)).ToArray();
        if (p == q || common.Length != 2 || !common.Contains(p) || !common.Contains(q))
        {
            return false; // the surface would touch itself
        }

        int[] moved = [.. fans.Of(drop).ToArray().Where(n => n != t && n != other)];
        foreach (int n in moved)
        {
            Point3[] place = [.. Enumerable.Range(0, 3).Select(k => vertices[Index(n, k) == drop ? keep : Index(n, k)])];
            if (!IsSliver(n) && (SliverMender.IsSliver(place[0], place[1], place[2]) || !LooksAs(n, place[0], place[1], place[2])))
            {
                return false;
            }
        }

        HandOver(moved, drop, keep);
        Drop(t);
        Drop(other);
        touched.AddRange(moved);
        return true;
    }

    private void HandOver(int[] moved, int drop, int keep)
    {
        foreach (int n in moved)
        {
            for (int k = 0; k < 3; k++)
            {
                corners[(3 * n) + k] = corners[(3 * n) + k] == drop ? keep : corners[(3 * n) + k];
            }

            fans.Remove(drop, n);
            fans.Add(keep, n);
        }
    }

    private int Third(int t, int a, int b) => Enumerable.Range(0, 3).Select(k => Index(t, k)).First(v => v != a && v != b);

    private void Drop(int t)
    {
        gone[t] = true;
        for (int k = 0; k < 3; k++)
        {
            fans.Remove(Index(t, k), t);
        }
    }

    // A new triangle will do when it looks as the neighbour did and is no sliver, or a much better one that another turn mends.
    private bool Stands(int sliver, int neighbour, Point3 a, Point3 b, Point3 c) =>
        (IsSliver(neighbour) || LooksAs(neighbour, a, b, c))
        && (!SliverMender.IsSliver(a, b, c) || SliverMender.Height(a, b, c) > Better
            * SliverMender.Height(Corner(sliver, 0), Corner(sliver, 1), Corner(sliver, 2)));

    private bool LooksAs(int old, Point3 a, Point3 b, Point3 c)
    {
        Point3 before = Point3.Cross(Corner(old, 1) - Corner(old, 0), Corner(old, 2) - Corner(old, 0)), after = Point3.Cross(b - a, c - a);
        return Point3.Dot(before, after) > Turn * before.Length * after.Length;
    }

    private int Across(int t, int a, int b)
    {
        foreach (int n in fans.Of(a))
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

    private HashSet<int> Neighbours(int v)
    {
        var found = new HashSet<int>();
        foreach (int n in fans.Of(v))
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
}
