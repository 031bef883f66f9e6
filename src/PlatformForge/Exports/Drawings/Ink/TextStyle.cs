using PlatformForge.Exports.Looks;
using PlatformForge.Geometry.Lettering;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>Size of type in mm, whether it is bold, and its colour.</summary>
public sealed record TextStyle(double Size, Rgb Colour, bool Bold = false)
{
    // Where neither the typeface of these widths nor one like it is installed, a wider face steps in: so much more room keeps words in their places there too.
    private const double Substitute = 1.08;

    /// <summary>Bold letters are this much wider.</summary>
    internal const double BoldShare = 1.07;

    /// <summary>Width of a letter in thousandths of the size.</summary>
    internal static int Width(char letter) => LetterWidths.Of(letter);

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
