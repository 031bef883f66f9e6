using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// A bend or kink in the first or last spacings that is told by the end reading alone: a misread one would look the same, and no
/// reading beyond speaks for either. The bend stays, and the reading is in doubt.
/// </summary>
internal static class EndDoubt
{
    // A shape without the bend and the reading that is dearer by less than this is as likely as one in fifty at least: e^(−8/2).
    private const double Clearly = 8;

    // The bend may begin two spacings from the end, and what it moves the last reading but one by lies within that one's error.
    private const int Told = 2;

    /// <summary>The fit without the end readings that alone tell a bend, and which these are; null and none where there are none.</summary>
    public static (ProfileFit? Without, int[] InDoubt) Of(ProfileFit stated, IReadOnlyList<Observation> observations)
    {
        ProfileFit? without = null;
        var doubted = new List<int>();
        int[] used = [.. Enumerable.Range(0, observations.Count).Where(i => !stated.LeftOut[i])];
        if (used.Length < (2 * Told) + 1)
        {
            return (null, []);
        }

        foreach (bool first in new[] { true, false })
        {
            var now = without ?? stated;
            int end = first ? used[0] : used[^1], last = first ? used[Told] : used[^(Told + 1)];
            var simpler = Simpler(now.Profile, first, observations[last].Place)
                .Select(p => ProfileFit.Polish(p, ProfileMoves.Set(now.LeftOut, end, true), observations))
                .Where(f => !f.Profile.Middles.Concat(f.Profile.KinkAt).Any(s => IsBeyond(s, first, observations[last].Place)))
                .MinBy(f => f.Cost);
            if (simpler is not null && simpler.Cost < now.Cost + Clearly)
            {
                without = simpler;
                doubted.Add(end);
            }
        }

        return (without, [.. doubted]);
    }

    // The profile without one thing that lies beyond a place; where another is left there, two readings tell it and not one.
    private static IEnumerable<CurvatureProfile> Simpler(CurvatureProfile p, bool first, double last)
    {
        if (p.Knotted)
        {
            yield break;
        }

        int change = p.Middles.Length == 0 ? -1 : first ? 0 : p.Middles.Length - 1;
        if (change >= 0 && IsBeyond(p.Middles[change], first, last))
        {
            yield return ProfileMoves.DropEnd(p, first);
        }

        for (int k = 0; k < p.KinkAt.Length; k++)
        {
            if (IsBeyond(p.KinkAt[k], first, last))
            {
                yield return ProfileMoves.DropKink(p, k);
            }
        }
    }

    private static bool IsBeyond(double s, bool first, double last) => first ? s <= last : s >= last;
}
