using System.Text.Json;
using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Cli.Answers;
using PlatformForge.Cli.Arguments;
using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Workshop;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using static System.FormattableString;

namespace PlatformForge.Cli.Commands;

/// <summary>Builds everything, verifies it, and puts it in place.</summary>
internal static class BuildCommand
{
    private const string Examples = """

        Examples:
          platformforge build my-halt.toml                                     into the folder my-halt beside the file
          platformforge build my-halt.toml -o out/halt --set platform[0].ramps.end.length=120
          platformforge build my-halt.toml --cross-section 420 --cross-section 640    drawn at these chainages too
          platformforge build my-halt.toml --sets prints,tables                only these, for a quick tweak
          platformforge build my-halt.toml --sets sheet                        cut lines for card, plastic or ply
          platformforge build my-halt.toml --sets all                          full-size paper, gauges and cut lines too
          platformforge build my-halt.toml --as-built gaps.csv                 with what was measured on the layout in the report
        """;

    private const string CrossSection = "--cross-section";

    /// <summary>Cautions repeated on the terminal; all of them stand in the report.</summary>
    private const int CautionsShown = 3;

    public static void Add(CommandLineApplication app, Session session) => app.Command("build", command =>
    {
        command.Description = "Design, cut, draw, write and verify; nothing is put in place that a vehicle touches.";
        command.ExtendedHelpText = Examples;
        var project = new ProjectArguments(command);
        var folder = command.Option("-o|--output <folder>", "Folder to write; named after the project file when left out.", CommandOptionType.SingleValue);
        var force = command.Option("--force", "Write even beside and over files that this program did not write.", CommandOptionType.NoValue);
        var plain = command.Option("--no-pictures", "Leave out the shaded pictures, which take most of the time.", CommandOptionType.NoValue);
        var bare = command.Option("--bare-pictures", "Pictures of what is printed and of the tracks alone, without fence, boards, buildings and vehicles.",
            CommandOptionType.NoValue);
        var cross = command.Option("--cross-section <chainage>",
            "Chainage, in mm or with its unit, at which a cross-section is drawn too, with the governing vehicle's outline. Repeatable.",
            CommandOptionType.MultipleValue);
        var sets = command.Option("--sets <names>",
            $"Which sets of files to make, with commas between: {string.Join(", ", OutputSets.Names)}; {OutputSets.Usual} when left out. "
                + "Only these are then in the folder.", CommandOptionType.SingleValue);
        var measured = command.Option("--as-built <file>",
            "Gaps measured on the finished layout: where the edge stands and what is left goes into the report and a table.", CommandOptionType.SingleValue);
        command.OnExecute(() => session.Finish("build", show => ChosenSections.Read(CrossSection, cross.Values, out var chainages) is { } fault
            ? fault
            : OutputSets.Read(sets.Value(), new OutputChoice { Furnished = !bare.HasValue(), CrossSections = chainages }, out var choice) is { } unknown
            ? unknown
            : Build(project, folder.Value(), force.HasValue(), choice with
            {
                Pictures = choice.Pictures && !plain.HasValue(),
                ReportPictures = choice.ReportPictures && !plain.HasValue()
            }, measured.Value(), session.Watch(show))));
    });

    /// <summary>Runs a build and tells what it came to.</summary>
    /// <param name="arguments">The project.</param>
    /// <param name="folder">Folder to write; null takes one beside the project file.</param>
    /// <param name="force">Write even over files of somebody else.</param>
    /// <param name="choice">What is wanted.</param>
    /// <param name="measured">File of gaps measured on the layout; null when there is none.</param>
    /// <param name="watch">Who watches.</param>
    /// <param name="more">Values in place of the project's.</param>
    internal static CommandResult Build(ProjectArguments arguments, string? folder, bool force, OutputChoice choice, string? measured, RunWatch watch,
        IReadOnlyList<Override>? more = null)
    {
        var read = arguments.Read(more);
        if (read.Value is not { } project)
        {
            return arguments.Refused(read.Findings, watch, more);
        }

        if (ChosenSections.Beyond(CrossSection, project, choice.CrossSections) is { } beyond)
        {
            return beyond;
        }

        folder ??= Path.Combine(Path.GetDirectoryName(arguments.File) ?? "",
            FileNames.Plain(Path.GetFileNameWithoutExtension(arguments.File)) + OutputSets.Suffix(choice));
        var built = BuildRun.Build(project, folder, force, watch, choice, measured);
        return built.Value is { } report
            ? new([.. read.Findings, .. built.Findings])
            {
                Plain = o => Plain(o, report),
                Json = j => Json(j, report),
                InPlace = $"The files are in place all the same, in {report.Folder.Folder}."
            }
            : arguments.Refused(built.Findings, watch, more);
    }

    private static void Plain(TextWriter o, BuildReport report)
    {
        foreach (var platform in report.Dossier.Platforms)
        {
            DesignText.Platform(o, platform);
            if (platform.AsBuilt is { } edge)
            {
                AsBuiltText.Plain(o, edge, report.Dossier.Gauge);
            }
        }

        foreach (var reprint in report.Reprints)
        {
            o.WriteLine($"{reprint.Platform}: {reprint.InWords}.");
        }

        o.WriteLine(Invariant($"Wrote {report.Folder.Written.Count} files into {report.Folder.Folder}; {report.Folder.Unchanged.Count} were ")
            + Invariant($"unchanged, {report.Folder.Removed.Count} removed."));
        VerdictText.Vehicles(o, report.Verdict);
        VerdictText.Surveyed(o, report.Dossier.Platforms);
        o.WriteLine(VerdictLine.Of(report.Verdict, report.Dossier.Platforms.Select(p => p.AsBuilt).OfType<AsBuiltEdge>()));
        foreach (string caution in Cautions.Lines.Take(CautionsShown))
        {
            o.WriteLine(caution);
        }

        o.WriteLine((report.Folder.Written.Concat(report.Folder.Unchanged).Contains("report.html") ? "Read report.html in the folder"
            : "Read report.md in the folder") + ": what to print, cut, set out, join, paint, fit and test, with all cautions.");
    }

    private static void Json(Utf8JsonWriter json, BuildReport report)
    {
        json.WriteString("folder", report.Folder.Folder);
        Strings(json, "written", report.Folder.Written);
        Strings(json, "unchanged", report.Folder.Unchanged);
        Strings(json, "removed", report.Folder.Removed);
        json.WriteStartArray("reprint");
        foreach (var reprint in report.Reprints)
        {
            json.WriteStartObject();
            json.WriteString("platform", reprint.Platform);
            Numbers(json, "changed", reprint.Changed);
            Numbers(json, "same", reprint.Same);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        VerdictText.Figures(json, DesignFigures.Of(report.Dossier, report.Verdict));
        VerdictText.Json(json, report.Verdict);
    }

    private static void Strings(Utf8JsonWriter json, string name, IReadOnlyList<string> values)
    {
        json.WriteStartArray(name);
        foreach (string value in values)
        {
            json.WriteStringValue(value);
        }

        json.WriteEndArray();
    }

    private static void Numbers(Utf8JsonWriter json, string name, IReadOnlyList<int> values)
    {
        json.WriteStartArray(name);
        foreach (int value in values)
        {
            json.WriteNumberValue(value);
        }

        json.WriteEndArray();
    }
}
