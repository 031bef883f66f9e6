using System.Text.Json.Serialization;
using PlatformForge.Exports.Manifests;

namespace PlatformForge.Exports.Folders;

/// <summary>How records of what is about to be done are taken to pieces, worked out when the program is built.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(CommitRecord))]
internal sealed partial class CommitJson : JsonSerializerContext
{
    public static CommitJson Forms { get; } = new(JsonForms.Copied());
}
