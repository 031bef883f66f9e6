namespace PlatformForge.Track.Surveys.Readings;

/// <summary>Whether what was read is a text at all.</summary>
internal static class PlainText
{
    /// <summary>Longest text taken, characters: a hundred thousand readings need a twentieth of it.</summary>
    public const int Longest = 64 * 1024 * 1024;

    /// <summary>Why a text is of no use, or null.</summary>
    public static string? Fault(string text)
    {
        if (text.Length == 0)
        {
            return "The file is empty.";
        }

        if (text.Length > Longest)
        {
            return "The file is too long to be a survey.";
        }

        // Zero bytes and the mark for bytes that are no text: an image, an archive, a spreadsheet's own format.
        return text.AsSpan().ContainsAny('\0', '\uFFFD') ? "The file is not a text file." : null;
    }
}
