using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>
/// Lengths written as text: one or two numbers with their units (mm, cm, m, in, ft), and "full size" at the end when the
/// scale is to divide it. Which of the two is meant is never guessed.
/// </summary>
public static class LengthText
{
    private static readonly Regex Form = new(
        @"^\s*(?<minus>-)?(?<a>[0-9]+(?:\.[0-9]+)?)\s*(?<ua>mm|cm|m|in|ft)(?:\s+(?<b>[0-9]+(?:\.[0-9]+)?)\s*(?<ub>in))?(?:\s+(?<full>full[ -]size))?\s*$",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase);

    /// <summary>Model millimetres of a text such as "25 mm", "4 ft 6 in full size", "2.3 m full size"; null when it is none.</summary>
    public static double? Read(string text, ModelScale scale)
    {
        if (text.Length > 40 || Form.Match(text) is not { Success: true } match)
        {
            return null;
        }

        double length = Part(match.Groups["a"].Value, match.Groups["ua"].Value);
        if (match.Groups["ub"].Success)
        {
            if (!match.Groups["ua"].Value.Equals("ft", StringComparison.OrdinalIgnoreCase))
            {
                return null;
            }

            length += Part(match.Groups["b"].Value, "in");
        }

        length = match.Groups["minus"].Success ? -length : length;
        return match.Groups["full"].Success ? scale.ToModel(length) : length;
    }

    private static double Part(string number, string unit) =>
        double.Parse(number, CultureInfo.InvariantCulture) * unit.ToLowerInvariant() switch
        {
            "cm" => 10,
            "m" => 1000,
            "in" => 25.4,
            "ft" => 304.8,
            _ => 1,
        };
}
