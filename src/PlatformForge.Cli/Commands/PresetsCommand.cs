using System.Text.Json;
using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Clearance.Rules;
using PlatformForge.Cli.Answers;
using PlatformForge.Projects.Presets;
using PlatformForge.Units;

namespace PlatformForge.Cli.Commands;

/// <summary>Lists the presets.</summary>
internal static class PresetsCommand
{
    private const string Examples = """

        Examples:
          platformforge presets                 everything
          platformforge presets vehicles        kinds of vehicle, with where their figures come from in short
          platformforge presets vehicles van-four-wheel
                                                one of them: each figure with its source
          platformforge presets rules           published rules, each figure with its source
          platformforge presets rules british
                                                one set of them
        """;

    private static readonly PresetKind[] Kinds = [PresetKind.Scales, PresetKind.Vehicles, PresetKind.Printers];

    public static void Add(CommandLineApplication app, Session session) => app.Command("presets", command =>
    {
        command.Description = "List scales, vehicles, printers and published rules that a project may name.";
        command.ExtendedHelpText = Examples;
        var kind = command.Argument("kind", "scales, vehicles, printers or rules; all when left out.")
            .Accepts(a => a.Values(true, "scales", "vehicles", "printers", RuleListing.Word));
        var name = command.Argument("name", "One preset of the kind: each figure with its source.");
        command.OnExecute(() => session.Finish("presets", _ => name.Value is { } one ? Single(kind.Value!, one) : List(kind.Value)));
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
                Array.ForEach(kinds, k => Plain(o, k, withSources: asked is not null));
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

    private static void Plain(TextWriter o, PresetKind kind, bool withSources)
    {
        o.WriteLine(kind.ToString());
        var presets = PresetShelf.Of(kind);
        int width = presets.Count == 0 ? 0 : presets.Max(p => p.Name.Length);
        foreach (var preset in presets)
        {
            string others = preset.OtherNames.Count == 0 ? "" : $"  (also {string.Join(", ", preset.OtherNames)})";
            others += preset.SharedNames.Count == 0 ? "" : $"  (one of those called {string.Join(", ", preset.SharedNames)})";
            o.WriteLine($"  {preset.Name.PadRight(width)}  {preset.Title}{others}");
            if (withSources)
            {
                o.WriteLine($"    - {preset.SourcesInShort}");
            }
        }
    }

    private static CommandResult Single(string asked, string name)
    {
        var kind = Array.Find(Kinds, k => string.Equals(k.ToString(), asked, StringComparison.OrdinalIgnoreCase));
        bool ofRules = string.Equals(RuleListing.Word, asked, StringComparison.OrdinalIgnoreCase);
        if (ofRules && NationalRules.Find(name) is { } rules)
        {
            return new([]) { IsTheText = true, Plain = o => RuleListing.Plain(o, rules), Json = j => RuleListing.Json(j, rules) };
        }

        if (ofRules || PresetShelf.Find(kind, name) is not { } preset)
        {
            string list = asked.ToLowerInvariant();
            return new([Finding.Error("PF1011", "", $"There is no preset \"{name}\" to show among the {list}.", $"See: platformforge presets {list}")]);
        }

        return new([])
        {
            IsTheText = true,
            Plain = o =>
            {
                o.WriteLine($"{preset.Name}: {preset.Title}");
                o.WriteLine($"Sources: {preset.SourcesInShort}");
                int width = preset.Figures.Select(f => Told(f).Length).DefaultIfEmpty(0).Max(),
                    values = preset.Figures.Select(f => f.Value.Length).DefaultIfEmpty(0).Max();
                foreach (var figure in preset.Figures)
                {
                    o.WriteLine($"  {Told(figure).PadRight(width)}  {figure.Value.PadRight(values)}  {figure.Source}");
                }
            },
            Json = j => Json(j, preset),
        };
    }

    private static string Told(PresetFigure figure) => figure.Owner.Length == 0 ? figure.Key : $"{figure.Owner}: {figure.Key}";

    private static void Json(Utf8JsonWriter json, PresetKind kind)
    {
        json.WriteStartArray(kind.ToString().ToLowerInvariant());
        foreach (var preset in PresetShelf.Of(kind))
        {
            json.WriteStartObject();
            Json(json, preset);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Json(Utf8JsonWriter json, Preset preset)
    {
        json.WriteString("name", preset.Name);
        json.WriteString("title", preset.Title);
        json.WriteStartArray("other_names");
        foreach (string other in preset.OtherNames)
        {
            json.WriteStringValue(other);
        }

        json.WriteEndArray();
        json.WriteString("source", preset.Source);
        json.WriteStartArray("figures");
        foreach (var figure in preset.Figures)
        {
            json.WriteStartObject();
            json.WriteString("of", figure.Owner);
            json.WriteString("key", figure.Key);
            json.WriteString("value", figure.Value);
            json.WriteString("source", figure.Source);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
