using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Cli.Terminals;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;
using PlatformForge.Units.Memories;

namespace PlatformForge.Cli.Commands;

/// <summary>What all commands share: common options, and how results, faults and progress are shown.</summary>
internal sealed class Session
{
    private readonly string[] args;
    private readonly Terminal terminal;
    private readonly CommandOption json, quiet, verbose, noColour, strict;
    private readonly CancellationToken cancel;
    private readonly WritingGate gate = new();
    private readonly StageTimes? times;
    private string command = "";

    public Session(CommandLineApplication app, string[] args, Terminal terminal, CancellationToken cancel, StageTimes? times = null)
    {
        this.times = times;
        this.args = args;
        this.terminal = terminal;
        this.cancel = cancel;
        json = Common(app, "--json", "One JSON object on stdout and nothing else there.");
        quiet = Common(app, "-q|--quiet", "Errors only, and what was asked for and is not made.");
        verbose = Common(app, "-v|--verbose", "Notes too, and a trace when the program itself is at fault.");
        noColour = Common(app, "--no-color", "No colours; so does the variable NO_COLOR.");
        strict = Common(app, "--strict", "Warnings end with exit code 4.");
    }

    /// <summary>Whether a command has set to work, and not only help was asked for.</summary>
    public bool HasBegun => command.Length > 0;

    /// <summary>Whether --json was written, also where the line could not be parsed to its end.</summary>
    private bool AsksForJson => args.Contains("--json", StringComparer.Ordinal);

    /// <summary>What earlier command lines of this process found out.</summary>
    public Memory Memory { get; init; } = Memory.None;

    /// <summary>A watch over a run that shows its stages and stops with Ctrl-C.</summary>
    public RunWatch Watch(StageShow show) => new(show.Begin, cancel) { Gate = gate, Memory = Memory };

    private bool Colour => terminal.TakesColour && !noColour.HasValue();

    /// <summary>Runs a command's work and shows what it came to.</summary>
    public int Finish(string name, Func<StageShow, CommandResult> work)
    {
        command = name;
        times?.Mark("reading the project");
        var result = StageShow.Run(terminal, silent: quiet.HasValue() || json.HasValue(), Colour, times,
            show => LeavableWork.Run(() => work(show), gate, cancel));
        int exit = result.ExitCode ?? ExitCodes.Of(result.Findings, strict.HasValue());
        times?.Mark("telling the results");
        try
        {
            Show(name, result, exit);
            return exit;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return ResultsLost(fault, result.InPlace);
        }
    }

    /// <summary>Results that nobody takes: the disk behind stdout is full, or stdout is closed.</summary>
    public int ResultsLost(Exception fault, string? inPlace = null)
    {
        terminal.Error.WriteLine("The results cannot be written to "
            + $"stdout: {(fault is UnauthorizedAccessException ? "it is closed" : fault.Message.TrimEnd('.'))}.");
        terminal.Error.WriteLine(inPlace ?? "Nothing else was to be written.");
        return ExitCodes.CannotWrite;
    }

    private void Show(string name, CommandResult result, int exit)
    {
        if (json.HasValue())
        {
            terminal.Out.WriteLine(JsonObject.Write(name, exit, FindingTally.Shortened(result.Findings), result.Json));
            return;
        }

        var least = quiet.HasValue() ? Severity.Error : verbose.HasValue() || result.TellsNotes ? Severity.Note : Severity.Warning;
        foreach (var finding in FindingTally.Shortened([.. result.Findings.Where(f => f.Severity >= least || f.IsUnmade)]))
        {
            FindingLines.Write(terminal.Error, finding, Colour);
        }

        if (result.IsTheText || !quiet.HasValue())
        {
            result.Plain?.Invoke(terminal.Out);
        }
    }

    public int UsageFault(CommandParsingException fault)
    {
        string near = fault is UnrecognizedCommandParsingException { NearestMatches: var matches } && matches.FirstOrDefault() is { } match
            ? $"Did you mean {match}? " : "";
        return UsageFault(fault.Command.Parent is null ? "" : fault.Command.Name ?? "", fault.Message.Split('\n')[0], near);
    }

    public int UsageFault(string name, string message, string near = "") =>
        End(AsksForJson, name, ExitCodes.Usage, message.Trim().TrimEnd('.') + ".", near + $"See: platformforge {(name.Length == 0 ? "" : name + " ")}--help");

    public int Interrupted() => End(AsksForJson, command, ExitCodes.Interrupted, "Interrupted; nothing was put in place.", "");

    public int OurFault(Exception fault)
    {
        var root = fault is AggregateException { InnerExceptions: [var first, ..] } ? first : fault;
        int exit = End(AsksForJson, command, ExitCodes.OurFault, $"PlatformForge failed: {root.Message.ReplaceLineEndings(" ")}",
            "This is a fault of the program, not of your project. Please report it with the project file and what --verbose shows.");
        if (verbose.HasValue())
        {
            terminal.Error.WriteLine(fault);
        }

        return exit;
    }

    private static CommandOption Common(CommandLineApplication app, string template, string description) =>
        app.Option(template, description, CommandOptionType.NoValue, inherited: true);

    private int End(bool asJson, string name, int exit, string message, string remedy)
    {
        if (asJson)
        {
            try
            {
                terminal.Out.WriteLine(JsonObject.Write(name, exit, [], j =>
                {
                    j.WriteString("message", message);
                    j.WriteString("remedy", remedy);
                }));
                return exit;
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                // Told as text then: better in the wrong place than nowhere.
            }
        }

        terminal.Error.WriteLine(message);
        if (remedy.Length > 0)
        {
            terminal.Error.WriteLine(remedy);
        }

        return exit;
    }
}
