using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Keys.Grammar;

namespace PlatformForge.Projects.Schemas;

/// <summary>
/// JSON Schema of the project file, written from the key model, for editors that complete and check TOML. Draft 4 and
/// plain words of it only, since that is what such editors know.
/// </summary>
public static class ProjectSchema
{
    private static readonly JsonWriterOptions Written = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schema as text, the same on every machine.</summary>
    public static string Write()
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Written))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "http://json-schema.org/draft-04/schema#");
            json.WriteString("title", "PlatformForge project");
            TableBody(json, ProjectKeys.Root);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void TableBody(Utf8JsonWriter json, TableRule table)
    {
        json.WriteString("type", "object");
        json.WriteBoolean("additionalProperties", false);

        // What a preset supplies is required of the whole, not of the file.
        bool preset = table.Keys.Any(k => k.Name == "preset");
        var required = table.Keys.Where(k => k.Required && !preset).ToArray();
        if (required.Length > 0)
        {
            json.WriteStartArray("required");
            Array.ForEach(required, k => json.WriteStringValue(k.Name));
            json.WriteEndArray();
        }

        json.WriteStartObject("properties");
        foreach (var key in table.Keys)
        {
            json.WriteStartObject(key.Name);
            Body(json, key);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void Body(Utf8JsonWriter json, KeyRule rule)
    {
        json.WriteString("description", Described(rule));
        switch (rule)
        {
            case NumberRule number:
                Number(json, number);
                break;
            case TextRule text:
                json.WriteString("type", "string");
                Choices(json, text);
                Default(json, rule, d => json.WriteStringValue(d.Trim('"')));
                break;
            case FlagRule:
                json.WriteString("type", "boolean");
                Default(json, rule, d => json.WriteBooleanValue(d == "true"));
                break;
            case ListRule list:
                json.WriteString("type", "array");
                json.WriteNumber("minItems", list.Least);
                json.WriteNumber("maxItems", list.Most);
                json.WriteStartObject("items");
                Body(json, list.Item);
                json.WriteEndObject();
                break;
            case TableRule table:
                TableBody(json, table);
                break;
            case EitherRule:
                json.WriteStartArray("type");
                json.WriteStringValue("number");
                json.WriteStringValue("string");
                json.WriteStringValue("array");
                json.WriteEndArray();
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(rule), rule.GetType().Name);
        }
    }

    private static void Number(Utf8JsonWriter json, NumberRule number)
    {
        string kind = number.Whole ? "integer" : "number";
        if (number.IsLength)
        {
            json.WriteStartArray("type");
            json.WriteStringValue(kind);
            json.WriteStringValue("string");
            json.WriteEndArray();
        }
        else
        {
            json.WriteString("type", kind);
        }

        if (number.Range.OrNone)
        {
            NoneOr(json, number.Range.Least);
        }

        json.WriteNumber("minimum", number.Range.Lowest);
        if (number.Range.Open)
        {
            json.WriteBoolean("exclusiveMinimum", true);
        }

        json.WriteNumber("maximum", number.Range.Most);
        Default(json, number, d => json.WriteNumberValue(double.Parse(d, CultureInfo.InvariantCulture)));
    }

    // 0 for none, or something that is worth the name. A length may be written as a text too, of which a minimum says nothing.
    private static void NoneOr(Utf8JsonWriter json, double least)
    {
        json.WriteStartArray("anyOf");
        json.WriteStartObject();
        json.WriteStartArray("enum");
        json.WriteNumberValue(0);
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteStartObject();
        json.WriteNumber("minimum", least);
        json.WriteEndObject();
        json.WriteEndArray();
    }

    private static void Choices(Utf8JsonWriter json, TextRule text)
    {
        if (text.Choices.Count > 0)
        {
            json.WriteStartArray("enum");
            foreach (string choice in text.Choices)
            {
                json.WriteStringValue(choice);
            }

            json.WriteEndArray();
        }
    }

    private static void Default(Utf8JsonWriter json, KeyRule rule, Action<string> write)
    {
        if (rule is { Default: { } value, DefaultFollowsScale: false })
        {
            json.WritePropertyName("default");
            write(value);
        }
    }

    private static string Described(KeyRule rule)
    {
        string unit = rule is NumberRule { Unit.Length: > 0 } number ? $" ({number.Unit})" : "";
        string scaled = rule is { Default: { } value, DefaultFollowsScale: true } ? $" Default at 4 mm to the foot: {value}; other scales in proportion." : "";
        return rule.Says + unit + scaled;
    }
}
