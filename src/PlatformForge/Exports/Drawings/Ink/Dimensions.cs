using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>Dimension lines with arrows, in the manner of engineering drawings.</summary>
internal static class Dimensions
{
    private const double Arrow = 1.9;
    private const double ArrowHalf = 0.32;
    private const double Overrun = 1.2;
    private const double Clear = 0.8;

    // Shorter than any printer shows, sheet mm.
    private const double Nil = Tolerances.SameLength;

    /// <summary>A dimension between two points, its line shifted square to their join.</summary>
    /// <param name="sheet">Where to draw.</param>
    /// <param name="from">First point, sheet mm.</param>
    /// <param name="to">Second point.</param>
    /// <param name="shift">How far the line stands off, to the right of from→to as seen on the sheet; negative to the left.</param>
    /// <param name="text">What it says.</param>
    /// <remarks>A length of nil, as of an overhang that there is not, has no direction and nothing to show: it is left out.</remarks>
    public static void Between(Sheet sheet, Point2 from, Point2 to, double shift, string text)
    {
        var join = to - from;
        double length = join.Length;
        if (length < Nil)
        {
            return;
        }

        var along = join * (1 / length);
        var out_ = along.Left * Math.Sign(shift == 0 ? 1 : shift); // y runs down, so Left turns right on the sheet
        var a = from + (out_ * Math.Abs(shift));
        var b = to + (out_ * Math.Abs(shift));
        if (Math.Abs(shift) > Clear)
        {
            sheet.Line(from + (out_ * Clear), a + (out_ * Overrun), HouseStyle.Dimension);
            sheet.Line(to + (out_ * Clear), b + (out_ * Overrun), HouseStyle.Dimension);
        }

        bool inside = length > 3.2 * Arrow;
        if (inside)
        {
            sheet.Line(a, b, HouseStyle.Dimension);
            Head(sheet, a, along * -1);
            Head(sheet, b, along);
        }
        else
        {
            sheet.Line(a - (along * (2.2 * Arrow)), b + (along * (2.2 * Arrow)), HouseStyle.Dimension);
            Head(sheet, a, along);
            Head(sheet, b, along * -1);
        }

        Say(sheet, a, b, along, inside, text);
    }

    private static void Say(Sheet sheet, Point2 a, Point2 b, Point2 along, bool inside, string text)
    {
        double words = TextStyle.Length(text, HouseStyle.Label), length = (b - a).Length, angle = Math.Atan2(along.Y, along.X) * 180 / Math.PI;

        // Read from below or from the right-hand side, so upright figures run upwards, and never upside down (ISO 129-1).
        bool flip = angle is > 89.99 or < -90.01;
        var reading = flip ? along * -1 : along;
        angle = flip ? angle - (Math.Sign(angle) * 180) : angle;
        var up = reading.Left * -1;
        if (inside && words < length - Arrow)
        {
            sheet.Text(text, ((a + b) * 0.5) + (up * 0.8), HouseStyle.Label, TextAnchor.Middle, angle);
            return;
        }

        // Too short for its words: they follow the second arrow.
        var end = (flip ? a : b) + (reading * ((inside ? 0 : 2.2 * Arrow) + 0.8));
        sheet.Text(text, end - (up * (0.36 * HouseStyle.Label.Size)), HouseStyle.Label, TextAnchor.Start, angle);
    }

    private static void Head(Sheet sheet, Point2 tip, Point2 pointing)
    {
        var back = tip - (pointing * Arrow);
        sheet.Area([tip, back + (pointing.Left * ArrowHalf), back - (pointing.Left * ArrowHalf)], new(HouseStyle.Ink));
    }
}
