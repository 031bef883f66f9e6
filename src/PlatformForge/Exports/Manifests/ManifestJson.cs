using System.Text.Json.Serialization;

namespace PlatformForge.Exports.Manifests;

/// <summary>How manifests and design copies are taken to pieces, worked out when the program is built.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(Manifest))]
[JsonSerializable(typeof(DesignDocument))]
[JsonSerializable(typeof(double[]))]
[JsonSerializable(typeof(double[][]))]
internal sealed partial class ManifestJson : JsonSerializerContext
{
    public static ManifestJson Forms { get; } = new(JsonForms.Copied());
}
