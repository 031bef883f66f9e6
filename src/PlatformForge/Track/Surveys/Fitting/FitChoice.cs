using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>Which of the fits met in a search remain in question.</summary>
internal static class FitChoice
{
    private const int Most = 6;

    // Fits of one structure whose sums of squares differ by less than this are one fit found twice.
    private const double Same = 0.05;

    /// <summary>The cheapest fit and the next cheapest ones that differ from it.</summary>
    public static List<ProfileFit> Distinct(IReadOnlyList<ProfileFit> found, int most = Most)
    {
        var kept = new List<ProfileFit>();
        foreach (var fit in found)
        {
            if (!kept.Any(k => Math.Abs(k.Cost - fit.Cost) < Same && k.Profile.Freedom == fit.Profile.Freedom))
            {
                kept.Add(fit);
            }

            if (kept.Count == most)
            {
                break;
            }
        }

        return kept;
    }
}
