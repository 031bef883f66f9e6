namespace PlatformForge.Solids.Kernel.Noding;

/// <summary>
/// A planar straight-line graph on grid nodes. Nodes are numbered by (u, v); an edge runs from its lower to its higher node and
/// knows the blocks whose outline it is part of, in ascending order: to cross it is to enter or leave those blocks.
/// </summary>
internal sealed class NodedPlan
{
    public required int[] U { get; init; }

    public required int[] V { get; init; }

    public required int[] From { get; init; }

    public required int[] To { get; init; }

    /// <summary>Edge e toggles the blocks Toggle[ToggleStart[e]] up to Toggle[ToggleStart[e + 1]].</summary>
    public required int[] ToggleStart { get; init; }

    public required int[] Toggle { get; init; }

    /// <summary>The straight line that each edge is part of: the longest where outlines run along one another.</summary>
    public required int[] Line { get; init; }

    public required double[] LineLength { get; init; }

    /// <summary>The named wall faces that look to the right and left of each edge, seen from its lower node.</summary>
    public required WallName[] OnRight { get; init; }

    public required WallName[] OnLeft { get; init; }

    public int NodeCount => U.Length;

    public int EdgeCount => From.Length;

    public ReadOnlySpan<int> Toggles(int edge) => Toggle.AsSpan(ToggleStart[edge], ToggleStart[edge + 1] - ToggleStart[edge]);

    /// <summary>Twice the area of a triangle of nodes, exact: positive when the third lies to the left of the first two.</summary>
    public long Turn(int a, int b, int c) =>
        ((long)(U[b] - U[a]) * (V[c] - V[a])) - ((long)(V[b] - V[a]) * (U[c] - U[a]));
}
