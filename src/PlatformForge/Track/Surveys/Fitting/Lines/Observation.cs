namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>
/// A reading as the search sees it: a weighted sum of profile values at some chainages, to be met within a standard deviation.
/// A place is the value at one chainage; a versine half the sum of those at both ends of its chord less the one in its middle.
/// </summary>
/// <param name="At">Chainages, mm.</param>
/// <param name="Weights">Weights.</param>
/// <param name="Value">What was read, mm.</param>
/// <param name="Sigma">Standard deviation, mm.</param>
/// <param name="Reading">Index of the reading, or of the first of those it stands for.</param>
internal sealed record Observation(double[] At, double[] Weights, double Value, double Sigma, int Reading)
{
    /// <summary>The chainage it mostly speaks of, mm.</summary>
    public double Place => At[0];

    /// <summary>What was read less what the profile says, in standard deviations.</summary>
    public double Residual(CurvatureProfile profile)
    {
        double value = 0;
        for (int k = 0; k < At.Length; k++)
        {
            value += Weights[k] * profile.Value(At[k]);
        }

        return (Value - value) / Sigma;
    }

    /// <summary>Slope of the profile's answer by its free figures, in standard deviations.</summary>
    public void Gradient(CurvatureProfile profile, Span<double> gradient)
    {
        gradient.Clear();
        for (int k = 0; k < At.Length; k++)
        {
            profile.AddGradient(At[k], Weights[k] / Sigma, gradient);
        }
    }

    /// <summary>What a function of the chainage would add to the answer, in standard deviations.</summary>
    public double Of(Func<double, double> function)
    {
        double value = 0;
        for (int k = 0; k < At.Length; k++)
        {
            value += Weights[k] * function(At[k]);
        }

        return value / Sigma;
    }
}
