namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>
/// A smooth curve for track in which no straights and curves can be recognised: curvature runs evenly between knots at even
/// distances, so that the line is a chain of transitions. How many knots it has is chosen by cost, as shapes are.
/// </summary>
internal static class SmoothSearch
{
    private const int FewestSpans = 3;
    private const int MostSpans = 80;
    private const double MoreSpans = 1.3;

    // A knot has to be told by this many readings at least, or the curve would follow their errors.
    private const int ReadingsPerKnot = 3;

    // Fits this much dearer than the best have no weight left.
    private const double WorthKeeping = 12;

    /// <summary>Smooth curves, cheapest first; none where the readings are too few.</summary>
    public static IReadOnlyList<ProfileFit> Run(IReadOnlyList<Observation> observations, double length, bool[] leftOut)
    {
        var fits = new List<ProfileFit>();
        int most = Math.Min(MostSpans, observations.Count / ReadingsPerKnot);
        for (double spans = FewestSpans; spans <= most && length / spans > 4 * CurvatureProfile.LeastStretch; spans = Math.Ceiling(spans * MoreSpans))
        {
            fits.Add(ProfileFit.Polish(Knotted(length, (int)spans), leftOut, observations));
        }

        double least = fits.Count == 0 ? 0 : fits.Min(f => f.Cost);
        return [.. fits.Where(f => f.Cost < least + WorthKeeping).OrderBy(f => f.Cost)];
    }

    private static CurvatureProfile Knotted(double length, int spans)
    {
        double span = length / spans, change = span - (2 * CurvatureProfile.LeastStretch);
        return new()
        {
            Length = length,
            Placed = true,
            Knotted = true,
            Curvatures = new double[spans + 1],
            Straight = new bool[spans + 1],
            Middles = [.. Enumerable.Range(0, spans).Select(j => (j + 0.5) * span)],
            Squares = [.. Enumerable.Repeat(change * change, spans)],
            Sudden = new bool[spans],
        };
    }
}
