using PlatformForge.Solids.Kernel.Lending;
using PlatformForge.Solids.Kernel.Noding;

namespace PlatformForge.Solids.Kernel.Levels;

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

/// <summary>For every face the blocks that cover it, found by walking from face to face, and the boundaries of its column.</summary>
internal sealed class FaceColumns
{
    private readonly PlanFaces faces;
    private readonly ColumnStack stack;
    private readonly int[] coverStart, coverCount;
    private readonly GrowingArray<int> cover;
    private readonly GrowingArray<ColumnBoundary> boundaries;
    private readonly ColumnBoundary[] all;

    public FaceColumns(BlockTable blocks, PlanFaces faces)
    {
        (this.faces, stack) = (faces, new(blocks));
        Start = new int[faces.FaceCount];
        Count = new int[faces.FaceCount];
        coverStart = Lent<int>.Rent(faces.FaceCount);
        coverCount = Lent<int>.Rent(faces.FaceCount);
        cover = new(4 * faces.FaceCount);
        boundaries = new(4 * faces.FaceCount);
        Walk();
        all = boundaries.Items;
        Lent<int>.GiveBack(coverStart);
        Lent<int>.GiveBack(coverCount);
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
                (coverStart[face], coverCount[face]) = (0, 0);
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
                    (coverStart[other], coverCount[other], Start[other], Count[other]) = (coverStart[face], coverCount[face], Start[face], Count[face]);
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
        Start[face] = boundaries.Count;
        if (coverCount[face] > 0)
        {
            var (u, v) = Middle(face);
            stack.Build(cover.Span.Slice(coverStart[face], coverCount[face]), u, v, boundaries);
        }

        Count[face] = boundaries.Count - Start[face];
    }

    /// <summary>The blocks of one of two sorted lists but not of both.</summary>
    private void Toggle(int start, int count, ReadOnlySpan<int> toggles)
    {
        int i = 0, at = 0;
        var into = cover.Extend(count + toggles.Length);
        ReadOnlySpan<int> known = cover.Span.Slice(start, count);
        foreach (int block in toggles)
        {
            for (; i < known.Length && known[i] < block; i++)
            {
                into[at++] = known[i];
            }

            if (i < known.Length && known[i] == block)
            {
                i++;
            }
            else
            {
                into[at++] = block;
            }
        }

        known[i..].CopyTo(into[at..]);
        cover.Shrink(cover.Count - into.Length + at + known.Length - i);
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
