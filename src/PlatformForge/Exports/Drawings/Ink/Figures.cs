using System.Globalization;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>How lengths are said, always with a point and with the same digits everywhere.</summary>
internal static class Figures
{
    /// <summary>Millimetres of an inch, exactly.</summary>
    public const double MmPerInch = 25.4;

    /// <summary>Model mm to a tenth: 22.4.</summary>
    public static string Mm(double mm) => Fixed(mm, 1);

    /// <summary>Model mm to a hundredth: 22.46.</summary>
    public static string Fine(double mm) => Fixed(mm, 2);

    /// <summary>As many digits as are needed, three at most: 96, 7.874.</summary>
    public static string Short(double mm) => Zero(mm, 3).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>Full-size mm and inches of a model length: 167 mm (6.6 in).</summary>
    public static string FullSize(double mm, ModelScale scale) =>
        Invariant($"{Zero(scale.ToFullSize(mm), 0):F0} mm ({Zero(scale.ToFullSize(mm) / MmPerInch, 1):F1} in)");

    /// <summary>Hours as 3 h 05 min, to five minutes.</summary>
    public static string Time(double hours)
    {
        int minutes = (int)(Math.Ceiling(hours * 12) * 5);
        return minutes < 60 ? Invariant($"{minutes} min") : Invariant($"{minutes / 60} h {minutes % 60:D2} min");
    }

    /// <summary>A ratio as 1 in 8 or 1 in 12.5.</summary>
    public static string Gradient(double rise, double length) => rise == 0 ? "level" : Invariant($"1 in {Zero(Math.Abs(length / rise), 1):0.#}");

    public static string Fixed(double value, int digits) => Zero(value, digits)
        .ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>Model mm to a hundredth with its sign, and none before nil: +0.12, -0.30, 0.00.</summary>
    public static string Signed(double mm) => Zero(mm, 2) > 0 ? "+" + Fine(mm) : Fine(mm);

    /// <summary>Model mm to a tenth with its sign, and none before nil: +12.0, -8.0, 0.0.</summary>
    public static string SignedMm(double mm) => Zero(mm, 1) > 0 ? "+" + Mm(mm) : Mm(mm);

    // No minus before what rounds to nil.
    private static double Zero(double value, int digits) => Math.Round(value, digits) + 0.0;
}
