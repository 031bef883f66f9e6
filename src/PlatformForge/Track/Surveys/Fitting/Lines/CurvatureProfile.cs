namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>
/// The shape that is fitted: stretches of constant curvature, some of them straight, with a change of curvature between each and
/// the next, sudden or spread over a transition, and kinks. Chainage runs from 0 to <see cref="Length"/>.
/// </summary>
internal sealed class CurvatureProfile
{
    /// <summary>Stretches, and middles of changes from one another, are at least this long, mm.</summary>
    public const double LeastStretch = 1;

    public required double Length { get; init; }

    /// <summary>Whether place and heading at the start are part of the fit; versines know nothing of either.</summary>
    public required bool Placed { get; init; }

    /// <summary>Offset from the reference at the start, mm.</summary>
    public double Offset { get; init; }

    /// <summary>Heading against the reference at the start, radians.</summary>
    public double Heading { get; init; }

    /// <summary>Curvature of each stretch, 1/mm.</summary>
    public required double[] Curvatures { get; init; }

    /// <summary>Which stretches are held straight.</summary>
    public required bool[] Straight { get; init; }

    /// <summary>Middle of each change, mm.</summary>
    public double[] Middles { get; init; } = [];

    /// <summary>Square of the length of each change, mm².</summary>
    public double[] Squares { get; init; } = [];

    /// <summary>Which changes are held sudden.</summary>
    public bool[] Sudden { get; init; } = [];

    /// <summary>Whether places and lengths of the changes are given, as those of a smooth curve's knots are, and only curvatures fitted.</summary>
    public bool Knotted { get; init; }

    /// <summary>Whether every free figure bends the line by the same wherever the figures stand.</summary>
    public bool IsLinear => Knotted && KinkAt.Length == 0;

    /// <summary>Chainage of each kink, mm.</summary>
    public double[] KinkAt { get; init; } = [];

    /// <summary>Turn of each kink, radians.</summary>
    public double[] KinkTurn { get; init; } = [];

    private (double Length, double Shift)[]? ramps;
    private int freedom = -1;

    /// <summary>Length of a change, mm.</summary>
    public double ChangeLength(int change) => Ramps[change].Length;

    private (double Length, double Shift)[] Ramps => ramps ??= Measure();

    private (double Length, double Shift)[] Measure()
    {
        var measured = new (double Length, double Shift)[Squares.Length];
        for (int j = 0; j < measured.Length; j++)
        {
            double length = Math.Sqrt(Squares[j]);
            measured[j] = (length, Ramp.Shift(length));
        }

        return measured;
    }

    /// <summary>Count of free figures.</summary>
    public int Freedom => freedom >= 0 ? freedom
        : freedom = (Placed ? 2 : 0) + Straight.Count(s => !s) + (Knotted ? 0 : Middles.Length + Sudden.Count(s => !s)) + (2 * KinkAt.Length);

    /// <summary>Curvature integrated twice plus offset and heading at the start: the offset at s from a straight reference.</summary>
    public double Value(double s)
    {
        double value = Offset + (Heading * s) + (Curvatures[0] * s * s / 2);
        double[] middles = Middles, curvatures = Curvatures;
        var own = Ramps;
        for (int j = 0; j < middles.Length; j++)
        {
            value += (curvatures[j + 1] - curvatures[j]) * Ramp.Twice(s, middles[j], own[j].Length, own[j].Shift);
        }

        for (int k = 0; k < KinkAt.Length; k++)
        {
            value += KinkTurn[k] * Math.Max(0, s - KinkAt[k]);
        }

        return value;
    }

    /// <summary>Adds a multiple of the slope of <see cref="Value"/> by every free figure, in the order of <see cref="Figures"/>.</summary>
    public void AddGradient(double s, double factor, Span<double> gradient)
    {
        int at = 0;
        if (Placed)
        {
            gradient[at++] += factor;
            gradient[at++] += factor * s;
        }

        double before = s * s / 2;
        var own = Ramps;
        for (int j = 0; j < Curvatures.Length; j++)
        {
            double after = j < Middles.Length ? Ramp.Twice(s, Middles[j], own[j].Length, own[j].Shift) : 0;
            if (!Straight[j])
            {
                gradient[at++] += factor * (before - after);
            }

            before = after;
        }

        for (int j = 0; j < Middles.Length && !Knotted; j++)
        {
            double step = Curvatures[j + 1] - Curvatures[j];
            gradient[at++] -= factor * step * Ramp.Once(s, Middles[j], own[j].Length);
            if (!Sudden[j])
            {
                gradient[at++] += factor * step * Ramp.BySquare(s, Middles[j], own[j].Length);
            }
        }

        for (int k = 0; k < KinkAt.Length; k++)
        {
            gradient[at++] -= s > KinkAt[k] ? factor * KinkTurn[k] : 0;
            gradient[at++] += factor * Math.Max(0, s - KinkAt[k]);
        }
    }

    /// <summary>The free figures in one row: offset and heading, curvatures, then middle and square of each change, then chainage
    /// and turn of each kink.</summary>
    public double[] Figures()
    {
        double[] figures = new double[Freedom];
        int at = 0;
        if (Placed)
        {
            figures[at++] = Offset;
            figures[at++] = Heading;
        }

        for (int j = 0; j < Curvatures.Length; j++)
        {
            if (!Straight[j])
            {
                figures[at++] = Curvatures[j];
            }
        }

        for (int j = 0; j < Middles.Length && !Knotted; j++)
        {
            figures[at++] = Middles[j];
            if (!Sudden[j])
            {
                figures[at++] = Squares[j];
            }
        }

        for (int k = 0; k < KinkAt.Length; k++)
        {
            figures[at++] = KinkAt[k];
            figures[at++] = KinkTurn[k];
        }

        return figures;
    }

    /// <summary>The same shape with other figures, brought back into order where they overlap.</summary>
    public CurvatureProfile With(ReadOnlySpan<double> figures)
    {
        int at = 0;
        double offset = Placed ? figures[at++] : Offset, heading = Placed ? figures[at++] : Heading;
        double[] curvatures = new double[Curvatures.Length];
        for (int j = 0; j < curvatures.Length; j++)
        {
            curvatures[j] = Straight[j] ? 0 : figures[at++];
        }

        var (middles, squares) = Changes(figures, ref at);
        var (kinkAt, kinkTurn) = KinksOf(figures, ref at);
        return new()
        {
            Length = Length,
            Placed = Placed,
            Knotted = Knotted,
            Offset = offset,
            Heading = heading,
            Curvatures = curvatures,
            Straight = Straight,
            Middles = middles,
            Squares = squares,
            Sudden = Sudden,
            KinkAt = kinkAt,
            KinkTurn = kinkTurn,
            ramps = Knotted ? Ramps : null,
            freedom = Freedom,
        };
    }

    // Middles and squares of the changes. Knots stay where they are, and nobody writes into them.
    private (double[] Middles, double[] Squares) Changes(ReadOnlySpan<double> figures, ref int at)
    {
        if (Knotted)
        {
            return (Middles, Squares);
        }

        double[] middles = new double[Middles.Length], squares = new double[Middles.Length];
        for (int j = 0; j < middles.Length; j++)
        {
            middles[j] = figures[at++];
            squares[j] = Sudden[j] ? 0 : figures[at++];
        }

        Order(middles, squares);
        return (middles, squares);
    }

    private (double[] At, double[] Turn) KinksOf(ReadOnlySpan<double> figures, ref int at)
    {
        double[] kinkAt = new double[KinkAt.Length], kinkTurn = new double[KinkAt.Length];
        for (int k = 0; k < kinkAt.Length; k++)
        {
            kinkAt[k] = Math.Clamp(figures[at++], LeastStretch, Length - LeastStretch);
            kinkTurn[k] = figures[at++];
        }

        return (kinkAt, kinkTurn);
    }

    /// <summary>The same shape with chainage counted from elsewhere, to another length, at rest on its reference.</summary>
    public CurvatureProfile Moved(double origin, double length)
    {
        var moved = new CurvatureProfile
        {
            Length = length,
            Placed = Placed,
            Knotted = Knotted,
            Curvatures = Curvatures,
            Straight = Straight,
            Sudden = Sudden,
            Squares = Squares,
            KinkTurn = KinkTurn,
            Middles = [.. Middles.Select(m => m - origin)],
            KinkAt = [.. KinkAt.Select(k => k - origin)],
        };
        return moved.With(moved.Figures());
    }

    private void Order(double[] middles, double[] squares)
    {
        int n = middles.Length;
        for (int j = 0; j < n; j++)
        {
            double least = (j == 0 ? 0 : middles[j - 1]) + LeastStretch, most = Length - ((n - j) * LeastStretch);
            middles[j] = double.IsNaN(middles[j]) ? least : Math.Min(Math.Max(middles[j], least), Math.Max(least, most));
        }

        for (int j = 0; j < n; j++)
        {
            double room = 2 * Math.Min(middles[j] - LeastStretch, Length - LeastStretch - middles[j]);
            squares[j] = room <= 0 ? 0 : Math.Clamp(squares[j], 0, room * room);
        }

        for (int j = 1; j < n; j++)
        {
            double room = middles[j] - middles[j - 1] - (LeastStretch / 2), taken = (Math.Sqrt(squares[j]) + Math.Sqrt(squares[j - 1])) / 2;
            if (taken > room)
            {
                double shrink = Math.Pow(room / taken, 2);
                squares[j] *= shrink;
                squares[j - 1] *= shrink;
            }
        }
    }
}
