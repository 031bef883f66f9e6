using System.Text.Json;
using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Projects.Presets;

namespace PlatformForge.Cli.Commands;

/// <summary>Lists the presets.</summary>
internal static class PresetsCommand
{
    private const string Examples = """

        Examples:
          platformforge presets                 everything
          platformforge presets vehicles        kinds of vehicle, with the source of their figures
          platformforge presets rules           published rules, each figure with its source
        """;

    private static readonly PresetKind[] Kinds = [PresetKind.Scales, PresetKind.Vehicles, PresetKind.Printers];

    public static void Add(CommandLineApplication app, Session session) => app.Command("presets", command =>
    {
        command.Description = "List scales, vehicles, printers and published rules that a project may name.";
        command.ExtendedHelpText = Examples;
        var kind = command.Argument("kind", "scales, vehicles, printers or rules; all when left out.").Accepts(a => a.Values(true, "scales", "vehicles", "printers", RuleListing.Word));
        command.OnExecute(() => session.Finish("presets", _ => List(kind.Value)));
    });

    private static CommandResult List(string? asked)
    {
        var kinds = Kinds.Where(k => asked is null || string.Equals(k.ToString(), asked, StringComparison.OrdinalIgnoreCase)).ToArray();
        bool rules = asked is null || string.Equals(RuleListing.Word, asked, StringComparison.OrdinalIgnoreCase);
        return new([])
        {
            IsTheText = true,
            Plain = o =>
            {
                Array.ForEach(kinds, k => Plain(o, k));
                if (rules)
                {
                    RuleListing.Plain(o, withFigures: asked is not null);
                }
            },
            Json = j =>
            {
                Array.ForEach(kinds, k => Json(j, k));
                if (rules)
                {
                    RuleListing.Json(j);
                }
            },
        };
    }

    private static void Plain(TextWriter o, PresetKind kind)
    {
        o.WriteLine(kind.ToString());
        var presets = PresetShelf.Of(kind);
        int width = presets.Count == 0 ? 0 : presets.Max(p => p.Name.Length);
        foreach (var preset in presets)
        {
            string others = preset.OtherNames.Count == 0 ? "" : $"  (also {string.Join(", ", preset.OtherNames)})";
            o.WriteLine($"  {preset.Name.PadRight(width)}  {preset.Title}{others}");
        }
    }

    private static void Json(Utf8JsonWriter json, PresetKind kind)
    {
        json.WriteStartArray(kind.ToString().ToLowerInvariant());
        foreach (var preset in PresetShelf.Of(kind))
        {
            json.WriteStartObject();
            json.WriteString("name", preset.Name);
            json.WriteString("title", preset.Title);
            json.WriteStartArray("other_names");
            foreach (string other in preset.OtherNames)
            {
                json.WriteStringValue(other);
            }

            json.WriteEndArray();
            json.WriteString("source", preset.Source);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
