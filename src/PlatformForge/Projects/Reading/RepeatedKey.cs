using System.Globalization;
using System.Text.RegularExpressions;
using static System.FormattableString;

namespace PlatformForge.Projects.Reading;

/// <summary>Says that a key or a heading stands in a file twice, and where it stands already.</summary>
internal static partial class RepeatedKey
{
    private const int LongestShown = 60;

    /// <summary>What is wrong and what would be right.</summary>
    /// <param name="lines">Lines of the file.</param>
    /// <param name="line">Line that the parser stumbles over, from 0.</param>
    /// <param name="parser">What the parser says of it.</param>
    /// <returns>Null where nothing stands twice.</returns>
    public static (string Message, string Remedy)? Of(string[] lines, int line, string parser)
    {
        if (Heading().Match(lines[line]) is { Success: true } heading)
        {
            string name = heading.Groups["name"].Value, shown = Shown(heading.Value.Trim());
            for (int i = 0; i < line; i++)
            {
                if (Heading().Match(lines[i]) is { Success: true } before && before.Groups["name"].Value == name)
                {
                    return OfHeadings(shown, Shown(before.Value.Trim()), name, i + 1);
                }
            }

            return OfValues(lines, line, shown, name);
        }

        return TryFirst(parser, out int first) ? Twice(Shown(Defined().Match(parser).Groups["key"].Value), first, line + 1) : null;
    }

    private static bool TryFirst(string parser, out int first) =>
        int.TryParse(Defined().Match(parser).Groups["line"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out first) && first > 0;

    /// <summary>Whether what the parser takes for a second time belongs to a further item of a list: version 2.10 does so where a key follows the heading of
    /// that name under an item before. What truly stands twice is found when the tree is built.</summary>
    /// <inheritdoc cref="Of"/>
    public static bool IsOfAnotherItem(string[] lines, int line, string parser)
    {
        int under = TryFirst(parser, out int first) ? Array.FindLastIndex(lines, Math.Min(first, lines.Length) - 1, l => Heading().IsMatch(l)) : -1;
        if (under < 0)
        {
            return false;
        }

        string name = Heading().Match(lines[under]).Groups["name"].Value;
        return lines.Take(line).Skip(first).Any(l => l.TrimStart().StartsWith("[[", StringComparison.Ordinal) && Heading().Match(l) is { Success: true } item
            && name.StartsWith(item.Groups["name"].Value + ".", StringComparison.Ordinal));
    }

    private static (string Message, string Remedy) OfHeadings(string shown, string before, string name, int line) =>
        (shown.StartsWith("[[", StringComparison.Ordinal), before.StartsWith("[[", StringComparison.Ordinal)) switch
        {
            (false, true) => (Invariant($"{shown} comes after {before} of line {line}, which begins one of ")
                + "several.", $"Write {before} for a further one, or put the keys under the one that they belong to."),
            (true, false) => (Invariant($"{shown} comes after {before} of line {line}, which there is one ")
                + "of.", Invariant($"Put its keys under {before}{(IsSeveral(name) ? $", or write {shown} at line {line} too" : "")}.")),
            _ => (Invariant($"{shown} is there already, in line {line}."), IsSeveral(name) ? Invariant($"Write [[{Shown(name)}]] at both for two of them, or ")
                + "remove one." : "Put its keys under that one, and remove this heading."),
        };

    // A heading whose name a key above has a value for.
    private static (string Message, string Remedy)? OfValues(string[] lines, int line, string shown, string name)
    {
        string last = name[(name.LastIndexOf('.') + 1)..];
        int at = Array.FindLastIndex(lines, line, l => Regex.IsMatch(l, $@"^\s*(?:[\w.]*\.)?{Regex.Escape(last)}\s*="));
        return at >= 0 ? (Invariant($"{shown} comes after {Shown(last)} = … of line {at + 1}, which gives the ")
            + "same.", "Keep one of the two and remove the other.") : null;
    }

    private static (string Message, string Remedy) Twice(string path, int first, int second)
    {
        string key = path[(path.LastIndexOf('.') + 1)..];
        return (first == second ? Invariant($"{key} is given twice in this line.") : Invariant($"{key} is given twice: line {first} has it ")
            + "already.", "Keep one of the two and remove the other.");
    }

    private static bool IsSeveral(string name) => name is "track" or "vehicle" or "platform" || name.EndsWith(".board", StringComparison.Ordinal)
        || name.EndsWith(".hole", StringComparison.Ordinal)
        || name.EndsWith(".part", StringComparison.Ordinal) || name.EndsWith(".body", StringComparison.Ordinal);

    private static string Shown(string text) => text.Length > LongestShown ? text[..LongestShown] + "…" : text;

    [GeneratedRegex(@"^\s*(?:\[\[\s*(?<name>[\w.\-""]+)\s*\]\]|\[\s*(?<name>[\w.\-""]+)\s*\])")]
    private static partial Regex Heading();

    [GeneratedRegex(@"(?:key|table)[^`]*`(?<key>[^`]*)`[^`]*already defined at \((?<line>[0-9]+),", RegexOptions.IgnoreCase)]
    private static partial Regex Defined();
}
