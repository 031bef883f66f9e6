using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Exports;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Units;
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
          platformforge check my-halt.toml --as-built gaps.csv                    gaps measured on the layout against the plan
        """;

    public static void Add(CommandLineApplication app, Session session) => app.Command("check", command =>
    {
        command.Description = "Say whether a design is sound, and what comes nearest; write nothing.";
        command.ExtendedHelpText = Examples;
        var project = new ProjectArguments(command);
        var extra = command.Option("--with-vehicle <name>", "A further vehicle to run past the finished design: a preset or a TOML file. Repeatable.", CommandOptionType.MultipleValue);
        var measured = command.Option("--as-built <file>", "Gaps measured on the finished layout: a table with columns chainage and gap, and if wanted vehicle and platform.", CommandOptionType.SingleValue);
        command.OnExecute(() => session.Finish("check", show => Check(project, extra, measured.Value(), session, show)));
    });

    private static CommandResult Check(ProjectArguments arguments, CommandOption extra, string? measured, Session session, StageShow show)
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

        var built = measured is null ? Outcome.Of<IReadOnlyList<AsBuiltEdge>>([]) : AsBuiltCheck.OfFile(dossier, measured);
        if (built.Value is not { } edges)
        {
            return new(built.Findings);
        }

        show.Begin("holding the sections against the vehicles");
        var verdict = TrialVerdict.Of(dossier, [.. more.SelectMany(m => m.Value!)]);
        var figures = DesignFigures.Of(dossier, verdict);
        return new([.. read.Findings, .. design.Findings, .. project.Placed(verdict.Findings), .. built.Findings])
        {
            Plain = o => Plain(o, dossier, verdict, edges),
            Json = j =>
            {
                VerdictText.Figures(j, figures);
                VerdictText.Json(j, verdict);
                if (measured is not null)
                {
                    AsBuiltText.Json(j, edges);
                }
            },
        };
    }

    private static void Plain(TextWriter o, Dossier dossier, Verdict verdict, IReadOnlyList<AsBuiltEdge> edges)
    {
        foreach (var platform in dossier.Platforms)
        {
            DesignText.Platform(o, platform);
        }

        VerdictText.Vehicles(o, verdict);
        o.WriteLine(VerdictText.Line(verdict));
        foreach (var edge in edges)
        {
            AsBuiltText.Plain(o, edge);
        }
    }
}
