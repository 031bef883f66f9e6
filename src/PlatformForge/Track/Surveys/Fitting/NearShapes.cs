namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// Shapes beside the one that is stated, where the readings are too few to speak against them: its transitions as sudden changes
/// and the other way round, its straights as gentle curves, and one more change of curvature between any two stations. They are
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
        var near = found.Skip(1).Concat(Moves(best.Profile, observations)
            .Where(p => p.Freedom < observations.Count)
            .Select(p => ProfileFit.Polish(p, best.LeftOut, observations)));
        double least = best.Foretelling;
        return [best with { Cost = best.Foretelling }, .. near.Where(f => f.Foretelling < least + WorthKeeping).OrderBy(f => f.Foretelling).Select(f => f with { Cost = f.Foretelling })];
    }

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
