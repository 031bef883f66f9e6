using System.Text.RegularExpressions;
using PlatformForge.Units.Memories;
using Xunit;

namespace PlatformForge.Tests.Cli;

/// <summary>The guide is followed as a reader would: every file written, every command given, in order, in one folder.</summary>
public partial class GuideTests
{
    // Its commands are of one project, which is surveyed and designed once.
    private readonly Memory known = new();

    [Fact]
    public void Every_command_of_the_guide_works_and_answers_as_it_says()
    {
        using var folder = new TempFolder();
        int commands = 0;
        foreach (var step in GuidePages.Steps)
        {
            if (step is FileToWrite file)
            {
                folder.Write(file.Name, file.Text);
            }
            else if (step is CommandToGive command)
            {
                Give(command, folder);
                commands++;
            }
        }

        // What the guide shows as its own pictures, its commands have made.
        string[] pictures = [.. Directory.GetFiles(Path.Combine(GuidePages.Folder, "pictures")).Select(p => Path.GetFileName(p))];
        Assert.NotEmpty(pictures);
        Assert.All(pictures, p => Assert.NotEmpty(Directory.GetFiles(folder.Path, p, SearchOption.AllDirectories)));
        Assert.True(commands >= 15, $"The guide has {commands} commands that could be read.");
    }

    /// <summary>Each page is reached from the first one, and what a page shows or names lies where it says.</summary>
    [Fact]
    public void Every_page_is_named_by_the_first_and_no_link_leads_nowhere()
    {
        string first = File.ReadAllText(Path.Combine(GuidePages.Folder, "README.md"));
        foreach (string page in GuidePages.InOrder)
        {
            string name = Path.GetFileName(page);
            Assert.True(name == "README.md" || Regex.IsMatch(File.ReadAllText(page), @"^!\[", RegexOptions.Multiline), $"{name} has no picture.");
            Assert.True(name == "README.md" || first.Contains($"]({name})", StringComparison.Ordinal), $"README.md of the guide does not lead to {name}.");
            foreach (Match link in Link().Matches(File.ReadAllText(page)))
            {
                string target = Path.GetFullPath(Path.Combine(GuidePages.Folder, link.Groups[1].Value));
                Assert.True(File.Exists(target), $"{name} leads to {link.Groups[1].Value}, which is not there.");
            }
        }
    }

    /// <summary>What README, guide and pages beside it show of the command line, there is: each verb, and each option of it.</summary>
    [Fact]
    public void Every_verb_and_option_that_a_page_shows_is_in_its_help()
    {
        string root = House.SourceTree.Root;
        string[] pages = [Path.Combine(root, "README.md"), .. Directory.GetFiles(Path.Combine(root, "docs"), "*.md"), .. GuidePages.InOrder];
        var help = new Dictionary<string, string>(StringComparer.Ordinal);
        var shown = pages.SelectMany(p => Shown().Matches(File.ReadAllText(p))
            .Select(m => (Page: Path.GetFileName(p), Verb: m.Groups[1].Value, Options: m.Groups[2].Value))).ToArray();
        Assert.True(shown.Length > 60, $"{shown.Length}");
        Assert.All(shown, s =>
        {
            string told = help.TryGetValue(s.Verb, out var had) ? had : help[s.Verb] = CliRun.Of(s.Verb, "--help").Out;
            Assert.True(told.StartsWith("platformforge", StringComparison.OrdinalIgnoreCase)
                || told.Contains("Usage", StringComparison.OrdinalIgnoreCase), $"{s.Page}: {s.Verb}");
            Assert.All(Option().Matches(s.Options).Select(o => o.Value).Prepend("--help"),
                o => Assert.True(Regex.IsMatch(told, o + @"(?![\w-])"), $"{s.Page}: '{s.Verb}' has no {o}"));
        });
    }

    private void Give(CommandToGive command, TempFolder folder)
    {
        string line = string.Join(' ', command.Words);
        var run = CliRun.In(known, [.. command.Words.Select((w, i) => InFolder(w, command.Words.ElementAtOrDefault(i - 1), folder)),
            .. AtHome(command, folder)]);
        Assert.True(run.Exit == command.Exit, $"{command.Page}: 'platformforge {line}' ended with {run.Exit}: {run.Error}");

        string rest = (run.Out + run.Error).Replace(folder.Path + Path.DirectorySeparatorChar, "", StringComparison.Ordinal);
        foreach (string answer in command.Answers)
        {
            int at = rest.IndexOf(answer, StringComparison.Ordinal);
            Assert.True(at >= 0, $"{command.Page}: 'platformforge {line}' does not say '{answer}' there, but:\n{rest}");
            rest = rest[(at + answer.Length)..];
        }
    }

    /// <summary>A word that names a file or folder, as it would be meant by somebody who stands in the folder.</summary>
    private static string InFolder(string word, string? before, TempFolder folder) =>
        before != "--sample" && Own().IsMatch(word) ? folder[word] : word;

    /// <summary>A sample goes to the folder in which one stands.</summary>
    private static string[] AtHome(CommandToGive command, TempFolder folder) =>
        command.Words is ["init", "--sample", var name] ? [folder[name + ".toml"]] : [];

    [GeneratedRegex(@"^([\w-]+\.(toml|csv)|fennimoor[\w-]*)$")]
    private static partial Regex Own();

    [GeneratedRegex(@"platformforge ([a-z]+)((?: [^`\n#]*)?)")]
    private static partial Regex Shown();

    [GeneratedRegex(@"(?<= )--[a-z][a-z-]*")]
    private static partial Regex Option();

    [GeneratedRegex(@"\]\((?!https?:)([^)#]+)\)")]
    private static partial Regex Link();
}
