using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;

namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>
/// What the distance between readings can tell. A reading off by e is met as well by a bend of the track that reaches from the
/// reading before to the one after: over two spacings h the versine of a curve of radius R is h²/(2R) (for chords short against
/// the radius), so that the bend has R = h²/(2e). Where the track itself bends as sharply, a misreading and a change of curvature
/// look alike, and the readings are too far apart to tell one from the other, or a transition from a curve without one.
/// </summary>
internal static class StationSpacing
{
    /// <summary>Ruler errors of a misreading that is promised to be named.</summary>
    public const double Misreading = 5;

    /// <summary>Gentler curves than R 1500 mm are no measure, 1/mm: a survey of straight track must still show where a curve begins.</summary>
    public const double Gentlest = 1 / 1500.0;

    /// <summary>Greatest spacing in mm at which a misreading of <see cref="Misreading"/> ruler errors looks sharper than the track.</summary>
    /// <param name="rulerError">Greatest reading error, mm.</param>
    /// <param name="curvature">Sharpest curvature of the track, 1/mm.</param>
    public static double Telling(double rulerError, double curvature) =>
        Math.Sqrt(2 * Misreading * rulerError / Math.Max(Math.Abs(curvature), Gentlest));

    /// <summary>The least misreading, mm, that looks sharper than the track at a spacing.</summary>
    /// <param name="spacing">Distance between readings, mm.</param>
    /// <param name="curvature">Sharpest curvature of the track, 1/mm.</param>
    public static double LeastTold(double spacing, double curvature) =>
        spacing * spacing * Math.Max(Math.Abs(curvature), Gentlest) / 2;

    /// <summary>
    /// How far, in mm, the track may leave a fitted line between two readings unseen. Curvature may be anything from none to the
    /// sharpest. Between readings it is half of that off the middle one, which over a chord of one spacing has half the versine
    /// h²/(8R). In the first and the last spacing no reading beyond holds the fit to the middle: there it may be off by all that
    /// its own curvature leaves, the more the farther from both readings.
    /// </summary>
    /// <param name="spacing">Distance between readings, mm.</param>
    /// <param name="sharpest">Sharpest curvature of the track, 1/mm.</param>
    /// <param name="fromEnd">Distance from the nearer end of the line, mm.</param>
    /// <param name="fitted">Curvature of the line there, 1/mm.</param>
    public static double Unseen(double spacing, double sharpest, double fromEnd, double fitted)
    {
        double between = spacing * spacing * sharpest / 16;
        double off = Math.Max(Math.Abs(fitted), sharpest - Math.Abs(fitted));
        return fromEnd < spacing ? Math.Max(between, off * fromEnd * (spacing - fromEnd) / 2) : between;
    }

    /// <summary>The kink in radians that turns by no more than the sharpest curve does over two spacings, so that it passes for a short
    /// curve.</summary>
    /// <param name="spacing">Distance between readings, mm.</param>
    /// <param name="curvature">Sharpest curvature of the track, 1/mm.</param>
    public static double HiddenKink(double spacing, double curvature) => 2 * spacing * Math.Abs(curvature);

    /// <summary>Mean distance between the readings of a survey, mm; of its densest run where there are two.</summary>
    public static double Of(Survey survey) => survey switch
    {
        VersineSurvey v => (v.Readings[^1].Station - v.Readings[0].Station) / (v.Readings.Count - 1),
        PlaceSurvey p => p.Runs.Min(r => Enumerable.Range(1, r.Count - 1).Sum(i => (r[i].Place - r[i - 1].Place).Length) / (r.Count - 1)),
        _ => throw new BrokenInvariantException($"Track: no spacing of {survey.GetType().Name}."),
    };

    /// <summary>Sharpest curvature, 1/mm, that is told by more than one reading; a curve at an end may rest on a single one.</summary>
    public static double Sharpest(CurvatureProfile profile, double spacing)
    {
        double sharpest = 0;
        for (int j = 0; j < profile.Curvatures.Length; j++)
        {
            double from = j == 0 ? 0 : profile.Middles[j - 1], to = j == profile.Middles.Length ? profile.Length : profile.Middles[j];
            sharpest = to - from > 2 * spacing || profile.Knotted ? Math.Max(sharpest, Math.Abs(profile.Curvatures[j])) : sharpest;
        }

        return sharpest;
    }
}
