using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys.Grammar;

/// <summary>
/// Lengths written as text: one or two numbers, fractions among them, with their units (mm, cm, m, in, ft), and "full size" at the end when
/// the scale is to divide it. Which of the two is meant is never guessed.
/// </summary>
public static class LengthText
{
    // 12, 12.5, 1/32, 3 1/4 or 3-1/4.
    private const string Number = @"[0-9]+(?:\.[0-9]+|/[0-9]+|[ -][0-9]+/[0-9]+)?", Inch = "inches|inch|in";

    private static readonly Regex Form = new(
        $@"^\s*(?<minus>-)?(?<a>{Number})\s*(?<ua>mm|cm|m|{Inch}|feet|foot|ft)(?:\s+(?<b>{Number})\s*(?<ub>{Inch}))?(?:\s+(?<full>full[ -]size))?\s*$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase);

    /// <summary>Model millimetres of a text such as "25 mm", "1/32 in", "4 ft 6 in full size", "2.3 m full size"; null when it is none.</summary>
    public static double? Read(string text, ModelScale scale)
    {
        if (text.Length > 40 || Form.Match(text) is not { Success: true } match)
        {
            return null;
        }

        double length = Part(match.Groups["a"].Value, match.Groups["ua"].Value);
        if (match.Groups["ub"].Success)
        {
            if (!match.Groups["ua"].Value.StartsWith("f", StringComparison.OrdinalIgnoreCase))
            {
                return null;
            }

            length += Part(match.Groups["b"].Value, "in");
        }

        length = match.Groups["minus"].Success ? -length : length;
        return !double.IsFinite(length) ? null : match.Groups["full"].Success ? scale.ToModel(length) : length;
    }

    private static double Part(string number, string unit) =>
        Value(number) * unit.ToLowerInvariant() switch
        {
            "cm" => 10,
            "m" => 1000,
            "in" or "inch" or "inches" => 25.4,
            "ft" or "foot" or "feet" => 304.8,
            _ => 1,
        };

    // A whole number and a fraction may stand side by side; one over nil is no number.
    private static double Value(string number)
    {
        string[] parts = number.Split(' ', '-');
        return parts.Sum(part => part.Split('/') is [var over, var under]
            ? double.Parse(over, CultureInfo.InvariantCulture) / double.Parse(under, CultureInfo.InvariantCulture)
            : double.Parse(part, CultureInfo.InvariantCulture));
    }
}
