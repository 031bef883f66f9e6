using System.Text.Json;
using PlatformForge.Units;

namespace PlatformForge.Cli.Commands;

/// <summary>What a command came to, before it is shown as text or as JSON.</summary>
/// <param name="Findings">Faults and remarks.</param>
internal sealed record CommandResult(IReadOnlyList<Finding> Findings)
{
    /// <summary>Result as text; nothing with --quiet unless <see cref="IsTheText"/>.</summary>
    public Action<TextWriter>? Plain { get; init; }

    /// <summary>Result as members of the JSON object.</summary>
    public Action<Utf8JsonWriter>? Json { get; init; }

    /// <summary>Whether the text is what was asked for, and not a report on what was done.</summary>
    public bool IsTheText { get; init; }

    /// <summary>Whether notes are part of what was asked for, and told without --verbose too.</summary>
    public bool TellsNotes { get; init; }

    /// <summary>What was written and stays, whether or not the result can be shown; null when nothing was.</summary>
    public string? InPlace { get; init; }

    /// <summary>An exit code that the findings don't tell.</summary>
    public int? ExitCode { get; init; }
}
