using PlatformForge.Track.Surveys.Remarks;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Runs;

/// <summary>
/// What a survey has to say of single readings, in one line: the survey command tells it in full, and whoever goes on with a design has
/// read it there.
/// </summary>
internal static class SurveyBrief
{
    /// <summary>The findings with those of single readings, of each survey, as one.</summary>
    public static IEnumerable<Finding> Of(IReadOnlyList<Finding> findings)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var finding in findings)
        {
            if (!SurveyRemarks.IsOfOneReading(finding))
            {
                yield return finding;
            }
            else if (told.Add(finding.Key))
            {
                var all = findings.Where(f => f.Key == finding.Key && SurveyRemarks.IsOfOneReading(f)).ToArray();
                yield return all.Length == 1 && finding.Severity == Severity.Note ? finding : Brief(finding, all);
            }
        }
    }

    private static Finding Brief(Finding first, Finding[] all)
    {
        int perhaps = all.Count(f => f.Code == "PF2190"), doubted = all.Count(f => f.Code == "PF2145"), misread = all.Length - perhaps - doubted;
        string what = string.Join(" and ",
            new[] { (misread, "left out as misread"), (doubted, "in doubt"), (perhaps, "kept that may be misread") }.Where(p => p.Item1 > 0)
            .Select(p => Invariant($"{p.Item1} ")
                + Invariant($"{p.Item2}")));
        return first with
        {
            Code = "PF2162",
            Message = Invariant($"Of this survey's readings {what}; the first stands here."),
            Remedy = "The survey command tells each of them, and what would fit.",
        };
    }
}
