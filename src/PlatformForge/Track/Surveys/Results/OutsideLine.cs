using PlatformForge.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys.Fitting;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Track.Surveys.Results;

/// <summary>
/// A line with a kink, or without one reading, that the readings do not speak against and that lies outside of what flexible track
/// allows. Where readings are far apart
/// flexible lines run through all of them, misread or not, and past every kink: that none contradicts the set says nothing then.
/// </summary>
/// <param name="Line">The line.</param>
/// <param name="At">Chainage on the stated line at which it lies farthest outside, mm, of the places looked at.</param>
/// <param name="By">How far it lies outside there, mm.</param>
/// <param name="Kink">Its sharpest kink; null where it has none, or where a reading is meant.</param>
/// <param name="Misread">The reading that it takes for misread, held against it; null for none.</param>
public sealed record OutsideLine(Centreline Line, double At, double By, Kink? Kink, ReadingResidual? Misread)
{
    // Lines outside by less than this part of the ruler error are not worth a second look; where one reading is meant, it may be off by
    // an error of its own.
    private const double Worth = 0.4, WorthOfReading = 1;

    // Distance between places at which lines are held against one another, mm, and how many of the farthest are bounded.
    private const double Spacing = 20;
    private const int Farthest = 3;

    /// <summary>The likeliest such line; null where there is none.</summary>
    internal static OutsideLine? Of(Survey survey, SurveyedTrack track, Func<IReadOnlyList<OtherLine>> others)
    {
        if (!track.IsBoundAsFlexible)
        {
            return null;
        }

        var flexible = track.Flexible!;
        var doubt = new AdmissibleDoubt(flexible, track.Line);
        double[] places = Places(track);
        double[] middle = [.. places.Select(s => Offset(flexible.Middle, track.Line, s))];
        foreach (var other in others().Where(o => o.LeftOut.Length > 0 || o.Line.Kinks.Count > 0))
        {
            double[] offsets = [.. places.Select(s => Offset(other.Line, track.Line, s))];
            int[] farthest = [.. Enumerable.Range(0, places.Length).Where(i => IsPeak(i, offsets, middle))
                .OrderByDescending(i => Math.Abs(offsets[i] - middle[i])).Take(Farthest)];
            var ranges = doubt.Bound([.. farthest.Select(i => LineMeasure.Offset(places[i]))]);
            var (at, by) = farthest.Zip(ranges, (i, r) => (places[i], Math.Max(offsets[i] - r.Most, r.Least - offsets[i]))).DefaultIfEmpty()
                .MaxBy(p => p.Item2);
            if (by > (other.LeftOut.Length > 0 ? WorthOfReading : Worth) * survey.RulerError)
            {
                int own = other.LeftOut.FirstOrDefault(-1);
                var misread = own < 0 ? null : ResidualTable.Of(survey, other.Line, [own]).Single(r => r.IsOutlier);
                return new(other.Line, at, by, misread is null ? other.Line.Kinks.MaxBy(k => Math.Abs(k.Turn)) : null, misread);
            }
        }

        return null;
    }

    // Between the readings that have so many beyond them at either end: what few readings tell of the ends is known to be loose, and no
    // platform stands there.
    private static double[] Places(SurveyedTrack track)
    {
        double[] read = [.. track.Residuals.Select(r => r.Chainage).Order()];
        if (read.Length <= 2 * EndReadings)
        {
            return [];
        }

        double from = read[EndReadings], to = read[^(EndReadings + 1)];
        return [.. Enumerable.Range(0, (int)((to - from) / Spacing) + 1).Select(k => from + (k * Spacing))];
    }

    private const int EndReadings = 2;

    private static bool IsPeak(int i, double[] offsets, double[] middle)
    {
        double Off(int k) => k < 0 || k >= offsets.Length ? 0 : Math.Abs(offsets[k] - middle[k]);
        return Off(i) >= Off(i - 1) && Off(i) > Off(i + 1);
    }

    // Of one line beside another at a chainage of the other, mm, left positive.
    private static double Offset(Centreline line, Centreline stated, double chainage)
    {
        var frame = stated.At(chainage);
        return -line.Locate(frame.Position).Offset;
    }
}
