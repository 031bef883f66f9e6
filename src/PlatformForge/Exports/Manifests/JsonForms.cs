using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace PlatformForge.Exports.Manifests;

/// <summary>
/// How JSON is written and read here: snake_case names, enumerations as words, nothing computed. What is read is refused when anything is missing, twice there,
/// not known, or no figure that can be reckoned with.
/// </summary>
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
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower, allowIntegerValues: false), new RigidTransformForm(), new Point2Form() },
    };

    /// <summary>The options anew, for forms of their own.</summary>
    public static JsonSerializerOptions Copied() => new(Options);

    /// <summary>A file of what a value holds.</summary>
    /// <param name="value">The value.</param>
    /// <param name="form">How it is taken to pieces; made when the program is built, since finding it out by reflection takes a process longer than the
    /// writing.</param>
    public static byte[] ToBytes<T>(T value, JsonTypeInfo<T> form) => [.. JsonSerializer.SerializeToUtf8Bytes(value, form), (byte)'\n'];

    /// <summary>Reads a file's form.</summary>
    /// <exception cref="JsonException">It is not of that form.</exception>
    public static T Read<T>(ReadOnlySpan<byte> bytes, JsonTypeInfo<T> form)
        where T : class
    {
        CheckTokens(bytes);
        return JsonSerializer.Deserialize(bytes, form) ?? throw new JsonException("The file says null.");
    }

    // What the types cannot say: no list holds null, and every number is finite.
    private static void CheckTokens(ReadOnlySpan<byte> bytes)
    {
        var reader = new Utf8JsonReader(bytes);
        var inList = new Stack<bool>();
        while (reader.Read())
        {
            switch (reader.TokenType)
            {
                case JsonTokenType.StartArray or JsonTokenType.StartObject:
                    inList.Push(reader.TokenType == JsonTokenType.StartArray);
                    break;
                case JsonTokenType.EndArray or JsonTokenType.EndObject:
                    inList.Pop();
                    break;
                case JsonTokenType.Null when inList.TryPeek(out bool list) && list:
                    throw new JsonException($"A list holds null, at byte {reader.TokenStartIndex}.");
                case JsonTokenType.Number when !double.IsFinite(reader.GetDouble()):
                    throw new JsonException($"A number is too large, at byte {reader.TokenStartIndex}.");
            }
        }
    }
}
