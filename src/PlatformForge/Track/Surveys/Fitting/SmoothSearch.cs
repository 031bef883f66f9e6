using PlatformForge.Track.Surveys.Fitting.Lines;

namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// A smooth curve for track in which no straights and curves can be recognised: curvature runs evenly between knots at even
/// distances, so that the line is a chain of transitions. How many knots it has is chosen by cost, as shapes are, and readings
/// that do not fit are left out by the same price.
/// </summary>
internal static class SmoothSearch
{
    private const int FewestSpans = 3;
    private const int MostSpans = 80;
    private const double MoreSpans = 1.2;

    // A knot has to be told by this many readings at least, or the curve would follow their errors.
    private const int ReadingsPerKnot = 3;

    // Where readings are so few that the curve would be too stiff to meet them, so many per knot have to do.
    private const int Few = 30;

    /// <summary>The fewest readings that can tell a knot.</summary>
    public const int FewestPerKnot = 2;

    // A curve with its transitions changes curvature twice; more changes than that may stand for a line that has no elements. A kink counts for two.
    // With 4 and more only, the bound held in 95 of 100 simulated surveys of track laid by eye, no more than is promised; so it holds in 99.
    private const int ManyChanges = 3;

    private const int InQuestion = 4;

    // Fits this much dearer than the best have no weight left.
    private const double WorthKeeping = 12;

    /// <summary>
    /// The fits of a search among elements, or smooth curves where those meet the readings and the elements do not. Where many
    /// elements meet them, they may stand for a curve that has none: then the smooth curves stay in question beside them.
    /// </summary>
    public static IReadOnlyList<ProfileFit> Unless(IReadOnlyList<ProfileFit> found, IReadOnlyList<Observation> observations, double length, bool placed)
    {
        var best = found[0];
        bool misread = best.LeftOut.Contains(true);
        bool many = best.Profile.Middles.Length + (2 * best.Profile.KinkAt.Length) >= ManyChanges;
        if (!best.IsScattered && !misread && !many)
        {
            return found;
        }

        var smooth = Run(observations, length, placed);
        if (smooth.Count == 0 || smooth[0].IsScattered)
        {
            return found;
        }

        return best.IsScattered || smooth[0].Foretelling < best.Foretelling
            ? smooth
            : !many ? found
            : [best, .. smooth.Take(InQuestion).Select(f => f with { Cost = best.Cost }), .. found.Skip(1)];
    }

    /// <summary>Smooth curves as long as a fit's, with the same readings left out, of every count of knots that have so many readings each.</summary>
    public static IEnumerable<ProfileFit> Through(ProfileFit fit, IReadOnlyList<Observation> observations, double readingsPerKnot)
    {
        int readings = fit.LeftOut.Count(x => !x), most = (int)Math.Min(MostSpans, readings / readingsPerKnot);
        double length = fit.Profile.Length;
        return Enumerable.Range(FewestSpans, Math.Max(0, most - FewestSpans + 1))
            .Where(spans => length > spans * 4 * CurvatureProfile.LeastStretch)
            .Select(spans => Knotted(length, spans, fit.Profile.Placed))
            .Where(knots => knots.Freedom < readings)
            .Select(knots => ProfileFit.Polish(knots, fit.LeftOut, observations));
    }

    /// <summary>Smooth curves, cheapest first; none where the readings are too few.</summary>
    public static IReadOnlyList<ProfileFit> Run(IReadOnlyList<Observation> observations, double length, bool placed)
    {
        var fits = Run(observations, length, placed, ReadingsPerKnot);
        return fits.Count > 0 && fits[0].IsScattered && observations.Count < Few ? Run(observations, length, placed, FewestPerKnot) : fits;
    }

    private static IReadOnlyList<ProfileFit> Run(IReadOnlyList<Observation> observations, double length, bool placed, int readingsPerKnot)
    {
        var fits = new List<ProfileFit>();
        int most = Math.Min(MostSpans, observations.Count / readingsPerKnot);
        most = (int)Math.Min(most, length / (4 * CurvatureProfile.LeastStretch));
        for (int spans = Math.Min(FewestSpans, most); spans > 0; spans = spans == most ? 0 : Math.Min(most, (int)Math.Ceiling(spans * MoreSpans)))
        {
            fits.Add(WithoutMisread(Knotted(length, spans, placed), observations));
        }

        double least = fits.Count == 0 ? 0 : fits.Min(f => f.Cost);
        return [.. fits.Where(f => f.Cost < least + WorthKeeping).OrderBy(f => f.Cost)];
    }

    private static ProfileFit WithoutMisread(CurvatureProfile knots, IReadOnlyList<Observation> observations)
    {
        var fit = ProfileFit.Polish(knots, new bool[observations.Count], observations);
        for (int left = 0; left < observations.Count / ProfileSearch.ReadingsPerOutlier; left++)
        {
            int worst = new ColumnSpan(fit, observations).MostDoubtful(ProfileSearch.LeastColumn, ProfileFit.OutlierPrice(observations.Count));
            if (worst < 0)
            {
                break;
            }

            fit = ProfileFit.Polish(fit.Profile, ProfileMoves.Set(fit.LeftOut, worst, true), observations);
        }

        return fit;
    }

    private static CurvatureProfile Knotted(double length, int spans, bool placed)
    {
        double span = length / spans;

        // A short curve comes first, since a project's transition goes on from the curvature that was reached.
        double From(int j) => Math.Max(j * span, CurvatureProfile.LeastStretch);
        return new()
        {
            Length = length,
            Placed = placed,
            Knotted = true,
            Curvatures = new double[spans + 1],
            Straight = new bool[spans + 1],
            Middles = [.. Enumerable.Range(0, spans).Select(j => ((j + 1) * span + From(j)) / 2)],
            Squares = [.. Enumerable.Range(0, spans).Select(j => Math.Pow(((j + 1) * span) - From(j), 2))],
            Sudden = new bool[spans],
        };
    }
}
