using PlatformForge.Track.Surveys.Fitting;
using PlatformForge.Track.Surveys.Fitting.Lines;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Remarks;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;

namespace PlatformForge.Track.Surveys;

/// <summary>
/// Front door to fitting: finds the fair line that the readings support, names those that do not belong to it, and tells how
/// far the line may be off. The ruler error is taken as a bound, evenly spread: its standard deviation is 1/√3 of it.
/// </summary>
public static class TrackSurveyor
{
    /// <summary>Reads and fits in one go.</summary>
    public static Outcome<SurveyedTrack> Survey(SurveySpec spec)
    {
        var read = SurveyReader.Read(spec);
        if (read.Value is not { } survey || !read.Succeeded)
        {
            return Outcome.Fault<SurveyedTrack>(read.Findings);
        }

        var fitted = Fit(survey);
        return fitted with { Findings = [.. read.Findings, .. fitted.Findings] };
    }

    /// <summary>Fits a survey that was read. Warnings name outliers, kinks and too much scatter.</summary>
    public static Outcome<SurveyedTrack> Fit(Survey survey) => Fit(survey, told: true);

    /// <summary>The same, nothing told: what a survey would come to with a reading more or another; null where nothing could be said of it.</summary>
    internal static SurveyedTrack? Tried(Survey survey) => Fit(survey, told: false).Value;

    private static Outcome<SurveyedTrack> Fit(Survey survey, bool told)
    {
        double sigma = survey.RulerError / Math.Sqrt(3);
        var found = Found(survey, sigma);
        var best = found.Fits[0];
        var residuals = ResidualTable.Of(survey, best.Line, found.LeftOut);
        var scatter = ReadingScatter.Of(best, residuals, sigma);
        double spacing = StationSpacing.Of(survey), sharpest = StationSpacing.Sharpest(best.Profile, spacing);
        var movement = Movement(survey, found, scatter, spacing, sharpest);
        if (!movement.Likely.Concat(movement.Worst).All(double.IsFinite) || !double.IsFinite(scatter.Share))
        {
            return Outcome.Fault<SurveyedTrack>(Finding.Error("PF2149", survey.Key, "From these readings it can't be told how far the line may be off.",
                "Check the distances between the readings and their unit; measure along more of the track."));
        }

        residuals = ResidualTable.Named(residuals, OutlierBound(residuals.Count) * scatter.Widening * sigma);
        var track = Drawn(survey, found, residuals, movement, scatter.Share * sigma) with
        {
            DoubtfulKinks = [.. best.Line.Kinks.Where(k => found.HasOneWithoutKink(k.Chainage, KinkPlace * spacing, survey.Laying.As == LaidAs.Flexible))],
        };
        track = JointedNaming.Held(survey, track with { KinksInDoubt = KinksOf(track, found.Without?.Line, spacing) });
        track = Bounded(survey, track) with { Read = survey };
        return told ? Told(survey, track, found, scatter.IsTooMuch, sharpest) : Outcome.Of(track, []);
    }

    private static FittedShapes Found(Survey survey, double sigma) => survey switch
    {
        PlaceSurvey places => PlaceFitter.Fit(places.Track, places.Runs, sigma),
        VersineSurvey versines => VersineFitter.Fit(versines, sigma),
        _ => throw new BrokenInvariantException($"Track: no fit for {survey.GetType().Name}."),
    };

    private static SurveyMovement Movement(Survey survey, FittedShapes found, ReadingScatter scatter, double spacing, double sharpest)
    {
        var line = found.Fits[0].Line;
        return LineUncertainty.Of(
            found.Fits,
            found.Costs,
            survey.RulerError,
            scatter.Widening * (found.Fits.Any(f => f.Profile.Knotted) ? BetweenKnots : 1),
            s => StationSpacing.Unseen(spacing, sharpest, Math.Min(s, line.Length - s), line.At(s).Curvature),
            found.Without);
    }

    // The line that is stated, with what the readings say of it.
    private static SurveyedTrack Drawn(Survey survey, FittedShapes found, IReadOnlyList<ReadingResidual> residuals, SurveyMovement movement, double scatter)
    {
        var line = found.Fits[0].Line;
        var versines = survey as VersineSurvey;
        return new(
            line,
            AlignmentText.Recognised(survey.Track, line, survey.Key),
            ElementTable.Of(line),
            residuals,
            ElementTable.Sharpest(line),
            movement,
            survey.RulerError,
            scatter,
            versines?.Readings ?? [])
        {
            Chord = versines?.Chord,
            Closing = found.Closing switch
            {
                ChordTarget chord => new(true, chord.Length, chord.Length - chord.Miss(line)),
                ChordHeightTarget height => new(false, Signed(survey, height.Height), Signed(survey, height.Height - height.Miss(line))),
                _ => null,
            },
            Doubted = found.Without is { } without ? [.. ResidualTable.Of(survey, without.Line, found.InDoubt).Where(r => r.IsOutlier)] : [],
        };
    }

    // What is looked for only where somebody is told.
    private static Outcome<SurveyedTrack> Told(Survey survey, SurveyedTrack bounded, FittedShapes found, bool scattered, double sharpest)
    {
        var track = bounded with
        {
            ErrorTooSmall = survey is PlaceSurvey read ? ErrorTooSmall.Of(read, found, scattered) : null,
            CausesOfFlexibleFound = new(() => FlexibleCauses.Of(survey, bounded)),
            CausesFound = new(() => SectionalCauses.Of(survey, bounded)),
        };
        track = track with { Outside = track.ErrorTooSmall is null ? OutsideLine.Of(survey, track, found.Others) : null };
        return Outcome.Of(track, SurveyRemarks.Of(survey, track, scattered, found.Fits[0].Profile.Knotted, sharpest));
    }

    // The sets that bound the line: told about it, found when somebody asks.
    private static SurveyedTrack Bounded(Survey survey, SurveyedTrack unbounded)
    {
        var track = unbounded with
        {
            Laying = survey.Laying,
            FlexibleSet = new(() => FlexibleLines.Of(survey, unbounded)),
            UsualSet = new(() => FlexibleLines.OfUsual(survey, unbounded)),
        };
        var pieces = survey;
        var moves = SectionalLines.Moves(survey, track);

        // A false radius makes some joint fit better elsewhere; where joints alone go with the readings, it is the radii that do not.
        if (survey.Laying.Radii.Count > 0 && SectionalLines.Moved(moves) is not null)
        {
            var alone = survey with { Laying = survey.Laying with { Radii = [] } };
            var others = SectionalLines.Moves(alone, track);
            if (SectionalLines.Moved(others) is null && SectionalLines.Of(alone, unbounded) is { AtOdds.Length: 0 })
            {
                // Where single pieces have none of the radii, those are told.
                bool single = SectionalLines.Of(survey, unbounded) is { Strange.Count: > 0 };
                (pieces, moves, track) = (single ? survey : alone, others, track with { RadiiLeftOut = !single });
            }
        }

        return track with
        {
            SectionalSet = new(() => SectionalLines.Of(pieces, unbounded)),
            Misplaced = SectionalLines.Moved(moves),
            PerhapsMovedSet = new(() => SectionalLines.Perhaps(pieces, unbounded, moves)),
        };
    }

    // Kinks next to a reading in doubt that the line without that reading has not.
    private static (Kink, Reading)[] KinksOf(SurveyedTrack track, Centreline? without, double spacing) => without is null ? [] :
        [.. track.Line.Kinks.Where(k => !without.Kinks.Any(o => Math.Abs(o.Chainage - k.Chainage) < KinkPlace * spacing))
            .Select(k => (k, track.Doubted.Where(d => Math.Abs(d.Chainage - k.Chainage) < KinkPlace * spacing)
                .MinBy(d => Math.Abs(d.Chainage - k.Chainage))?.Reading)).Where(p => p.Item2 is not null).Select(p => (p.k, p.Item2!))];

    // As the file has it.
    private static double Signed(Survey survey, double versine) => versine * (int)((VersineSurvey)survey).Readings[0].Positive;

    // A smooth curve's curvature runs evenly between its knots, the track's does not: simulated surveys of track laid by eye
    // (SimulatedSurveyTests) lie within the bound at its rate when it is widened by so much.
    private const double BetweenKnots = 1.6;

    // Readings place a kink to within so many of their spacings.
    private const double KinkPlace = 1.5;

    // The price at which the search leaves a reading out, as a distance: more readings, more chances of a large miss.
    private static double OutlierBound(int readings) => Math.Sqrt(ProfileFit.OutlierPrice(readings));
}
