using PlatformForge.Track;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Remarks;
using PlatformForge.Track.Surveys.Results;
using static System.FormattableString;

namespace PlatformForge.Cli.Answers;

/// <summary>A fitted survey in words and tables, lengths in mm.</summary>
internal static class SurveyText
{
    /// <summary>Worst misses shown; the JSON form has them all.</summary>
    private const int MissesShown = 5;

    public static void Write(TextWriter o, SurveyedTrack track, bool tomlOnly, double? chord)
    {
        if (tomlOnly)
        {
            o.Write(track.Alignment is not null ? AlignmentText.Toml(track) : Invariant($"# Track {track.Line.Name} can't be said as a list of elements.\n"));
            return;
        }

        o.WriteLine(Invariant($"{track.Line.Name}: {track.Residuals.Count} readings, {track.Line.Length:0.0} mm of track; ")
            + Invariant($"readings scatter by {track.Scatter:0.00} mm about it (ruler error stated as {track.RulerError:0.##})."));
        o.WriteLine(track.LeastRadius is { } sharp
            ? Invariant($"  sharpest: radius {sharp.Radius:0} mm to the {(sharp.Hand == Hand.Left ? "left" : "right")} at {sharp.Chainage:0} mm")
            : "  straight throughout");
        o.WriteLine(Invariant($"  the true line lies within {track.Movement.Likely.Max():0.00} mm of this one in 19 of 20 ")
            + Invariant($"surveys; {AtWorst(track.Movement.Likely.Max(), track.Movement.Worst.Max())}, as long as the elements stay those recognised"));
        foreach (var doubt in track.Doubts)
        {
            Doubt(o, track, doubt);
        }

        MadeOf(o, track);
        Misses(o, track);
        if (chord is { } length)
        {
            Lining(o, StringLining.Of(track, length));
        }
    }

    // Elements, and kinks between them.
    private static void MadeOf(TextWriter o, SurveyedTrack track)
    {
        o.WriteLine("  made of");
        foreach (var element in track.Elements)
        {
            o.WriteLine(Invariant($"    {element.From,8:0.0} to {element.To,8:0.0}  {Words(element)}"));
        }

        foreach (var kink in track.Line.Kinks)
        {
            o.WriteLine(Invariant($"    {kink.Chainage,8:0.0}              kink of {kink.Turn * 180 / Math.PI:0.00} degrees"));
        }
    }

    // Readings that lie farthest off the line, the worst first.
    private static void Misses(TextWriter o, SurveyedTrack track)
    {
        o.WriteLine(track.Versines.Count > 0
            ? "  largest misses (mm, versine of the reading less that of the line, left-hand curve positive)"
            : "  largest misses (mm, reading left of the line positive)");
        foreach (var residual in track.Residuals.OrderByDescending(r => Math.Abs(r.Miss)).Take(MissesShown))
        {
            string outlier = residual.IsOutlier ? "  left out as misread" : track.IsInDoubt(residual.Reading) ? "  in doubt" : "";
            string fitting = residual.Fitting is { } figure ? Invariant($", {Plain(residual.Reading.Written(figure))} {residual.Reading.Unit.Sign()} would ")
                + "fit" : "";
            o.WriteLine(Invariant($"    {residual.Reading.FileAndWhereabouts}  {SignedText.Of(residual.Miss)} mm at ")
                + Invariant($"chainage {residual.Chainage:0}{fitting}{outlier}"));
        }
    }

    private static void Doubt(TextWriter o, SurveyedTrack track, ReachDoubt doubt)
    {
        string meeting = track.Outliers.Any() || track.Doubted.Count > 0 ? "that meet the other readings" : "that meet the readings";
        string basis = track.IsBoundAsFlexible ? "over all flexible lines " + meeting
            : track.IsBoundAsSectional ? $"over all lines of the stated pieces {meeting}" + Elsewhere(track.JointsInDoubt)
            : track.AllowedFlexible is not null ? $"over all flexible lines {meeting}, and in 19 of 20 surveys of other track"
            : track.Laying.As == LaidAs.Flexible && track.Versines.Count > 0 ? "in 19 of 20 surveys, however it is laid, since versines fix no places"
            : "in 19 of 20 surveys";
        o.WriteLine(Invariant($"  beside platform {doubt.Platform} it takes up to {doubt.Charged:0.00} mm of the gap: so much farther than on this line the ")
            + Invariant($"vehicles as a whole may reach at one place, {basis}, and the edge keeps clear of that"));
        string beyond = doubt.Most > doubt.Charged + Seen ? "; there another reaches farther all the same, so that the edge gives way by less" : "";
        o.WriteLine(Invariant($"    of single vehicles the most uncertain is {doubt.Vehicle}: its own reach by {doubt.Most:0.00} mm at ")
            + Invariant($"chainage {doubt.At:0}{beyond}; {doubt.Median:0.00} or less along half of the platform, half of its range {doubt.Spread:0.00}"));
        if (Otherwise(track, doubt) is { } otherwise)
        {
            o.WriteLine("    " + otherwise);
        }

        if (AdviceWords.Of(doubt) is { Length: > 0 } advice)
        {
            o.WriteLine("    " + advice);
        }
        else if (track.ErrorTooSmall is not null)
        {
            o.WriteLine("    which reading would help is told once the ruler error is stated as large as it is");
        }
        else if (track.Residuals.Count <= ReadingTrials.MostReadings && doubt.Charged > Seen)
        {
            o.WriteLine("    no single reading of those tried, one more or one taken again, would take off 0.01 mm");
        }
    }

    // Stated joints that the readings like a little better elsewhere.
    private static string Elsewhere(IReadOnlyList<MovedJoint> joints) => joints.Count == 0 ? ""
        : Invariant($", also with {string.Join(", or ", joints.Select(j => Invariant($"the joint stated at {j.Stated:0.#} mm at about {j.Wanted:0}")))}, ")
        + "since the readings cannot tell";

    // Half the last digit shown, mm.
    private const double Seen = 0.005;

    /// <summary>What saying how the track was laid would give, where the user has not; null where he has.</summary>
    private static string? Otherwise(SurveyedTrack track, ReachDoubt doubt)
    {
        if (track.Laying.As != LaidAs.Unknown)
        {
            return null;
        }

        if (doubt.IfSectional is not { } sectional)
        {
            return "how the track was laid is not said, and of versines it would change nothing";
        }

        string flexible = doubt.IfFlexible is { } mm ? Invariant($"laid = \"flexible\" (sprung into its curves, no kinks) would make it {mm:0.00} mm")
            : track.Flexible is { IsEmpty: true } ? "laid = \"flexible\" would be contradicted: "
            + Invariant($"no such line meets every reading within {track.RulerError:0.##} mm")
            : track.ClearKinks.MaxBy(k => Math.Abs(k.Turn)) is { } kink
            ? Invariant($"laid = \"flexible\" would be contradicted by the kink near chainage {kink.Chainage:0}")
            : "of laid = \"flexible\" nothing can be told from these readings";
        string sharp = track.ClearKinks.Where(k => Math.Abs(k.Turn) > track.Laying.GreatestKink).MaxBy(k => Math.Abs(k.Turn)) is { } over
            ? Invariant($", and would be contradicted by the kink near chainage {over.Chainage:0} unless greatest_kink allows for it") : "";
        return Invariant($"how the track was laid is not said, so either is allowed for: {flexible}; laid = \"sectional\" (pieces) would make ")
            + Invariant($"it {sectional:0.00} mm, less with its joints stated{sharp}");
    }

    // The worst is never told below the likely figure, so that one as large says nothing of its own.
    private static string AtWorst(double likely, double worst) => Invariant($"{worst:0.00}") == Invariant($"{likely:0.00}")
        ? "every reading wrong in the worst way moves it no further"
        : Invariant($"every reading wrong in the worst way moves it {worst:0.00} mm");

    private static void Lining(TextWriter o, StringLining lining)
    {
        o.WriteLine(Invariant($"  string lining over a chord of {lining.Chord:0.##} mm: largest slew {lining.LargestThrow:0.00} mm"));
        foreach (string note in lining.Notes)
        {
            o.WriteLine("    " + note);
        }

        o.WriteLine("     station  measured  proposed     error       sum  slew");
        foreach (var row in lining.Rows)
        {
            string note = row.Note.Length == 0 ? "" : "  " + row.Note;
            o.WriteLine(Invariant($"    {row.Station,8:0.0}  {Plain(row.Measured),8}  {Plain(row.Proposed),8}  {Plain(row.Error),8} ")
                + Invariant($" {Plain(row.SumOfErrors),8}  {Slew(row)}{note}"));
        }
    }

    private static string Slew(StringLiningRow row) => row.Way.Length == 0 ? Plain(0) : $"{Plain(Math.Abs(row.FullThrow))} {row.Way}";

    // No minus before what rounds to nil.
    private static string Plain(double mm) => Invariant($"{Math.Round(mm, 2) + 0.0:0.00}");

    private static string Words(FittedElement element)
    {
        static string Radius(double curvature) => curvature == 0 ? "straight"
            : Invariant($"radius {1 / Math.Abs(curvature):0.0} {(curvature > 0 ? "left" : "right")}");
        return element.Kind switch
        {
            FittedKind.Straight => "straight",
            FittedKind.Curve => "curve, " + Radius(element.StartCurvature),
            _ => $"transition from {Radius(element.StartCurvature)} to {Radius(element.EndCurvature)}",
        };
    }
}
