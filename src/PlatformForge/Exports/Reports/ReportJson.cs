using System.Text.Json.Serialization;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Reports.Forms;

namespace PlatformForge.Exports.Reports;

/// <summary>How reports are taken to pieces, worked out when the program is built.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(ReportDocument))]
internal sealed partial class ReportJson : JsonSerializerContext
{
    public static ReportJson Forms { get; } = new(JsonForms.Copied());
}
