namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>
/// What the free figures of a fit can explain, as orthonormal columns (Gram and Schmidt), to tell at little cost how much one
/// more column would lower the sum of squares.
/// </summary>
internal sealed class ColumnSpan
{
    private readonly int[] rows;
    private readonly List<double[]> columns = [];
    private readonly double[] residuals;

    public ColumnSpan(ProfileFit fit, IReadOnlyList<Observation> observations)
    {
        rows = [.. Enumerable.Range(0, observations.Count).Where(i => !fit.LeftOut[i])];
        residuals = [.. rows.Select(i => observations[i].Residual(fit.Profile))];
        int count = fit.Profile.Freedom;
        double[][] raw = [.. Enumerable.Range(0, count).Select(_ => new double[rows.Length])];
        double[] row = new double[count];
        for (int r = 0; r < rows.Length; r++)
        {
            observations[rows[r]].Gradient(fit.Profile, row);
            for (int c = 0; c < count; c++)
            {
                raw[c][r] = row[c];
            }
        }

        foreach (double[] column in raw)
        {
            double before = Norm(column);
            Reduce(column);
            Reduce(column); // twice is enough (W. Kahan), once is not
            double after = Norm(column);
            if (after > NormLeft * before && after > 0)
            {
                for (int r = 0; r < column.Length; r++)
                {
                    column[r] /= after;
                }

                columns.Add(column);
            }
        }
    }

    // A column of which less is left depends on the ones before it.
    private const double NormLeft = 1e-9;

    /// <summary>How much a further column, given row by row, would lower the sum of squares.</summary>
    public double Gain(Func<int, double> column, double least)
    {
        double[] extra = [.. rows.Select(column)];
        double before = Norm(extra);
        Reduce(extra);
        double after = Norm(extra);
        if (!(after * after > least * before * before))
        {
            return 0;
        }

        double along = 0;
        for (int r = 0; r < extra.Length; r++)
        {
            along += extra[r] * residuals[r];
        }

        return along * along / (after * after);
    }

    /// <summary>The observation whose leaving out lowers the sum of squares most and by more than a bound, or -1.</summary>
    public int MostDoubtful(double least, double bound)
    {
        int worst = -1;
        double most = bound;
        for (int r = 0; r < rows.Length; r++)
        {
            double free = 1 - columns.Sum(c => c[r] * c[r]);
            double gain = free > Math.Sqrt(least) ? residuals[r] * residuals[r] / free : 0;
            if (gain > most)
            {
                (worst, most) = (rows[r], gain);
            }
        }

        return worst;
    }

    private void Reduce(double[] column)
    {
        foreach (double[] known in columns)
        {
            double along = 0;
            for (int r = 0; r < column.Length; r++)
            {
                along += known[r] * column[r];
            }

            for (int r = 0; r < column.Length; r++)
            {
                column[r] -= along * known[r];
            }
        }
    }

    private static double Norm(double[] column)
    {
        double sum = 0;
        foreach (double x in column)
        {
            sum += x * x;
        }

        return Math.Sqrt(sum);
    }
}
