using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// Readings that a search left out where they are so far apart that the track may as well bend there. Such a reading is put back
/// unless shapes that meet it are clearly less likely than the one without it, and stays in doubt: how far the line may be
/// off then allows for both.
/// </summary>
internal static class PutBack
{
    // A shape with the reading that foretells worse by less than this is as good as one in eight: e^(−4/2).
    private const double Clearly = 4;

    // Changes of curvature, as a standard deviation, in parts of the range of curvature that the track has without the reading:
    // a bend that is needed for one reading is the likelier the more it is like the track's others.
    private const double UsualChange = 0.75;

    // A curve that bends anew at almost every reading meets them all, and is what cannot be ruled out.
    private const double ReadingsPerKnot = 1.25;

    // Readings times readings put back, each by some hundred fits: enough for all that surveys of up to 75 readings may leave out. Where hundreds of
    // readings leave out dozens, they do not belong to one line, and that is told by itself. One put back costs fits as many as there
    // are readings, each as dear as there are readings: of more than so many, fewer still are tried.
    private const int MostTried = 1200, ManyReadings = 80;

    private static int Most(int readings) => readings <= ManyReadings ? MostTried / readings : Math.Max(1, MostTried * ManyReadings / (readings * readings));

    /// <summary>The fits with the one to state first, and which observations are in doubt.</summary>
    public static (IReadOnlyList<ProfileFit> Found, int[] InDoubt) From(IReadOnlyList<ProfileFit> found, IReadOnlyList<Observation> observations)
    {
        var best = found[0];
        double usual = Math.Max(best.Profile.Curvatures.Max() - best.Profile.Curvatures.Min(), StationSpacing.Gentlest) * UsualChange;
        double bound = Likeness(best, usual) + Clearly;
        bool[] leftOut = best.LeftOut;
        ProfileFit? stated = null;
        var doubted = new List<int>();
        int tried = 0;
        for (int i = 0; i < leftOut.Length; i++)
        {
            if (!leftOut[i] || ++tried > Most(leftOut.Length))
            {
                continue;
            }

            bool[] fewer = ProfileMoves.Set(leftOut, i, false);
            var likely = NearShapes.About(best.Profile, fewer, observations)
                .Concat(SmoothSearch.Through(best with { LeftOut = fewer }, observations, ReadingsPerKnot))
                .MinBy(f => Likeness(f, usual));
            if (likely is not null && Likeness(likely, usual) < bound)
            {
                (stated, leftOut) = (likely, fewer);
                doubted.Add(i);
            }
        }

        // The other way round there is no doubt where the shape without the reading is clearly less likely.
        if (stated is not null && Likeness(stated, usual) + Clearly < Likeness(best, usual))
        {
            return ([stated, .. found], []);
        }

        return stated is null ? (found, []) : ([stated, .. found], [.. doubted]);
    }

    private static double Likeness(ProfileFit fit, double usual)
    {
        double cost = fit.Foretelling;
        for (int j = 1; j < fit.Profile.Curvatures.Length; j++)
        {
            double change = (fit.Profile.Curvatures[j] - fit.Profile.Curvatures[j - 1]) / usual;
            cost += change * change;
        }

        return cost;
    }
}
