using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Tests.Track.Surveys.Admissible;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Track.Surveys;

/// <summary>
/// One account of a kink: what a survey tells of it as a thing of the line (PF2124), as against what was said (PF2161, PF2194) and as another line (PF2190,
/// PF2191) never contradicts itself, nor what it foretells of saying how the track was laid.
/// </summary>
public partial class KinkAccountTests
{
    [Fact]
    public void What_is_told_of_a_kink_in_one_place_is_not_denied_in_another()
    {
        var faults = Enumerable.Range(0, Simulations.Of(12, 300)).AsParallel().AsOrdered().SelectMany(k => Faults(k).Select(f => $"{k}: {f}")).ToList();
        Assert.True(faults.Count == 0, string.Join(Environment.NewLine, faults));
    }

    private static IEnumerable<string> Faults(int k)
    {
        var random = new Random(7_300_000 + k);
        var line = MadeUpSurvey.Track(random, k % 5 == 4 ? 50 : 200, new[] { 4, 2, 3, 1, 0 }[k % 5]);
        var survey = MadeUpSurvey.String(line, random, k % 3 == 2 ? 50 : 100, 0.25, MadeUpSurvey.Flexible, k % 4 == 3 ? 1.25 : 0);
        var flexible = TrackSurveyor.Fit(survey);
        return OfFlexible(flexible.Value!, flexible.Findings).Concat(k % 3 == 0 ? OfOthers(survey, flexible) : []);
    }

    private static IEnumerable<string> OfFlexible(SurveyedTrack track, IReadOnlyList<Finding> findings)
    {
        var kinks = Of(findings, "PF2124").ToList();
        var clear = kinks.Where(f => f.Message.StartsWith("The track has", StringComparison.Ordinal)).Select(Chainage).ToList();
        var against = Of(findings, "PF2161").ToList();
        var beyond = findings.Where(f => f.Code is "PF2190" or "PF2191").ToList();
        bool empty = Of(findings, "PF2160").Any();
        if (kinks.Count != track.Line.Kinks.Count || clear.Count != track.ClearKinks.Count())
        {
            yield return $"{track.Line.Kinks.Count} kinks, {track.ClearKinks.Count()} clear, told {kinks.Count} and {clear.Count}";
        }

        if (!empty && against.Count > 0 != clear.Count > 0)
        {
            yield return $"{clear.Count} kinks that no likely line does without, and {against.Count} times told to be against flexible track";
        }

        if (against.Any(f => !clear.Contains(Chainage(f)) || f.Message.Contains("show one of", StringComparison.Ordinal) != (clear.Count == 1)))
        {
            yield return "speaks against flexible track: another kink, or another count, than the line's own";
        }

        if (beyond.Count > 1 || (beyond.Count > 0 && (empty || clear.Count > 0)))
        {
            yield return "a line that is nearly as likely beside one that nothing does without";
        }

        if (track.Outside?.Misread is { } misread && track.Outliers.Concat(track.Doubted).Any(r => r.Reading == misread.Reading))
        {
            yield return "one reading left out, or in doubt, and as may be misread";
        }
    }

    // What naming the laying would give is what it gives.
    private static IEnumerable<string> OfOthers(PlaceSurvey survey, Outcome<SurveyedTrack> flexible)
    {
        Outcome<SurveyedTrack> Laid(LaidAs laid) => TrackSurveyor.Fit(survey with { Laying = Laying.Usual(76.2, laid) });
        var (unknown, sectional) = (Laid(LaidAs.Unknown), Laid(LaidAs.Sectional));
        if (unknown.Value!.DoubtIfFlexible is null != flexible.Findings.Any(f => f.Code is "PF2160" or "PF2161"))
        {
            yield return "unknown foretells of flexible what flexible does not tell";
        }

        if (unknown.Findings.Concat(sectional.Findings).Any(f => f.Code is "PF2160" or "PF2161" or "PF2190" or "PF2191"))
        {
            yield return "held against flexible track, which nobody said that it was";
        }

        var sharp = unknown.Value.ClearKinks.Where(c => Math.Abs(c.Turn) > survey.Laying.GreatestKink).Select(c => Math.Round(c.Chainage)).Order();
        if (!sharp.SequenceEqual(Of(sectional.Findings, "PF2194").Select(Chainage).Order()))
        {
            yield return "kinks over the stated one, by unknown and by sectional";
        }

        string[] Told(Outcome<SurveyedTrack> track) => [.. Of(track.Findings, "PF2124").Select(f => f.Message)];
        if (!Told(flexible).SequenceEqual(Told(unknown)) || !Told(unknown).SequenceEqual(Told(sectional)))
        {
            yield return "a kink is told otherwise as the laying is";
        }
    }

    private static IEnumerable<Finding> Of(IEnumerable<Finding> findings, string code) => findings.Where(f => f.Code == code);

    private static double Chainage(Finding finding) => double.Parse(Near().Match(finding.Message).Groups[1].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("near chainage (\\d+)")]
    private static partial Regex Near();
}
