using PlatformForge.Track.Surveys.Fitting.Lines;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Remarks;

/// <summary>
/// What the distance between readings leaves open: misreadings that pass for bends, kinks that pass for short curves and short curves for kinks, and
/// ends whose last readings no others check.
/// </summary>
internal static class SpacingRule
{
    // Readings at an end which the fit can meet by a curve of their own.
    private const int EndReadings = 2;

    // An end bends more sharply than the rest where it does so by this much.
    private const double Sharper = 1.25;

    // Places at which curvature is looked up.
    private const int Places = 400;

    /// <param name="survey">The readings; versines tell curvature themselves and are not looked at.</param>
    /// <param name="track">The line found.</param>
    /// <param name="sharpest">Its sharpest curvature, 1/mm.</param>
    public static IEnumerable<Finding> Check(Survey survey, SurveyedTrack track, double sharpest)
    {
        if (survey is not PlaceSurvey places)
        {
            yield break;
        }

        foreach (var finding in Ends(places, track))
        {
            yield return finding;
        }

        double spacing = StationSpacing.Of(survey), telling = StationSpacing.Telling(survey.RulerError, sharpest);
        if (spacing > telling)
        {
            yield return Finding.Note(
                "PF2141",
                survey.Key,
                Invariant($"The readings are {spacing:0} mm apart: one misread by less than {StationSpacing.LeastTold(spacing, sharpest):0.0} mm can pass for ")
                    + "a bend of the track, and is not sure to be named. How far the line may be off holds for readings within the ruler error only.",
                Invariant($"Readings {Math.Floor(telling):0} mm apart or less would name one that is off by {StationSpacing.Misreading:0} ruler errors ")
                    + Invariant($"({StationSpacing.Misreading * survey.RulerError:0.##} mm), but for the first two and the last two."));
        }

        foreach (var finding in Kinks(places, track, spacing))
        {
            yield return finding;
        }
    }

    /// <summary>Short stretches that bend more or less than both their neighbours, which is how a curve draws a kink.</summary>
    private static IEnumerable<Finding> Kinks(PlaceSurvey survey, SurveyedTrack track, double spacing)
    {
        var elements = track.Elements;

        // Who says that the track is of pieces says what a joint turns by at most.
        double most = survey.Laying.As == LaidAs.Sectional ? Math.Min(MostKink, survey.Laying.GreatestKink) : MostKink;
        for (int i = 1; i < elements.Count - 1; i++)
        {
            FittedElement one = elements[i - 1], two = elements[i], three = elements[i + 1];
            bool sudden = one.Kind != FittedKind.Transition && two.Kind != FittedKind.Transition && three.Kind != FittedKind.Transition;
            double before = two.StartCurvature - one.EndCurvature, after = two.EndCurvature - three.StartCurvature, length = two.To - two.From;

            // What stands out beside both neighbours: the end of a curve that is a little sharper there is no kink of all that it turns by.
            double turn = (Math.Abs(before) < Math.Abs(after) ? before : after) * length;
            if (sudden && before * after > 0 && length <= ShortStretch * spacing && Math.Abs(turn) >= LeastKink && Math.Abs(turn) <= most)
            {
                yield return Finding.Note(
                    "PF2144",
                    survey.Key,
                    Invariant($"The track from chainage {two.From:0} to {two.To:0} bends otherwise than on either side of it. ")
                        + Invariant($"It is drawn as a {(two.Kind == FittedKind.Straight ? "straight" : "curve")} and may be a kink ")
                        + Invariant($"of {Math.Abs(turn) * 180 / Math.PI:0.0}° to the {(turn > 0 ? "left" : "right")}: readings {spacing:0} mm apart meet ")
                        + "both.",
                    "Sight along the rail joints of sectional track; measure closer about a joint that shows a kink.");
            }
        }
    }

    // A stretch of up to so many spacings may stand for a kink; the readings place its ends no better than to one or two.
    private const double ShortStretch = 4;

    // Less than half a degree is no kink that anybody sees.
    private const double LeastKink = 0.5 * Math.PI / 180;

    // More than fifteen is no joint that anything runs over (common practice, no source).
    private const double MostKink = 15 * Math.PI / 180;

    /// <summary>An end that bends more sharply than all the rest, told by its last readings alone.</summary>
    private static IEnumerable<Finding> Ends(PlaceSurvey survey, SurveyedTrack track)
    {
        var used = track.Residuals.Where(r => !r.IsOutlier).OrderBy(r => r.Chainage).ToList();
        if (survey.Runs.Count > 1 || used.Count < (3 * EndReadings) + 1)
        {
            yield break;
        }

        double first = used[EndReadings].Chainage, last = used[^(EndReadings + 1)].Chainage, end = track.Line.Length;
        double rest = Sharpest(track.Line, first, last);
        foreach (var (from, to, one, other) in new[] { (0, first, used[0], used[1]), (last, end, used[^2], used[^1]) })
        {
            double sharpest = Sharpest(track.Line, from, to);
            if (sharpest > Sharper * Math.Max(rest, StationSpacing.Gentlest))
            {
                yield return RunRule.At(other.Reading, Finding.Warning(
                    "PF2142",
                    survey.Key,
                    Invariant($"The track seems to bend to R {1 / sharpest:0} mm at its {(from == 0 ? "beginning" : "end")}, sharper than all the rest ")
                        + Invariant($"({(rest > 0 ? Invariant($"R {1 / rest:0} mm") : "straight")}), and only the readings of lines {one.Reading.Row} ")
                        + Invariant($"and {other.Reading.Row} say so: no others check them."),
                    "Read these two again, and measure two or three places more beyond the end.",
                    FaultKind.Input));
            }
        }
    }

    private static double Sharpest(Centreline line, double from, double to)
    {
        // The joints themselves belong to either side: places lie between them.
        double sharpest = 0;
        for (int k = 0; k < Places; k++)
        {
            sharpest = Math.Max(sharpest, Math.Abs(line.At(from + ((to - from) * (k + 0.5) / Places)).Curvature));
        }

        return sharpest;
    }
}
