using System.Text.Json;
using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Cli.Answers;
using PlatformForge.Cli.Arguments;
using PlatformForge.Platforms.Plans;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Cli.Commands;

/// <summary>Tries several values in one go and shows what each costs.</summary>
internal static class CompareCommand
{
    private const string Examples = """

        Examples:
          platformforge compare my-halt.toml --vary platform[0].ramps.end.length=80,96,120
          platformforge compare my-halt.toml --vary platform[0].face.edge=fitted,faired,uniform --vary clearance.running=0.5,1
        """;

    public static void Add(CommandLineApplication app, Session session) => app.Command("compare", command =>
    {
        command.Description = "Try several values in one go: gap, pieces, grams and verdict of each; write nothing.";
        command.ExtendedHelpText = Examples;
        var project = new ProjectArguments(command);
        var vary = command.Option("--vary <key_values>", "key=value,value,…: values to try for one key. Repeatable: every combination is tried.",
            CommandOptionType.MultipleValue).IsRequired(false, "Say what to vary, such as --vary platform[0].deck.thickness=1.5,2.");
        command.OnExecute(() => session.Finish("compare", show => Compare(project, vary, session.Watch(show) with { Memory = new() })));
    });

    private static CommandResult Compare(ProjectArguments project, CommandOption vary, RunWatch watch)
    {
        var variations = vary.Values.Select(v => Variation.Parse(v!)).ToArray();
        if (variations.Any(v => v.Value is null))
        {
            return new([.. variations.SelectMany(v => v.Findings)]);
        }

        var compared = Comparison.Run(more => project.Read(more), [.. variations.Select(v => v.Value!)], watch);
        if (compared.Value is not { } designs)
        {
            return project.Refused(compared.Findings, watch);
        }

        return new([])
        {
            IsTheText = true,
            Plain = o => Table(o, designs),
            Json = j => Json(j, designs),
            ExitCode = designs.Any(d => d.Passed) ? ExitCodes.Done : ExitCodes.Of([.. designs.SelectMany(d => d.Findings)]),
        };
    }

    private static void Table(TextWriter o, IReadOnlyList<ComparedDesign> designs)
    {
        var rows = new List<string[]> { (string[])[.. designs[0].Values.Select(v => v.Key), "mean gap", "largest", "at full size", "limit", "pieces", "beds",
            "grams", "hours", "clearance", "verdict"] };
        rows.AddRange(designs.Select(Row));
        int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => r[c].Length))];
        foreach (string[] row in rows)
        {
            o.WriteLine(string.Join("  ", row.Select((cell, c) => c == row.Length - 1 ? cell : cell.PadLeft(widths[c]))));
        }

        o.WriteLine("Gaps (from coping to door sill) and clearances in mm of the model; grams and hours are estimates.");
        o.WriteLine(Invariant($"Limit: the stepping limit of {AccountText.FullSize(SteppingLimit.Horizontal)} level at full size ({SteppingLimit.Source})."));
    }

    private static string[] Row(ComparedDesign design)
    {
        var f = design.Figures;
        string first = design.Findings.FirstOrDefault(x => x.Severity == Severity.Error) is { } error ? $"no: {error.Code} {error.Message}" : "clear";
        string Cell(double? value, string form) => value is { } v ? v.ToString(form, System.Globalization.CultureInfo.InvariantCulture) : "-";
        return
        [
            .. design.Values.Select(v => v.Value),
            Cell(f?.MeanGap, "0.00"),
            Cell(f?.LargestGap, "0.00"),
            f?.LargestGapFullSize is { } full ? AccountText.FullSize(full) : "-",
            f?.LargestGapFullSize is { } gap ? gap <= SteppingLimit.Horizontal ? "kept" : "over" : "-",
            Cell(f?.Sections, "0"),
            Cell(f?.Plates, "0"),
            Cell(f?.Grams, "0"),
            f is null ? "-" : Invariant($"{f.Hours:0.0}"),
            Cell(f?.Closest?.Clearance, "0.00"),
            first,
        ];
    }

    private static void Json(Utf8JsonWriter json, IReadOnlyList<ComparedDesign> designs)
    {
        json.WriteStartArray("designs");
        foreach (var design in designs)
        {
            json.WriteStartObject();
            json.WriteStartObject("values");
            foreach (var value in design.Values)
            {
                json.WriteString(value.Key, value.Value);
            }

            json.WriteEndObject();
            json.WriteBoolean("passed", design.Passed);
            if (design.Figures is { } figures)
            {
                VerdictText.Figures(json, figures);
            }

            json.WriteStartArray("findings");
            foreach (var finding in design.Findings)
            {
                JsonObject.One(json, finding);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
