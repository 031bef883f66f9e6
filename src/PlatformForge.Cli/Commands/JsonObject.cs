using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using PlatformForge.Units;

namespace PlatformForge.Cli.Commands;

/// <summary>The one object that --json puts on stdout.</summary>
internal static class JsonObject
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(string command, int exitCode, IReadOnlyList<Finding> findings, Action<Utf8JsonWriter>? rest)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            json.WriteString("command", command);
            json.WriteNumber("exit_code", exitCode);
            json.WriteStartArray("findings");
            foreach (var finding in findings)
            {
                One(json, finding);
            }

            json.WriteEndArray();
            rest?.Invoke(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    /// <summary>A number, or null for what JSON has no word for.</summary>
    public static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            json.WriteNumber(name, number);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    public static void One(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("code", finding.Code);
        json.WriteString("severity", finding.Severity.ToString().ToLowerInvariant());
        json.WriteString("kind",
            finding.Kind switch { FaultKind.Input => "input", FaultKind.DesignRule => "design_rule", FaultKind.Mesh => "mesh", _ => "output" });
        json.WriteString("key", finding.Key);
        json.WriteString("message", finding.Message);
        json.WriteString("remedy", finding.Remedy);
        json.WriteString("file", finding.File);
        json.WriteNumber("line", finding.Line);
        json.WriteNumber("column", finding.Column);
        Cure(json, finding.Cure);
        json.WriteEndObject();
    }

    // The remedy as a change of the project file: what --set takes, where it sets a key.
    private static void Cure(Utf8JsonWriter json, Cure? cure)
    {
        if (cure is null)
        {
            json.WriteNull("cure");
            return;
        }

        json.WriteStartObject("cure");
        json.WriteString("act", cure.Act switch { CureAct.Set => "set", CureAct.LeaveOut => "leave_out", _ => "rename" });
        json.WriteString("key", cure.Key);
        json.WriteString("value", cure.Value);
        json.WriteBoolean("tried", cure.Tried);
        json.WriteEndObject();
    }
}
