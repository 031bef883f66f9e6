using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Cli.Commands;
using PlatformForge.Projects;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Remedies;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;

namespace PlatformForge.Cli.Arguments;

/// <summary>The project file and the values that stand in for its own, as every command that reads one takes them.</summary>
internal sealed class ProjectArguments
{
    private readonly CommandArgument file;
    private readonly CommandOption sets;

    public ProjectArguments(CommandLineApplication command)
    {
        file = command.Argument("project", "The project file.").IsRequired(false, "Name the project file.");
        sets = command.Option("--set <key_value>",
            "key=value: a value in place of the file's, such as platform[0].deck.thickness=2 or vehicle.long-coach.width=35. Repeatable.",
            CommandOptionType.MultipleValue);
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

    /// <summary>What a run that was refused ends with: its findings, the remedies tried on this project.</summary>
    /// <param name="findings">Its findings.</param>
    /// <param name="watch">Who watches.</param>
    /// <param name="more">Further values that it was read with.</param>
    public CommandResult Refused(IReadOnlyList<Finding> findings, RunWatch watch, IReadOnlyList<Override>? more = null) =>
        new(Overrides().Value is { } overrides && ProjectSource.OfFile(File, [.. overrides, .. more ?? []]) is { } source
            ? CureTrial.Of(source, findings, cancel: watch.Cancel) : findings);

    /// <summary>Reads the project with those values in it.</summary>
    /// <param name="more">Further values.</param>
    /// <param name="measured">Whether surveys' files have to be there.</param>
    public Outcome<ProjectSpec> Read(IReadOnlyList<Override>? more = null, bool measured = true) =>
        Overrides() is { Value: { } overrides } ? ProjectReader.ReadFile(File, [.. overrides, .. more ?? []], measured: measured)
            : Outcome.Fault<ProjectSpec>(Overrides().Findings);
}
