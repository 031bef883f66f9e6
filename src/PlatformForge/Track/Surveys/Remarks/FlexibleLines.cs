using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;

namespace PlatformForge.Track.Surveys.Remarks;

/// <summary>The set of flexible lines that a survey admits.</summary>
internal static class FlexibleLines
{
    // Fewer readings leave a line free.
    private const int Fewest = 4;

    // Of the stated errors; the first are those themselves.
    private static readonly double[] Wider = [1, 1.03, 1.1, 1.25];

    /// <summary>
    /// The set, or null for versines, which fix no places, and for track that the user says is sectional. Readings that are named as
    /// misread or in doubt are left out, which makes the
    /// set no smaller.
    /// </summary>
    public static AdmissibleLines? Of(Survey survey, SurveyedTrack track) => Of(survey, track, survey.Laying);

    /// <summary>The set of what is usual in the scale as well as what was stated; null where that is no more.</summary>
    public static AdmissibleLines? OfUsual(Survey survey, SurveyedTrack track) => survey.Laying.Widened is { } wider ? Of(survey, track, wider) : null;

    private static AdmissibleLines? Of(Survey survey, SurveyedTrack track, Laying laying)
    {
        if (survey is not PlaceSurvey places || survey.Laying.As == LaidAs.Sectional)
        {
            return null;
        }

        ReadingBand[] bands = [.. Bands(survey, track).Select(b => b.Band with { Error = b.Band.Error + laying.Smoothed })];
        if (bands.Length < Fewest)
        {
            return null;
        }

        // A middle that was not found bounds nothing. In a set that is all but empty the search may hunt to and fro: that of errors a little larger holds it,
        // and bounds it on the safe side.
        foreach (double wider in Wider)
        {
            var set = AdmissibleLines.Of(laying, [.. bands.Select(b => b with { Error = b.Error * wider })], track.Line);
            bool stated = wider == Wider[0];
            if ((set.IsSettled && !set.IsEmpty) || (stated && set.IsEmpty))
            {
                return set;
            }
        }

        return null;
    }

    /// <summary>Every place that is not named as misread or in doubt, as a condition on the line, with where it lies on the stated
    /// one.</summary>
    internal static IEnumerable<(ReadingBand Band, ReadingResidual Residual)> Bands(Survey survey, SurveyedTrack track)
    {
        var left = track.Outliers.Concat(track.Doubted).Select(r => r.Reading).ToHashSet();
        return track.Residuals
            .Where(r => r.Reading is PlaceReading && !left.Contains(r.Reading))
            .Select(r => (new ReadingBand((PlaceReading)r.Reading, survey.RulerError * Share((PlaceReading)r.Reading, track.Line.At(r.Chainage).Tangent)), r));
    }

    // Square to the track, a figure read off a string is off by no more than the ruler; a point's x and y may both be, whose sum square
    // to the track is the greater the more
    // it runs askew to both. What a drawing's line is off by is square to it.
    private static double Share(PlaceReading reading, Point2 tangent) =>
        reading.Ordinate is null && reading.DrawnAt is null ? Math.Abs(tangent.X) + Math.Abs(tangent.Y) : 1;
}
