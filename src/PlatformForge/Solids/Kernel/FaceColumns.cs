using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel;

/// <summary>A boundary in the column over a face, from below upwards: what lies under and over it, and what it shows.</summary>
/// <param name="Plane">The height.</param>
/// <param name="Below">Paint of the material under it plus one, nought for air.</param>
/// <param name="Above">Paint of the material over it plus one, nought for air.</param>
/// <param name="Shown">Paint of the surface where one side is air.</param>
internal readonly record struct ColumnBoundary(int Plane, byte Below, byte Above, byte Shown)
{
    /// <summary>Whether it parts material from air; otherwise only the paint changes.</summary>
    public bool IsSurface => (Below == 0) != (Above == 0);

    /// <summary>Whether two surfaces on either side of an edge, of the same levels there, are one.</summary>
    public bool RunsOnAs(in ColumnBoundary other) => Plane == other.Plane && Below == 0 == (other.Below == 0) && Shown == other.Shown;

    public static bool AreSame(ReadOnlySpan<ColumnBoundary> a, ReadOnlySpan<ColumnBoundary> b)
    {
        if (a.Length != b.Length)
        {
            return false;
        }

        for (int i = 0; i < a.Length; i++)
        {
            if (a[i].Plane != b[i].Plane || a[i].Below != b[i].Below || a[i].Above != b[i].Above || a[i].Shown != b[i].Shown)
            {
                return false;
            }
        }

        return true;
    }
}

/// <summary>For every face the blocks that cover it, found by walking from face to face, and the boundaries of its column, worked out in parts.</summary>
internal sealed class FaceColumns
{
    private readonly BlockTable blocks;
    private readonly PlanFaces faces;
    private readonly int[] coverStart, coverCount;

    // Of ground that only diagonals part one face stands for all of them; those that do, in the order in which they were reached.
    private readonly int[] leader;
    private readonly GrowingArray<int> leaders;
    private readonly GrowingArray<int> cover;
    private readonly GrowingArray<ColumnBoundary> boundaries;
    private readonly ColumnBoundary[] all;

    public FaceColumns(BlockTable blocks, PlanFaces faces, SideBySide sides)
    {
        this.blocks = blocks;
        this.faces = faces;
        Start = new int[faces.FaceCount];
        Count = new int[faces.FaceCount];
        coverStart = Lent<int>.Rent(faces.FaceCount);
        coverCount = Lent<int>.Rent(faces.FaceCount);
        leader = Lent<int>.Rent(faces.FaceCount);
        leaders = new(faces.FaceCount);
        cover = new(4 * faces.FaceCount);
        Walk();
        boundaries = Build(sides);
        all = boundaries.Items;
        for (int face = 0; face < faces.FaceCount; face++)
        {
            (Start[face], Count[face]) = (Start[leader[face]], Count[leader[face]]);
        }

        Lent<int>.GiveBack(coverStart);
        Lent<int>.GiveBack(coverCount);
        Lent<int>.GiveBack(leader);
        leaders.GiveBack();
        cover.GiveBack();
    }

    /// <summary>Where each face's boundaries start.</summary>
    public int[] Start { get; }

    /// <summary>How many boundaries each face has; an even number where no paint changes inside.</summary>
    public int[] Count { get; }

    /// <summary>How many boundaries there are in all; they are numbered from Start[face] for each face.</summary>
    public int Total => boundaries.Count;

    public ref readonly ColumnBoundary At(int boundary) => ref all[boundary];

    public ReadOnlySpan<ColumnBoundary> Of(int face) => all.AsSpan(Start[face], Count[face]);

    public void GiveBack() => boundaries.GiveBack();

    private void Walk()
    {
        var seen = new bool[faces.FaceCount];
        var queue = new GrowingArray<int>(faces.FaceCount);
        for (int face = 0; face < faces.FaceCount; face++)
        {
            if (faces.FaceIsOuter[face] && !seen[face])
            {
                (coverStart[face], coverCount[face], leader[face]) = (0, 0, face);
                Flood(face, seen, queue);
            }
        }

        for (int head = 0; head < queue.Count; head++)
        {
            int face = queue[head], first = faces.FaceStart[face], h = first;
            do
            {
                int other = faces.Face[h ^ 1];
                if (!seen[other])
                {
                    Enter(other, face, h >> 1);
                    Flood(other, seen, queue);
                }

                h = faces.Next[h];
            }
            while (h != first);
        }

        queue.GiveBack();
    }

    /// <summary>Ground that only diagonals part has one column, whichever of its faces was reached first.</summary>
    private void Flood(int entered, bool[] seen, GrowingArray<int> queue)
    {
        seen[entered] = true;
        queue.Add(entered);
        for (int head = queue.Count - 1; head < queue.Count; head++)
        {
            int face = queue[head], first = faces.FaceStart[face], h = first;
            do
            {
                int other = faces.Face[h ^ 1];
                if (h >> 1 >= faces.Plan.EdgeCount && !seen[other])
                {
                    seen[other] = true;
                    (coverStart[other], coverCount[other], leader[other]) = (coverStart[face], coverCount[face], leader[face]);
                    queue.Add(other);
                }

                h = faces.Next[h];
            }
            while (h != first);
        }
    }

    private void Enter(int face, int from, int edge)
    {
        coverStart[face] = cover.Count;
        Toggle(coverStart[from], coverCount[from], faces.Plan.Toggles(edge));
        coverCount[face] = cover.Count - coverStart[face];
        leader[face] = face;
        leaders.Add(face);
    }

    /// <summary>The columns of all leaders, part after part; the second part's boundaries follow those of the first.</summary>
    private GrowingArray<ColumnBoundary> Build(SideBySide sides)
    {
        var parts = new GrowingArray<ColumnBoundary>[sides.Parts(2 * leaders.Count, 2)];
        for (int i = 0; i < parts.Length; i++)
        {
            parts[i] = new(4 * faces.FaceCount / parts.Length);
        }

        sides.Run(parts.Length, part => Build(SideBySide.Range(part, parts.Length, leaders.Count), parts[part]));
        for (int i = 1; i < parts.Length; i++)
        {
            int before = parts[0].Count;
            parts[i].Span.CopyTo(parts[0].Extend(parts[i].Count));
            var (from, end) = SideBySide.Range(i, parts.Length, leaders.Count);
            foreach (int face in leaders.Span[from..end])
            {
                Start[face] += before;
            }

            parts[i].GiveBack();
        }

        return parts[0];
    }

    private void Build((int From, int End) some, GrowingArray<ColumnBoundary> into)
    {
        var stack = new ColumnStack(blocks);
        foreach (int face in leaders.Span[some.From..some.End])
        {
            Start[face] = into.Count;
            if (coverCount[face] > 0)
            {
                var (u, v) = Middle(face);
                stack.Build(cover.Span.Slice(coverStart[face], coverCount[face]), u, v, into);
            }

            Count[face] = into.Count - Start[face];
        }
    }

    /// <summary>The blocks of one of two sorted lists but not of both.</summary>
    private void Toggle(int start, int count, ReadOnlySpan<int> toggles)
    {
        int i = start, end = start + count, j = 0;
        while (i < end || j < toggles.Length)
        {
            if (j == toggles.Length || (i < end && cover[i] < toggles[j]))
            {
                cover.Add(cover[i++]);
            }
            else if (i == end || toggles[j] < cover[i])
            {
                cover.Add(toggles[j++]);
            }
            else
            {
                i++;
                j++;
            }
        }
    }

    /// <summary>The mean of the face's nodes. Surfaces do not cross over a face, so whichever is higher there is nowhere lower.</summary>
    private (double U, double V) Middle(int face)
    {
        double u = 0, v = 0;
        int first = faces.FaceStart[face], h = first;
        do
        {
            u += faces.Plan.U[faces.Origin[h]];
            v += faces.Plan.V[faces.Origin[h]];
            h = faces.Next[h];
        }
        while (h != first);
        return (u / faces.FaceSize[face], v / faces.FaceSize[face]);
    }
}
