using System.Text.Json;
using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Cli.Arguments;
using PlatformForge.Exports.Reports;
using PlatformForge.Projects.Runs;

namespace PlatformForge.Cli.Commands;

/// <summary>Tells the whole report on the terminal, and writes nothing.</summary>
internal static class ReportCommand
{
    private const string Examples = """

        Examples:
          platformforge report my-halt.toml              verdict, prints, cuts, setting out, paint, fittings, gaps and cautions, as plain text
          platformforge build my-halt.toml --sets report the same with drawings and pictures, as one page for a browser
        """;

    public static void Add(CommandLineApplication app, Session session) => app.Command("report", command =>
    {
        command.Description = "Tell the whole report of a design as plain text; write nothing.";
        command.ExtendedHelpText = Examples;
        var project = new ProjectArguments(command);
        command.OnExecute(() => session.Finish("report", show => Tell(project, session, show)));
    });

    private static CommandResult Tell(ProjectArguments arguments, Session session, StageShow show)
    {
        var watch = session.Watch(show);
        var read = arguments.Read();
        if (read.Value is not { } project)
        {
            return arguments.Refused(read.Findings, watch);
        }

        var design = DesignRun.Design(project, watch);
        if (design.Value is not { } dossier)
        {
            return arguments.Refused(design.Findings, watch);
        }

        show.Begin("holding the sections against the vehicles");
        var verdict = TrialVerdict.Of(dossier, cancel: watch.Cancel);
        dossier = SurveyAdvices.In(project, dossier, watch) with { Verdict = VerdictLine.Brief(verdict, []) };
        return new([.. read.Findings, .. design.Findings, .. project.Placed(verdict.Findings)])
        {
            Plain = o => o.Write(ReportWriter.Plain(dossier)),
            Json = j =>
            {
                j.WritePropertyName("report");
                using var figures = JsonDocument.Parse(ReportWriter.Json(dossier));
                figures.RootElement.WriteTo(j);
            },
        };
    }
}
