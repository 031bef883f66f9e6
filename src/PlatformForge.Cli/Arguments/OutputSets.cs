using PlatformForge.Cli.Commands;
using PlatformForge.Exports;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Cli.Arguments;

/// <summary>The sets of files that a build is made of, by name.</summary>
internal static class OutputSets
{
    private const string All = "all";

    /// <summary>Their names, and the one for every set.</summary>
    public static IReadOnlyList<string> Names { get; } = ["prints", "pictures", "drawings", "tables", "report", "masks", "paper", "gauges", "sheet", "scene",
        All];

    /// <summary>What is made when none is named, in words.</summary>
    public const string Usual = "all but paper, gauges, sheet and scene";

    /// <summary>Reads names with commas between; returns the fault in them, or null.</summary>
    public static CommandResult? Read(string? text, OutputChoice usual, out OutputChoice choice)
    {
        choice = usual;
        if (text is null)
        {
            return null;
        }

        string[] named = text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        if (named.Length == 0 || named.FirstOrDefault(n => !Names.Contains(n, StringComparer.OrdinalIgnoreCase)) is { })
        {
            string wrong = named.FirstOrDefault(n => !Names.Contains(n, StringComparer.OrdinalIgnoreCase)) ?? "";
            string shown = wrong.Length > 40 ? wrong[..40] + "…" : wrong;
            string near = NearestName.Of(shown, Names) is { } meant ? $"Did you mean {meant}? " : "";
            return new([Finding.Error("PF7444", "", wrong.Length == 0 ? "--sets names no set." : $"There is no set \"{shown}\".",
                near + $"Name one or more of {string.Join(", ", Names)}, with commas between.") with { File = "--sets" }])
            { ExitCode = ExitCodes.Usage };
        }

        bool Has(string set) => named.Any(n => string.Equals(n, set, StringComparison.OrdinalIgnoreCase)
            || string.Equals(n, All, StringComparison.OrdinalIgnoreCase));
        choice = usual with
        {
            EverySet = named.Any(n => string.Equals(n, All, StringComparison.OrdinalIgnoreCase)),
            Prints = Has("prints"),
            Pictures = Has("pictures"),
            Drawings = Has("drawings"),
            Tables = Has("tables"),
            Report = Has("report"),
            Masks = Has("masks"),
            Paper = Has("paper"),
            Gauges = Has("gauges"),
            Sheet = Has("sheet"),
            Scene = Has("scene"),
            ReportDrawings = Has("report"),
            ReportPictures = Has("report")
        };
        return null;
    }

    /// <summary>What is added to the name of a folder that nobody named, so that sets without prints never take the place of a whole build.</summary>
    public static string Suffix(OutputChoice choice) => choice switch
    {
        { Prints: true } => "",
        { Scene: true, Paper: false, Sheet: false, Gauges: false, Pictures: false, Drawings: false, Tables: false, Report: false, Masks: false } => "-scene",
        { Paper: true, Scene: false, Sheet: false, Gauges: false, Pictures: false, Drawings: false, Tables: false, Report: false, Masks: false } => "-paper",
        { Gauges: true, Scene: false, Sheet: false, Paper: false, Pictures: false, Drawings: false, Tables: false, Report: false, Masks: false } => "-gauges",
        { Sheet: true, Scene: false, Gauges: false, Paper: false, Pictures: false, Drawings: false, Tables: false, Report: false, Masks: false } => "-sheet",
        _ => "-sets",
    };
}
