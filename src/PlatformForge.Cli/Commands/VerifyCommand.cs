using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Cli.Answers;
using PlatformForge.Cli.Terminals;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Verification;

namespace PlatformForge.Cli.Commands;

/// <summary>Reads a finished folder back and holds it against the trains.</summary>
internal static class VerifyCommand
{
    private const string Examples = """

        Examples:
          platformforge verify my-halt
          platformforge verify my-halt --with-vehicle bogie-coach-64ft6in         would this one clear what is built?
        """;

    public static void Add(CommandLineApplication app, Session session) => app.Command("verify", command =>
    {
        command.Description = "Read a finished folder back and hold what was written against the vehicles.";
        command.ExtendedHelpText = Examples;
        var folder = command.Argument("folder", "A folder that build wrote.").IsRequired(false, "Name the folder.");
        var extra = command.Option("--with-vehicle <name>", "A further vehicle to run past what is built: a preset or a TOML file. Repeatable.",
            CommandOptionType.MultipleValue);
        command.OnExecute(() => session.Finish("verify", show => Verify(folder.Value!, [.. extra.Values.Select(v => v!)], session.Watch(show))));
    });

    private static CommandResult Verify(string folder, IReadOnlyList<string> extra, RunWatch watch)
    {
        watch.Begin("reading the folder");
        var written = watch.Gate.Through(() => FolderReader.Read(folder));
        if (written.Value is not { } contents)
        {
            return new(written.Findings);
        }

        var more = FurtherVehicles.Read(extra, contents);
        if (more.Value is not { } further)
        {
            return new(more.Findings);
        }

        watch.Begin("holding the sections against the vehicles");
        var verdict = FolderVerifier.Verify(contents, further.Vehicles, watch.Cancel);
        return new([.. further.Placed(verdict.Findings)])
        {
            Plain = o =>
            {
                VerdictText.Vehicles(o, verdict);
                o.WriteLine(PlainLine.Of(VerdictLine.Of(verdict)));
            },
            Json = j => VerdictText.Json(j, verdict),
        };
    }
}
