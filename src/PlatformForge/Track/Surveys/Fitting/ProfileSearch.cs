using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// Finds the cheapest profile for a set of observations by adding, altering and dropping one thing at a time: changes of
/// curvature, transitions, kinks, readings left out. All fits met on the way are kept, since those of nearly the same cost
/// tell how much the readings leave open.
/// </summary>
internal sealed class ProfileSearch(IReadOnlyList<Observation> observations, double length, bool placed)
{
    private const int MostRounds = 40;

    // Additions that do not pay by themselves and are followed up nevertheless.
    private const int Lookahead = 2;

    private const double PromisingShare = 0.3;

    /// <summary>Most changes of curvature in one survey.</summary>
    public const int MostChanges = 16;

    // Places along the track at which a change or a kink is tried.
    private const int Places = 48;

    /// <summary>At most one reading in this many may be left out.</summary>
    public const int ReadingsPerOutlier = 5;

    // A move must lower the cost by this much, so that rounding does not keep the search going.
    private const double LeastGain = 1e-3;

    // Fits this much dearer than the best are not worth keeping: e^(-12/2) is a four hundredth of its weight.
    private const double WorthKeeping = 12;

    // A column that the present figures explain but for this part of it adds nothing.
    public const double LeastColumn = 1e-10;

    // Work spent on one search, in readings times squared figures: some times what ordinary surveys need. Track without
    // recognisable elements would otherwise be tried with every shape there is.
    private const double MostWork = 1.6e7;

    private readonly List<ProfileFit> met = [];
    private double work;

    private bool IsSpent => work > MostWork;

    private bool kinksTried = true;

    /// <summary>
    /// The cheapest fit first, then the others worth keeping, by cost. The track is first taken to be without kinks: a kink
    /// explains a bend so readily that a search which meets it early may end in a polygon; the other way round is tried too. Each set of
    /// readings that look misread
    /// beforehand is tried as a start of its own, since a wild figure that is still in leads the first steps astray.
    /// </summary>
    /// <param name="suspects">Sets of readings to leave out at the start.</param>
    public IReadOnlyList<ProfileFit> Run(IReadOnlyList<bool[]> suspects)
    {
        // The way without kinks goes first: the others may spend all the work on a polygon.
        bool[] none = new bool[observations.Count];
        var found = new List<ProfileFit> { Smoothly(none), Descend(Simplest(none)), FromSeeds(none) };
        if (FromKinks(none) is { } kinked)
        {
            found.Add(kinked);
        }

        if (FromShapes(ShapeSeeds.Among(observations, none, length), none) is { } whole)
        {
            found.Add(whole);
        }

        foreach (bool[] leftOut in suspects)
        {
            if (IsSpent)
            {
                break;
            }

            found.Add(Smoothly(leftOut));
        }

        return Kept(LookAhead(found.MinBy(f => f.Cost)!));
    }

    private ProfileFit Smoothly(bool[] leftOut)
    {
        kinksTried = false;
        var smooth = Descend(Simplest(leftOut));
        kinksTried = true;
        return Descend(smooth);
    }

    /// <summary>The same from a fit that is known to be near the best.</summary>
    public IReadOnlyList<ProfileFit> Improve(CurvatureProfile first, bool[] leftOut) => Kept(Descend(Meet(first, leftOut)));

    /// <summary>The cheapest fit that a search without kinks finds when some readings are left out.</summary>
    /// <param name="leftOut">Which those are.</param>
    /// <param name="seeds">Shapes that the search begins from as well.</param>
    public ProfileFit Without(bool[] leftOut, IReadOnlyList<CurvatureProfile> seeds)
    {
        kinksTried = false;
        var simple = Descend(Simplest(leftOut));
        return FromShapes(seeds, leftOut) is { } whole && whole.Cost < simple.Cost ? whole : simple;
    }

    // The cheapest of some whole shapes, which is then altered; without kinks.
    private ProfileFit? FromShapes(IReadOnlyList<CurvatureProfile> seeds, bool[] leftOut)
    {
        if (IsSpent || seeds.Count == 0)
        {
            return null;
        }

        bool before = kinksTried;
        kinksTried = false;
        var found = Descend(seeds.Select(p => Meet(p, leftOut)).MinBy(f => f.Cost)!);
        kinksTried = before;
        return found;
    }

    /// <summary>The cheapest fit that a search finds from one curve with a kink.</summary>
    public ProfileFit WithKink(double at, bool[] leftOut) => Descend(Meet(ProfileMoves.AddKink(One(false), at), leftOut));

    private IReadOnlyList<ProfileFit> Kept(ProfileFit best) =>
        [best, .. met.Where(f => f != best && f.Cost < best.Cost + WorthKeeping).OrderBy(f => f.Cost)];

    /// <summary>Adds while that pays, then simplifies while that pays, until neither does.</summary>
    private ProfileFit Descend(ProfileFit best)
    {
        for (int round = 0; round < MostRounds && !IsSpent; round++)
        {
            var grown = Repeat(best, f => Additions(f, PromisingShare));
            var pruned = Repeat(grown, Simplifications);
            if (pruned == best)
            {
                break;
            }

            best = pruned;
        }

        return best;
    }

    // One step up may lead to two steps down, as for an arc between two straights.
    private ProfileFit LookAhead(ProfileFit best)
    {
        for (int round = 0; round < MostRounds && !IsSpent; round++)
        {
            var next = Additions(best, 0).Select(p => Meet(p.Profile, p.LeftOut)).OrderBy(f => f.Cost).Take(Lookahead).ToList()
                .Select(Descend).Append(best).MinBy(f => f.Cost)!;
            if (next.Cost > best.Cost - LeastGain)
            {
                break;
            }

            best = next;
        }

        return best;
    }

    private ProfileFit Repeat(ProfileFit best, Func<ProfileFit, IEnumerable<(CurvatureProfile Profile, bool[] LeftOut)>> moves)
    {
        for (int round = 0; round < MostRounds && !IsSpent; round++)
        {
            var next = best;
            foreach (var (profile, leftOut) in moves(best))
            {
                if (IsSpent)
                {
                    break;
                }

                var fit = Meet(profile, leftOut, next.Cost);
                next = fit.Cost < next.Cost - LeastGain ? fit : next;
            }

            if (next == best)
            {
                break;
            }

            best = next;
        }

        return best;
    }

    private ProfileFit FromSeeds(bool[] none)
    {
        var profile = Simplest(none).Profile;
        foreach (double seed in ChangeSeeds.Among(observations))
        {
            if (profile.Freedom + 3 <= observations.Count)
            {
                profile = ProfileMoves.AddChange(profile, seed, sudden: true);
            }
        }

        return Descend(Meet(profile, none));
    }

    // Kinks that show at once are taken out of the readings, the rest is searched for its shape, and they are put back.
    private ProfileFit? FromKinks(bool[] none)
    {
        var seeds = KinkSeeds.Among(observations, MostChanges);
        if (seeds.Length == 0)
        {
            return null;
        }

        double Bent(double s) => seeds.Sum(k => k.Turn * Math.Max(0, s - k.At));
        var eased = new ProfileSearch([.. observations.Select(o => o with { Value = o.Value - (o.Sigma * o.Of(Bent)) })], length,
            placed)
        { kinksTried = false };
        var rest = eased.Descend(eased.Simplest(none)).Profile;
        work += eased.work;
        foreach (var (at, turn) in seeds)
        {
            rest = ProfileMoves.AddKink(rest, at, turn);
        }

        return rest.Freedom < observations.Count ? Descend(Meet(rest, none)) : null;
    }

    private CurvatureProfile One(bool straight) => new() { Length = length, Placed = placed, Curvatures = [0], Straight = [straight] };

    private ProfileFit Simplest(bool[] none)
    {
        return new[] { Meet(One(true), none), Meet(One(false), none) }.MinBy(f => f.Cost)!;
    }

    private ProfileFit Meet(CurvatureProfile profile, bool[] leftOut, double bound = double.PositiveInfinity)
    {
        var fit = ProfileFit.Polish(profile, leftOut, observations, bound);
        met.Add(fit);
        work += (double)observations.Count * (profile.Freedom + 1) * (profile.Freedom + 1);
        return fit;
    }

    private IEnumerable<(CurvatureProfile Profile, bool[] LeftOut)> Simplifications(ProfileFit fit)
    {
        foreach (var simpler in Simpler(fit.Profile))
        {
            yield return (simpler, fit.LeftOut);
        }

        for (int i = 0; i < fit.LeftOut.Length; i++)
        {
            if (fit.LeftOut[i])
            {
                yield return (fit.Profile, ProfileMoves.Set(fit.LeftOut, i, false));
            }
        }
    }

    // Shapes with one thing less, or with one in place of two.
    private IEnumerable<CurvatureProfile> Simpler(CurvatureProfile p)
    {
        for (int j = 0; j < p.Middles.Length; j++)
        {
            yield return ProfileMoves.DropChange(p, j);
            yield return ProfileMoves.TurnChange(p, j);
        }

        for (int j = 0; j < p.Straight.Length; j++)
        {
            if (!p.Straight[j])
            {
                yield return ProfileMoves.Straighten(p, j);
            }
        }

        for (int j = 1; j < p.Middles.Length; j++)
        {
            if ((p.Curvatures[j] - p.Curvatures[j - 1]) * (p.Curvatures[j + 1] - p.Curvatures[j]) > 0)
            {
                yield return ProfileMoves.StretchToTransition(p, j);
            }
            else if (kinksTried)
            {
                yield return ProfileMoves.StretchToKink(p, j);
                yield return ProfileMoves.StretchToKinkWithin(p, j);
            }
        }

        for (int k = 0; k < p.KinkAt.Length; k++)
        {
            yield return ProfileMoves.DropKink(p, k);
            if (p.Middles.Length > 0)
            {
                yield return ProfileMoves.KinkToTransition(p, k);
            }
        }
    }

    /// <summary>The most promising things to add, by how much a small one would lower the sum of squares.</summary>
    /// <param name="fit">The fit to add to.</param>
    /// <param name="share">Part of its price that an addition must promise at first sight; once it finds its place it may bring more.</param>
    private List<(CurvatureProfile Profile, bool[] LeftOut)> Additions(ProfileFit fit, double share)
    {
        var moves = new List<(CurvatureProfile Profile, bool[] LeftOut)>();
        var p = fit.Profile;
        int used = fit.LeftOut.Count(x => !x);
        if (p.Freedom + 3 > used)
        {
            return moves;
        }

        double unit = Math.Log(Math.Max(12, fit.LeftOut.Length));
        var span = new ColumnSpan(fit, observations);
        var (changes, kinks) = Gains(p, span);
        if (p.Middles.Length < MostChanges)
        {
            foreach (int g in Peaks(changes, 2.5 * unit * share).Take(2))
            {
                double at = length * (g + 0.5) / Places;
                moves.Add((ProfileMoves.AddChange(p, at, sudden: true), fit.LeftOut));
                moves.Add((ProfileMoves.AddChange(p, at, sudden: false), fit.LeftOut));
            }
        }

        foreach (int g in Peaks(kinks, 3 * unit * share).Take(kinksTried ? 1 : 0))
        {
            moves.Add((ProfileMoves.AddKink(p, length * (g + 0.5) / Places), fit.LeftOut));
        }

        if (fit.LeftOut.Count(x => x) < fit.LeftOut.Length / ReadingsPerOutlier)
        {
            int worst = span.MostDoubtful(LeastColumn, ProfileFit.OutlierPrice(fit.LeftOut.Length) * share);
            if (worst >= 0)
            {
                moves.Add((p, ProfileMoves.Set(fit.LeftOut, worst, true)));
            }
        }

        return moves;
    }

    // By how much a small change of curvature, and a small kink, at each of the places would lower the sum of squares.
    private (double[] Changes, double[] Kinks) Gains(CurvatureProfile p, ColumnSpan span)
    {
        double[] changes = new double[Places], kinks = new double[Places];
        for (int g = 0; g < Places; g++)
        {
            double at = length * (g + 0.5) / Places;
            double end = p.Middles.Where(m => m > at).Append(double.PositiveInfinity).First();
            kinks[g] = !kinksTried ? 0 : span.Gain(i => observations[i].Of(s => Math.Max(0, s - at)), LeastColumn);
            changes[g] = span.Gain(i => observations[i].Of(s => Ramp.Twice(s, at, 0) - (double.IsInfinity(end) ? 0 : Ramp.Twice(s, end, 0))), LeastColumn);
        }

        return (changes, kinks);
    }

    private static IEnumerable<int> Peaks(double[] gains, double least) => Enumerable.Range(0, gains.Length)
        .Where(g => gains[g] > least && (g == 0 || gains[g] >= gains[g - 1]) && (g == gains.Length - 1 || gains[g] > gains[g + 1]))
        .OrderByDescending(g => gains[g]);
}
