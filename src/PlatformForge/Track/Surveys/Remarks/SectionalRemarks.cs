using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Remarks;

/// <summary>What a survey of sectional track has to tell of what was said of its pieces.</summary>
internal static class SectionalRemarks
{
    /// <summary>Among more readings than this nothing is tried.</summary>
    public const int MostReadings = 200;

    // Readings told by name where they contradict one another.
    private const int AtOddsTold = 6;

    // A curve is of another radius where that moves its middle by more than so many ruler errors, and shorter stretches than so many
    // spacings tell no radius.
    private const double Otherwise = 2;

    public static IEnumerable<Finding> Of(Survey survey, SurveyedTrack track)
    {
        if (survey.Laying.As != LaidAs.Sectional)
        {
            yield break;
        }

        var laying = survey.Laying;
        foreach (var finding in Contradicted(survey, track, laying))
        {
            yield return finding;
        }

        foreach (var beyond in Beyond(survey, track))
        {
            yield return beyond;
        }

        foreach (var finding in Unstated(survey, track, laying))
        {
            yield return finding;
        }

        foreach (var finding in track.Sectional is null ? Found(survey, track, laying) : [])
        {
            yield return finding;
        }
    }

    // What would do by itself is told, likeliest first; only where nothing does, the readings at odds, and what they speak against.
    private static IEnumerable<Finding> Contradicted(Survey survey, SurveyedTrack track, Laying laying)
    {
        if (track.Causes is [var first, ..])
        {
            yield return Told(survey, track, first, [.. track.Causes.Skip(1)]);
            yield break;
        }

        string radii = string.Join(", ", laying.Radii.Select(r => Invariant($"{r:0.##}")));
        const string Nothing = " No one reading left out, radius, greater kink or other place of one joint was found that would mend it by itself.";
        string tried = track.Residuals.Count > MostReadings ? "" : Nothing;
        if (track.Sectional is { AtOdds.Length: > 0 } lines)
        {
            yield return AtOdds(survey, track, lines, tried);
        }

        if (track.Misplaced is { } joint)
        {
            yield return Misplaced(survey, joint, tried);
        }

        if (track.RadiiLeftOut)
        {
            yield return OtherRadii(survey, radii, tried);
        }

        foreach (var (from, to) in track.Sectional?.Strange ?? [])
        {
            yield return Strange(survey, from, to, radii, tried);
        }
    }

    private static Finding AtOdds(Survey survey, SurveyedTrack track, JointedLines lines, string tried)
    {
        var odd = SectionalLines.Readings(survey, track, lines.AtOdds);
        string named = string.Join(", ", odd.Take(AtOddsTold).Select(b => b.Reading.FileAndWhereabouts))
            + (odd.Count > AtOddsTold ? Invariant($" and {odd.Count - AtOddsTold} more") : "");
        return RunRule.At(odd[0].Reading, Finding.Warning(
            "PF2192",
            survey.Key + ".joints",
            Invariant($"No line of pieces with these joints, and kinks of up to {Degrees(survey.Laying.GreatestKink):0.##}° at them, meets every reading ")
                + Invariant($"within {survey.RulerError:0.##} mm. At odds are {named}; the least ruler error that fits is ")
                + Invariant($"{SurveyRemarks.LeastError(survey, lines.LeastShare):0.00}.{tried} What is uncertain is reckoned as without joints."),
            "Read these places again; or check joints, radii and greatest_kink. Leave joints out where they are not known.",
            FaultKind.Input));
    }

    private static Finding Misplaced(Survey survey, MovedJoint joint, string tried) => Finding.Warning(
        "PF2197",
        survey.Key + ".joints",
        Invariant($"The readings speak against the joint stated at {joint.Stated:0.#} mm: at about {joint.Wanted:0} mm it would fit them far ")
            + Invariant($"better, though not all of them.{tried} What is uncertain is reckoned as without joints."),
        "Look where that joint is and state its place; if it is where it was stated, read the places about it again.",
        FaultKind.Input);

    private static Finding OtherRadii(Survey survey, string radii, string tried) => Finding.Warning(
        "PF2200",
        survey.Key + ".radii",
        Invariant($"With the joints stated the readings go with no pieces of the radii stated ({radii}), but with pieces of other radii.{tried} ")
            + Invariant($"What is uncertain is reckoned from the joints alone."),
        "State the radii that the pieces have, or leave radii out.",
        FaultKind.Input);

    private static Finding Strange(Survey survey, double from, double to, string radii, string tried) => Finding.Warning(
        "PF2193",
        survey.Key + ".radii",
        Invariant($"The piece from chainage {from:0} to {to:0} is neither straight nor of one of the radii stated ({radii}).{tried} What is ")
            + Invariant($"uncertain is reckoned as without joints."),
        "State a joint within it if there is one; otherwise read the places there again, or leave radii out.",
        FaultKind.Input);

    private static Finding Told(Survey survey, SurveyedTrack track, SectionalCause first, IReadOnlyList<SectionalCause> others)
    {
        string against = Invariant($"The readings do not go with pieces as stated (joints{(survey.Laying.Radii.Count > 0 ? ", radii" : "")}, kinks of ")
            + Invariant($"up to {Degrees(survey.Laying.GreatestKink):0.##}°) within {survey.RulerError:0.##} mm.");
        string also = others.Count == 0
            ? "" : " By itself would do as well: " + string.Join("; or ", others.Select(o => Would(survey, o))) + "; look at that after it.";
        string reckoned = track.RadiiLeftOut ? "from the joints alone" : "as without joints";
        string message = Invariant($"{against} {Sentence(survey, first)}{also} What is uncertain is reckoned {reckoned} until then.");
        return first switch
        {
            MisreadCause { Told: var read } => RunRule.At(read.Reading,
                Finding.Warning("PF2205", survey.Key, message, "Read this place again; if it says the same, check joints, radii and greatest_kink.",
                    FaultKind.Input)),
            RadiusCause radius => Finding.Warning(track.RadiiLeftOut ? "PF2200" : "PF2193", survey.Key + ".radii", message,
                $"Look at the pieces; if it is so, state {Radii(survey, radius)}, or leave radii out.", FaultKind.Input),
            KinkCause { Kink: var kink } => Finding.Warning("PF2192", survey.Key + ".joints", message,
                Invariant($"Sight along the rails at the joints; if one is so, state greatest_kink = {Degrees(kink):0.0#}."), FaultKind.Input),
            JointCause { Joint: var joint } => Finding.Warning("PF2197", survey.Key + ".joints", message,
                Invariant($"Look where the joint stated at {joint.Stated:0.#} mm is and state its place; if it is where it was stated, read the places ")
                    + Invariant($"about it again."),
                FaultKind.Input),
            _ => throw new BrokenInvariantException("Track: no finding for what keeps readings from pieces."),
        };
    }

    // Each follows "by itself", and each was tried.
    private static string Would(Survey survey, SectionalCause cause) => cause switch
    {
        MisreadCause { Told: var read } => Invariant($"{SurveyRemarks.Wanted(read)} at {read.Reading.FileAndWhereabouts}"),
        RadiusCause radius => Radii(survey, radius),
        KinkCause { Kink: var kink } => Invariant($"greatest_kink = {Degrees(kink):0.0#}"),
        JointCause { Joint: var joint } => Invariant($"the joint stated at {joint.Stated:0.#} mm at {joint.Wanted:0}"),
        _ => "",
    };

    private static string Sentence(Survey survey, SectionalCause cause) => cause switch
    {
        MisreadCause { Told: var read } => Invariant($"One reading alone keeps them from it: {SurveyRemarks.What(read, capital: false)}, where ")
            + Invariant($"{SurveyRemarks.Wanted(read)} would go with all the others."),
        RadiusCause radius => Invariant($"With {Radii(survey, radius)} all of them do."),
        KinkCause { Kink: var kink } => Invariant($"With kinks of up to {Degrees(kink):0.0#}° (greatest_kink = {Degrees(kink):0.0#}) all of them do."),
        JointCause { Joint: var joint } => Invariant($"With the joint stated at {joint.Stated:0.#} mm at about {joint.Wanted:0} mm all of them do."),
        _ => "",
    };

    private static string Radii(Survey survey, RadiusCause cause)
    {
        double[] radii = cause.Instead ? [cause.Radius] : [.. survey.Laying.Radii, cause.Radius];
        return $"radii = [{string.Join(", ", radii.Select(r => Invariant($"{r:0.##}")))}]";
    }

    // Joints off the end of what was measured say nothing of it; all of them there are most likely in another unit.
    public static IEnumerable<Finding> Beyond(Survey survey, SurveyedTrack track)
    {
        if (survey is not PlaceSurvey || survey.Laying.As != LaidAs.Sectional)
        {
            return [];
        }

        double[] read = [.. track.Residuals.Select(r => r.Chainage)];
        double[] beyond = [.. survey.Laying.Joints.Where(j => SectionalLines.Chainage(track, j) is var at && (at < read.Min() || at > read.Max()))];
        return beyond.Length == 0 ? [] : [Finding.Warning(
            "PF2199",
            survey.Key + ".joints",
            (beyond.Length == survey.Laying.Joints.Count ? "All stated joints lie"
                : beyond.Length == 1 ? Invariant($"The joint stated at {beyond[0]:0.#} mm lies")
                : Invariant($"{beyond.Length} joints, the first stated at {beyond[0]:0.#} mm, lie"))
                + $" beyond the readings, so that nothing is told by {(beyond.Length == 1 ? "it" : "them")} of the track between the readings.",
            "State joints in mm, as the readings are measured: along the string, or along the track from the first point. "
                + "Leave out those beyond the readings.",
            FaultKind.Input)];
    }

    // Kinks of the line found that no stated joint is near to. The readings place a kink to within a spacing or two.
    private static IEnumerable<Finding> Unstated(Survey survey, SurveyedTrack track, Laying laying)
    {
        if (track.Sectional is not { } lines)
        {
            yield break;
        }

        double near = Math.Max(NearJoint, KinkPlace * PlatformForge.Track.Surveys.Fitting.Lines.StationSpacing.Of(survey));
        foreach (var kink in track.ClearKinks)
        {
            double nearest = lines.Joints.Skip(1).SkipLast(1).DefaultIfEmpty(double.PositiveInfinity).MinBy(j => Math.Abs(j - kink.Chainage));
            if (Math.Abs(nearest - kink.Chainage) > near)
            {
                yield return Finding.Warning(
                    "PF2198",
                    survey.Key + ".joints",
                    Invariant($"The readings show a kink of {Degrees(Math.Abs(kink.Turn)):0.0#}° near chainage {kink.Chainage:0}, where no joint is stated")
                        + (double.IsFinite(nearest) ? Invariant($"; the nearest is at chainage {nearest:0}.") : "."),
                    "Look for a joint there and state it; if there is none, read the places about it again.",
                    FaultKind.Input);
            }
        }
    }

    // Readings place a kink to within so many of their spacings, and nobody states a joint better than this, mm.
    private const double KinkPlace = 1.5, NearJoint = 10;

    // Where joints are not stated, what was found is held against what was said.
    private static IEnumerable<Finding> Found(Survey survey, SurveyedTrack track, Laying laying)
    {
        foreach (var kink in track.ClearKinks.Where(k => Math.Abs(k.Turn) > laying.GreatestKink))
        {
            yield return Finding.Warning(
                "PF2194",
                survey.Key + ".greatest_kink",
                Invariant($"The readings show a kink of {Degrees(Math.Abs(kink.Turn)):0.0#}° near chainage {kink.Chainage:0}; ")
                    + Invariant($"the track is said to have none over {Degrees(laying.GreatestKink):0.##}°."),
                Invariant($"Look at the joint there and read the places about it again; if it is so, state ")
                    + Invariant($"greatest_kink = {Math.Ceiling(10 * Degrees(Math.Abs(kink.Turn))) / 10:0.0}."),
                FaultKind.Input);
        }

        foreach (var e in laying.Radii.Count == 0 ? [] : track.Elements.Where(e => e.Kind == FittedKind.Curve))
        {
            double own = Math.Abs(e.StartCurvature), length = e.To - e.From, off = laying.Radii.Select(r => 1 / r).Append(0).Min(k => Math.Abs(k - own));
            if (off * length * length / 8 > Otherwise * survey.RulerError)
            {
                yield return Finding.Warning(
                    "PF2195",
                    survey.Key + ".radii",
                    Invariant($"The curve of R {1 / own:0} from chainage {e.From:0} to {e.To:0} has none of the radii stated ")
                        + Invariant($"({string.Join(", ", laying.Radii.Select(r => Invariant($"{r:0.##}")))})."),
                    "State its radius too, or read the places there again; a kink that the readings do not show looks like a gentle bend: state the joints. "
                        + "Pieces sprung out of their radius are flexible track.",
                    FaultKind.Input);
            }
        }
    }

    private static double Degrees(double radians) => radians * 180 / Math.PI;
}
