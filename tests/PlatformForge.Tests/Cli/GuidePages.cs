using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Tests.House;

namespace PlatformForge.Tests.Cli;

/// <summary>What the pages of the guide ask a reader to do, in their order: files to write and commands to give.</summary>
internal static partial class GuidePages
{
    public static string Folder => Path.Combine(SourceTree.Root, "docs", "guide");

    /// <summary>The first page, then the numbered ones.</summary>
    public static IEnumerable<string> InOrder =>
        Directory.EnumerateFiles(Folder, "*.md").OrderBy(p => Number().Match(Path.GetFileName(p)) is { Success: true } m
            ? int.Parse(m.Value, CultureInfo.InvariantCulture) : 0);

    /// <summary>Pages beside the guide that show commands on its worked example.</summary>
    private static IEnumerable<string> Beside => [Path.Combine(SourceTree.Root, "docs", "report.md")];

    public static IEnumerable<GuideStep> Steps => InOrder.Concat(Beside)
        .SelectMany(page => StepsOf(Path.GetFileName(page), File.ReadAllText(page).ReplaceLineEndings("\n")));

    private static IEnumerable<GuideStep> StepsOf(string page, string text)
    {
        foreach (Match block in Fence().Matches(text))
        {
            string[] lines = block.Groups["body"].Value.TrimEnd('\n').Split('\n');
            if (block.Groups["file"] is { Length: > 0 } file)
            {
                yield return new FileToWrite(page, file.Value, string.Join('\n', lines) + "\n");
            }
            else if (lines[0].StartsWith("$ platformforge ", StringComparison.Ordinal))
            {
                yield return CommandOf(page, lines);
            }
        }
    }

    private static CommandToGive CommandOf(string page, string[] lines)
    {
        string[] halves = lines[0]["$ platformforge ".Length..].Split('#', 2);
        int exit = halves.Length == 2 && ExitCode().Match(halves[1]) is { Success: true } m ? int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture) : 0;
        return new(page, [.. Word().Matches(halves[0]).Select(w => w.Value.Trim('"'))], exit, [.. lines[1..].Where(l => l != "...")]);
    }

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Word();

    [GeneratedRegex(@"^\d+")]
    private static partial Regex Number();

    [GeneratedRegex(@"exit code (\d+)")]
    private static partial Regex ExitCode();

    [GeneratedRegex(@"^```(?:csv (?<file>\S+))?\n(?<body>.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Fence();
}

internal abstract record GuideStep(string Page);

internal sealed record FileToWrite(string Page, string Name, string Text) : GuideStep(Page);

/// <summary>A command, the code it ends with, and lines that it answers with in this order, among others.</summary>
internal sealed record CommandToGive(string Page, IReadOnlyList<string> Words, int Exit, IReadOnlyList<string> Answers) : GuideStep(Page);
