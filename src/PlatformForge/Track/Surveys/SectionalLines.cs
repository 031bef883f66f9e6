using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Admissible;

namespace PlatformForge.Track.Surveys;

/// <summary>The set of lines of pieces between stated joints that a survey admits.</summary>
internal static class SectionalLines
{
    private const int Fewest = 4, MostRounds = 50;
    private const double Settled = 1e-6;

    /// <summary>The set, or null where the track is not said to be sectional, its joints are not stated, or the readings fix no
    /// places.</summary>
    public static JointedLines? Of(Survey survey, SurveyedTrack track)
    {
        if (survey is not PlaceSurvey || survey.Laying is not { As: LaidAs.Sectional, Joints.Count: > 0 })
        {
            return null;
        }

        var bands = FlexibleLines.Bands(survey, track).ToArray();
        BandPlace[] places = [.. bands.Select((b, i) => new BandPlace(b.Residual.Chainage, b.Residual.Miss, b.Band.Error, i)).OrderBy(p => p.Chainage)];
        return places.Length < Fewest ? null : JointedLines.Of(survey.Laying, track.Line, places, survey.Laying.Joints.Select(j => Chainage(track, j)).Order());
    }

    /// <summary>The readings of a set by its indices.</summary>
    public static IReadOnlyList<ReadingBand> Readings(Survey survey, SurveyedTrack track, IReadOnlyList<int> indices)
    {
        var bands = FlexibleLines.Bands(survey, track).Select(b => b.Band).ToArray();
        return [.. indices.Select(i => bands[i])];
    }

    // Places along a string lie square to it; of other surveys they are chainages.
    private static double Chainage(SurveyedTrack track, double told)
    {
        var read = track.Residuals.Where(r => r.Reading is PlaceReading { Ordinate: not null }).Select(r => (r.Chainage, Of: ((PlaceReading)r.Reading).Ordinate!)).ToArray();
        if (read.Length < 2)
        {
            return told;
        }

        var (one, square) = (read[0].Of, read[0].Of.Square);
        Point2 along = new(square.Y, -square.X), foot = one.Foot + (along * (told - one.Distance));
        double s = read.MinBy(r => Math.Abs(r.Of.Distance - told)).Chainage;
        for (int round = 0; round < MostRounds; round++)
        {
            var frame = track.Line.At(s);
            double step = Point2.Dot(foot - frame.Position, along) / Point2.Dot(frame.Tangent, along);
            s += step;
            if (!(Math.Abs(step) > Settled))
            {
                break;
            }
        }

        return s;
    }
}
