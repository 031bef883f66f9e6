using static System.FormattableString;

namespace PlatformForge.Units;

/// <summary>Keeps a list of findings readable: the first of each kind are told, the rest of it are counted.</summary>
public static class FindingTally
{
    /// <summary>Which of the findings are told one by one: the first <see cref="InputLimits.MessagesOfAKind"/> of each code and severity.</summary>
    public static IReadOnlyList<bool> Told(IReadOnlyList<Finding> findings)
    {
        var counts = new Dictionary<(string, Severity), int>();
        return [.. findings.Select(f => (counts[(f.Code, f.Severity)] = counts.GetValueOrDefault((f.Code, f.Severity)) + 1) <= InputLimits.MessagesOfAKind)];
    }

    /// <summary>
    /// The findings in their order; of those of one code and severity that are not told one by one only their number, in one finding of the
    /// same kind right behind the last that is told.
    /// </summary>
    public static IReadOnlyList<Finding> Shortened(IReadOnlyList<Finding> findings)
    {
        var told = Told(findings);
        var more = Enumerable.Range(0, findings.Count).Where(i => !told[i]).CountBy(i => (findings[i].Code, findings[i].Severity))
            .ToDictionary(c => c.Key, c => c.Value);
        if (more.Count == 0)
        {
            return findings;
        }

        int[] kept = [.. Enumerable.Range(0, findings.Count).Where(i => told[i])];
        var last = kept.GroupBy(i => (findings[i].Code, findings[i].Severity)).Where(g => more.ContainsKey(g.Key))
            .ToDictionary(g => g.Last(), g => more[g.Key]);
        return [.. kept.SelectMany(i => last.TryGetValue(i, out int count) ? [findings[i], More(findings[i], count)] : new[] { findings[i] })];
    }

    /// <summary>The finding that stands for so many more of the kind of another.</summary>
    public static Finding More(Finding told, int count) => told with
    {
        Key = "",
        Message = Invariant($"{count} more of the same kind."),
        Remedy = "Mend the first ones; the others are often the same slip.",
        File = null,
        Line = 0,
        Column = 0,
    };
}
