namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>A profile fitted to observations, some of them left out as misread.</summary>
/// <param name="Profile">The shape.</param>
/// <param name="LeftOut">Which observations are left out.</param>
/// <param name="SquareSum">Sum of squared residuals of the others, in standard deviations.</param>
internal sealed record ProfileFit(CurvatureProfile Profile, bool[] LeftOut, double SquareSum)
{
    private const int MostRounds = 30;

    // A round that lowers the sum by less than this part of it ends the work.
    private const double Settled = 1e-7;

    private const double FirstDamping = 1e-4;
    private const double MostDamping = 1e6;

    /// <summary>
    /// What the fit costs: the sum of squares plus a price for every free figure, after Schwarz (1978), ln n each. A place that
    /// is searched for along the track costs more, since the best of many places always fits noise to some degree (N. R. Zhang
    /// and D. O. Siegmund, 2007, price a change point so): half as much again for a change, double for a kink; a reading left
    /// out is dearer still. The cheapest fit is taken.
    /// </summary>
    public double Cost
    {
        get
        {
            double unit = Math.Log(Math.Max(12, LeftOut.Length));
            double price = 0;
            for (int j = 0; j < Profile.Curvatures.Length; j++)
            {
                price += Profile.Straight[j] ? 0 : unit;
            }

            for (int j = 0; j < Profile.Middles.Length; j++)
            {
                price += Profile.Sudden[j] ? 1.5 * unit : 2.5 * unit;
            }

            price += 3 * unit * Profile.KinkAt.Length;
            price += ((3 * unit) + 3) * LeftOut.Count(x => x);
            return SquareSum + price;
        }
    }

    /// <summary>Levenberg's and Marquardt's rule from a first shape to the nearest least sum of squares.</summary>
    public static ProfileFit Polish(CurvatureProfile first, bool[] leftOut, IReadOnlyList<Observation> observations)
    {
        var profile = first.With(first.Figures());
        double sum = Sum(profile, leftOut, observations), damping = FirstDamping;
        int count = profile.Freedom;
        if (count == 0)
        {
            return new(profile, leftOut, sum);
        }

        double[] row = new double[count];
        for (int round = 0; round < MostRounds; round++)
        {
            var equations = new NormalEquations(count);
            for (int i = 0; i < observations.Count; i++)
            {
                if (!leftOut[i])
                {
                    observations[i].Gradient(profile, row);
                    equations.Add(row, observations[i].Residual(profile));
                }
            }

            double before = sum;
            double[] figures = profile.Figures();
            while (damping < MostDamping)
            {
                double[] step = equations.Step(damping), next = [.. figures.Zip(step, (f, d) => f + d)];
                var tried = profile.With(next);
                double triedSum = Sum(tried, leftOut, observations);
                if (triedSum < sum)
                {
                    (profile, sum) = (tried, triedSum);
                    damping = Math.Max(damping / 10, FirstDamping / 1000);
                    break;
                }

                damping *= 10;
            }

            if (before - sum <= Settled * before)
            {
                break;
            }
        }

        return new(profile, leftOut, sum);
    }

    private static double Sum(CurvatureProfile profile, bool[] leftOut, IReadOnlyList<Observation> observations)
    {
        double sum = 0;
        for (int i = 0; i < observations.Count; i++)
        {
            if (!leftOut[i])
            {
                double r = observations[i].Residual(profile);
                sum += r * r;
            }
        }

        return sum;
    }
}
