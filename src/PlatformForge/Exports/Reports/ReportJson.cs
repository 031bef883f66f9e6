using System.Text.Json.Serialization;
using PlatformForge.Exports.Manifests;

namespace PlatformForge.Exports.Reports;

/// <summary>How reports are taken to pieces, worked out when the program is built.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(ReportDocument))]
internal sealed partial class ReportJson : JsonSerializerContext
{
    public static ReportJson Forms { get; } = new(JsonForms.Copied());
}
