using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Cli.Commands;
using PlatformForge.Cli.Terminals;
using PlatformForge.Units.Memories;

namespace PlatformForge.Cli;

/// <summary>The command line: commands, their options, and what the process ends with.</summary>
internal static class CommandLine
{
    private const string Examples = """

        Examples:
          platformforge init my-halt.toml               write a short project file to fill in
          platformforge check my-halt.toml              is the design sound, and what comes nearest?
          platformforge build my-halt.toml -o my-halt   write sections, plates, drawings and the verdict

        Figures are for model railways only.
        """;

    /// <summary>Runs one command line.</summary>
    /// <param name="args">Its words.</param>
    /// <param name="terminal">Where it speaks to.</param>
    /// <param name="memory">What earlier lines of the same process found out; a process that runs one has none.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>0 done, 1 our fault, 2 usage, 3 a project or survey file is wrong, 4 a design rule is broken, 5 a mesh check failed,
    /// 6 cannot write, 130 interrupted.</returns>
    public static int Run(string[] args, Terminal terminal, Memory? memory = null, CancellationToken cancel = default)
    {
        var times = StageTimes.IfAsked();
        times?.Mark("reading the command line");
        if (!HasFolder())
        {
            terminal.Error.WriteLine("The folder that this was started in is no longer there.");
            terminal.Error.WriteLine("Go to a folder that is there, and run it again.");
            return ExitCodes.WrongFile;
        }

        using var console = new StreamConsole();
        using var app = new CommandLineApplication(console)
        {
            Name = "platformforge",
            FullName = "PlatformForge",
            Description = "From a survey of model railway track and the vehicles on it to printable platforms that nothing touches.",
            ExtendedHelpText = Examples,
            MakeSuggestionsInErrorMessage = true,
        };
        app.HelpOption("-h|--help", inherited: true);
        app.VersionOption("--version", PlatformForge.Projects.ProgramVersion.Text);
        var session = new Session(app, args, terminal, cancel, times) { Memory = memory ?? Memory.None };
        AddCommands(app, args, session);
        app.OnExecute(() =>
        {
            app.ShowHelp(usePager: false);
            return ExitCodes.Usage;
        });
        int exit = Execute(app, args, session, () => console.Release(terminal.Out));
        times?.Tell(terminal.Error);
        return exit;
    }

    private static readonly (string Name, Action<CommandLineApplication, Session> Add)[] Commands =
    [
        ("init", InitCommand.Add), ("check", CheckCommand.Add), ("survey", SurveyCommand.Add), ("build", BuildCommand.Add), ("paper", PaperCommand.Add),
        ("gauges", GaugesCommand.Add),
        ("report", ReportCommand.Add),
        ("compare", CompareCommand.Add), ("verify", VerifyCommand.Add), ("presets", PresetsCommand.Add), ("schema", SchemaCommand.Add),
        ("findings", FindingsCommand.Add),
    ];

    private static void AddCommands(CommandLineApplication app, string[] args, Session session)
    {
        foreach (var add in Asked(args))
        {
            add(app, session);
        }

        foreach (var command in app.Commands)
        {
            command.ExtendedHelpText = "\n" + command.ExtendedHelpText!.Trim('\r', '\n') + "\n";
            command.ValidationErrorHandler = fault => session.UsageFault(command.Name!, fault.ErrorMessage ?? "The command is not complete.");
        }
    }

    // A line that begins with a command is read by that command alone: the others' options would take as long to set up as the line to read.
    private static IEnumerable<Action<CommandLineApplication, Session>> Asked(string[] args) =>
        args is [var first, ..] && Array.Find(Commands, c => c.Name == first).Add is { } asked ? [asked] : Commands.Select(c => c.Add);

    private static bool HasFolder()
    {
        try
        {
            return Directory.GetCurrentDirectory().Length > 0;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static int Execute(CommandLineApplication app, string[] args, Session session, Action release)
    {
        try
        {
            int exit = app.Execute(args);
            release();
            return exit;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException && !session.HasBegun)
        {
            return session.ResultsLost(e);
        }
        catch (CommandParsingException e)
        {
            return session.UsageFault(e);
        }
        catch (OperationCanceledException)
        {
            return session.Interrupted();
        }
#pragma warning disable CA1031 // the last door: whatever else happens is our fault and is told without a trace
        catch (Exception e)
#pragma warning restore CA1031
        {
            return session.OurFault(e);
        }
    }
}
