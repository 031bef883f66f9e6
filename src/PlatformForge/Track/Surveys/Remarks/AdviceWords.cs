using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Remarks;

/// <summary>Which reading to take again and where one more would help, in words.</summary>
public static class AdviceWords
{
    /// <summary>The advice beside one platform; empty where there is none.</summary>
    public static string Of(ReachDoubt doubt)
    {
        var advice = doubt.Advice;
        string again = advice is { Repeat: { } reading, RepeatLeaves: { } kept }
            ? Invariant($"read {reading.FileAndWhereabouts} again{(advice.IsLeftOut ? ", which is left out" : "")}: {Again(advice, reading)} ")
                + Invariant($"{Left(kept, doubt.Charged)}") : "";
        string more = advice is { MoreAt: { } at, MoreLeaves: { } leaves }
            ? Invariant($"one more reading at chainage {at:0}{Along(advice)} would leave {leaves:0.00} of the {doubt.Charged:0.00}, if it says what the ")
                + Invariant($"line says{Figure(advice.MoreReading, advice.MoreFigure)}") : "";
        return again + (again.Length > 0 && more.Length > 0 ? "; " : "") + more + (more.Length > 0 && again.Length == 0
            ? "; to read one again there takes off less than 0.01" : "");
    }

    // A figure that goes with the others may cost more than what is charged as long as nobody can be believed.
    private static string Left(double kept, double charged) => kept < charged ? Invariant($"would leave {kept:0.00} of the {charged:0.00}")
        : Invariant($"would take {kept:0.00} in place of {charged:0.00}, so that the ruler error may be more than was stated, and no reading wrong");

    private static string Again(ReadingAdvice advice, Reading reading) => advice.RepeatRestores
        ? $"it alone keeps the others from what is said of the laying; a figure that goes with them{Figure(reading, advice.RepeatFigure)}"
        : $"a figure there that says what the line says{Figure(reading, advice.RepeatFigure)}";

    private static string Figure(Reading? reading, double? mm) => reading is null || mm is not { } figure ? "" : Invariant($" ")
        + Invariant($"({Plain(reading.Written(figure))} {reading.Unit.Sign()})");

    private static string Along(ReadingAdvice advice) => advice switch
    {
        { MoreReading: VersineReading, MoreAlong: { } station } => Invariant($", station {station:0}"),
        { MoreAlong: { } distance } => Invariant($", {distance:0} mm along the string,"),
        _ => "",
    };

    // No minus before what rounds to nil.
    private static string Plain(double mm) => Invariant($"{Math.Round(mm, 2) + 0.0:0.00}");
}
