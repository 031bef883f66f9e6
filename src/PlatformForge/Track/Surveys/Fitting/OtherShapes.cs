using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// Shapes with one reading left out, or with one kink, that are nearly as likely as the one that is stated. The search ends at one
/// shape and does not meet
/// them: each is looked for by itself, reading by reading and gap by gap.
/// </summary>
internal static class OtherShapes
{
    // A shape dearer by less than this is as likely as one in thirty: e^(−7/2).
    private const double Clearly = 7;

    // Each reading costs two searches, whose work grows with the readings. More than this are hardly so far apart that a misread one
    // passes for a bend.
    private const int MostReadings = 80;

    /// <summary>The shapes, likeliest first; none where the stated one is one straight or curve, which nothing makes simpler.</summary>
    /// <param name="met">The fits of the search, the cheapest first.</param>
    /// <param name="observations">The readings.</param>
    /// <param name="length">Length of the line, mm.</param>
    public static IReadOnlyList<ProfileFit> Beside(IReadOnlyList<ProfileFit> met, IReadOnlyList<Observation> observations, double length)
    {
        var best = met[0];
        if (observations.Count > MostReadings || best.Profile.Middles.Length + best.Profile.KinkAt.Length == 0)
        {
            return [];
        }

        var seeds = ShapeSeeds.Among(observations, best.LeftOut, length);
        var without = Enumerable.Range(0, observations.Count).Where(i => !best.LeftOut[i]).AsParallel().AsOrdered()
            .Select(i => new ProfileSearch(observations, length, placed: true).Without(ProfileMoves.Set(best.LeftOut, i, true), seeds));
        var kinked = Enumerable.Range(1, observations.Count - 1).AsParallel().AsOrdered()
            .Select(i => new ProfileSearch(observations, length, placed: true).WithKink((observations[i - 1].Place + observations[i].Place) / 2, best.LeftOut));
        return FitChoice.Distinct([.. met.Skip(1).Concat(without).Concat(kinked).Where(f => IsOther(f, best) && f.Cost < best.Cost + Clearly)
            .OrderBy(f => f.Cost)], Most);
    }

    private const int Most = 16;

    private static bool IsOther(ProfileFit fit, ProfileFit best) =>
        fit.Profile.KinkAt.Length > 0 || fit.LeftOut.Zip(best.LeftOut).Any(p => p.First && !p.Second);
}

/// <summary>A line that the readings do not speak against.</summary>
/// <param name="Line">The line.</param>
/// <param name="LeftOut">Indices of the readings that it takes for misread and the stated line meets.</param>
internal sealed record OtherLine(Centreline Line, int[] LeftOut);
