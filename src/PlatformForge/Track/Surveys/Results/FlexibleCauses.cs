using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Results;

/// <summary>What by itself would let the readings go with flexible track, where no line so laid meets them all. Each was tried.</summary>
/// <param name="Misread">The one reading that keeps the others from it, held against the middle of the lines that meet those; null for none.</param>
/// <param name="LeastRadius">The greatest least radius with which a line meets all readings, mm; null where none does.</param>
/// <param name="LeastEase">The same of the least ease, mm.</param>
/// <param name="FalselyStated">Whether lines of what is usual in the scale meet all readings, so that what was stated stricter is false before any reading
/// is.</param>
internal sealed record FlexibleCauses(ReadingResidual? Misread, double? LeastRadius, double? LeastEase, bool FalselyStated)
{
    // Nothing runs on sharper track, and readings that need a shorter ease need a joint (common practice, no source).
    private const double Sharpest = 150, Shortest = 40;

    // To what figures they are told, mm, and among more readings than this none are tried.
    private const double Step = 5;
    private const int MostReadings = 200, MostTried = 12;

    /// <summary>Null where the set is not empty, or there are too many readings.</summary>
    public static FlexibleCauses? Of(Survey survey, SurveyedTrack track)
    {
        if (track.Flexible is not { IsEmpty: true } lines || lines.Bands.Count > MostReadings)
        {
            return null;
        }

        bool Admits(Laying laying) => Found(laying, lines.Bands, track.Line) is not null;
        var said = survey.Laying;
        return new(
            OneMisread(survey, lines, track.Line),
            Greatest(said.LeastRadius, Sharpest, r => Admits(said with { LeastRadius = r })),
            Greatest(said.LeastEase, Shortest, e => Admits(said with { LeastEase = e })),
            track.UsualSet?.Value is { IsEmpty: false });
    }

    private static AdmissibleLines? Found(Laying laying, IReadOnlyList<ReadingBand> bands, Centreline line) =>
        AdmissibleLines.Of(laying, bands, line) is { IsEmpty: false, IsSettled: true } set ? set : null;

    private static ReadingResidual? OneMisread(Survey survey, AdmissibleLines lines, Centreline line)
    {
        var best = lines.AtOdds.Take(MostTried).AsParallel().AsOrdered()
            .Select(o => (o.Reading, Set: Found(lines.Laying, [.. lines.Bands.Where(b => !ReferenceEquals(b, o))], line))).AsSequential()
            .Where(p => p.Set is not null).OrderBy(p => p.Set!.LeastShare).FirstOrDefault();
        return best.Set is null ? null : ResidualTable.Of(survey, best.Set.Middle, []).Single(r => ReferenceEquals(r.Reading, best.Reading));
    }

    private static double? Greatest(double stated, double least, Func<double, bool> does)
    {
        double low = Math.Ceiling(least / Step), high = Math.Ceiling(stated / Step);
        if (!(low < high) || !does(low * Step))
        {
            return null;
        }

        while (high - low > 1)
        {
            double middle = Math.Floor((low + high) / 2);
            (low, high) = does(middle * Step) ? (middle, high) : (low, middle);
        }

        return low * Step;
    }
}
