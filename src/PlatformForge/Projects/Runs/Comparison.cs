using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;

namespace PlatformForge.Projects.Runs;

/// <summary>One design of a comparison.</summary>
/// <param name="Values">What was varied, in the order asked.</param>
/// <param name="Figures">Its figures; null when it can't be made.</param>
/// <param name="Findings">What is wrong with it, or to be known of it.</param>
public sealed record ComparedDesign(IReadOnlyList<Override> Values, DesignFigures? Figures, IReadOnlyList<Finding> Findings)
{
    /// <summary>Whether it can be made and nothing touches.</summary>
    public bool Passed => Figures is not null && !Findings.Any(f => f.Severity == Severity.Error);
}

/// <summary>Several values tried in one go, without a file being written.</summary>
public static class Comparison
{
    /// <summary>Designs every combination. A combination that can't be made is a row with its findings, not a fault of the whole.</summary>
    /// <param name="read">Reads the project with values in place of its own.</param>
    /// <param name="variations">What is varied.</param>
    /// <param name="watch">Who watches.</param>
    public static Outcome<IReadOnlyList<ComparedDesign>> Run(
        Func<IReadOnlyList<Override>, Outcome<ProjectSpec>> read, IReadOnlyList<Variation> variations, RunWatch watch)
    {
        // A project that is wrong by itself is told once, not once a row.
        var plain = read([]);
        if (!plain.Succeeded)
        {
            return Outcome.Fault<IReadOnlyList<ComparedDesign>>(plain.Findings);
        }

        var combinations = Variation.Combinations(variations);
        if (combinations.Value is not { } designs)
        {
            return Outcome.Fault<IReadOnlyList<ComparedDesign>>(combinations.Findings);
        }

        var rows = new List<ComparedDesign>();
        foreach (var values in designs)
        {
            watch.Stage("trying " + (values.Count == 0 ? "the project as it is" : string.Join(", ", values.Select(v => $"{v.Key}={v.Value}"))));
            rows.Add(One(read(values), values, watch));
        }

        return new(rows, []);
    }

    private static ComparedDesign One(Outcome<ProjectSpec> project, IReadOnlyList<Override> values, RunWatch watch)
    {
        if (project.Value is not { } spec)
        {
            return new(values, null, project.Findings);
        }

        var design = DesignRun.Design(spec, watch with { Begin = _ => { } });
        if (design.Value is not { } dossier)
        {
            return new(values, null, design.Findings);
        }

        var verdict = TrialVerdict.Of(dossier, cancel: watch.Cancel, memory: watch.Memory);
        return new(values, DesignFigures.Of(dossier, verdict), [.. design.Findings, .. spec.Placed(verdict.Findings)]);
    }
}
