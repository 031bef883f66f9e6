namespace PlatformForge.Exports.Drawings;

/// <summary>Size of type in mm, whether it is bold, and its colour.</summary>
public sealed record TextStyle(double Size, Rgb Colour, bool Bold = false)
{
    // Widths of the letters from space to tilde in thousandths of the size: the metrics published with the Helvetica typeface, which the
    // usual substitutes share.
    private static readonly short[] Widths =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
        1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
        333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
    ];

    private const short OtherWidth = 600;

    // Where none of those is installed a wider face steps in: so much more room keeps words in their places there too.
    private const double Substitute = 1.08;

    /// <summary>Bold letters are this much wider.</summary>
    internal const double BoldShare = 1.07;

    /// <summary>Width of a letter in thousandths of the size.</summary>
    internal static int Width(char letter) => letter is >= ' ' and <= '~' ? Widths[letter - ' '] : OtherWidth;

    /// <summary>The words in lines that keep within a room in mm; a word longer than that has a line of its own.</summary>
    public static IReadOnlyList<string> Wrap(string text, TextStyle style, double room)
    {
        var lines = new List<string>();
        foreach (string word in text.Split(' '))
        {
            if (lines.Count > 0 && Length(lines[^1] + " " + word, style) <= room)
            {
                lines[^1] += " " + word;
            }
            else
            {
                lines.Add(word);
            }
        }

        return lines;
    }

    /// <summary>Length in mm that a line of words takes.</summary>
    public static double Length(string text, TextStyle style)
    {
        double sum = 0;
        foreach (char c in text)
        {
            sum += Width(c);
        }

        return Substitute * sum / 1000 * style.Size * (style.Bold ? BoldShare : 1);
    }
}
