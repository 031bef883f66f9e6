using PlatformForge.Geometry;

namespace PlatformForge.Sections.Marks;

/// <summary>
/// A plain lettering of straight strokes on a field four units wide and six high, drawn for engraving with one width of tool.
/// Lower case is shown as capitals; a character without a drawing is left as a gap.
/// </summary>
internal static class StrokeFont
{
    /// <summary>Cap height in units.</summary>
    public const double CapHeight = 6;

    /// <summary>Width of a letter with the gap after it, in units.</summary>
    public const double Advance = 5.6;

    /// <summary>Width of a letter alone, in units.</summary>
    public const double LetterWidth = 4;

    /// <summary>Width of a stroke, in units.</summary>
    public const double StrokeWidth = 0.9;

    /// <summary>The character that is drawn as an arrow along the line of writing.</summary>
    public const char ArrowForward = '>';

    /// <summary>The character that is drawn as an arrow up the sheet.</summary>
    public const char ArrowUp = '^';

    // Strokes as pairs of digits x y; a bar lifts the tool.
    private static readonly Dictionary<char, string> Drawings = new()
    {
        ['A'] = "00 04 26 44 40|02 42",
        ['B'] = "00 06 36 45 44 33 03|33 42 41 30 00",
        ['C'] = "45 36 16 05 01 10 30 41",
        ['D'] = "00 06 26 44 42 20 00",
        ['E'] = "46 06 00 40|03 33",
        ['F'] = "46 06 00|03 33",
        ['G'] = "45 36 16 05 01 10 30 41 43 23",
        ['H'] = "00 06|40 46|03 43",
        ['I'] = "16 36|26 20|10 30",
        ['J'] = "46 41 30 10 01",
        ['K'] = "00 06|46 03 40",
        ['L'] = "06 00 40",
        ['M'] = "00 06 23 46 40",
        ['N'] = "00 06 40 46",
        ['O'] = "16 05 01 10 30 41 45 36 16",
        ['P'] = "00 06 36 45 44 33 03",
        ['Q'] = "16 05 01 10 30 41 45 36 16|22 40",
        ['R'] = "00 06 36 45 44 33 03|23 40",
        ['S'] = "45 36 16 05 04 13 33 42 41 30 10 01",
        ['T'] = "06 46|26 20",
        ['U'] = "06 01 10 30 41 46",
        ['V'] = "06 20 46",
        ['W'] = "06 10 23 30 46",
        ['X'] = "00 46|06 40",
        ['Y'] = "06 23 46|23 20",
        ['Z'] = "06 46 00 40",
        ['0'] = "16 05 01 10 30 41 45 36 16|12 34",
        ['1'] = "04 26 20|00 40",
        ['2'] = "05 16 36 45 44 00 40",
        ['3'] = "05 16 36 45 44 33 13|33 42 41 30 10 01",
        ['4'] = "30 36 02 42",
        ['5'] = "46 06 03 33 42 41 30 10 01",
        ['6'] = "45 36 16 05 01 10 30 41 42 33 03",
        ['7'] = "06 46 20",
        ['8'] = "13 04 05 16 36 45 44 33 13 02 01 10 30 41 42 33",
        ['9'] = "01 10 30 41 45 36 16 05 04 13 43",
        ['/'] = "00 46",
        ['-'] = "03 43",
        ['.'] = "10 20",
        ['\''] = "26 24",
        ['&'] = "40 04 05 16 25 24 02 01 10 20 42",
        ['+'] = "03 43|25 21",
        [ArrowForward] = "03 43|25 43 21",
        [ArrowUp] = "20 26|04 26 44",
    };

    /// <summary>Whether there is a drawing of a letter.</summary>
    public static bool Has(char letter) => Drawings.ContainsKey(char.ToUpperInvariant(letter));

    /// <summary>Width of a line of writing in units, without the gap after its last letter.</summary>
    public static double Width(string line) => line.Length == 0 ? 0 : ((line.Length - 1) * Advance) + LetterWidth;

    /// <summary>The strokes of a line of writing as counter-clockwise rectangles with square ends, in units, the first letter's lower left corner at the origin.</summary>
    public static IEnumerable<Point2[]> Strokes(string line)
    {
        for (int i = 0; i < line.Length; i++)
        {
            if (!Drawings.TryGetValue(char.ToUpperInvariant(line[i]), out string? drawing))
            {
                continue;
            }

            var origin = new Point2(i * Advance, 0);
            foreach (string stroke in drawing.Split('|'))
            {
                var points = stroke.Split(' ').Select(p => origin + new Point2(p[0] - '0', p[1] - '0')).ToArray();
                for (int k = 0; k + 1 < points.Length; k++)
                {
                    yield return Bar(points[k], points[k + 1]);
                }
            }
        }
    }

    // Ends reach on by half the width, so that strokes that meet at a corner close it.
    private static Point2[] Bar(Point2 a, Point2 b)
    {
        var along = (b - a) * (StrokeWidth / 2 / (b - a).Length);
        var left = along.Left;
        return [a - along - left, b + along - left, b + along + left, a - along + left];
    }
}
