using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// Shapes beside the one that is stated, where the readings are too few to speak against them: its transitions as sudden changes
/// and the other way round, its straights as gentle curves, one more change of curvature between any two stations,
/// and smooth curves. They are
/// weighed by how well they foretell (H. Akaike, 1974) and not by the dearer price that chooses the stated shape (G. Schwarz,
/// 1978): that one holds simple shapes for likely beforehand, and few readings cannot mend it where it errs.
/// </summary>
internal static class NearShapes
{
    /// <summary>Most shapes that remain in question.</summary>
    public const int Most = 16;

    // Shapes that foretell worse than the stated one by more than this have a weight under a fiftieth of its own.
    private const double WorthKeeping = 8;

    /// <summary>The stated fit, then it and those met in the search and near it, the likeliest first, with costs to weigh them by.</summary>
    public static IReadOnlyList<ProfileFit> Among(IReadOnlyList<ProfileFit> found, IReadOnlyList<Observation> observations)
    {
        var best = found[0];
        var near = found.Skip(1)
            .Concat(About(best.Profile, best.LeftOut, observations))
            .Concat(SmoothSearch.Through(best, observations, SmoothSearch.FewestPerKnot));
        double least = best.Foretelling;
        return [best with { Cost = best.Foretelling }, .. near.Where(f => f.Foretelling < least + WorthKeeping).OrderBy(f => f.Foretelling)
            .Select(f => f with { Cost = f.Foretelling })];
    }

    /// <summary>Shapes near one, fitted to all readings but those left out.</summary>
    public static IEnumerable<ProfileFit> About(CurvatureProfile profile, bool[] leftOut, IReadOnlyList<Observation> observations) =>
        Moves(profile, observations).Where(p => p.Freedom < leftOut.Count(x => !x)).Select(p => ProfileFit.Polish(p, leftOut, observations));

    private static IEnumerable<CurvatureProfile> Moves(CurvatureProfile p, IReadOnlyList<Observation> observations)
    {
        if (p.Knotted)
        {
            yield break;
        }

        for (int j = 0; j < p.Middles.Length; j++)
        {
            yield return ProfileMoves.TurnChange(p, j);
        }

        for (int j = 0; j < p.Straight.Length; j++)
        {
            if (p.Straight[j])
            {
                yield return ProfileMoves.Free(p, j);
            }
        }

        for (int k = 0; k < p.KinkAt.Length; k++)
        {
            yield return ProfileMoves.DropKink(p, k);
        }

        for (int i = 1; i < observations.Count; i++)
        {
            double at = (observations[i - 1].Place + observations[i].Place) / 2;
            yield return ProfileMoves.AddChange(p, at, sudden: true);
            yield return ProfileMoves.AddChange(p, at, sudden: false);
        }
    }
}
