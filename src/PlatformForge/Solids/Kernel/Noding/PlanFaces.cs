using PlatformForge.Solids.Kernel.Lending;

namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>
/// The faces of a plan with its diagonals. Half-edge 2e runs along edge e from its lower to its higher node, 2e + 1 back; a face
/// lies to the left of its half-edges. Edges from the plan's edge count on are diagonals and bound nothing.
/// </summary>
internal sealed class PlanFaces
{
    public PlanFaces(NodedPlan plan, (int From, int To)[] diagonals)
    {
        Plan = plan;
        EdgeCount = plan.EdgeCount + diagonals.Length;
        Origin = Plain(2 * EdgeCount);
        for (int e = 0; e < plan.EdgeCount; e++)
        {
            (Origin[2 * e], Origin[(2 * e) + 1]) = (plan.From[e], plan.To[e]);
        }

        for (int i = 0, e = plan.EdgeCount; i < diagonals.Length; i++, e++)
        {
            (Origin[2 * e], Origin[(2 * e) + 1]) = diagonals[i];
        }

        Next = Plain(2 * EdgeCount);
        Face = Plain(2 * EdgeCount);
        (AroundStart, Around) = Turnings();
        Trace();
    }

    public NodedPlan Plan { get; }

    public int EdgeCount { get; }

    /// <summary>Node from which each half-edge starts.</summary>
    public int[] Origin { get; }

    /// <summary>The half-edge that follows along the same face.</summary>
    public int[] Next { get; }

    /// <summary>The face on the left of each half-edge.</summary>
    public int[] Face { get; }

    /// <summary>Half-edges that start at node n, counter-clockwise: Around[AroundStart[n]] up to Around[AroundStart[n + 1]].</summary>
    public int[] AroundStart { get; }

    public int[] Around { get; }

    public ReadOnlySpan<int> AroundNode(int node) => Around.AsSpan(AroundStart[node], AroundStart[node + 1] - AroundStart[node]);

    /// <summary>One half-edge of each face: a bounded face's starts at its lowest node.</summary>
    public int[] FaceStart { get; private set; } = [];

    /// <summary>Number of half-edges along each face.</summary>
    public int[] FaceSize { get; private set; } = [];

    /// <summary>Whether a face is the unbounded one; each connected piece of the plan has one.</summary>
    public bool[] FaceIsOuter { get; private set; } = [];

    public int FaceCount => FaceStart.Length;

    public int Target(int halfEdge) => Origin[halfEdge ^ 1];

    private (int[] Start, int[] Around) Turnings()
    {
        int[] start = new int[Plan.NodeCount + 2], around = Plain(2 * EdgeCount);
        foreach (int node in Origin)
        {
            start[node + 2]++;
        }

        for (int i = 2; i < start.Length; i++)
        {
            start[i] += start[i - 1];
        }

        for (int h = 0; h < Origin.Length; h++)
        {
            around[start[Origin[h] + 1]++] = h;
        }

        for (int node = 0; node < Plan.NodeCount; node++)
        {
            var ring = around.AsSpan(start[node], start[node + 1] - start[node]);
            SortAround(node, ring);
            for (int i = 0; i < ring.Length; i++)
            {
                // Coming in along the twin of a half-edge, a face on the left goes on with the one before it.
                Next[ring[i] ^ 1] = ring[i == 0 ? ring.Length - 1 : i - 1];
            }
        }

        return (start, around);
    }

    private void SortAround(int node, Span<int> ring)
    {
        for (int i = 1; i < ring.Length; i++)
        {
            int half = ring[i], j = i;
            for (; j > 0 && ComesBefore(node, half, ring[j - 1]); j--)
            {
                ring[j] = ring[j - 1];
            }

            ring[j] = half;
        }
    }

    /// <summary>Order from straight down counter-clockwise: half-edges to higher nodes, then those to lower ones.</summary>
    private bool ComesBefore(int node, int a, int b)
    {
        int toA = Target(a), toB = Target(b);
        bool backA = toA < node, backB = toB < node;
        return backA == backB ? Plan.Turn(node, toA, toB) > 0 : backB;
    }

    private void Trace()
    {
        int faces = 0;
        int[] start = Lent<int>.Rent(Origin.Length), size = Lent<int>.Rent(Origin.Length);
        var outer = Lent<bool>.Rent(Origin.Length);
        Array.Fill(Face, -1);
        for (int h = 0; h < Origin.Length; h++)
        {
            if (Face[h] >= 0)
            {
                continue;
            }

            (start[faces], size[faces], outer[faces]) = Walk(h, faces);
            faces++;
        }

        (FaceStart, FaceSize, FaceIsOuter) = (start[..faces], size[..faces], outer[..faces]);
        Lent<int>.GiveBack(start);
        Lent<int>.GiveBack(size);
        Lent<bool>.GiveBack(outer);
    }

    // All of it is written at once.
    private static int[] Plain(int length) => GC.AllocateUninitializedArray<int>(length);

    private (int Start, int Size, bool IsOuter) Walk(int first, int face)
    {
        int size = 0, lowest = first, h = first;
        double area = 0;
        long u0 = Plan.U[Origin[first]], v0 = Plan.V[Origin[first]];
        do
        {
            Face[h] = face;
            size++;
            int a = Origin[h], b = Target(h);
            lowest = a < Origin[lowest] ? h : lowest;
            area += ((Plan.U[a] - u0) * (Plan.V[b] - v0)) - ((Plan.V[a] - v0) * (Plan.U[b] - u0));
            h = Next[h];
        }
        while (h != first);

        return (lowest, size, area <= 0);
    }
}
