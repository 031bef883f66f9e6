using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Exports;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Verification;

namespace PlatformForge.Cli.Commands;

/// <summary>Says whether a design is sound, and writes nothing.</summary>
internal static class CheckCommand
{
    private const string Examples = """

        Examples:
          platformforge check my-halt.toml
          platformforge check my-halt.toml --set platform[0].deck.thickness=2
          platformforge check my-halt.toml --with-vehicle bogie-coach-64ft6in     what if I buy this one?
        """;

    public static void Add(CommandLineApplication app, Session session) => app.Command("check", command =>
    {
        command.Description = "Say whether a design is sound, and what comes nearest; write nothing.";
        command.ExtendedHelpText = Examples;
        var project = new ProjectArguments(command);
        var extra = command.Option("--with-vehicle <name>", "A further vehicle to run past the finished design: a preset or a TOML file. Repeatable.", CommandOptionType.MultipleValue);
        command.OnExecute(() => session.Finish("check", show => Check(project, extra, session, show)));
    });

    private static CommandResult Check(ProjectArguments arguments, CommandOption extra, Session session, StageShow show)
    {
        var read = arguments.Read();
        if (read.Value is not { } project)
        {
            return new(read.Findings);
        }

        var more = extra.Values.Select(v => VehicleReader.Read(v!, project.Layout.Scale)).ToArray();
        if (more.Any(m => m.Value is null))
        {
            return new([.. more.SelectMany(m => m.Findings)]);
        }

        var watch = session.Watch(show);
        var design = DesignRun.Design(project, watch);
        if (design.Value is not { } dossier)
        {
            return new(design.Findings);
        }

        show.Begin("holding the sections against the vehicles");
        var verdict = TrialVerdict.Of(dossier, [.. more.Select(m => m.Value!)]);
        var figures = DesignFigures.Of(dossier, verdict);
        return new([.. read.Findings, .. design.Findings, .. project.Placed(verdict.Findings)])
        {
            Plain = o => Plain(o, dossier, verdict),
            Json = j =>
            {
                VerdictText.Figures(j, figures);
                VerdictText.Json(j, verdict);
            },
        };
    }

    private static void Plain(TextWriter o, Dossier dossier, Verdict verdict)
    {
        foreach (var platform in dossier.Platforms)
        {
            DesignText.Platform(o, platform);
        }

        VerdictText.Vehicles(o, verdict);
        o.WriteLine(VerdictText.Line(verdict));
    }
}
