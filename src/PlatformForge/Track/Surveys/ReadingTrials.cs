using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Remarks;
using PlatformForge.Track.Surveys.Results;

namespace PlatformForge.Track.Surveys;

/// <summary>
/// What another reading would do, found by trying it: the survey is fitted anew with one reading more, or with another figure in place of one, and charged
/// as it then
/// would be. So it serves however the track was laid, and where readings contradict what was said of that.
/// </summary>
/// <param name="track">What the survey found.</param>
/// <param name="measure">The measure that what is charged hangs on most; places are looked for by it.</param>
/// <param name="figure">What is charged for a survey, mm; null where it cannot be told.</param>
/// <param name="present">What it is for this one, mm.</param>
public sealed class ReadingTrials(SurveyedTrack track, LineMeasure measure, Func<SurveyedTrack, double?> figure, double present)
{
    /// <summary>Among more readings than this nothing is tried: one more tells little there, and every trial would cost a fit of them all.</summary>
    public const int MostReadings = 1000;

    // So many places are fitted, of which so many are charged.
    private const int MostTried = 5, MostAgain = 3, MostWeighed = 2, MostLooked = 12;

    // A smaller change is not seen in hundredths, mm.
    private const double Seen = 0.01;

    // Readings that may be the one at fault where they contradict what was said, cheapest looks first.
    private const int MostRestored = 4;

    private readonly double middle = (measure.At.Min() + measure.At.Max()) / 2, reach = measure.At.Max() - measure.At.Min() + track.Laying.Ease;

    // The axle that what is charged hangs on most.
    private readonly double heaviest = measure.At.Zip(measure.Weights).MaxBy(p => Math.Abs(p.Second)).First;

    /// <summary>The advice; null where no reading would help, or there are too many for one to.</summary>
    public ReadingAdvice? Advise()
    {
        if (track.Read is not { } survey || track.Residuals.Count > MostReadings || track.ErrorTooSmall is not null)
        {
            return null;
        }

        var (again, restores) = Restoring(survey) is { } found ? (found, true) : (Best(Again(survey)), false);
        var more = Best(More(survey));
        return again is null && more is null ? null : new ReadingAdvice(
            again?.Told.Reading, again?.Leaves, again is { } a && IsLeftOut(a.Told.Reading), more?.Told.Chainage, more?.Leaves)
        {
            RepeatFigure = again?.Told.Fitting,
            RepeatRestores = restores,
            MoreReading = more?.Told.Reading,
        };
    }

    /// <summary>
    /// Advice that was worked out otherwise, with the figures that trying it gives: another reading moves the fitted line, which a set of lines does not tell
    /// of. What is not seen to help is left out; null where nothing is left.
    /// </summary>
    public ReadingAdvice? Hold(ReadingAdvice advice)
    {
        if (track.Read is not { } survey || track.Residuals.Count > MostReadings)
        {
            return advice;
        }

        var told = track.Residuals.FirstOrDefault(r => ReferenceEquals(r.Reading, advice.Repeat));
        var more = advice.MoreAt is { } at ? ReadingTrial.More(survey, track, at) : null;
        double? again = told is null ? null : Left(ReadingTrial.Again(survey, told)), further = more is { } one ? Left(one.Survey) : null;
        return again is null && further is null ? null : new(
            again is null ? null : advice.Repeat, again, again is not null && advice.IsLeftOut, further is null ? null : advice.MoreAt, further)
        {
            RepeatFigure = again is null ? null : told!.Fitting,
            MoreReading = further is null ? null : more?.Reading,
        };

        double? Left(Survey other) => TrackSurveyor.Tried(other) is { } found && figure(found) is { } leaves && leaves < present - Seen ? leaves : null;
    }

    private bool IsLeftOut(Reading reading) => track.Outliers.Concat(track.Doubted).Any(r => ReferenceEquals(r.Reading, reading));

    private bool IsNear(double chainage) => Math.Abs(chainage - middle) < reach;

    // Of pieces between stated joints the set itself says what a reading would do, without a fit: all places are looked at by it, and the best are tried.
    private IEnumerable<Trial> Promising(IEnumerable<Trial> trials, int most)
    {
        if (!track.IsBoundAsSectional || track.Read is not { } survey)
        {
            return trials.Take(most);
        }

        var own = track.RadiiLeftOut ? survey with { Laying = survey.Laying with { Radii = [] } } : survey;
        double Bounded(ReadingResidual told)
        {
            var other = track with
            {
                Residuals = [.. track.Residuals.Where(r => !ReferenceEquals(r.Reading, told.Reading)),
                told with { Miss = 0, IsOutlier = false }]
            };
            return SectionalLines.Of(own, other) is { AtOdds.Length: 0 } pieces ? new JointedDoubt(pieces, track.Line).Bound([measure])[0].Most
                : double.PositiveInfinity;
        }

        return trials.Take(MostLooked).AsParallel().AsOrdered().Select(t => (Trial: t, Most: Bounded(t.Told))).AsSequential().OrderBy(p => p.Most).Take(most)
            .Select(p => p.Trial);
    }

    // One that was left out, said to be as it would fit; otherwise those that stand nearest, said to be as the line has them.
    private IEnumerable<Trial> Again(Survey survey)
    {
        ReadingResidual[] left = [.. track.Outliers.Concat(track.Doubted).Where(r => IsNear(r.Chainage))];
        return Promising((left.Length > 0 ? left : track.Residuals.Where(r => IsNear(r.Chainage)))
            .OrderBy(r => Math.Abs(r.Chainage - heaviest)).Select(r => new Trial(ReadingTrial.Again(survey, r), r)), MostAgain);
    }

    // Midway between two readings: those about the axle that counts most, and others evenly along.
    private IEnumerable<Trial> More(Survey survey)
    {
        double[] read = [.. track.Residuals.Select(r => r.Chainage).Order()];
        double[] between = [.. read.Zip(read.Skip(1), (a, b) => (a + b) / 2).Where(IsNear)];
        var nearest = between.OrderBy(s => Math.Abs(s - heaviest)).Take(2);
        int every = Math.Max(1, (between.Length + MostTried - 3) / (MostTried - 2));
        var first = nearest.Concat(between.Where((_, i) => i % every == every / 2)).Distinct();
        return Promising(first.Concat(between).Distinct().Select(s => (At: s, More: ReadingTrial.More(survey, track, s))).Where(p => p.More is not null)
            .Select(p => new Trial(p.More!.Value.Survey, new(p.More.Value.Reading, p.At, 0, null, null, false))), MostTried);
    }

    // Those that bound the measure best are charged; one that it is not seen to be smaller for helps nobody.
    private Weighed? Best(IEnumerable<Trial> trials) => trials.AsParallel().AsOrdered()
        .Select(t => (t.Told, Found: TrackSurveyor.Tried(t.Survey))).Where(t => t.Found is not null)
        .Select(t => (t.Told, Found: t.Found!, Most: t.Found!.DoubtBeside(middle - reach, middle + reach).Bound([measure])[0].Most)).AsSequential()
        .OrderBy(t => t.Most).Take(MostWeighed)
        .Select(t => new Weighed(t.Told, figure(t.Found) ?? double.PositiveInfinity))
        .Where(w => w.Leaves < present - Seen).MinBy(w => w.Leaves);

    // Where the readings contradict what was said: the one without which, and with the figure that the others ask for, they do not.
    private Weighed? Restoring(Survey survey)
    {
        if (track.Causes is [var first, ..])
        {
            return first is MisreadCause { Told: var read } && TrackSurveyor.Tried(ReadingTrial.Again(survey, read)) is { } otherwise
                && figure(otherwise) is { } left ? new(read, left) : null;
        }

        foreach (var suspect in Suspects(survey))
        {
            if (TrackSurveyor.Tried(ReadingTrial.Without(survey, suspect)) is not { } without || !IsAsSaid(without))
            {
                continue;
            }

            var line = without.IsBoundAsFlexible ? without.Flexible!.Middle : without.Line;
            var told = ResidualTable.Of(survey, line, []).Single(r => ReferenceEquals(r.Reading, suspect));
            if (TrackSurveyor.Tried(ReadingTrial.Again(survey, told)) is { } again && IsAsSaid(again) && figure(again) is { } leaves)
            {
                return new(told, leaves);
            }
        }

        return null;
    }

    private bool IsAsSaid(SurveyedTrack other) => track.Laying.As == LaidAs.Flexible ? other.IsBoundAsFlexible : other.IsBoundAsSectional;

    // Those at odds, first the one without which the least ruler error is needed; where a kink speaks against what was said, those about it.
    private IEnumerable<Reading> Suspects(Survey survey)
    {
        if (track.Laying.As == LaidAs.Flexible && track.CausesOfFlexible is { } causes)
        {
            // What was stated falsely needs no reading.
            return causes is { FalselyStated: false, Misread: { } read } ? [read.Reading] : [];
        }

        if (track.Laying.As == LaidAs.Flexible && track.ClearKinks.MaxBy(k => Math.Abs(k.Turn)) is { } kink)
        {
            return track.Residuals.OrderBy(r => Math.Abs(r.Chainage - kink.Chainage)).Take(MostRestored).Select(r => r.Reading);
        }

        return [];
    }

    private sealed record Trial(Survey Survey, ReadingResidual Told);

    private sealed record Weighed(ReadingResidual Told, double Leaves);
}
