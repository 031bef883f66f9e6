using System.Text;

namespace PlatformForge.Exports.Documents;

/// <summary>Text that is not ours in a Markdown document (CommonMark with tables): what would be taken for a mark is escaped.</summary>
internal static class MarkdownText
{
    private const string Marks = "\\`*[]<>#|~&!$@";

    /// <summary>The text, to stand within a line or a cell.</summary>
    public static string Escaped(string text)
    {
        var escaped = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (char.IsControl(c) || c is '\u2028' or '\u2029')
            {
                escaped.Append(' ');
                continue;
            }

            // An underscore marks only at a word's edge; a colon and a point only make links of addresses.
            bool marks = Marks.Contains(c, StringComparison.Ordinal)
                || (c == '_' && !(i > 0 && char.IsLetterOrDigit(text[i - 1]) && i + 1 < text.Length && char.IsLetterOrDigit(text[i + 1])))
                || (c == ':' && text.AsSpan(i).StartsWith("://", StringComparison.Ordinal))
                || (c == '.' && i >= 3 && text.AsSpan(i - 3, 3).Equals("www", StringComparison.OrdinalIgnoreCase));
            escaped.Append(marks ? "\\" : "").Append(c);
        }

        return escaped.ToString();
    }
}
