using System.Text.Json;
using PlatformForge.Clearance.Rules;

namespace PlatformForge.Cli.Answers;

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
            if (withFigures)
            {
                Figures(o, rules, "    - ");
            }
        }
    }

    /// <summary>One set of rules, each figure with its source.</summary>
    public static void Plain(TextWriter o, NationalRules rules)
    {
        o.WriteLine($"{rules.Name}: {rules.Title}");
        Figures(o, rules, "  ");
    }

    public static void Json(Utf8JsonWriter json)
    {
        json.WriteStartArray(Word);
        foreach (var rules in NationalRules.All)
        {
            json.WriteStartObject();
            Json(json, rules);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>Members of one set of rules.</summary>
    public static void Json(Utf8JsonWriter json, NationalRules rules)
    {
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
    }

    private static void Figures(TextWriter o, NationalRules rules, string before)
    {
        foreach (var (clause, source) in rules.Sources)
        {
            o.WriteLine($"{before}{clause} ({source})");
        }
    }
}
