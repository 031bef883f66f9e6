using System.Text.Json.Serialization;
using PlatformForge.Exports.Manifests;

namespace PlatformForge.Exports.Proving;

/// <summary>How the figures of gauges and proofs are taken to pieces, worked out when the program is built.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(ProofDocument))]
internal sealed partial class ProofJson : JsonSerializerContext
{
    public static ProofJson Forms { get; } = new(JsonForms.Copied());
}
