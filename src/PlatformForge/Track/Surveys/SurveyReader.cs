using PlatformForge.Track.Surveys.Drawings;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Remarks;
using PlatformForge.Track.Surveys.Tables;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys;

/// <summary>Front door to survey files: makes their texts into readings in layout millimetres, or tells by file, row and column
/// what is wrong with them.</summary>
public static class SurveyReader
{
    /// <summary>Reads every source of a survey; all faults of all sources are gathered.</summary>
    public static Outcome<Survey> Read(SurveySpec spec)
    {
        ArgumentOutOfRangeException.ThrowIfZero(spec.Sources.Count);
        var findings = new List<Finding>();
        if (!(spec.RulerError > 0 && spec.RulerError <= SurveyTable.Longest))
        {
            findings.Add(Finding.Error("PF2118", $"{spec.Key}.ruler_error", Invariant($"The ruler error is {spec.RulerError}."),
                "Give the most in mm by which a careful reading may be off, such as 0.25."));
            return Outcome.Fault<Survey>(findings);
        }

        Survey survey = spec is VersinesSpec versines ? Versines(versines, findings) : Places(spec, findings);
        return findings.Any(f => f.Severity == Severity.Error) ? Outcome.Fault<Survey>(findings) : Outcome.Of(survey with { Laying = spec.Laying }, findings);
    }

    private static PlaceSurvey Places(SurveySpec spec, List<Finding> findings)
    {
        var runs = new List<IReadOnlyList<PlaceReading>>();
        foreach (var source in spec.Sources)
        {
            var own = new List<Finding>();
            var run = spec switch
            {
                OffsetsSpec offsets => OffsetTable.Read(offsets, source, own),
                PointsSpec points => PointTable.Read(points, source, own),
                DrawingSpec drawing => DrawnLineReader.Read(drawing, source, own),
                _ => throw new BrokenInvariantException($"Track: no reader for {spec.GetType().Name}."),
            };
            if (!own.Any(f => f.Severity == Severity.Error))
            {
                RunRule.Check(spec.Key, spec.RulerError, run, source.File, own);
            }

            findings.AddRange(own);
            runs.Add(run);
        }

        return new(spec.Track, spec.Key, spec.RulerError, RailPairRule.Check(spec, runs, findings));
    }

    private static VersineSurvey Versines(VersinesSpec spec, List<Finding> findings)
    {
        var source = spec.Sources[0];
        if (spec.Sources.Count > 1)
        {
            findings.Add(Finding.Error("PF2119", spec.Key, "Versines of two rails cannot be told from one another.",
                "Give the file of one rail; measure the other with a string."));
        }

        if (!(spec.Chord >= RunRule.ShortestSurvey && spec.Chord <= SurveyTable.Longest))
        {
            findings.Add(Finding.Error("PF2117", $"{spec.Key}.chord", Invariant($"The chord is {spec.Chord:0.###} mm."), "Give the length of the "
                + Invariant($"chord that the versines were read from: {RunRule.ShortestSurvey:0} mm or more.")));
            return new(spec.Track, spec.Key, spec.RulerError, [], 1, spec.Start, spec.Heading, 0, null);
        }

        var readings = VersineTable.Read(spec, source, findings);
        if (readings.Count < FewestVersines && !findings.Any(f => f.Severity == Severity.Error))
        {
            findings.Add(Finding.Error("PF2105", spec.Key,
                Invariant($"There {(readings.Count == 1 ? "is 1 versine" : Invariant($"are {readings.Count} versines"))}; a curve needs at ")
                    + Invariant($"least {FewestVersines}."), Invariant($"Measure one every half chord ({spec.Chord / 2:0.#} mm), along the platform and the ")
                    + "length of the longest vehicle beyond both ends.") with
            { File = source.File, Line = readings.Count == 0 ? 1 : readings[^1].Row });
        }

        CheckClosing(spec, readings, findings);
        return new(spec.Track, spec.Key, spec.RulerError, readings, spec.Chord, spec.Start, spec.Heading, source.Measured.FromCentre,
            spec.Closing is { } closing ? closing with { Versine = closing.Versine * (int)spec.Positive } : null);
    }

    private const int FewestVersines = 4;

    // Stations stepped along the track may add up to this much less than its true length.
    private const double Stepping = 0.01;

    private static void CheckClosing(VersinesSpec spec, IReadOnlyList<VersineReading> readings, List<Finding> findings)
    {
        // Stations that were refused have been told of.
        if (readings.Count == 0 || !double.IsFinite(readings[0].Station) || !double.IsFinite(readings[^1].Station))
        {
            return;
        }

        double first = readings[0].Station - (spec.Chord / 2), last = readings[^1].Station + (spec.Chord / 2);
        if (spec.Closing is not { } closing)
        {
            findings.Add(Finding.Note("PF2127", spec.Key, "Versines without a closing chord drift: a reading error of 0.25 mm moves the end of a 1.5 m curve "
                + "by some 17 mm.", "Measure one long chord from end to end and the offset at its middle, or use offsets from a string."));
            return;
        }

        if (!(closing.From >= first && closing.To <= last && closing.To > closing.From))
        {
            findings.Add(Finding.Error("PF2126", $"{spec.Key}.closing", Invariant($"The closing chord runs from {closing.From:0.#} to {closing.To:0.#}; the ")
                + Invariant($"versines cover {first:0.#} to {last:0.#} mm."), "Give stations within the versines, in order."));
        }
        else if (!(closing.Length > 0 && closing.Length <= ((closing.To - closing.From) * (1 + Stepping)) + spec.RulerError))
        {
            findings.Add(Finding.Error("PF2126", $"{spec.Key}.closing", Invariant($"The closing chord is {closing.Length:0.##} mm long between ")
                + Invariant($"stations {closing.To - closing.From:0.##} mm apart."), "A chord is no longer than the track it spans."));
        }
    }
}
