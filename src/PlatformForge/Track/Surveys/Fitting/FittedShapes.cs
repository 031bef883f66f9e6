using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>What a fitter has found.</summary>
/// <param name="Fits">The fits in question; the one to state first.</param>
/// <param name="Costs">Their costs, which weigh them.</param>
/// <param name="LeftOut">Indices of the readings that the first leaves out as misread.</param>
/// <param name="InDoubt">Indices of the readings that the first meets and that may be misread all the same.</param>
/// <param name="Without">A fit that leaves those in doubt out; null where there are none.</param>
internal sealed record FittedShapes(IReadOnlyList<ExactFit> Fits, IReadOnlyList<double> Costs, int[] LeftOut, int[] InDoubt, ExactFit? Without)
{
    /// <summary>The part of the closing chord that is left out as misread; null where none is.</summary>
    public FitTarget? Closing { get; init; }

    /// <summary>Lines with a reading less, or with a kink, that are nearly as likely as the first, likeliest first; looked for when
    /// asked.</summary>
    public Func<IReadOnlyList<OtherLine>> Others { get; init; } = () => [];

    /// <summary>
    /// What the likeliest shape costs, so that fits to other ruler errors can be held against it: readings that a shape's own figures do not take up are
    /// the likelier
    /// the smaller the error is that they are met within.
    /// </summary>
    public double Worth { get; init; }

    // Fits this much dearer than the first have no weight left.
    private const double WorthKeeping = 12;

    // A fit this much dearer than the first is as likely as one in twenty: e^(−6/2).
    private const double Likely = 6;

    // Track that is said to have no kinks is taken at its word until a fit without one is as unlikely as one in ninety: e^(−9/2).
    private const double LikelyOfSmooth = 9;

    /// <summary>Whether a likely fit has no kink within a distance of a chainage.</summary>
    /// <param name="at">The chainage, mm.</param>
    /// <param name="within">The distance, mm.</param>
    /// <param name="smooth">Whether the track is said to have no kinks.</param>
    public bool HasOneWithoutKink(double at, double within, bool smooth) => Fits.Zip(Costs).Skip(1)
        .Any(p => p.Second < Costs[0] + (smooth ? LikelyOfSmooth : Likely) && !p.First.Profile.KinkAt.Any(k => Math.Abs(k - at) < within));

    /// <summary>The exact fits of what a search has kept. What the exact fit makes worse counts: a closing chord that is not met,
    /// curves too
    /// sharp for anything to run on where the readings leave them free. Fits that have no weight left are dropped, but for the
    /// first.</summary>
    public static FittedShapes Of(IReadOnlyList<ProfileFit> kept, Func<ProfileFit, ExactFit> exact, int[] leftOut, int[] inDoubt, ExactFit? without)
    {
        static double Worse(ExactFit fit, ProfileFit found) =>
            Math.Max(0, fit.SquareSum - found.SquareSum) + ProfileFit.PriceOfSharpness(fit.Profile) - ProfileFit.PriceOfSharpness(found.Profile);

        var all = kept.Select(f => (Fit: exact(f), Found: f)).Select(p => (p.Fit, Cost: p.Found.Cost + Worse(p.Fit, p.Found))).ToList();
        double first = all[0].Cost;
        var worth = all.Where((p, i) => i == 0 || p.Cost < first + WorthKeeping).ToList();
        return new([.. worth.Select(p => p.Fit)], [.. worth.Select(p => p.Cost)], leftOut, inDoubt, without);
    }
}
