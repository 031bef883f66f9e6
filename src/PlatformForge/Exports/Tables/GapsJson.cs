using System.Text.Json.Serialization;
using PlatformForge.Exports.Manifests;

namespace PlatformForge.Exports.Tables;

/// <summary>How the gaps of edge styles are taken to pieces, worked out when the program is built.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(GapsByStyle))]
internal sealed partial class GapsJson : JsonSerializerContext
{
    public static GapsJson Forms { get; } = new(JsonForms.Copied());
}
