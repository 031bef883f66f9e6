using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Projects.Reading;

/// <summary>
/// Looks over a TOML text before it is parsed: one pass, nothing kept, no recursion. What is refused here would cost the parser or what
/// comes after it more time, memory or stack than any project is worth.
/// </summary>
internal ref struct TomlBounds
{
    private readonly ReadOnlySpan<char> text;
    private int at, depth, names, headings, values, word, lineStart, line;
    private bool fresh;

    private TomlBounds(ReadOnlySpan<char> text)
    {
        this.text = text;
        (fresh, line, names) = (true, 1, 1);
    }

    /// <summary>The fault of a text that goes beyond a limit; null when it keeps them all.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">How the user named the file.</param>
    public static Finding? Fault(string text, string file)
    {
        var bounds = new TomlBounds(text);
        return bounds.Walk() is { } beyond
            ? Finding.Error("PF1041", "", beyond.What, beyond.Remedy) with { File = file, Line = bounds.line, Column = bounds.at - bounds.lineStart + 1 }
            : null;
    }

    private (string What, string Remedy)? Walk()
    {
        for (; at < text.Length; at++)
        {
            char c = text[at];
            if (c is '"' or '\'')
            {
                SkipText(c);
                word = 0;
            }
            else if (c == '#')
            {
                int length = text[at..].IndexOf('\n');
                at += length < 0 ? text.Length - at - 1 : length - 1;
            }
            else if (c == '\n')
            {
                EndLine();
            }
            else
            {
                Sign(c);
            }

            fresh &= c is '\n' or ' ' or '\t' or '\r';
            if (Beyond() is { } beyond)
            {
                return beyond;
            }
        }

        return null;
    }

    private void Sign(char c)
    {
        headings += fresh && depth == 0 && c == '[' ? 1 : 0;
        depth = c is '[' or '{' ? depth + 1 : c is ']' or '}' ? Math.Max(0, depth - 1) : depth;
        values += c is '=' or ',' ? 1 : 0;
        names = c == '.' ? names + 1 : c is '=' or ',' or '[' or '{' ? 1 : names;
        word = char.IsLetterOrDigit(c) || c is '_' or '-' or '+' or '.' ? word + 1 : 0;
    }

    private void EndLine()
    {
        (word, lineStart, fresh) = (0, at + 1, true);
        line++;
        names = depth == 0 ? 1 : names;
    }

    // From an opening quote onto the closing one; a text that is not closed ends with its line, in threes with the file.
    private void SkipText(char quote)
    {
        bool isLong = at + 2 < text.Length && text[at + 1] == quote && text[at + 2] == quote;
        for (at += isLong ? 3 : 1; at < text.Length; at++)
        {
            if (text[at] == '\\' && quote == '"')
            {
                at++;
            }
            else if (text[at] == quote && (!isLong || (at + 2 < text.Length && text[at + 1] == quote && text[at + 2] == quote)))
            {
                at += isLong ? 2 : 0;
                return;
            }

            if (at < text.Length && text[at] == '\n')
            {
                EndLine();
                if (!isLong)
                {
                    return;
                }
            }
        }
    }

    private readonly (string What, string Remedy)? Beyond() =>
        depth > InputLimits.ProjectDepth ? (Invariant($"More than {InputLimits.ProjectDepth} brackets stand inside one another ")
            + "here.", "No key takes more than four levels of brackets: close them.")
        : names > InputLimits.ProjectNames ? (Invariant($"More than {InputLimits.ProjectNames} names are joined by dots ")
        + "here.", "No key has more than five, such as platform.ramps.end.length.")
        : headings > InputLimits.ProjectHeadings ? (Invariant($"The file has more than {InputLimits.ProjectHeadings} ")
        + "headings.", "Split the layout into several project files.")
        : values > InputLimits.ProjectValues ? (Invariant($"The file has more than {InputLimits.ProjectValues} ")
        + "values.", "Readings go into a CSV file that the project names; split the layout into several project files.")
        : word > InputLimits.ProjectWord ? (Invariant($"A word or number here is longer than {InputLimits.ProjectWord} ")
        + "signs.", "Keys are short words and numbers have a few digits; texts stand in double quotes.")
        : null;
}
