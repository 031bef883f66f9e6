using System.Text.Json;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Manifests;

/// <summary>
/// Looks over a JSON file of ours before it is read into records: one pass, nothing kept. Refused by its line is a number that no
/// model has, and more of anything than a folder can come to.
/// </summary>
internal static class JsonBounds
{
    /// <summary>Largest number of a file of ours: bytes, millimetres, nothing is more.</summary>
    private const double Greatest = 1e10;

    /// <summary>What is wrong, as it goes on after the file's name; null when nothing is.</summary>
    public static string? Fault(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length > InputLimits.JsonBytes)
        {
            return Invariant($"has {bytes.Length} bytes, over the limit of {InputLimits.JsonBytes}");
        }

        try
        {
            return Walk(bytes);
        }
        catch (JsonException fault)
        {
            return Invariant($"breaks at line {(fault.LineNumber ?? 0) + 1}, byte {(fault.BytePositionInLine ?? 0) + 1}, or has more ")
                + Invariant($"than {InputLimits.JsonDepth} objects and lists inside one another");
        }
    }

    private static string? Walk(ReadOnlySpan<byte> bytes)
    {
        var reader = new Utf8JsonReader(bytes, new JsonReaderOptions { MaxDepth = InputLimits.JsonDepth });
        int values = 0;
        while (reader.Read())
        {
            string? what = reader.TokenType switch
            {
                JsonTokenType.Number when !(Math.Abs(reader.GetDouble()) <= Greatest) => Invariant($"has a number that is too large, beyond {Greatest:0}"),
                _ => ++values > InputLimits.JsonValues ? Invariant($"has more than {InputLimits.JsonValues} values, which is the limit") : null,
            };
            if (what is not null)
            {
                return Invariant($"{what}, in line {1 + bytes[..(int)reader.TokenStartIndex].Count((byte)'\n')}");
            }
        }

        return null;
    }
}
