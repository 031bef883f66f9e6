using System.Globalization;
using System.Xml;
using PlatformForge.Track.Surveys.Readings;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>What an SVG drawing says of its size.</summary>
/// <param name="MillimetresPerUnit">Stated scale, or null.</param>
/// <param name="Upright">The map that puts the sheet's lower left corner at the origin with y up.</param>
/// <param name="Told">In words.</param>
internal sealed record SvgSheet(double? MillimetresPerUnit, SvgTransform Upright, string Told)
{
    // Width and height may disagree on the scale by rounding in the file; by more the sheet is stretched.
    private const double Rounding = 0.002;

    /// <summary>
    /// Takes the scale from width and height in physical units over the viewBox. Pixels are no scale: programs take 72, 90 or
    /// 96 of them to the inch, so nothing is guessed from them.
    /// </summary>
    public static SvgSheet Read(XmlReader root)
    {
        double[] box = Box(root.GetAttribute("viewBox"));
        var (width, height) = (Length(root.GetAttribute("width")), Length(root.GetAttribute("height")));
        if (box.Length != 4)
        {
            return new(null, new(1, 0, 0, -1, 0, 0), "it has no viewBox");
        }

        var upright = new SvgTransform(1, 0, 0, -1, -box[0], box[1] + box[3]);
        double? across = width / box[2], up = height / box[3];
        return (across ?? up) is not { } scale
            ? new(null, upright, "it has a viewBox, but no width or height in mm, cm or in")
            : across is { } a && up is { } b && Math.Abs(a - b) > Rounding * a
            ? new(null, upright, Invariant($"width and height give two scales, {a:G5} and {b:G5} mm to the unit"))
            : new(scale, upright, Invariant($"width, height and viewBox give {scale:G6} mm to the unit"));
    }

    private static double[] Box(string? text)
    {
        double[] numbers = [.. (text ?? "").Split([' ', ',', '\t', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries)
            .Select(p => double.TryParse(p, NumberStyles.Float, CultureInfo.InvariantCulture, out double v) ? v : double.NaN)];
        return numbers.Length == 4 && numbers.All(double.IsFinite) && numbers[2] > 0 && numbers[3] > 0 ? numbers : [];
    }

    // Points and picas are physical units too (72 and 6 to the inch, CSS Values 4, section 6.2).
    private static double? Length(string? text)
    {
        string plain = (text ?? "").Trim();
        int digits = plain.AsSpan().LastIndexOfAnyInRange('0', '9') + 1;
        if (digits == 0 || !double.TryParse(plain.AsSpan(0, digits), NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            || !(value > 0 && double.IsFinite(value)))
        {
            return null;
        }

        string unit = plain[digits..].Trim('.', ' ');
        return unit switch
        {
            "pt" => value * LengthUnit.Inch.Millimetres() / 72,
            "pc" => value * LengthUnit.Inch.Millimetres() / 6,
            "" or "px" or "%" => null,
            _ => LengthUnits.Named(unit) is { } known ? value * known.Millimetres() : null,
        };
    }
}
