namespace PlatformForge.Geometry.Lettering;

/// <summary>
/// Letters as a pen draws them: strokes in hundredths of the size of type, base line at 0, capitals 72 high, small letters 52.
/// A stroke is a row of points "x,y"; one marked ~ is a corner to be rounded as far as the middles between it and its
/// neighbours; z closes the stroke. Drawn for this program, to <see cref="LetterWidths"/>: the titles of pictures are painted with them, and sections engraved.
/// </summary>
internal static class LetterShapes
{
    /// <summary>Strokes of the letters from exclamation mark to tilde.</summary>
    private static readonly string[] Plain =
    [
        "14,72 14,20|14,1 14,2", "12,72 12,50|24,72 24,50", "14,0 24,71|32,0 42,71|6,47 50,47|4,24 48,24",
        "46,54 ~44,71 ~9,71 ~9,38 ~47,35 ~47,0 ~8,0 8,17|28,80 28,-9", "~5,36 ~5,72 ~33,72 ~33,36 z|~56,0 ~56,36 ~84,36 ~84,0 z|66,74 23,-2",
        "61,0 21,46 ~10,72 ~46,72 ~44,50 ~6,34 ~6,-1 ~50,-1 58,32", "9.5,72 9.5,50", "26,76 ~8,55 ~8,3 26,-18", "7,76 ~25,55 ~25,3 7,-18",
        "19.5,72 19.5,46|8,66 31,52|31,66 8,52", "29,56 29,8|5,32 53,32", "14,2 14,0 10,-13", "5,27 28,27", "14,1 14,2", "2,-1 26,73",
        "~8,0 ~8,71 ~48,71 ~48,0 z", "13,58 30,71 30,0", "9,50 ~9,71 ~47,71 ~47,38 8,0 48,0", "9,56 ~11,71 ~45,71 ~45,38 24,38 ~48,38 ~48,0 ~8,0 8,16",
        "37,0 37,71 6,18 50,18", "45,71 14,71 10,36 ~18,46 ~48,46 ~48,0 ~8,0 8,14", "45,58 ~42,71 ~8,71 ~8,0 ~48,0 ~48,44 ~9,44 9,24",
        "8,71 48,71 ~30,45 22,0", "~12,38 ~12,71 ~44,71 ~44,38 z|~8,0 ~8,38 ~48,38 ~48,0 z", "11,13 ~14,0 ~48,0 ~48,71 ~8,71 ~8,27 ~47,27 47,47",
        "14,1 14,2|14,48 14,49", "14,2 14,0 10,-13|14,48 14,49", "52,56 6,32 52,8", "5,42 53,42|5,22 53,22", "6,56 52,32 6,8",
        "10,55 ~11,72 ~46,72 ~46,44 ~28,36 28,20|28,1 28,2", "68,26 ~68,52 ~33,52 ~33,16 ~62,16 68,34 ~70,16 ~94,16 ~94,72 ~8,72 ~8,-10 ~60,-12 80,-4",
        "4,0 33,72 63,0|14,24 53,24", "10,38 10,72 34,72 ~58,72 ~58,38 34,38 10,38 10,0 36,0 ~62,0 ~62,38 34,38", "66,50 ~62,73 ~6,73 ~6,-1 ~62,-1 66,24",
        "10,0 10,72 34,72 ~66,72 ~66,0 34,0 z", "61,72 10,72 10,0 62,0|10,39 56,39", "57,72 10,72 10,0|10,38 51,38",
        "69,52 ~64,73 ~6,73 ~6,-1 ~62,-1 70,14 70,35 44,35",
        "10,0 10,72|62,0 62,72|10,38 62,38", "14,0 14,72", "40,72 40,20 ~40,-1 ~5,-1 5,20", "10,0 10,72|62,72 10,26|27,41 64,0", "10,72 10,0 52,0",
        "10,0 10,72 41,6 73,72 73,0", "10,0 10,72 62,0 62,72", "~6,-1 ~6,73 ~72,73 ~72,-1 z", "10,0 10,72 36,72 ~60,72 ~60,33 36,33 10,33",
        "~6,-1 ~6,73 ~72,73 ~72,-1 z|47,14 68,-4", "10,0 10,72 38,72 ~62,72 ~62,36 38,36 10,36|40,36 ~60,36 ~60,15 64,0",
        "59,53 ~57,73 ~8,73 ~8,38 ~62,36 ~62,-1 ~5,-1 5,20",
        "3,72 58,72|30.5,72 30.5,0", "10,72 10,24 ~10,-1 ~62,-1 62,24 62,72", "4,72 33,0 63,72", "4,72 25,0 47,72 69,0 90,72", "5,0 62,72|5,72 62,0",
        "4,72 33,32 63,72|33,32 33,0", "6,72 56,72 5,0 57,0", "22,76 10,76 10,-18 22,-18", "2,73 26,-1", "6,76 18,76 18,-18 6,-18", "7,40 23,71 40,40",
        "0,-14 56,-14",
        "9,74 19,62",
        "9,39 ~11,53 ~44,53 44,34 44,0|44,31 24,29 ~6,27 ~6,-1 ~38,-1 44,14", "9,72 9,0|9,26 ~9,53 ~48,53 ~48,-1 ~9,-1 9,26",
        "45,36 ~43,53 ~6,53 ~6,-1 ~44,-1 45,18",
        "47,72 47,0|47,26 ~47,53 ~7,53 ~7,-1 ~47,-1 47,26", "8,28 48,28 ~48,53 ~7,53 ~7,-1 ~46,-1 47,15", "25,71 ~11,73 11,60 11,0|2,52 24,52",
        "47,26 ~47,53 ~7,53 ~7,-1 ~47,-1 47,26|47,52 47,0 ~47,-21 ~11,-21 9,-9", "9,72 9,0|9,32 ~9,53 ~47,53 47,33 47,0", "11,52 11,0|11,70 11,73",
        "11,52 11,-8 ~11,-20 1,-20|11,70 11,73", "9,72 9,0|44,52 9,20|21,31 46,0", "11,72 11,0",
        "9,52 9,0|9,32 ~9,53 ~41,53 41,33 41,0|41,32 ~41,53 ~74,53 74,33 74,0",
        "9,52 9,0|9,32 ~9,53 ~47,53 47,33 47,0", "~7,-1 ~7,53 ~49,53 ~49,-1 z", "9,52 9,-20|9,26 ~9,53 ~48,53 ~48,-1 ~9,-1 9,26",
        "47,52 47,-20|47,26 ~47,53 ~7,53 ~7,-1 ~47,-1 47,26", "9,52 9,0|9,30 ~9,52 31,52", "43,39 ~42,53 ~7,53 ~7,28 ~46,27 ~46,-1 ~5,-1 5,14",
        "12,66 12,12 ~12,0 25,1|3,52 24,52", "9,52 9,20 ~9,-1 ~47,-1 47,20|47,52 47,0", "4,52 25,0 46,52", "4,52 20,0 36,52 52,0 68,52", "5,0 45,52|5,52 45,0",
        "4,52 26,2|46,52 22,-13 ~19,-20 6,-20", "6,52 44,52 5,0 45,0", "26,76 ~15,76 15,62 15,40 ~15,29 7,29 ~15,29 15,18 15,-4 ~15,-18 26,-18", "13,76 13,-18",
        "7,76 ~18,76 18,62 18,40 ~18,29 26,29 ~18,29 18,18 18,-4 ~18,-18 7,-18", "6,30 ~16,46 ~29,34 ~42,22 52,36",
    ];

    // Signs beyond the first hundred that the drawings use.
    private const string FurtherSigns = "°×–—−·’‘…²³±½→↑";

    private static readonly string[] Further =
    [
        "~16,46 ~16,72 ~42,72 ~42,46 z", "12,12 48,48|12,48 48,12", "4,27 56,27", "0,27 60,27", "6,32 54,32", "30,30 30,31", "32,72 32,66 27,54",
        "33,54 28,62 28,70",
        "10,1 10,2|30,1 30,2|50,1 50,2", "18,62 ~18,72 ~40,72 ~40,56 18,34 42,34", "18,64 ~20,72 ~39,72 ~39,54 28,54 ~41,54 ~41,33 ~18,33 18,41",
        "30,60 30,16|8,38 52,38|8,4 52,4", "8,62 16,71 16,36|10,0 48,72|36,28 ~36,36 ~54,36 ~54,20 36,0 56,0",
        "4,36 54,36|34,58 56,36 34,14", "30,2 30,70|8,48 30,72 52,48",
    ];

    // Letters of the Latin-1 page from À on that are a plain letter with a mark over or under it, and their marks; blanks are neither.
    private const string Bare = "AAAAAA CEEEEIIII NOOOOO  UUUUY  aaaaaa ceeeeiiii nooooo  uuuuy y";
    private const string MarkOf = "gactdr cgacdgacd tgactd  gacda  gactdr cgacdgacd tgactd  gacda d";

    private static readonly Dictionary<char, string> Marks = new()
    {
        ['g'] = "22,82 32,74",
        ['a'] = "24,74 34,82",
        ['c'] = "20,75 28,82 36,75",
        ['t'] = "18,76 ~24,83 ~32,73 38,80",
        ['d'] = "20,78 20,79|36,78 36,79",
        ['r'] = "~21,75 ~21,87 ~35,87 ~35,75 z",
    };

    private const double MarksMiddle = 28;
    private const double OverSmall = -18;

    /// <summary>A letter as it is drawn.</summary>
    /// <param name="Strokes">Its strokes.</param>
    /// <param name="Width">Width of the letter they were drawn for, hundredths of the size.</param>
    /// <param name="Mark">Strokes of its mark, or none.</param>
    /// <param name="MarkAcross">How far to the right of where it is drawn the mark belongs.</param>
    /// <param name="MarkUp">How far above.</param>
    internal readonly record struct Letter(string Strokes, double Width, string Mark, double MarkAcross, double MarkUp);

    /// <summary>Whether there is a drawing of a letter.</summary>
    public static bool Has(char letter) =>
        letter is > ' ' and <= '~' || FurtherSigns.Contains(letter, StringComparison.Ordinal)
        || (letter is >= FirstMarked and <= LastMarked && Bare[letter - FirstMarked] != ' ');

    /// <summary>The shape of a letter; a box for one that is not known.</summary>
    public static Letter Of(char letter)
    {
        int sign = FurtherSigns.IndexOf(letter, StringComparison.Ordinal);
        char bare = letter is >= FirstMarked and <= LastMarked ? Bare[letter - FirstMarked] : ' ';
        if (bare != ' ')
        {
            double width = LetterWidths.Of(bare) / 10.0;
            char mark = MarkOf[letter - FirstMarked];
            return char.ToLowerInvariant(bare) == 'c'
                ? new(Plain[bare - '!'], width, "30,-3 ~36,-9 ~34,-18 24,-16", 0, 0)
                : new(Plain[bare - '!'], width, Marks[mark], (width / 2) - MarksMiddle, char.IsLower(bare) ? OverSmall : 0);
        }

        string strokes = letter is > ' ' and <= '~' ? Plain[letter - '!'] : sign >= 0 ? Further[sign] : letter is ' ' or '\u00A0' ? "" : Unknown;
        return new(strokes, LetterWidths.Of(letter) / 10.0, "", 0, 0);
    }

    private const char FirstMarked = 'À', LastMarked = 'ÿ';
    private const string Unknown = "8,0 8,72 52,72 52,0 z";
}
