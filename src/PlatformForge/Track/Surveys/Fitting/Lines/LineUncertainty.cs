namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>
/// Propagates the reading error to the line. Shapes are drawn at random, first which of the fits the readings cannot tell apart
/// (weighted by e^(−cost/2)), then its figures from their covariance; the band is the narrowest multiple of the root mean square
/// movement that holds nearly all of the drawn lines over their whole length.
/// </summary>
internal static class LineUncertainty
{
    // The band holds this part of the drawn lines: more than is promised, for the shapes that the search did not meet.
    private const double Drawn = 0.98;

    private const int Draws = 600;
    private const int Seed = 19;
    private const double Spacing = 15;
    private const int FewestStations = 24;
    private const int MostStations = 96;

    // The band is never narrower than this part of the ruler error, whatever the count of readings.
    private const double Narrowest = 0.02;

    /// <param name="fits">The fit that is stated, then the others.</param>
    /// <param name="costs">Their costs.</param>
    /// <param name="rulerError">Greatest reading error, mm.</param>
    /// <param name="inflation">Factor on the standard deviations where readings scatter by more than stated.</param>
    /// <param name="unseen">What the line may do between the readings at a chainage without their telling, mm.</param>
    /// <param name="without">A fit without readings in doubt, which the band holds too.</param>
    public static SurveyMovement Of(
        IReadOnlyList<ExactFit> fits, IReadOnlyList<double> costs, double rulerError, double inflation, Func<double, double> unseen, ExactFit? without)
    {
        var best = fits[0];
        int count = (int)Math.Clamp(Math.Ceiling(best.Line.Length / Spacing), FewestStations, MostStations) + 1;
        double[] stations = [.. Enumerable.Range(0, count).Select(k => best.Line.Length * k / (count - 1))];
        var spreads = fits.Select(f => new Spread(f, best.Line, stations)).ToArray();
        double[][] moves = Moves(spreads, costs, inflation);
        double[] width = [.. stations.Select((_, k) => Math.Sqrt(moves.Sum(m => m[k] * m[k]) / Draws) + (Narrowest * rulerError))];
        double[] reached = [.. moves.Select(m => m.Select((x, k) => Math.Abs(x) / width[k]).Max()).Order()];
        double factor = reached[(int)(Drawn * Draws)];
        double[] hidden = [.. stations.Select(unseen)];

        // Reading errors and what lies between the readings have nothing to do with one another: root of squares.
        double[] likely = [.. width.Select((w, k) => Math.Sqrt((w * factor * w * factor) + (hidden[k] * hidden[k])))];

        if (without is not null)
        {
            double[] other = Against(without.Line, best.Line, stations);
            likely = [.. likely.Select((w, k) => Math.Max(w, Math.Abs(other[k])))];
        }

        // The likely bound allows for other shapes, the movement of the stated shape does not: no worst is less than what is likely.
        double[][] misread = spreads[0].Misread(rulerError);
        return new(stations, likely, [.. stations.Select((_, k) => Math.Max(misread.Sum(m => Math.Abs(m[k])), likely[k]))])
        {
            Loose = best.Profile.Placed ? null : new LooseShape(stations, moves, hidden.Max()),
        };
    }

    // Lines drawn at random against the stated one, so many of each fit as it is worth.
    private static double[][] Moves(Spread[] spreads, IReadOnlyList<double> costs, double inflation)
    {
        double total = costs.Sum(c => Math.Exp((costs[0] - c) / 2));
        var random = new Random(Seed);
        double[][] moves = new double[Draws][];
        for (int draw = 0, fit = 0, drawn = 0; draw < Draws; draw++, drawn++)
        {
            while (fit < spreads.Length - 1 && drawn >= Draws * Math.Exp((costs[0] - costs[fit]) / 2) / total)
            {
                (fit, drawn) = (fit + 1, 0);
            }

            moves[draw] = spreads[fit].Draw(random, inflation);
        }

        return moves;
    }

    private static double[] Against(Centreline line, Centreline stated, double[] stations) =>
        [.. stations.Select(s => -line.Locate(stated.At(s).Position, s).Offset)];

    /// <summary>How one fit's line moves against the stated one.</summary>
    private sealed class Spread
    {
        private readonly double[] rest;
        private readonly double[][] slopes;
        private readonly double[] root;
        private readonly double[][] jacobian;
        private readonly ExactFit fit;

        public Spread(ExactFit fit, Centreline stated, double[] stations)
        {
            this.fit = fit;
            int count = fit.Profile.Freedom;
            rest = Against(fit.Line, stated, stations);
            slopes = [.. stations.Select(_ => new double[count])];
            for (int f = 0; f < count; f++)
            {
                var (line, step) = fit.Moved(f);
                double[] moved = Against(line, stated, stations);
                for (int k = 0; k < stations.Length; k++)
                {
                    slopes[k][f] = (moved[k] - rest[k]) / step;
                }
            }

            jacobian = fit.Jacobian();
            var equations = fit.Equations(jacobian);
            double[] beforehand = fit.Beforehand();
            for (int f = 0; f < count; f++)
            {
                equations.Hold(f, beforehand[f]);
            }

            root = equations.CovarianceRoot();
        }

        public double[] Draw(Random random, double inflation)
        {
            int count = fit.Profile.Freedom;
            double[] z = [.. Enumerable.Range(0, count).Select(_ => inflation * Normal(random))], figures = new double[count];
            for (int f = 0; f < count; f++)
            {
                for (int c = 0; c < count; c++)
                {
                    figures[f] += root[(f * count) + c] * z[c];
                }
            }

            return [.. slopes.Select((slope, k) => rest[k] + Dot(slope, figures))];
        }

        /// <summary>How the line moves at every station for each reading off by the ruler error.</summary>
        public double[][] Misread(double rulerError)
        {
            // The movement at a station for a reading's miss is slope · (F Fᵀ) · row / σ.
            int count = fit.Profile.Freedom;
            double[] Rooted(double[] x) => [.. Enumerable.Range(0, count).Select(c => Enumerable.Range(0, count).Sum(f => x[f] * root[(f * count) + c]))];
            double[][] rooted = [.. slopes.Select(Rooted)];
            return [.. jacobian.Select(Rooted).Select((row, i) => fit.LeftOut[i]
                ? new double[rooted.Length]
                : rooted.Select(slope => Dot(slope, row) / fit.Sigma(i) * Math.Min(rulerError, fit.Sigma(i) * Math.Sqrt(3))).ToArray())];
        }

        private static double Dot(double[] a, double[] b)
        {
            double sum = 0;
            for (int i = 0; i < a.Length; i++)
            {
                sum += a[i] * b[i];
            }

            return sum;
        }

        // Two even draws make a normal one (G. E. P. Box and M. E. Muller, 1958).
        private static double Normal(Random random) =>
            Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
    }
}
