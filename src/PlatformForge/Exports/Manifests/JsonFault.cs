using System.Text.Json;
using System.Text.RegularExpressions;
using static System.FormattableString;

namespace PlatformForge.Exports.Manifests;

/// <summary>Why a file of ours cannot be read, in words that speak of the file and not of the program: the library's own name types of ours.</summary>
internal static partial class JsonFault
{
    private const int LongestName = 60;

    /// <summary>Where it breaks and why, as it goes on after the file's name.</summary>
    public static string Words(JsonException fault)
    {
        string why = Why(fault.Message);
        return fault.Path is { } path ? Invariant($"breaks at {Short(path)}, line {(fault.LineNumber ?? 0) + 1}: {why}") : Invariant($"breaks: {why}");
    }

    private static string Why(string message) =>
        Unknown().Match(message) is { Success: true } unknown ? Invariant($"it has '{Short(unknown.Groups["name"].Value)}', which is not known there")
        : Twice().Match(message) is { Success: true } twice ? Invariant($"it has '{Short(twice.Groups["name"].Value)}' twice")
        : Missing().Match(message) is { Success: true } missing ? Invariant($"it lacks {Short(missing.Groups["names"].Value.TrimEnd('.'))}")
        : NoNull().IsMatch(message) ? "null stands there, where a value belongs"
        : OtherKind().IsMatch(message) ? "what stands there is of another kind than belongs there"
        : OurOwn().IsMatch(message) ? char.ToLowerInvariant(message[0]) + message[1..].TrimEnd('.')
        : "what stands there is not of the form that the program writes";

    private static string Short(string text) => text.Length > LongestName ? text[..LongestName] + "…" : text;

    [GeneratedRegex("^The JSON property '(?<name>[^']*)' could not be mapped")]
    private static partial Regex Unknown();

    [GeneratedRegex("^Duplicate property '(?<name>[^']*)'")]
    private static partial Regex Twice();

    [GeneratedRegex("missing required properties including: (?<names>'[^']*'(?:, '[^']*')*)")]
    private static partial Regex Missing();

    [GeneratedRegex("doesn't allow (?:null values|setting null values|getting null values)")]
    private static partial Regex NoNull();

    [GeneratedRegex("could not be converted")]
    private static partial Regex OtherKind();

    [GeneratedRegex("^(?:A list holds null|A number is too large|The file says null|A (?:place|point|motion|direction) )")]
    private static partial Regex OurOwn();
}
