using System.Text;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Units;

namespace PlatformForge.Exports.Pdf;

/// <summary>
/// Letters as the two faces of the document have them: one byte each, of the code page that ISO 32000 calls WinAnsiEncoding, and how wide they are. The faces
/// are Helvetica and its bold, two of the fourteen that every reader has (ISO 32000-1, 9.6.2.2), so that no file of a face has to be shipped.
/// </summary>
internal static class PdfLetters
{
    public const int First = 32, Last = 255;

    // What stands at 0x80 to 0x9F; a blank stands for nothing.
    private const string Page80 = "€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ";

    // Widths in thousandths of the size from 32 to 126 and from 160 to 255: the metrics published with the two faces.
    private static readonly short[] Plain =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584,
        584, 556,
        1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278,
        469, 556,
        333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334,
        584,
    ];

    private static readonly short[] Bold =
    [
        278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584,
        584, 611,
        975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333,
        584, 556,
        333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389,
        584,
    ];

    // Signs between 0xA0 and 0xBF, and letters that are no plain letter with a mark, in both faces.
    private static readonly short[] Signs =
    [
        278, 333, 556, 556, 556, 556, 260, 556, 333, 737, 370, 556, 584, 333, 737, 333, 400, 584, 333, 333, 333, 556, 537, 278, 333, 333, 365, 556, 834, 834,
        834, 611,
    ];

    private const string Bare = "AAAAAA CEEEEIIII NOOOOO OUUUUY  aaaaaa ceeeeiiii nooooo ouuuuy y";

    private const string Own = "€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸÆæÐð×÷ÞþßØø";

    private static readonly short[] OwnWidths =
    [
        556, 222, 556, 333, 1000, 556, 556, 333, 1000, 667, 333, 1000, 611, 222, 222, 333, 333, 350, 556, 1000, 333, 1000, 500, 333, 944, 500, 667,
        1000, 889, 722, 556, 584, 584, 667, 556, 611, 778, 611,
    ];

    /// <summary>The words in bytes: letters that the faces lack are written in plain ones where there is a usual way, and as question marks where there is
    /// none.</summary>
    public static byte[] Of(string text)
    {
        var bytes = new List<byte>(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (Code(rune) is { } code)
            {
                bytes.Add(code);
            }
            else
            {
                bytes.AddRange((PlainLetters.Of(rune) ?? "?").Select(c => Code(new Rune(c)) ?? (byte)'?'));
            }
        }

        return [.. bytes];
    }

    /// <summary>Length in mm of words in bytes.</summary>
    public static double Length(ReadOnlySpan<byte> words, TextStyle style)
    {
        int sum = 0;
        foreach (byte code in words)
        {
            sum += Width(code, style.Bold);
        }

        return sum * style.Size / 1000;
    }

    /// <summary>Width of a letter in thousandths of the size.</summary>
    public static short Width(int code, bool bold)
    {
        var face = bold ? Bold : Plain;
        char letter = code is >= 0x80 and < 0xA0 ? Page80[code - 0x80] : (char)code;
        char bare = code >= 0xC0 ? Bare[code - 0xC0] : ' ';
        return letter is >= ' ' and <= '~' && code < 0x80 ? face[code - ' ']
            : Own.IndexOf(letter, StringComparison.Ordinal) is >= 0 and var own ? OwnWidths[own]
            : code is >= 0xA0 and < 0xC0 ? Signs[code - 0xA0]
            : bare != ' ' ? face[bare - ' ']
            : face[0];
    }

    private static byte? Code(Rune rune) => rune.Value switch
    {
        >= ' ' and <= '~' or >= 0xA0 and <= 0xFF => (byte)rune.Value,
        '\u2212' => (byte)'-', // the minus sign has no code of its own
        _ => rune.IsBmp && Page80.IndexOf((char)rune.Value, StringComparison.Ordinal) is >= 0 and var at ? (byte)(0x80 + at) : null,
    };
}
