using System.Globalization;
using PlatformForge.Projects.Catalogue;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects.Remedies;

/// <summary>
/// Tries remedies before they are printed. Each error gets the first change that makes it go without bringing an error that was
/// not there; where what its room offers does not do that, the sentence is replaced by one that is true. Errors that are only counted
/// when they are told (<see cref="FindingTally"/>) are not tried: nobody would read of it.
/// </summary>
public static class CureTrial
{
    // So many findings come of one slip, or the file is of another kind altogether.
    private const int Many = 1000;

    // So many findings of a kind are tried together first.
    private const int Several = 3;

    /// <summary>The findings with their remedies tried; only errors of the project file and of design rules are.</summary>
    /// <param name="source">The project they speak of.</param>
    /// <param name="findings">The findings, placed.</param>
    /// <param name="limits">How much trying may cost; <see cref="TrialLimits.Usual"/> when null.</param>
    /// <param name="cancel">Stops the trying.</param>
    public static IReadOnlyList<Finding> Of(ProjectSource source, IReadOnlyList<Finding> findings, TrialLimits? limits = null,
        CancellationToken cancel = default)
    {
        if (!findings.Any(IsTried) || source.Tree() is not { } tree)
        {
            return findings;
        }

        var bench = new TrialBench(source, limits ?? (findings.Count > Many ? TrialLimits.Brief : TrialLimits.Usual), cancel);
        var taken = new List<Cure>();
        var told = findings.ToArray();
        var read = FindingTally.Told(findings);
        var next = Alike(told, read, tree, bench, taken);
        foreach (int i in Enumerable.Range(0, told.Length).Where(i => read[i] && IsTried(told[i]) && told[i].Cure is not { Tried: true })
            .OrderBy(i => told[i].Cure?.Act != CureAct.Rename))
        {
            // A misspelt key is set right before one is added for what it meant.
            var one = One(told[i], tree, bench, taken);
            told[i] = bench.IsSpent && one.Cure is not { Tried: true } && next.TryGetValue(i, out var lesser)
                ? RemedyWords.Next(told[i], lesser.Cure, lesser.Next) : one;
        }

        Together(findings, told, tree, bench, next);
        return told;
    }

    // Several findings of a kind, each with a figure of its own, are tried in one design: one by one they would take more of them than there is time for.
    // Gives what comes next where they go together and leave an error that was not there.
    private static Dictionary<int, (Cure Cure, (string Code, string Key) Next)> Alike(
        Finding[] told, IReadOnlyList<bool> read, TreeTable tree, TrialBench bench, List<Cure> taken)
    {
        var next = new Dictionary<int, (Cure, (string, string))>();
        foreach (var kind in Enumerable.Range(0, told.Length).Where(i => read[i] && IsTried(told[i]) && told[i].Cure is { Act: CureAct.Set })
            .GroupBy(i => told[i].Code))
        {
            var cures = kind.Select(i => CureCandidates.Of(told[i], tree).First()).DistinctBy(c => c.Key).ToArray();
            bench.Begin();
            if (cures.Length < Several || cures.Length != kind.Count() || bench.Errors(taken) is not { } before
                || bench.Errors([.. taken, .. cures]) is not { } after || kind.Any(i => after.Contains((told[i].Code, told[i].Key))))
            {
                continue;
            }

            (string Code, string Key)[] fresh = [.. after.Except(before)];
            foreach (var (i, cure) in fresh.Any(f => f.Code == kind.Key || Array.Exists(cures, c => c.Key == f.Key)) ? [] : kind.Zip(cures))
            {
                if (fresh.Length > 0)
                {
                    next[i] = (cure, fresh[0]);
                }
                else
                {
                    told[i] = RemedyWords.Tried(told[i], cure with { Tried = true });
                    taken.Add(cure);
                }
            }
        }

        return next;
    }

    // While one value of several cannot be read nothing is designed, so each is tried once more beside the cures of the others, where these bring new errors.
    private static void Together(
        IReadOnlyList<Finding> findings, Finding[] told, TreeTable tree, TrialBench bench, Dictionary<int, (Cure Cure, (string Code, string Key) Next)> next)
    {
        int[] cured = [.. Enumerable.Range(0, told.Length).Where(i => IsTried(told[i]) && told[i].Cure is not null)];
        bench.Begin();
        if (cured.Length < 2 || bench.Errors([.. cured.Select(i => told[i].Cure!)]) is not { } left
            || !left.Except(findings.Select(f => (f.Code, f.Key))).Any())
        {
            return;
        }

        foreach (int i in cured.Where(i => !bench.IsSpent || !next.ContainsKey(i)))
        {
            told[i] = One(findings[i], tree, bench, [.. cured.Where(c => c != i).Select(c => told[c].Cure).OfType<Cure>()]);
        }
    }

    private static bool IsTried(Finding finding) =>
        finding.Severity == Severity.Error && finding.Kind is FaultKind.Input or FaultKind.DesignRule && finding.Key.Length > 0
        && FindingCatalogue.Find(finding.Code) is { NoValue: null };

    private static Finding One(Finding finding, TreeTable tree, TrialBench bench, List<Cure> taken)
    {
        bench.Begin();
        if (bench.Errors(taken) is not { } before)
        {
            return RemedyWords.Untried(finding);
        }

        if (!before.Contains((finding.Code, finding.Key)))
        {
            // What the design alone does not show, such as a fault of a command's own, cannot be tried.
            return taken.Count > 0 ? RemedyWords.MendedBy(finding, taken[^1]) : finding;
        }

        (Cure Cure, (string Code, string Key) Next)? lesser = null;
        if (Mending(finding, tree, c => Works(c)) is { } cure)
        {
            taken.Add(cure);
            return RemedyWords.Tried(finding, cure);
        }

        return lesser is { } some ? RemedyWords.Next(finding, some.Cure, some.Next)
            : bench.IsSpent ? RemedyWords.Untried(finding)
            : RemedyWords.None(finding);

        bool Works(Cure tried)
        {
            if (bench.Errors([.. taken, tried]) is not { } after || after.Contains((finding.Code, finding.Key)))
            {
                return false;
            }

            (string Code, string Key)[] fresh = [.. after.Except(before)];
            if (fresh.Length > 0 && lesser is null && !fresh.Any(f => f.Code == finding.Code || f.Key == tried.Key))
            {
                lesser = (tried, fresh[0]);
            }

            return fresh.Length == 0;
        }
    }

    private static Cure? Mending(Finding finding, TreeTable tree, Func<Cure, bool> works)
    {
        foreach (var cure in CureCandidates.Of(finding, tree))
        {
            if (works(cure))
            {
                return cure with { Tried = true };
            }

            // What the room offers is nearest to what is meant: look round it before other ways are tried.
            if (cure == finding.Cure && (Round(cure) ?? Searched(cure.Key)) is { } near)
            {
                return near;
            }
        }

        return (finding.Cure is null || finding.Cure.Key != finding.Key ? Searched(finding.Key) : null)
            ?? CureCandidates.Others(finding, tree).Select(Searched).FirstOrDefault(c => c is not null);

        Cure? Round(Cure cure) => cure.Act == CureAct.Set && double.TryParse(cure.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double offered)
            && KeyModel.RuleOf(cure.Key) is NumberRule rule ? Near(cure.Key, rule, offered) : null;

        Cure? Searched(string key) => KeyModel.RuleOf(key) is NumberRule rule && ValueSearch.Stated(tree, key, rule) is { } stated ? Near(key, rule, stated)
            : null;

        Cure? Near(string key, NumberRule rule, double from) =>
            ValueSearch.Nearest(rule, from, v => works(Cure.Set(key, v))) is { } value ? Cure.Set(key, value) with { Tried = true } : null;
    }
}
