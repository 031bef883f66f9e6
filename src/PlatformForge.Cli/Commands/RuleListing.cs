using System.Text.Json;
using PlatformForge.Clearance.Rules;

namespace PlatformForge.Cli.Commands;

/// <summary>The published rules that a project may name, as the presets command lists them.</summary>
internal static class RuleListing
{
    public const string Word = "rules";

    public static void Plain(TextWriter o, bool withFigures)
    {
        o.WriteLine("Rules");
        int width = NationalRules.All.Max(r => r.Name.Length);
        foreach (var rules in NationalRules.All)
        {
            o.WriteLine($"  {rules.Name.PadRight(width)}  {rules.Title}");
            foreach (var (clause, source) in withFigures ? rules.Sources : [])
            {
                o.WriteLine($"    - {clause} ({source})");
            }
        }
    }

    public static void Json(Utf8JsonWriter json)
    {
        json.WriteStartArray(Word);
        foreach (var rules in NationalRules.All)
        {
            json.WriteStartObject();
            json.WriteString("name", rules.Name);
            json.WriteString("title", rules.Title);
            json.WriteStartArray("figures");
            foreach (var (clause, source) in rules.Sources)
            {
                json.WriteStartObject();
                json.WriteString("figure", clause);
                json.WriteString("source", source);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
