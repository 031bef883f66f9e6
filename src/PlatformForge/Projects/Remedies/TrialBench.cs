using System.Diagnostics;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Paper;
using PlatformForge.Exports.Stock;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;
using PlatformForge.Units.Memories;

namespace PlatformForge.Projects.Remedies;

/// <summary>How much trying may cost. Counts come first, so that the same project gets the same words on every machine that keeps the time.</summary>
/// <param name="RunsPerFinding">Most designs run for one finding.</param>
/// <param name="Runs">Most designs run for all findings together.</param>
/// <param name="Time">No design is begun after this.</param>
public sealed record TrialLimits(int RunsPerFinding, int Runs, TimeSpan Time)
{
    /// <summary>What a person at a terminal waits for beside the run itself.</summary>
    public static TrialLimits Usual { get; } = new(48, 160, TimeSpan.FromSeconds(3));

    /// <summary>For a file with more faults than anybody mends one by one.</summary>
    public static TrialLimits Brief { get; } = Usual with { Runs = 3 };
}

/// <summary>Reads a project with cures and designs it, writing nothing; the same cures are run once.</summary>
/// <param name="source">The project.</param>
/// <param name="limits">What trying may cost.</param>
/// <param name="cancel">Gives up between two designs.</param>
/// <param name="design">Designs a project; as a run does when null.</param>
internal sealed class TrialBench(ProjectSource source, TrialLimits limits, CancellationToken cancel,
    Func<ProjectSpec, RunWatch, Outcome<Dossier>>? design = null)
{
    private readonly Dictionary<string, IReadOnlySet<(string Code, string Key)>?> known = new(StringComparer.Ordinal);
    private readonly Memory memory = new();
    private readonly Stopwatch watch = Stopwatch.StartNew();
    private int runs, most;

    /// <summary>Whether there is neither time nor a run left to try anything.</summary>
    public bool IsSpent => runs >= limits.Runs || watch.Elapsed >= limits.Time;

    /// <summary>A new finding has its own count of runs.</summary>
    public void Begin() => most = runs + limits.RunsPerFinding;

    /// <summary>Codes and keys of the errors that are left with the cures; null when the limits are reached, or where the program itself falls over.</summary>
    public IReadOnlySet<(string Code, string Key)>? Errors(IReadOnlyList<Cure> cures)
    {
        string name = string.Join('\n', cures.Select(c => $"{c.Act} {c.Key} {c.Value}"));
        if (known.TryGetValue(name, out var errors))
        {
            return errors;
        }

        if (runs >= most || IsSpent)
        {
            return null;
        }

        runs++;
        cancel.ThrowIfCancellationRequested();
        try
        {
            return known[name] = Found(source.Read(cures)).Where(f => f.Severity == Severity.Error).Select(f => (f.Code, f.Key)).ToHashSet();
        }
        catch (Exception e) when (IsFault(e))
        {
            // What the program itself falls over mends nothing; what the user wrote is told all the same.
            return known[name] = null;
        }
    }

    private IEnumerable<Finding> Found(Outcome<ProjectSpec> read) => read.Value is { } project
        ? [.. PaperSet.Objections(project.Paper), .. StockSet.Objections(project.Sheet),
            .. (design ?? DesignRun.Design)(project, new RunWatch(_ => { }, cancel) { Memory = memory }).Findings]
        : read.Findings;

    private static bool IsFault(Exception e) => e is ArgumentException or BrokenInvariantException
        || (e is AggregateException all && all.InnerExceptions.All(IsFault));
}
