namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>A profile fitted to observations, some of them left out as misread.</summary>
/// <param name="Profile">The shape.</param>
/// <param name="LeftOut">Which observations are left out.</param>
/// <param name="SquareSum">Sum of squared residuals of the others, in standard deviations.</param>
internal sealed record ProfileFit(CurvatureProfile Profile, bool[] LeftOut, double SquareSum)
{
    private const int MostRounds = 12;

    // A round that lowers the sum by less than this ends the work: costs are compared to a unit or so.
    private const double Settled = 0.01;

    // After this many rounds a shape that is dearer than the one in hand by more than the hopeless sum is given up.
    private const int PatientRounds = 4;
    private const double Hopeless = 40;

    // Kinks of track that vehicles run on, as a standard deviation in radians: three degrees. Sharper bends are curves.
    private const double UsualKink = 3 * Math.PI / 180;

    // However sharp, a bend at one place costs no more than this on top: drawings have corners.
    private const double MostForTurn = 7;

    // Nothing runs on curves of less than R 150 mm, 1/mm (common practice, no source); sharper ones stand for kinks or for misread figures, and
    // cost as if R 300 mm were one standard deviation.
    private const double UnheardOf = 1 / 150.0, UsualCurvature = 1 / 300.0;

    // A kink under a station and a misread versine look the same; misreading is the commoner, and the finding speaks of both.
    private const double UnderStation = 6;

    // A stretch of fewer spacings than this, and shorter than so many mm, is hardly a curve or a straight of its own (common practice, no source).
    private const double ShortStretch = 3, ShortLength = 100;

    private static readonly Damping Damped = new(First: 1e-4, Least: 1e-7, Most: 1e4, MostRounds);

    /// <summary>
    /// What the fit costs: the sum of squares plus a price for every free figure, after Schwarz (1978), ln n each. A place that
    /// is searched for along the track costs more, since the best of many places always fits noise to some degree (N. R. Zhang
    /// and D. O. Siegmund, 2007, price a change point so): half as much again for a change, double for a kink, and more for a sharp one; a
    /// reading left out is dearer still. The cheapest fit is taken.
    /// </summary>
    public double Cost { get; init; } = SquareSum + Price(Profile, LeftOut);

    // A smooth curve's figures mean nothing by themselves; they are taken as long as they foretell (H. Akaike, 1974), since too
    // few of them pull the line off its place.
    private const double KnotPrice = 2;

    /// <summary>
    /// Price of leaving out one reading of so many: the square of the distance in standard deviations beyond which a reading is
    /// named. At 30 readings it is 3.4, or 2.0 ruler errors.
    /// </summary>
    public static double OutlierPrice(int readings) => (2.5 * Math.Log(Math.Max(12, readings))) + 3;

    /// <summary>The sum of squares with Akaike's price for every figure: the less, the better the fit foretells places that were not read.</summary>
    public double Foretelling => SquareSum + (KnotPrice * Profile.Freedom) + (LeftOut.Count(x => x) * OutlierPrice(LeftOut.Length));

    /// <summary>Whether the sum of squares is more than readings of the stated error would leave in one of a thousand surveys.</summary>
    public bool IsScattered => IsTooMuch(SquareSum, LeftOut.Count(x => !x) - Profile.Freedom);

    /// <summary>The scatter of the readings as a part of the stated one, where it is less than chance would have it in one of a
    /// thousand surveys; otherwise null.</summary>
    public double? ScatterIfLess
    {
        get
        {
            int freedom = LeftOut.Count(x => !x) - Profile.Freedom;
            return freedom > 0 && SquareSum < freedom - (OnceInThousand * Math.Sqrt(2.0 * freedom)) ? Math.Sqrt(SquareSum / freedom) : null;
        }
    }

    // Normal deviate exceeded once in a thousand; the sum of squares of n normal figures has the mean n and the variance 2n.
    private const double OnceInThousand = 3.1;

    /// <summary>The same for a sum of squares with so many degrees of freedom.</summary>
    public static bool IsTooMuch(double squareSum, int freedom) =>
        squareSum > Math.Max(1, freedom) + (OnceInThousand * Math.Sqrt(2.0 * Math.Max(1, freedom)));

    /// <summary>What curves cost that nothing runs on.</summary>
    public static double PriceOfSharpness(CurvatureProfile profile)
    {
        double price = 0;
        foreach (double curvature in profile.Curvatures)
        {
            price += Math.Abs(curvature) > UnheardOf ? curvature * curvature / (UsualCurvature * UsualCurvature) : 0;
        }

        return price;
    }

    private static double Price(CurvatureProfile profile, bool[] leftOut)
    {
        double unit = Math.Log(Math.Max(12, leftOut.Length)), price = ((3 * unit) + (profile.Placed ? 0 : UnderStation)) * profile.KinkAt.Length;
        foreach (double turn in profile.KinkTurn)
        {
            price += Math.Min(turn * turn / (UsualKink * UsualKink), MostForTurn);
        }

        price += PriceOfSharpness(profile);
        foreach (bool straight in profile.Straight)
        {
            price += straight ? 0 : profile.Knotted ? KnotPrice : unit;
        }

        foreach (bool sudden in profile.Sudden)
        {
            price += profile.Knotted ? 0 : sudden ? 1.5 * unit : 2.5 * unit;
        }

        // Nobody lays a curve so short between two others: it stands for a kink.
        double shortest = profile.Placed && !profile.Knotted ? Math.Min(ShortLength, ShortStretch * profile.Length / Math.Max(1, leftOut.Length - 1)) : 0;
        for (int j = 1; j < profile.Middles.Length; j++)
        {
            price += profile.Middles[j] - profile.Middles[j - 1] < shortest ? 2 * unit : 0;
        }

        foreach (bool left in leftOut)
        {
            price += left ? OutlierPrice(leftOut.Length) : 0;
        }

        return price;
    }

    /// <summary>Levenberg's and Marquardt's rule from a first shape to the nearest least sum of squares.</summary>
    /// <param name="first">The first shape.</param>
    /// <param name="leftOut">Which observations are left out.</param>
    /// <param name="observations">The observations.</param>
    /// <param name="bound">Cost to beat; a shape far from it after some rounds is given up as it is.</param>
    public static ProfileFit Polish(CurvatureProfile first, bool[] leftOut, IReadOnlyList<Observation> observations, double bound = double.PositiveInfinity)
    {
        var start = first.With(first.Figures());
        double price = Price(start, leftOut);
        var misses = new Misses(start, leftOut, observations);
        double sum = misses.Sum(start);
        int count = start.Freedom;
        if (count == 0)
        {
            return new(start, leftOut, sum);
        }

        var (profile, least) = DampedDescent.From(
            start,
            sum,
            Damped,
            misses.Equations,
            (shape, step) =>
            {
                double[] figures = shape.Figures();
                for (int f = 0; f < count; f++)
                {
                    step[f] += figures[f];
                }

                var tried = shape.With(step);
                return (tried, misses.Sum(tried));
            },
            _ => Settled,
            (round, before) => round >= PatientRounds && before + price > bound + Hopeless);
        return new(profile, leftOut, least);
    }

    /// <summary>What the observations miss a shape by, and the normal equations to lower that.</summary>
    private sealed class Misses
    {
        private readonly bool[] leftOut;
        private readonly IReadOnlyList<Observation> observations;
        private readonly double[] residuals, row;
        private readonly double[]? slopes;
        private readonly NormalEquations equations;

        // The shape that the residuals are told of: a round begins where the one before it ended.
        private CurvatureProfile? told;

        public Misses(CurvatureProfile start, bool[] leftOut, IReadOnlyList<Observation> observations)
        {
            int count = start.Freedom;
            (this.leftOut, this.observations, residuals, row, equations) = (leftOut, observations, new double[leftOut.Length], new double[count],
                new NormalEquations(count));
            if (!start.IsLinear)
            {
                return;
            }

            // A smooth curve's slopes are the same wherever its figures stand.
            slopes = new double[leftOut.Length * count];
            for (int i = 0; i < leftOut.Length; i++)
            {
                if (!leftOut[i])
                {
                    var own = slopes.AsSpan(i * count, count);
                    observations[i].Gradient(start, own);
                    equations.Add(own, 0);
                }
            }
        }

        public double Sum(CurvatureProfile shape)
        {
            double sum = 0;
            for (int i = 0; i < leftOut.Length; i++)
            {
                if (!leftOut[i])
                {
                    double r = residuals[i] = observations[i].Residual(shape);
                    sum += r * r;
                }
            }

            told = shape;
            return sum;
        }

        public NormalEquations Equations(CurvatureProfile shape)
        {
            if (!ReferenceEquals(told, shape))
            {
                Sum(shape);
            }

            if (slopes is null)
            {
                equations.Clear();
            }
            else
            {
                equations.ClearRight();
            }

            for (int i = 0; i < leftOut.Length; i++)
            {
                if (leftOut[i])
                {
                    continue;
                }

                if (slopes is not null)
                {
                    equations.AddRight(slopes.AsSpan(i * row.Length, row.Length), residuals[i]);
                    continue;
                }

                observations[i].Gradient(shape, row);
                equations.Add(row, residuals[i]);
            }

            return equations;
        }
    }
}
