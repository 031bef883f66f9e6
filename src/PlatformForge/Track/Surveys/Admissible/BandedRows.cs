namespace PlatformForge.Track.Surveys.Admissible;

/// <summary>What a row of <see cref="BandedRows"/> holds down.</summary>
internal enum RowKind
{
    /// <summary>The value at a place: a reading.</summary>
    Value,

    /// <summary>The second derivative at a node: the curvature.</summary>
    Bend,

    /// <summary>The third derivative in a cell: the rate of change of the curvature.</summary>
    Rate,

    /// <summary>The change of slope at a joint.</summary>
    Kink,
}

/// <summary>
/// The conditions low ≤ a·x ≤ high on figures that tell a line, each on four neighbouring ones.
/// </summary>
/// <param name="figures">How many figures.</param>
internal sealed class BandedRows(int figures)
{
    private readonly SplineGrid grid;

    /// <summary>Rows on the figures of a spline.</summary>
    public BandedRows(SplineGrid grid)
        : this(grid.Figures) => this.grid = grid;

    private readonly List<RowKind> kinds = [];
    private readonly List<int> columns = [];
    private readonly List<double> places = [], low = [], high = [], factors = [];
    private readonly List<int> readings = [];

    /// <summary>The nodes of the spline; of nothing where rows are not on a spline.</summary>
    public SplineGrid Grid => grid;

    public int Figures => figures;

    public int Count => columns.Count;

    public RowKind Kind(int row) => kinds[row];

    /// <summary>First of the four figures of a row.</summary>
    public int Column(int row) => columns[row];

    /// <summary>Where a row speaks of the line, mm: the place of a value, the node of a bend, the start of a cell.</summary>
    public double Place(int row) => places[row];

    public double Low(int row) => low[row];

    public double High(int row) => high[row];

    /// <summary>Index of the reading a row came from; -1 for bounds on the line's shape.</summary>
    public int Reading(int row) => readings[row];

    /// <summary>Whether any row is a reading's.</summary>
    public bool HoldsReadings => readings.Exists(r => r >= 0);

    /// <summary>The four factors of a row.</summary>
    public ReadOnlySpan<double> Factors(int row) => System.Runtime.InteropServices.CollectionsMarshal.AsSpan(factors)
        .Slice(row * SplineGrid.Span, SplineGrid.Span);

    /// <summary>Holds the value at a place between two bounds.</summary>
    public void AddValue(double place, double least, double most, int reading)
    {
        Span<double> weights = stackalloc double[SplineGrid.Span];
        int column = grid.Value(place, weights);
        Add(RowKind.Value, column, place, weights, least, most, reading);
    }

    /// <summary>Holds the second derivative at a node.</summary>
    public void AddBend(int node, double least, double most)
    {
        double unit = 1 / (grid.Step * grid.Step);
        Span<double> weights = node < grid.Cells ? [unit, -2 * unit, unit, 0] : [0, unit, -2 * unit, unit];
        Add(RowKind.Bend, Math.Min(node, grid.Cells - 1), grid.Node(node), weights, least, most, -1);
    }

    /// <summary>Holds the third derivative in a cell.</summary>
    public void AddRate(int cell, double least, double most)
    {
        double unit = 1 / (grid.Step * grid.Step * grid.Step);
        Add(RowKind.Rate, cell, grid.Node(cell), [-unit, 3 * unit, -3 * unit, unit], least, most, -1);
    }

    /// <summary>What a row says of figures.</summary>
    public double Of(int row, ReadOnlySpan<double> x)
    {
        var f = Factors(row);
        int c = columns[row];
        return (f[0] * x[c]) + (f[1] * x[c + 1]) + (f[2] * x[c + 2]) + (f[3] * x[c + 3]);
    }

    /// <summary>Holds the sum of four neighbouring figures, each times its weight.</summary>
    public void Add(RowKind kind, int column, double place, ReadOnlySpan<double> weights, double least, double most, int reading)
    {
        kinds.Add(kind);
        columns.Add(column);
        places.Add(place);
        low.Add(least);
        high.Add(most);
        readings.Add(reading);
        foreach (double w in weights)
        {
            factors.Add(w);
        }
    }
}
