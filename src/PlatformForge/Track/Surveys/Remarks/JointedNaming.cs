using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;

namespace PlatformForge.Track.Surveys.Remarks;

/// <summary>
/// Readings named as misread, or in doubt, by a search that knows nothing of stated joints, held against pieces between those: one that they meet as
/// readings are usually met
/// is a good one, and is kept.
/// </summary>
internal static class JointedNaming
{
    // A reading whose part in the sum of squares, in standard deviations, is less is met: the joints that it speaks of were not known to the search.
    internal const double Met = 12;

    /// <summary>The survey with those kept that pieces between the stated joints meet.</summary>
    public static SurveyedTrack Held(Survey survey, SurveyedTrack track)
    {
        ReadingResidual[] named = [.. track.Residuals.Where(r => r.IsOutlier || track.IsInDoubt(r.Reading))];
        if (named.Length == 0 || SectionalLines.Pieces(survey, track) is not { } pieces)
        {
            return track;
        }

        var curve = PlatformForge.Track.Surveys.Fitting.Lines.ReferenceLine.TwiceIntegrated(track.Line);
        (double At, double Value) Read(ReadingResidual r) => (r.Chainage, curve(r.Chainage) + r.Miss);
        var kept = track.Residuals.Except(named).Select(Read).ToList();
        double before = pieces(kept);
        var good = new HashSet<Reading>();
        while (named.Where(r => !good.Contains(r.Reading)).Select(r => (Own: r, Cost: pieces([.. kept, Read(r)]))).OrderBy(p => p.Cost)
            .FirstOrDefault() is { Own: { } next } least && least.Cost - before < Met)
        {
            good.Add(next.Reading);
            kept.Add(Read(next));
            before = least.Cost;
        }

        return good.Count == 0 ? track : track with
        {
            Residuals = [.. track.Residuals.Select(r => good.Contains(r.Reading) ? r with { IsOutlier = false } : r)],
            Doubted = [.. track.Doubted.Where(r => !good.Contains(r.Reading))],
        };
    }
}
