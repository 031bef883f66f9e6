using System.Globalization;
using System.Text.RegularExpressions;
using Tomlyn.Parsing;
using static System.FormattableString;

namespace PlatformForge.Projects.Reading;

/// <summary>
/// Says what is wrong with a line that is not TOML in the words of somebody who fills in a form: looks at the line itself, since the parser only knows
/// which sign it did not expect.
/// </summary>
internal static partial class GrammarFault
{
    private const int LongestQuoted = 60;
    private const int MostSigns = 8;

    /// <summary>What is wrong and what would be right.</summary>
    /// <param name="lines">Lines of the file.</param>
    /// <param name="line">Line of the fault, from 0.</param>
    /// <returns>Null where the line shows none of the usual mistakes.</returns>
    public static (string Message, string Remedy)? Of(string[] lines, int line)
    {
        string text = WithoutComment(lines[line]), quoted = text.Trim();
        int last = Math.Max(0, Array.FindLastIndex(lines, l => !string.IsNullOrWhiteSpace(l)));
        if (line >= last && !quoted.StartsWith('[') && Open(lines) is { Length: > 0 } open)
        {
            return (Invariant($"The file ends in the middle of something: line {last + 1} is its last, and {Signs(open)} is still to come."),
                Invariant($"Write the rest, or close it with {Signs(open)}."));
        }

        if (Unclosed(lines, line) is { } unclosed)
        {
            return unclosed;
        }

        return quoted.Length == 0 || quoted.Length > LongestQuoted ? null : OfSigns(lines, line, text, quoted) ?? OfWords(text, quoted);
    }

    // Quotes, brackets and commas that are missing or too many. A line's text is without its comment, and as quoted without blanks round it.
    private static (string Message, string Remedy)? OfSigns(string[] lines, int line, string text, string quoted)
    {
        if (text.Count(c => c == '"') % 2 == 1)
        {
            return (Invariant($"'{quoted}' opens a text and does not close it."), "Put a double quote at both ends of the text.");
        }

        if (quoted[0] == '[' && !quoted.Contains('=', StringComparison.Ordinal) && !quoted.Contains('{', StringComparison.Ordinal))
        {
            return (Invariant($"'{quoted}' is no heading."), Heading(quoted));
        }

        if (quoted[0] == '{' && line > 0
            && lines[..line].Select(l => WithoutComment(l).Trim()).LastOrDefault(l => l.Length > 0) is { } before && before.EndsWith('}'))
        {
            return (Invariant($"There is no comma between '{before}' and '{quoted}'."), Invariant($"Write {before},"));
        }

        return null;
    }

    // A key, its sign and its value.
    private static (string Message, string Remedy)? OfWords(string text, string quoted)
    {
        if (WordInTable().Match(text) is { Success: true } word)
        {
            return (Invariant($"'{word.Groups["value"].Value}' is a text without quotes."), Offer(word.Groups["key"].Value, word.Groups["value"].Value));
        }

        if (TwoKeys().IsMatch(text))
        {
            return (Invariant($"'{quoted}' has two keys on one line."), "Write every key on a line of its own.");
        }

        return Assignment().Match(text) is { Success: true } set
            ? OfValue(set.Groups["key"].Value.Trim(), set.Groups["value"].Value.Trim())
            : MissingEquals().Match(text) is { Success: true } bare
                ? (Invariant($"'{quoted}' has no '=' between the key and its value."), Offer(bare.Groups["key"].Value, bare.Groups["value"].Value.Trim()))
                : null;
    }

    // A line before that leaves a bracket open, with nothing after it that goes on, and a key of its own or a heading in this one.
    private static (string Message, string Remedy)? Unclosed(string[] lines, int line)
    {
        int before = Array.FindLastIndex(lines, Math.Max(0, line - 1), l => WithoutComment(l).Trim().Length > 0);
        return line > 0 && before >= 0 && KeyOrHeading().IsMatch(lines[line]) && Open(lines[..line]) is { Length: > 0 } open
            && WithoutComment(lines[before]).TrimEnd()[^1] is not (',' or '[' or '{')
            ? (Invariant($"Line {before + 1} ends without closing what it is in: {Signs(open)} is still to come."), Invariant($"Write {Signs(open)} at its ")
            + "end.")
            : null;
    }

    [GeneratedRegex(@"^\s*(\[+\s*[\w.]+\s*\]+\s*(#.*)?$|[\w.]+\s*=)", RegexOptions.ExplicitCapture)]
    private static partial Regex KeyOrHeading();

    // The heading that was meant, where a name can be made out. What stands behind its bracket is no part of it.
    private static string Heading(string quoted)
    {
        bool several = quoted.StartsWith("[[", StringComparison.Ordinal);
        string inner = quoted.TrimStart('[', ' ');
        int end = inner.IndexOf(']', StringComparison.Ordinal);
        string name = (end < 0 ? inner : inner[..end]).Trim(), behind = end < 0 ? "" : inner[end..].Trim('[', ']', ' ');
        string heading = several ? Invariant($"[[{name}]]") : Invariant($"[{name}]");
        return !HeadingName().IsMatch(name) ? "A heading is a name in brackets, on a line of its own: [layout], or [[platform]] where there may be several."
            : behind.Length > 0 ? Invariant($"Write {heading} on a line of its own.")
            : Invariant($"Write {heading}.");
    }

    [GeneratedRegex(@"^[A-Za-z0-9_-]+(\.[A-Za-z0-9_-]+)*$", RegexOptions.ExplicitCapture)]
    private static partial Regex HeadingName();

    /// <summary>Line and column, from 1, of the first backslash whose escape stands for no character; of the text's first backslash when all look
    /// well.</summary>
    public static (int Line, int Column) BadEscape(string text)
    {
        var bad = NoCharacter().Match(text);
        int at = Math.Max(0, bad.Success ? bad.Index : text.IndexOf('\\', StringComparison.Ordinal));
        int start = text.LastIndexOf('\n', Math.Max(0, at - 1)) + 1;
        return (text.AsSpan(0, at).Count('\n') + 1, at - Math.Min(start, at) + 1);
    }

    private static (string Message, string Remedy)? OfValue(string key, string value)
    {
        if (value.Length == 0)
        {
            return (Invariant($"'{key}' has no value."), Invariant($"Write {key} = and its value on the same line, or put a # before the line to leave it ")
                + "out.");
        }

        if (DecimalComma().IsMatch(value))
        {
            return (Invariant($"'{value}' has a decimal comma."), Offer(key, value.Replace(',', '.')));
        }

        return WithUnit().IsMatch(value)
            ? (Invariant($"'{value}' has a unit and no quotes."), Invariant($"Write {key} = \"{value}\"; a plain number is mm."))
            : Word().IsMatch(value)
                ? (Invariant($"'{value}' is a text without quotes."), Offer(key, value))
                : null;
    }

    // The line as it was meant, where that can be read: what would be refused next is not offered.
    private static string Offer(string key, string value)
    {
        string meant = Word().IsMatch(value) && value is not ("true" or "false") ? $"\"{value}\"" : value;
        bool endless = double.TryParse(meant, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && !double.IsFinite(number);
        return !endless && !SyntaxParser.Parse($"{key} = {meant}", null, true).HasErrors
            ? Invariant($"Write {key} = {meant}.")
            : Invariant($"Write {key} = and its value: a plain number of no more than 15 digits, or a text in double quotes.");
    }

    // Brackets and quotes that are open at the end, in the order in which they are to be closed.
    private static string Open(string[] lines)
    {
        var open = new Stack<char>();
        foreach (string line in lines)
        {
            bool inText = false;
            foreach (char c in WithoutComment(line))
            {
                inText ^= c == '"';
                if (inText)
                {
                    continue;
                }

                if (c is '[' or '{')
                {
                    open.Push(c == '[' ? ']' : '}');
                }
                else if (open.TryPeek(out char wanted) && c == wanted)
                {
                    open.Pop();
                }
            }
        }

        return string.Concat(open);
    }

    private static string Signs(string open) => string.Join(' ', open.Take(MostSigns));

    private static string WithoutComment(string line)
    {
        bool inText = false;
        for (int i = 0; i < line.Length; i++)
        {
            inText ^= line[i] == '"';
            if (line[i] == '#' && !inText)
            {
                return line[..i];
            }
        }

        return line;
    }

    [GeneratedRegex(@"\\(?!\s)(?:[^btnfre""\\uUx]|$|u(?:[dD][89a-fA-F]|(?![0-9a-fA-F]{4}))|U(?!00(?:0[0-9a-fA-F]|10)[0-9a-fA-F]{4}))")]
    private static partial Regex NoCharacter();

    [GeneratedRegex(@"^(?<key>[^=""]*)=(?<value>[^=]*)$")]
    private static partial Regex Assignment();

    [GeneratedRegex(@"^\s*(?<key>[A-Za-z_]\w*)[ :]+(?<value>[^=]*)$")]
    private static partial Regex MissingEquals();

    [GeneratedRegex(@"[{,]\s*(?<key>\w+)\s*=\s*(?!true\b|false\b|inf\b|nan\b)(?<value>[A-Za-z][\w-]*)")]
    private static partial Regex WordInTable();

    [GeneratedRegex(@"^\s*\w+\s*=\s*(""[^""]*""|[\w.+-]+)\s+\w+\s*=")]
    private static partial Regex TwoKeys();

    [GeneratedRegex(@"^[+-]?\d+,\d+$")]
    private static partial Regex DecimalComma();

    [GeneratedRegex(@"^-?[0-9]+(\.[0-9]+)?\s*(mm|cm|m|in|ft(\s+[0-9]+(\.[0-9]+)?\s*in)?)(\s+full[ -]size)?$", RegexOptions.ExplicitCapture)]
    private static partial Regex WithUnit();

    [GeneratedRegex(@"^[A-Za-z][\w -]*$")]
    private static partial Regex Word();
}
