using System.Globalization;
using PlatformForge.Cli.Commands;
using PlatformForge.Projects;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Cli.Arguments;

/// <summary>Chainages asked for one by one.</summary>
internal static class ChosenSections
{
    /// <summary>Reads the chainages; returns the fault in them, or null.</summary>
    public static CommandResult? Read(string option, IReadOnlyList<string?> values, out IReadOnlyList<double> chainages)
    {
        double[] read = [.. values.Select(Chainage)];
        chainages = read;
        int wrong = Array.FindIndex(read, double.IsNaN);
        return wrong < 0 ? null : Fault(option, $"\"{values[wrong]}\" is no chainage.",
            "Give a number of mm along the track of the model, such as 640 or 640.5, or a length with its unit, such as \"12 in\".");
    }

    // mm, or a length of the model with its unit; not a number where it is neither. What is full size is no place on a model.
    private static double Chainage(string? text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double mm) && double.IsFinite(mm) ? mm
        : LengthText.Read(text ?? "", new ModelScale(double.NaN)) ?? double.NaN;

    /// <summary>The fault of a chainage that no platform of the project reaches, or null.</summary>
    public static CommandResult? Beyond(string option, ProjectSpec project, IReadOnlyList<double> chainages)
    {
        double lost = chainages.FirstOrDefault(s => !project.Platforms.Any(p => s >= p.Face.From && s <= p.Face.To), double.NaN);
        return double.IsNaN(lost) ? null : Fault(option, Invariant($"Chainage {lost:0.###} mm lies beyond every platform."),
            "Give one from " + string.Join(", or from ", project.Platforms.Select(p => Invariant($"{p.Face.From:0.###} to {p.Face.To:0.###} ({p.Name})")))
            + ".");
    }

    private static CommandResult Fault(string option, string message, string remedy) =>
        new([Finding.Error("PF1033", "", message, remedy) with { File = option }]) { ExitCode = ExitCodes.Usage };
}
