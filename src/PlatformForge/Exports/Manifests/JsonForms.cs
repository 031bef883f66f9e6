using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace PlatformForge.Exports.Manifests;

/// <summary>How JSON is written and read here: snake_case names, enumerations as words, nothing computed, nothing missing.</summary>
internal static class JsonForms
{
    public static JsonSerializerOptions Options { get; } = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        NewLine = "\n",
        IgnoreReadOnlyProperties = true,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower, allowIntegerValues: false), new RigidTransformForm(), new Point2Form() },
    };

    public static byte[] ToBytes<T>(T value) => [.. JsonSerializer.SerializeToUtf8Bytes(value, Options), (byte)'\n'];
}
