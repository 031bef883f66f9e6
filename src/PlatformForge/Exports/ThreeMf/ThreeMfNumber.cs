using System.Globalization;
using PlatformForge.Units;

namespace PlatformForge.Exports.ThreeMf;

/// <summary>
/// Numbers as the schema allows them: an optional sign, digits with an optional point and digits, or a point and digits, an
/// optional exponent. No <c>1.</c>, no <c>NaN</c>, no comma.
/// </summary>
internal static class ThreeMfNumber
{
    /// <summary>Reads a number of no more than a greatest amount; a corner's coordinate unless told otherwise.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out double value, double greatest = InputLimits.MeshCoordinate)
    {
        text = text.Trim(" \t\r\n");
        value = 0;
        return IsNumber(text)
            && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value)
            && Math.Abs(value) <= greatest;
    }

    public static bool TryIndex(string? text, out int value)
    {
        var digits = text.AsSpan().Trim(" \t\r\n");
        value = 0;
        return digits.Length > 0 && !digits.ContainsAnyExceptInRange('0', '9')
            && int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out value) && value != int.MaxValue;
    }

    private static bool IsNumber(ReadOnlySpan<char> text)
    {
        text = text.StartsWith('+') || text.StartsWith('-') ? text[1..] : text;
        int whole = Digits(text);
        text = text[whole..];
        if (text.StartsWith('.'))
        {
            int part = Digits(text[1..]);
            if (part == 0)
            {
                return false;
            }

            text = text[(part + 1)..];
        }
        else if (whole == 0)
        {
            return false;
        }

        if (text.StartsWith('e') || text.StartsWith('E'))
        {
            text = text[1..];
            text = text.StartsWith('+') || text.StartsWith('-') ? text[1..] : text;
            int power = Digits(text);
            return power > 0 && power == text.Length;
        }

        return text.IsEmpty;
    }

    private static int Digits(ReadOnlySpan<char> text)
    {
        int end = text.IndexOfAnyExceptInRange('0', '9');
        return end < 0 ? text.Length : end;
    }
}
