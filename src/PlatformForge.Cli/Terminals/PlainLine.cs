namespace PlatformForge.Cli.Terminals;

/// <summary>
/// Text of somebody else on its way to a terminal: signs that would move the cursor, change colours or turn the direction of
/// writing become visible instead of being obeyed.
/// </summary>
internal static class PlainLine
{
    private const char InPlace = '\uFFFD';

    public static string Of(string text) => text.Any(Commands) ? string.Concat(text.Select(c => Commands(c) ? InPlace : c)) : text;

    private static bool Commands(char c) => char.IsControl(c) || c is '\u2028' or '\u2029' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
