using System.Text.Json.Serialization;
using PlatformForge.Exports.Manifests;

namespace PlatformForge.Exports.Paper;

/// <summary>How the figures of full-size sheets are taken to pieces, worked out when the program is built.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(PaperDocument))]
internal sealed partial class PaperJson : JsonSerializerContext
{
    public static PaperJson Forms { get; } = new(JsonForms.Copied());
}
