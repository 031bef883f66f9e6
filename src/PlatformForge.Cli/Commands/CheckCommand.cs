using System.Text.Json;
using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Cli.Answers;
using PlatformForge.Cli.Arguments;
using PlatformForge.Exports.Files;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;
using PlatformForge.Verification.Written;

namespace PlatformForge.Cli.Commands;

/// <summary>Says whether a design is sound, and writes nothing.</summary>
internal static class CheckCommand
{
    private const string Examples = """

        Examples:
          platformforge check my-halt.toml
          platformforge check my-halt.toml --set platform[0].deck.thickness=2
          platformforge check my-halt.toml --with-vehicle bogie-coach-64ft6in     what if I buy this one?
          platformforge check my-halt.toml --as-built gaps.csv                    gaps measured on the layout against the plan
          platformforge check my-halt.toml --at 420 --at 640                      why the edge lies where it does, there
        """;

    private const string At = "--at";

    public static void Add(CommandLineApplication app, Session session) => app.Command("check", command =>
    {
        command.Description = "Say whether a design is sound, and what comes nearest; write nothing.";
        command.ExtendedHelpText = Examples;
        var project = new ProjectArguments(command);
        var extra = command.Option("--with-vehicle <name>", "A further vehicle to run past the finished design: a preset or a TOML file. Repeatable.",
            CommandOptionType.MultipleValue);
        var measured = command.Option("--as-built <file>",
            "Gaps measured on the finished layout: a table with columns chainage and gap, and if wanted vehicle and platform.", CommandOptionType.SingleValue);
        var at = command.Option("--at <chainage>",
            "Chainage, in mm or with its unit, at which to say what is needed, for which vehicle, what each allowance costs "
            + "and what each style of edge would leave. Repeatable.",
            CommandOptionType.MultipleValue);
        command.OnExecute(() => session.Finish("check", show => ChosenSections.Read(At, at.Values, out var chainages) is { } fault
            ? fault
            : Check(project, [.. extra.Values.Select(v => v!)], measured.Value(), chainages, session.Watch(show), show)));
    });

    private static CommandResult Check(
        ProjectArguments arguments, string[] extra, string? measured, IReadOnlyList<double> chainages, RunWatch watch, StageShow show)
    {
        var read = arguments.Read();
        if (read.Value is not { } project)
        {
            return arguments.Refused(read.Findings, watch);
        }

        if (ChosenSections.Beyond(At, project, chainages) is { } beyond)
        {
            return beyond;
        }

        var more = FurtherVehicles.Read(extra, project.Layout.Scale);
        if (more.Value is not { } further)
        {
            return new(more.Findings);
        }

        var design = DesignRun.Design(project, watch);
        if (design.Value is not { } dossier)
        {
            return arguments.Refused(design.Findings, watch);
        }

        var built = measured is null ? Outcome.Of<IReadOnlyList<AsBuiltEdge>>([]) : AsBuiltCheck.OfFile(dossier, measured, further.Vehicles);
        if (built.Value is not { } edges)
        {
            return new(project.Placed(further.Placed(built.Findings)));
        }

        show.Begin("holding the sections against the vehicles");
        var verdict = TrialVerdict.Of(dossier, further.Vehicles, cancel: watch.Cancel);
        return new([.. read.Findings, .. design.Findings, .. project.Placed(further.Placed([.. verdict.Findings, .. built.Findings]))])
        {
            Plain = o => Plain(o, dossier, verdict, edges, chainages),
            Json = j => Json(j, dossier, verdict, measured is null ? null : edges, chainages),
        };
    }

    // Edges as built are told where they were measured.
    private static void Json(Utf8JsonWriter j, Dossier dossier, Verdict verdict, IReadOnlyList<AsBuiltEdge>? edges, IReadOnlyList<double> chainages)
    {
        VerdictText.Figures(j, DesignFigures.Of(dossier, verdict));
        VerdictText.Json(j, verdict);
        if (edges is not null)
        {
            AsBuiltText.Json(j, edges, dossier.Gauge);
        }

        if (chainages.Count > 0)
        {
            AccountText.Json(j, dossier.Platforms, chainages);
        }
    }

    private static void Plain(TextWriter o, Dossier dossier, Verdict verdict, IReadOnlyList<AsBuiltEdge> edges, IReadOnlyList<double> chainages)
    {
        foreach (var platform in dossier.Platforms)
        {
            DesignText.Platform(o, platform);
            foreach (double s in AccountText.On(platform, chainages))
            {
                AccountText.Plain(o, platform, s);
            }
        }

        VerdictText.Vehicles(o, verdict);
        VerdictText.Surveyed(o, dossier.Platforms);
        o.WriteLine(VerdictLine.Of(verdict, edges));
        foreach (var edge in edges)
        {
            AsBuiltText.Plain(o, edge, dossier.Gauge);
        }
    }
}
