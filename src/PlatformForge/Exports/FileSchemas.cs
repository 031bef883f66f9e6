using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization.Metadata;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Geometry;

namespace PlatformForge.Exports;

/// <summary>JSON Schemas (draft 2020-12) of the files that others may read, made from the forms they are written and read by.</summary>
public static class FileSchemas
{
    private static readonly JsonSerializerOptions Forms = new(JsonForms.Options) { TypeInfoResolver = new DefaultJsonTypeInfoResolver() };

    /// <summary>What each schema is of, and its text.</summary>
    public static IReadOnlyDictionary<string, Func<string>> All { get; } = new Dictionary<string, Func<string>>(StringComparer.Ordinal)
    {
        ["manifest"] = () => Write<Manifest>("PlatformForge manifest.json", Manifest.OurFormat),
        ["design"] = () => Write<DesignDocument>("PlatformForge design.json", DesignDocument.OurFormat),
        ["report"] = () => Write<ReportDocument>("PlatformForge report.json", ReportDocument.OurFormat),
    };

    private static string Write<T>(string title, int format)
    {
        var form = Forms.GetJsonSchemaAsNode(typeof(T), new JsonSchemaExporterOptions
        {
            TreatNullObliviousAsNonNullable = true,
            TransformSchemaNode = (context, node) => context.TypeInfo.Type == typeof(Point2) ? Row(2) : context.TypeInfo.Type == typeof(RigidTransform)
                ? Motion() : node,
        }).AsObject();
        var properties = form["properties"]!;
        properties["tool"] = new JsonObject { ["const"] = Manifest.OurTool };
        properties["format"] = new JsonObject { ["const"] = format };
        var schema = new JsonObject { ["$schema"] = "https://json-schema.org/draft/2020-12/schema", ["title"] = title };
        foreach (var (name, value) in form)
        {
            schema[name] = value?.DeepClone();
        }

        return schema.ToJsonString(JsonForms.Options) + "\n";
    }

    private static JsonObject Row(int length) => new()
    {
        ["type"] = "array",
        ["items"] = new JsonObject { ["type"] = "number" },
        ["minItems"] = length,
        ["maxItems"] = length,
    };

    // Three rows of four: a turn and a shift.
    private static JsonObject Motion() => new()
    {
        ["type"] = "array",
        ["items"] = Row(4),
        ["minItems"] = 3,
        ["maxItems"] = 3,
    };
}
