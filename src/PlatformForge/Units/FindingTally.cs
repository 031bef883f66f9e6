using static System.FormattableString;

namespace PlatformForge.Units;

/// <summary>Keeps a list of findings readable: the first of each kind are told, the rest of it are counted.</summary>
public static class FindingTally
{
    /// <summary>
    /// The findings in their order; of those of one code and severity beyond <see cref="InputLimits.MessagesOfAKind"/> only their number, in
    /// one finding of the same kind right behind the last that is told.
    /// </summary>
    public static IReadOnlyList<Finding> Shortened(IReadOnlyList<Finding> findings)
    {
        if (findings.Count <= InputLimits.MessagesOfAKind)
        {
            return findings;
        }

        var counts = findings.CountBy(f => (f.Code, f.Severity)).ToDictionary(c => c.Key, c => c.Value);
        var told = new Dictionary<(string, Severity), int>();
        var kept = new List<Finding>();
        foreach (var finding in findings)
        {
            var kind = (finding.Code, finding.Severity);
            int number = told[kind] = told.GetValueOrDefault(kind) + 1;
            if (number <= InputLimits.MessagesOfAKind)
            {
                kept.Add(finding);
            }

            if (number == InputLimits.MessagesOfAKind && counts[kind] > number)
            {
                kept.Add(More(finding, counts[kind] - number));
            }
        }

        return kept;
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
