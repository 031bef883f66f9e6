namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>
/// Lines as cubic splines over even nodes: between nodes the second derivative runs evenly, as the curvature of a transition does. Each value
/// depends on four neighbouring figures.
/// </summary>
/// <param name="From">First node, mm.</param>
/// <param name="Step">Distance between nodes, mm.</param>
/// <param name="Cells">Number of stretches between nodes.</param>
internal readonly record struct SplineGrid(double From, double Step, int Cells)
{
    /// <summary>Figures that each value depends on.</summary>
    public const int Span = 4;

    public int Figures => Cells + 3;

    public double To => From + (Cells * Step);

    public double Node(int node) => From + (node * Step);

    /// <summary>Cell that holds a place; places beyond the ends are in the end cells.</summary>
    public int CellAt(double s) => Math.Clamp((int)Math.Floor((s - From) / Step), 0, Cells - 1);

    /// <summary>Weights of the four figures from the cell's own on, for the value at a place (C. de Boor, A Practical Guide to Splines,
    /// 1978).</summary>
    public int Value(double s, Span<double> weights)
    {
        int cell = CellAt(s);
        double u = ((s - From) / Step) - cell, v = 1 - u;
        weights[0] = v * v * v / 6;
        weights[1] = ((3 * u * u * u) - (6 * u * u) + 4) / 6;
        weights[2] = ((3 * v * v * v) - (6 * v * v) + 4) / 6;
        weights[3] = u * u * u / 6;
        return cell;
    }
}
