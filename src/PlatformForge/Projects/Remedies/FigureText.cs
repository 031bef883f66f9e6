using System.Globalization;

namespace PlatformForge.Projects.Remedies;

/// <summary>What somebody means who writes a figure as text: "1.5", "1,5", or a slope or scale as "1:1.5", "1/1.5" or "1 in 1.5", which keys take as the
/// second figure.</summary>
internal static class FigureText
{
    // One in so many, as it is written.
    private static readonly string[] Ratios = ["1:", "1/", "1 in ", "1 : ", "1 / "];

    /// <summary>The figure of a text; null where it is none.</summary>
    public static double? Read(string text)
    {
        string plain = text.Trim().Replace(',', '.');
        string of = Ratios.FirstOrDefault(r => plain.StartsWith(r, StringComparison.OrdinalIgnoreCase)) is { } ratio ? plain[ratio.Length..] : plain;
        return double.TryParse(of, NumberStyles.Float, CultureInfo.InvariantCulture, out double figure) && double.IsFinite(figure) ? figure : null;
    }
}
