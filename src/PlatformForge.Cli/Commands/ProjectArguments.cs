using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Projects;
using PlatformForge.Projects.Overrides;
using PlatformForge.Units;

namespace PlatformForge.Cli.Commands;

/// <summary>The project file and the values that stand in for its own, as every command that reads one takes them.</summary>
internal sealed class ProjectArguments
{
    private readonly CommandArgument file;
    private readonly CommandOption sets;

    public ProjectArguments(CommandLineApplication command)
    {
        file = command.Argument("project", "The project file.").IsRequired(false, "Name the project file.");
        sets = command.Option("--set <key_value>", "key=value: a value in place of the file's, such as platform[0].deck.thickness=2 or vehicle.long-coach.width=35. Repeatable.", CommandOptionType.MultipleValue);
    }

    public string File => file.Value!;

    /// <summary>Values stated by --set, or the faults in them.</summary>
    public Outcome<IReadOnlyList<Override>> Overrides()
    {
        var parsed = sets.Values.Select(v => Override.Parse(v!)).ToArray();
        var faults = parsed.SelectMany(p => p.Findings).ToArray();
        return faults.Length > 0
            ? Outcome.Fault<IReadOnlyList<Override>>(faults)
            : new(parsed.Select(p => p.Value!).ToArray(), []);
    }

    /// <summary>Reads the project with those values in it.</summary>
    public Outcome<ProjectSpec> Read(IReadOnlyList<Override>? more = null) =>
        Overrides() is { Value: { } overrides } ? ProjectReader.ReadFile(File, [.. overrides, .. more ?? []]) : Outcome.Fault<ProjectSpec>(Overrides().Findings);
}
