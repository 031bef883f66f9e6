using PlatformForge.Exports;
using PlatformForge.Exports.Paper;
using PlatformForge.Exports.Stock;
using PlatformForge.Proofs;
using PlatformForge.Units;

namespace PlatformForge.Projects.Runs;

/// <summary>
/// Sets that a project cannot have. One that was named is refused with the whole run; of a run of every set it is left out with a warning, so that paper
/// which is too small does not keep sections from being printed.
/// </summary>
internal static class LeftOutSets
{
    /// <summary>What is refused before anything long is done.</summary>
    public static IReadOnlyList<Finding> Objections(ProjectSpec project, OutputChoice? choice) => choice is null or { EverySet: true } ? []
        : [.. Each(project, choice).SelectMany(s => s.Objections)];

    /// <summary>A run of every set without those that are refused, and why they are; any other as it is.</summary>
    public static (OutputChoice Choice, IReadOnlyList<Finding> Told) Without(ProjectSpec project, OutputChoice choice)
    {
        var told = new List<Finding>();
        foreach (var (name, objections, without) in choice.EverySet ? Each(project, choice) : [])
        {
            choice = objections.Count > 0 ? without(choice) : choice;
            told.AddRange(Told(name, objections));
        }

        return (choice, told);
    }

    /// <summary>What a set came to; where it is refused in a run of every set, nothing in its place and warnings.</summary>
    public static Outcome<T> Kept<T>(OutputChoice choice, string name, Outcome<T> made, T nothing)
        where T : class => made.Value is null && choice.EverySet ? Outcome.Of(nothing, [.. Told(name, made.Findings)]) : made;

    private static IEnumerable<(string Name, IReadOnlyList<Finding> Objections, Func<OutputChoice, OutputChoice> Without)> Each(ProjectSpec project,
        OutputChoice choice)
    {
        if (choice.Paper)
        {
            yield return ("paper", PaperSet.Objections(project.Paper), c => c with { Paper = false });
        }

        if (choice.Gauges)
        {
            yield return ("gauges", ProofMaker.Objections(project.Gauges, project.Printer, project.Layout.Gauge), c => c with { Gauges = false });
        }

        if (choice.Sheet)
        {
            yield return ("sheet", StockSet.Objections(project.Sheet), c => c with { Sheet = false });
        }
    }

    /// <summary>Why a set is left out, as warnings.</summary>
    public static IEnumerable<Finding> Told(string name, IEnumerable<Finding> objections) => objections.Select(f => f.Severity != Severity.Error ? f
        : f with { Severity = Severity.Warning, IsUnmade = true, Message = $"The set {name} is left out. {f.Message}" });
}
