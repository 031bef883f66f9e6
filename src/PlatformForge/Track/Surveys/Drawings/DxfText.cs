using System.Globalization;
using PlatformForge.Units;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>One pair of a DXF file: a group code, its value, and the line the code stands on.</summary>
internal readonly record struct DxfPair(int Code, string Value, int Line)
{
    public double Number => !double.TryParse(Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) || !double.IsFinite(value)
        ? throw new UnreadableDrawingException($"Group {Code.ToString(CultureInfo.InvariantCulture)} holds no number.", Line + 1)
        : DrawingBudget.Holds(value)
        ? value
        : throw new UnreadableDrawingException(FormattableString.Invariant($"Group {Code} holds {value:G6}; the largest number taken ")
        + FormattableString.Invariant($"is {InputLimits.DrawingCoordinate:0}."),
            Line + 1);

    public int Whole => int.TryParse(Value, NumberStyles.Integer, CultureInfo.InvariantCulture, out int value)
        ? value
        : throw new UnreadableDrawingException($"Group {Code.ToString(CultureInfo.InvariantCulture)} holds no whole number.", Line + 1);
}

/// <summary>A DXF text cut into its pairs.</summary>
internal static class DxfText
{
    /// <summary>Reads all pairs; a comment (code 999) is dropped.</summary>
    public static List<DxfPair> Pairs(string text)
    {
        if (text.StartsWith("AutoCAD Binary DXF", StringComparison.Ordinal))
        {
            throw new UnreadableDrawingException("The drawing is a binary DXF; save it as an ASCII (text) DXF.", 1);
        }

        var pairs = new List<DxfPair>();
        int line = 0, code = 0;
        bool value = false;
        foreach (var raw in text.AsSpan().TrimStart('\uFEFF').TrimEnd().EnumerateLines())
        {
            line++;
            if (value)
            {
                Add(pairs, new(code, raw.Trim().ToString(), line - 1));
                value = false;
                continue;
            }

            // Blank lines may stand at the end of the file only.
            if (raw.IsWhiteSpace() && pairs.Count > 0 && pairs[^1].Value == "EOF")
            {
                break;
            }

            value = int.TryParse(raw.Trim(), NumberStyles.Integer, CultureInfo.InvariantCulture, out code)
                ? true
                : throw new UnreadableDrawingException("A group code was expected here: this is no DXF file, or a line of it is missing.", line);
        }

        return pairs.Count > 0 && pairs[^1] is { Code: 0, Value: "EOF" }
            ? pairs
            : throw new UnreadableDrawingException("The drawing ends here without its end mark (EOF): it was cut short.", Math.Max(1, line));
    }

    private static void Add(List<DxfPair> pairs, DxfPair pair)
    {
        if (pairs.Count >= InputLimits.DrawingPairs)
        {
            throw new UnreadableDrawingException(
                FormattableString.Invariant($"The drawing has more than {InputLimits.DrawingPairs} pairs of lines; save the track's own lines alone."),
                pair.Line + 1);
        }

        if (pair.Code != 999)
        {
            pairs.Add(pair);
        }
    }
}
