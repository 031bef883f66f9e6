using System.Globalization;
using System.Text;

namespace PlatformForge.Units;

/// <summary>
/// Names in the letters of a plain keyboard, for places that take no others: names of files, the head of an STL file, lettering cut
/// into plastic. Nothing depends on the culture, nor on data about cultures being there.
/// </summary>
public static class PlainLetters
{
    /// <summary>Letters that are no plain letter with a mark, and what is written for them where there are no others. Common practice, no source.</summary>
    private const string Letters =
        "ßss ẞSS æae ÆAE œoe ŒOE øo ØO łl ŁL đd ĐD ðd ÐD þth ÞTh ħh ĦH ıi ŋng ŊNg ĳij ĲIJ ŧt ŦT ſs ƒf əe ƏE αa βv γg " +
        "δd εe ζz ηi θth ιi κk λl μm νn ξx οo πp ρr σs ςs τt υy φf χch ψps ωo аa бb вv гg дd еe жzh зz иi кk лl мm нn " +
        "оo пp рr сs тt уu фf хkh цts чch шsh щshch ъ ыy ь эe юyu яya іi јj љlj њnj єye ґg ђdj ћc џdz";

    /// <summary>The same of signs.</summary>
    private static readonly (char Sign, string Plain)[] Signs =
    [
        ('’', "'"), ('‘', "'"), ('“', "\""), ('”', "\""), ('–', "-"), ('—', "-"), ('−', "-"), ('…', "..."), ('×', "x"), ('·', "."), ('\u00A0', " "),
    ];

    private static readonly Dictionary<char, string> Others =
        Letters.Split(' ').Select(l => (Sign: l[0], Plain: l[1..])).Concat(Signs).ToDictionary(l => l.Sign, l => l.Plain);

    // Letters of full width begin so far above the plain ones.
    private const int FullWidth = 0xFF01 - '!';

    /// <summary>What is written for a character: itself when it is plain, nothing for a mark or a soft sign, null when there is no way to write it.</summary>
    public static string? Of(Rune letter)
    {
        if (letter.IsAscii)
        {
            return letter.ToString();
        }

        if (Rune.GetUnicodeCategory(letter) is UnicodeCategory.NonSpacingMark or UnicodeCategory.Format)
        {
            return "";
        }

        if (!letter.IsBmp)
        {
            return null;
        }

        char bare = ComposedLetters.Bare((char)letter.Value), small = char.ToLowerInvariant(bare);
        return Others.TryGetValue(bare, out string? plain) ? plain
            : bare is >= (char)('!' + FullWidth) and <= (char)('~' + FullWidth) ? ((char)(bare - FullWidth)).ToString()
            : char.IsAscii(bare) ? bare.ToString()
            : small != bare && Others.TryGetValue(small, out string? other) ? other.Length > 0 ? char.ToUpperInvariant(other[0]) + other[1..] : ""
            : null;
    }

    /// <summary>A text in plain letters, with a sign in place of what has none.</summary>
    public static string Of(string text, string otherwise)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var letter in text.EnumerateRunes())
        {
            plain.Append(Of(letter) ?? otherwise);
        }

        return plain.ToString();
    }
}
