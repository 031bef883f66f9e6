using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Fitting.Lines;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Remarks;

/// <summary>What a fitted survey has to tell its user, most pressing first.</summary>
internal static class SurveyRemarks
{
    /// <summary>Whether a finding tells of one reading, or counts those that it would be too many to tell of.</summary>
    public static bool IsOfOneReading(Finding finding) => finding.Code is "PF2120" or "PF2145" or "PF2190";

    // Outliers told one by one; the rest are counted.
    private const int OutliersTold = 20;

    public static IEnumerable<Finding> Of(Survey survey, SurveyedTrack track, bool scattered, bool smooth, double sharpest)
    {
        // Errors of reading that are taken for bends explain the rest: what would say otherwise of the same readings is left out.
        if (track.ErrorTooSmall is { } small)
        {
            return [TooSmall(survey, small), .. Stated(survey), .. SectionalRemarks.Beyond(survey, track)];
        }

        return All(survey, track, scattered, smooth, sharpest);
    }

    private static Finding TooSmall(Survey survey, ErrorTooSmall small)
    {
        string[] odd = [.. new[] { Count(small.Kinks, "kink"), Count(small.Misread, "misread or doubtful reading") }.Where(s => s.Length > 0)];
        string within = odd.Length == 0
            ? "no line of straights and curves meets the readings within it"
            : "within it the line has " + string.Join(" and ", odd);
        string leftOut = small.LeftOut == 0 ? ""
            : Invariant($"{Count(small.LeftOut, "reading")} {(small.LeftOut == 1 ? "is" : "are")} left out, and ");
        return Finding.Warning(
            "PF2204",
            survey.Key + ".ruler_error",
            Invariant($"The ruler error of {survey.RulerError:0.###} mm that is stated is most likely too small, and nothing else wrong: ")
                + within
                + Invariant($", while a far simpler line meets all readings within {small.Least:0.00} mm. What is told of the line and of single readings ")
                + $"for the stated error is not to be trusted; until then {leftOut}vehicles are run over the line as it is drawn.",
            Invariant($"State ruler_error = {small.Least:0.00} or more: the most by which a figure may be off, half a division of the ruler at least."),
            FaultKind.Input);

        static string Count(int count, string what) => count == 0 ? "" : count == 1 ? "one " + what : Invariant($"{count} {what}s");
    }

    private static IEnumerable<Finding> All(Survey survey, SurveyedTrack track, bool scattered, bool smooth, double sharpest)
    {
        IEnumerable<Finding?> told =
        [
            .. Outliers(survey, track),
            track.Closing is { } closing ? Unclosed(survey, closing) : null,
            .. Stated(survey),
            survey.Laying.As == LaidAs.Flexible ? AgainstFlexible(survey, track) : null,
            .. SectionalRemarks.Of(survey, track),
            track.Outside is { } outside ? Beyond(survey, outside) : null,
            .. track.Doubted.Select(d => InDoubt(survey, track, d)),
            scattered ? Scattered(survey, track) : null,
            !scattered && IsHeldWithinError(survey, track) ? FarOff(survey, track) : null,
            smooth ? Smooth(survey) : null,
            .. Kinks(survey, track, sharpest),
            .. SpacingRule.Check(survey, track, sharpest),
            survey is VersineSurvey versines
                ? OddEvenCheck.Of(versines.Readings, survey.RulerError).AsFinding(survey.Key, explained: !scattered && !track.Outliers.Any()) : null,
        ];
        return told.OfType<Finding>();
    }

    private static Finding Unclosed(Survey survey, ClosingMisread closing) => Finding.Warning(
        "PF2146",
        survey.Key,
        Invariant($"The closing chord's {(closing.OfLength ? "length" : "versine")} of {closing.Read:0.##} mm does not go with the versines; ")
            + Invariant($"{closing.Fitting:0.##} would. It is left out."),
        $"Measure the closing chord again{(closing.OfLength ? "" : ", its versine at its middle")}.",
        FaultKind.Input);

    private static Finding InDoubt(Survey survey, SurveyedTrack track, ReadingResidual doubted) => RunRule.At(doubted.Reading, Finding.Note(
        "PF2145",
        survey.Key,
        Invariant($"{What(doubted)} is met by {Bend(track, doubted)} that no other reading asks for. Either the track does so there, or ")
            + Invariant($"{Wanted(doubted)} was to be read, {Math.Abs(doubted.Miss):0.0#} mm off; the readings cannot tell which. It is kept, and how far ")
            + "the line may be off allows for both.",
        "Read this place again, and one on either side of it between the readings."));

    private static Finding Scattered(Survey survey, SurveyedTrack track) => Finding.Warning(
        "PF2121",
        survey.Key,
        Invariant($"The readings scatter about the line with a standard deviation of {track.Scatter:0.00} mm, more than a ruler error of ")
            + Invariant($"{survey.RulerError:0.00} mm explains ({survey.RulerError / Math.Sqrt(3):0.00} mm). How far the line may be off is told for the ")
            + "larger one.",
        Invariant($"Measure again, or state ruler_error = {track.Scatter * Math.Sqrt(3):0.0#}."),
        FaultKind.Input);

    // Where no set of pieces, nor an empty one of flexible lines, has the say, the ruler error bounds how far a reading lies off.
    private static bool IsHeldWithinError(Survey survey, SurveyedTrack track) =>
        !track.IsBoundAsSectional && !(survey.Laying.As == LaidAs.Flexible && track.Flexible is { IsEmpty: true });

    private static Finding Smooth(Survey survey) => Finding.Note(
        "PF2129",
        survey.Key,
        "No straights and curves could be recognised that meet the readings; the line is drawn as a smooth curve.",
        "Track laid by eye is like that. Where it should not be, look at the misses for a place that is out of line.");

    // What was stated of the readings and the track, and does not go with them.
    private static IEnumerable<Finding> Stated(Survey survey)
    {
        if (RoundingRule.Check(survey) is { } rounded)
        {
            yield return rounded;
        }

        if (Idle(survey.Laying) is { Length: > 0 } idle)
        {
            yield return Finding.Warning(
                "PF2206",
                survey.Key + (idle.Length == 1 ? "." + idle[0].Key : ".laid"),
                Invariant($"{string.Join(" and ", idle.Select(i => i.Key))} {(idle.Length == 1 ? "is" : "are")} stated of track that is said to be ")
                    + Invariant($"sectional, and {(idle.Length == 1 ? "changes" : "change")} nothing: {string.Join("; ", idle.Select(i => i.Why))}."),
                $"Leave {string.Join(" and ", idle.Select(i => i.Key))} out; or say laid = \"flexible\" if the track is of sprung rails.",
                FaultKind.Input);
        }

        if (survey is VersineSurvey && survey.Laying.As != LaidAs.Unknown)
        {
            yield return Finding.Note(
                "PF2201",
                survey.Key + ".laid",
                Invariant($"How the track was laid (laid = \"{survey.Laying.As.ToString().ToLowerInvariant()}\") changes nothing here: ")
                    + "versines fix no places that lines could be held to, and what is uncertain is told the same either way.",
                "Leave laid out; or measure offsets from a string, of which it does tell.");
        }
    }

    // Pieces meet at joints, where a curve comes at once; how sharp they are their radii say, and only where those are left out the least radius does.
    private static (string Key, string Why)[] Idle(Laying laying) => laying is not { As: LaidAs.Sectional, InScale: { } usual } ? [] :
        [
            .. usual.Radius != laying.LeastRadius && (laying.Radii.Count > 0 || laying.Joints.Count == 0)
                ? [("least_radius", laying.Radii.Count > 0
                    ? "radii says which curves there are" : "it bounds pieces between stated joints only")] : ((string, string)[])[],
            .. usual.Ease != laying.LeastEase ? [("least_ease", "pieces have no eases")] : ((string, string)[])[],
        ];

    // The line is no reading's own: one within the ruler error of the truth may miss it by a part more.
    private const double Farther = 1.25;

    // Chance errors, of which none is the most, leave a few readings farther off than the ruler error is said to be: the bounds over all lines do not allow
    // for those.
    private static Finding? FarOff(Survey survey, SurveyedTrack track)
    {
        var far = FlexibleLines.Bands(survey, track).Where(b => Math.Abs(b.Residual.Miss) > Farther * b.Band.Error).Select(b => b.Residual)
            .OrderByDescending(r => Math.Abs(r.Miss)).ToArray();
        if (far.Length == 0)
        {
            return null;
        }

        double most = Math.Abs(far[0].Miss);
        return RunRule.At(far[0].Reading, Finding.Note(
            "PF2196",
            survey.Key + ".ruler_error",
            Invariant($"{(far.Length == 1 ? "One reading misses" : Invariant($"{far.Length} readings miss"))} the line by more than a ruler error of ")
                + Invariant($"{survey.RulerError:0.##} mm allows{(far.Length == 1 ? "" : ", this one the most")}: by {most:0.00} mm. ")
                + "What is told for readings "
                + $"within the ruler error does not hold for {(far.Length == 1 ? "it" : "them")}.",
            Invariant($"Read {(far.Length == 1 ? "it" : "these")} again, or state the ruler error as the most by which a reading is off: ")
                + Invariant($"{Math.Ceiling(100 * most) / 100:0.00} would do.")));
    }

    private static IEnumerable<Finding> Outliers(Survey survey, SurveyedTrack track)
    {
        var outliers = track.Outliers.ToList();
        foreach (var outlier in outliers.Take(OutliersTold))
        {
            yield return RunRule.At(outlier.Reading, Misread(survey.Key, outlier));
        }

        if (outliers.Count > OutliersTold)
        {
            yield return Finding.Warning(
                "PF2120",
                survey.Key,
                Invariant($"{outliers.Count - OutliersTold} more readings do not fit."),
                "See the table of residuals.",
                FaultKind.Input);
        }
    }

    private static IEnumerable<Finding> Kinks(Survey survey, SurveyedTrack track, double sharpest)
    {
        double spacing = StationSpacing.Of(survey), hidden = spacing > StationSpacing.Telling(survey.RulerError, sharpest)
            ? StationSpacing.HiddenKink(spacing, sharpest) : 0;
        foreach (var kink in track.Line.Kinks.Where(k => !track.KinksInDoubt.Any(d => d.Kink == k)))
        {
            string told = Invariant($"a kink of {Math.Abs(kink.Turn) * 180 / Math.PI:0.0#}° to the {(kink.Turn > 0 ? "left" : "right")} near ")
                + Invariant($"chainage {kink.Chainage:0}");
            yield return track.DoubtfulKinks.Contains(kink)
                ? Finding.Note("PF2124", survey.Key,
                    Invariant($"The track is drawn with {told}; readings {spacing:0} mm apart are met as well, or nearly, by a line that bends there ")
                        + "without a kink. Vehicles are run over it as drawn.",
                    "Sight along the rails there, and measure closer about the place.")
                : Finding.Note(
                    "PF2124",
                    survey.Key,
                    $"The track has {told}. It is kept; vehicles ride over it."
                        + (Math.Abs(kink.Turn) < hidden ? Invariant($" No line without it was found that meets the readings nearly as well, though ")
                            + Invariant($"{spacing:0} mm apart they can hide one so small.") : ""),
                    "Ease the joint if you can get at it, and measure again.");
        }
    }

    // Readings told by name where they contradict one another.
    private const int AtOddsTold = 6;

    /// <summary>The least ruler error that readings at odds with a set would be met within, in whole hundredths of a mm and more than the stated one.</summary>
    public static double LeastError(Survey survey, double share) =>
        Math.Ceiling(100 * Math.Max(share * survey.RulerError, survey.RulerError + Tolerances.Rounding)) / 100;

    // What by itself would do comes first of what is offered: what was stated stricter than is usual, where usual track meets all readings; otherwise a
    // reading.
    private static Finding Empty(Survey survey, SurveyedTrack track, AdmissibleLines lines)
    {
        string odd = string.Join(", ", lines.AtOdds.Take(AtOddsTold).Select(b => b.Reading.FileAndWhereabouts))
            + (lines.AtOdds.Count > AtOddsTold ? Invariant($" and ")
            + Invariant($"{lines.AtOdds.Count - AtOddsTold} more") : "");
        var causes = track.CausesOfFlexible;
        string[] said = [.. new[]
        {
            causes?.LeastRadius is { } radius ? Invariant($"least_radius = {radius:0}") : "",
            causes?.LeastEase is { } ease ? Invariant($"least_ease = {ease:0}") : "",
        }.Where(w => w.Length > 0)];
        string one = causes?.Misread is { } read ? Invariant($"One reading alone keeps the others from it: {What(read, capital: false)}, where ")
            + Invariant($"{Wanted(read)} would go with all the others.") : "";
        string laid = said.Length == 0 ? "" : Invariant($"With {string.Join(", or with ", said)}, a flexible line meets all of them.");
        bool stated = said.Length > 0 && (causes!.FalselyStated || one.Length == 0);
        string[] tried = [.. (stated ? new[] { laid, one } : [one, laid]).Where(w => w.Length > 0)];
        string remedy = (stated, one.Length > 0) switch
        {
            (true, _) => $"State {string.Join(" or ", said)} if the track lies so; or read these places again.",
            (_, true) => "Read that place again; if it says the same, say how the track lies" + (said.Length > 0
                ? $": {string.Join(" or ", said)}, or" : ":") + " laid = \"unknown\".",
            _ => causes is null ? "Read these places again; or say how the track lies: a smaller least_radius or least_ease, or laid = \"unknown\"."
                : "Read these places again, or say laid = \"unknown\"; no one reading left out and no smaller least_radius or least_ease by itself was found "
                + "that would do.",
        };
        return RunRule.At(lines.AtOdds[0].Reading, Finding.Warning(
            "PF2160",
            survey.Key + ".laid",
            Invariant($"No line laid as flexible track is ({survey.Laying.Words}) meets every reading within {survey.RulerError:0.##} mm. ")
                + Invariant($"{string.Concat(tried.Select(t => t + " "))}At odds are {odd}; the least ruler error that fits is ")
                + Invariant($"{LeastError(survey, lines.LeastShare):0.00}. What is uncertain is reckoned as for laid = ")
                + Invariant($"\"unknown\"{(causes is { FalselyStated: true } ? ", with the usual figures of the scale" : "")}."),
            remedy,
            FaultKind.Input));
    }

    private static Finding? AgainstFlexible(Survey survey, SurveyedTrack track)
    {
        if (track.Flexible is { IsEmpty: true } lines)
        {
            return Empty(survey, track, lines);
        }

        return track.ClearKinks.MaxBy(k => Math.Abs(k.Turn)) is not { } kink ? null : Finding.Warning(
            "PF2161",
            survey.Key + ".laid",
            "The track is said to be flexible, without kinks; yet "
                + Invariant($"the readings show {(track.ClearKinks.Count() == 1 ? "one" : Invariant($"{track.ClearKinks.Count()}, the sharpest"))} ")
                + Invariant($"of {Math.Abs(kink.Turn) * 180 / Math.PI:0.0#}° near chainage {kink.Chainage:0}. What is uncertain is reckoned as for laid = ")
                + "\"unknown\".",
            "Sight along the rails there and read the places about it again; where there is a joint, say laid = \"sectional\" or leave laid out.",
            FaultKind.Input);
    }

    private static Finding Beyond(Survey survey, OutsideLine line)
    {
        string where = Invariant($"would lie up to {line.By:0.0#} mm outside of all lines laid as flexible track is, near chainage {line.At:0}. The readings ")
            + "cannot tell; the platform keeps clear of flexible lines only.";
        return line switch
        {
            { Misread: { } read } => RunRule.At(read.Reading, Finding.Warning(
                "PF2190",
                survey.Key,
                Invariant($"{What(read)} may be misread: without it a simpler line meets all others, for which {Wanted(read)} would fit, and which {where} A ")
                    + "kink there would look the same.",
                "Read this place again, and one on either side of it between the readings; if they say the same, sight along the rails for a kink.",
                FaultKind.Input)),
            { Kink: { } kink } => Finding.Warning(
                "PF2191",
                survey.Key + ".laid",
                Invariant($"A line with a kink of {Math.Abs(kink.Turn) * 180 / Math.PI:0.0#}° near chainage {kink.Chainage:0} meets the readings nearly as ")
                    + Invariant($"well as one laid as flexible track is, and {where}"),
                Invariant($"Sight along the rails there, and read places about chainage {kink.Chainage:0} between the readings; ")
                    + "where there is a joint, leave laid out.",
                FaultKind.Input),
            _ => throw new BrokenInvariantException("Track: a line outside of flexible ones has neither kink nor misreading."),
        };
    }

    private static Finding Misread(string key, ReadingResidual outlier) => Finding.Warning(
        "PF2120",
        key,
        Invariant($"{What(outlier)} does not fit; {Wanted(outlier)} would. It is {Math.Abs(outlier.Miss):0.0#} mm off the line and left out."),
        "Measure this place again; a misread figure or a real kick in the track is there.",
        FaultKind.Input);

    // The kink that the line has for this reading alone is told here, and nowhere else.
    private static string Bend(SurveyedTrack track, ReadingResidual doubted) => track.KinksInDoubt.Where(k => ReferenceEquals(k.Reading, doubted.Reading))
        .Select(k => k.Kink).FirstOrDefault() is { Turn: not 0 } kink
        ? Invariant($"a kink of {Math.Abs(kink.Turn) * 180 / Math.PI:0.0#}° near chainage {kink.Chainage:0}") : "a bend";

    /// <summary>Which reading is meant, as the file has it.</summary>
    public static string What(ReadingResidual read, bool capital = true)
    {
        double unit = read.Reading.Unit.Millimetres();
        string sign = read.Reading.Unit.Sign();
        string told = read.Reading switch
        {
            PlaceReading { Ordinate: { } o } => Invariant($"The offset of {o.Offset / unit:0.##} {sign} at {o.Distance:0.##} mm"),
            VersineReading v => Invariant($"The versine of {v.Written(v.Versine):0.##} {sign} at {v.Station:0.##} mm"),
            PlaceReading { DrawnAt: not null } p => Invariant($"{char.ToUpperInvariant(p.Whereabouts[0])}{p.Whereabouts[1..]} of the drawn line, ")
                + Invariant($"at {p.Place.X / unit:0.##}, {p.Place.Y / unit:0.##} {sign}"),
            PlaceReading p => Invariant($"The point {p.Place.X / unit:0.##}, {p.Place.Y / unit:0.##} {sign}"),
            _ => throw new BrokenInvariantException($"Track: no remark for {read.Reading.GetType().Name}."),
        };
        return capital ? told : char.ToLowerInvariant(told[0]) + told[1..];
    }

    /// <summary>What would fit, in the unit of the reading.</summary>
    public static string Wanted(ReadingResidual read)
    {
        double unit = read.Reading.Unit.Millimetres();
        return read.Fitting is { } figure ? Invariant($"{Math.Round(read.Reading.Written(figure), 2) + 0.0:0.##}")
            : Invariant($"{read.FittingPlace!.Value.X / unit:0.##}, {read.FittingPlace.Value.Y / unit:0.##}");
    }
}
