namespace PlatformForge.Geometry.Lettering;

/// <summary>How wide letters are with the space after them, in thousandths of the size of type.</summary>
internal static class LetterWidths
{
    // From space to tilde: the metrics published with the Helvetica typeface, which the usual substitutes share.
    private static readonly short[] Widths =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584,
        584, 556,
        1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278,
        469, 556,
        333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334,
        584,
    ];

    private const short Other = 600;

    public static int Of(char letter) => letter is >= ' ' and <= '~' ? Widths[letter - ' '] : Other;
}
