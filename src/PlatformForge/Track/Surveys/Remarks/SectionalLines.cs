using PlatformForge.Geometry;
using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;

namespace PlatformForge.Track.Surveys.Remarks;

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
        double[] joints = Within(survey, track);
        return places.Length < Fewest || joints.Length == 0 ? null : JointedLines.Of(survey.Laying, track.Line, places, joints);
    }

    // Chainages of the joints between the first reading and the last; others say nothing of the track there.
    private static double[] Within(Survey survey, SurveyedTrack track)
    {
        var (first, last) = (track.Residuals.Min(r => r.Chainage), track.Residuals.Max(r => r.Chainage));
        return [.. survey.Laying.Joints.Select(j => Chainage(track, j)).Where(j => j > first && j < last).Distinct().Order()];
    }

    /// <summary>What readings cost over pieces between the stated joints, see <see cref="JointPlaces.CostOf"/>; null where none are stated between the
    /// readings, or there are
    /// too many to be held one by one.</summary>
    public static Func<IReadOnlyList<(double At, double Value)>, double>? Pieces(Survey survey, SurveyedTrack track)
    {
        if (survey is not PlaceSurvey || survey.Laying is not { As: LaidAs.Sectional, Joints.Count: > 0 } || track.Residuals.Count > MostSingle
            || Within(survey, track) is not { Length: > 0 } joints)
        {
            return null;
        }

        return readings => JointPlaces.CostOf(survey.Laying, [.. readings.OrderBy(r => r.At)], survey.RulerError, joints);
    }

    /// <summary>The readings of a set by its indices.</summary>
    public static IReadOnlyList<ReadingBand> Readings(Survey survey, SurveyedTrack track, IReadOnlyList<int> indices)
    {
        var bands = FlexibleLines.Bands(survey, track).Select(b => b.Band).ToArray();
        return [.. indices.Select(i => bands[i])];
    }

    // A sum of squares that falls by less, when a joint is moved, may be chance: of 500 surveys with true joints one fell by 17.1, the others by 12.7 at most.
    private const double Telling = 20;

    // A place at which the sum falls by so much is likelier than the stated one by e to the half of it: the bound allows for both.
    private const double Likely = 3;

    // More readings than this are taken together by neighbours.
    private const int MostSingle = 400;

    /// <summary>A stated joint that the readings want elsewhere, clearly; null for none.</summary>
    public static MovedJoint? Moved(IReadOnlyList<MovedJoint> moves) => moves.MaxBy(m => m.Gain) is { Gain: > Telling } best ? best : null;

    /// <summary>Joints that the readings may want elsewhere, too little to be told for certain, each with the set of lines that it would leave there.</summary>
    public static IReadOnlyList<MovedJoints> Perhaps(Survey survey, SurveyedTrack track, IReadOnlyList<MovedJoint> moves, double least = Likely)
    {
        return [.. moves.Where(m => m.Gain > least)
            .Select(m =>
                new MovedJoints(m,
                    Of(survey with { Laying = survey.Laying with { Joints = [.. survey.Laying.Joints.Select(s => s == m.Stated ? m.Wanted : s)] } }, track)!))
            .Where(m => m.Lines is { AtOdds.Length: 0, Strange.Count: 0 })];
    }

    /// <summary>The best place for each stated joint, the others as stated; none where no joints are stated.</summary>
    public static IReadOnlyList<MovedJoint> Moves(Survey survey, SurveyedTrack track)
    {
        if (survey is not PlaceSurvey || survey.Laying is not { As: LaidAs.Sectional, Joints.Count: > 0 })
        {
            return [];
        }

        var curve = PlatformForge.Track.Surveys.Fitting.Lines.ReferenceLine.TwiceIntegrated(track.Line);
        var read = FlexibleLines.Bands(survey, track).Select(b => (At: b.Residual.Chainage, Value: curve(b.Residual.Chainage) + b.Residual.Miss))
            .OrderBy(r => r.At).ToArray();
        if (read.Length < Fewest)
        {
            return [];
        }

        int together = 1 + (read.Length / MostSingle);
        var means = read.Chunk(together).Select(c => (c.Average(r => r.At), c.Average(r => r.Value))).ToArray();
        double error = survey.RulerError * Math.Max(Fitting.PlaceFitter.LeastMeanError, 1 / Math.Sqrt(together));
        var within = survey.Laying.Joints.Order().Select(j => (Stated: j, At: Chainage(track, j))).Where(j => j.At > read[0].At && j.At < read[^1].At)
            .ToArray();
        double[] stated = [.. within.Select(j => j.Stated)], joints = [.. within.Select(j => j.At)];
        return [.. JointPlaces.Best(survey.Laying, means, error, joints)
            .Select(m => m with { Stated = stated[m.Joint], Wanted = stated[m.Joint] + m.At - joints[m.Joint] })];
    }

    /// <summary>Where on the line a stated joint is: places along a string lie square to it; of other surveys they are chainages.</summary>
    public static double Chainage(SurveyedTrack track, double told)
    {
        var read = track.Residuals.Where(r => r.Reading is PlaceReading { Ordinate: not null })
            .Select(r => (r.Chainage, Of: ((PlaceReading)r.Reading).Ordinate!)).ToArray();
        if (read.Length < 2)
        {
            return told;
        }

        // A square points to the left of the string or to its right, as the track lies; feet run along it either way.
        var (one, last) = (read.MinBy(r => r.Of.Distance).Of, read.MaxBy(r => r.Of.Distance).Of);
        if (!(last.Distance > one.Distance))
        {
            return told;
        }

        Point2 along = (last.Foot - one.Foot) * (1 / (last.Distance - one.Distance)), foot = one.Foot + (along * (told - one.Distance));
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
