using PlatformForge.Track.Surveys.Fitting;
using PlatformForge.Track.Surveys.Fitting.Lines;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys;

/// <summary>
/// How far readings scatter about a line, in parts of what their ruler error says. Where readings are taken together by neighbours, their
/// means scatter far less than they do: then the readings themselves are asked.
/// </summary>
/// <param name="Share">Standard deviation of single readings over the stated one.</param>
/// <param name="IsTooMuch">Whether it is more than readings of the stated error would show in one of a thousand surveys.</param>
internal sealed record ReadingScatter(double Share, bool IsTooMuch)
{
    // The middle miss of normal errors is this part of their standard deviation.
    private const double MiddleOfNormal = 0.6745;

    // Of thousands of readings a hundredth more is told apart from chance, and nobody states his ruler so well: a variance beyond this counts.
    private const double WorthTelling = 1.1;

    /// <summary>Factor on what the stated error leaves open: nothing is told better for readings that agree by chance.</summary>
    public double Widening => IsTooMuch ? Share : 1;

    /// <param name="fit">The line, with the sum of squares that the fit has left.</param>
    /// <param name="table">Every reading against it.</param>
    /// <param name="sigma">Standard deviation of a reading as stated, mm.</param>
    public static ReadingScatter Of(ExactFit fit, IReadOnlyList<ReadingResidual> table, double sigma)
    {
        double share = fit.SquareSum / Math.Max(1, fit.DegreesOfFreedom);
        bool tooMuch = ProfileFit.IsTooMuch(fit.SquareSum, fit.DegreesOfFreedom);
        if (table.Count <= PlaceFitter.MostSingle)
        {
            return new(Math.Sqrt(share), tooMuch);
        }

        double[] misses = [.. table.Select(r => Math.Abs(r.Miss) / sigma).Order()];
        double bound = Math.Sqrt(ProfileFit.OutlierPrice(misses.Length)) * misses[misses.Length / 2] / MiddleOfNormal;
        double[] near = [.. misses.TakeWhile(m => m <= bound)];
        double squares = near.Sum(m => m * m), own = squares / Math.Max(1, near.Length - fit.Profile.Freedom);
        tooMuch |= own > WorthTelling && ProfileFit.IsTooMuch(squares, near.Length - fit.Profile.Freedom);
        return new(Math.Sqrt(tooMuch ? Math.Max(share, own) : own), tooMuch);
    }
}
