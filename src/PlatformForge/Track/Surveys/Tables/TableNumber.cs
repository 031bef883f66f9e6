using System.Globalization;

namespace PlatformForge.Track.Surveys.Tables;

/// <summary>A number as people type it: decimal point or comma, a sign, no thousands marks.</summary>
internal static class TableNumber
{
    private const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    /// <summary>Reads a number, or tells in words why it is none.</summary>
    public static string? Fault(string field, out double value)
    {
        value = double.NaN;
        if (field.Length == 0)
        {
            return "The field is empty.";
        }

        int points = field.AsSpan().Count('.'), commas = field.AsSpan().Count(',');
        if (points + commas > 1)
        {
            return $"'{Shown(field)}' has more than one decimal mark; write it without thousands marks.";
        }

        string plain = field.Replace(',', '.').Replace('\u2212', '-');
        return double.TryParse(plain, Style, CultureInfo.InvariantCulture, out value) && double.IsFinite(value)
            ? null
            : $"'{Shown(field)}' is not a number.";
    }

    /// <summary>A field fit for a message: short, and without control characters.</summary>
    public static string Shown(string field) =>
        string.Concat((field.Length > 24 ? field[..24] + "…" : field).Select(c => char.IsControl(c) ? '?' : c));
}
