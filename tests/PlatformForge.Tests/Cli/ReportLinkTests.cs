using System.Text.RegularExpressions;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Cli;

/// <summary>The ways that a report gives to files of its folder.</summary>
public partial class ReportLinkTests
{
    [Fact]
    public void Every_way_leads_to_a_file_of_the_folder_and_each_set_that_was_made_has_one()
    {
        using var folder = new TempFolder();
        Assert.Equal(0, CliRun.Of("build", folder.Write("halt.toml", Samples.Small), "--no-pictures", "-q", "--sets", "all").Exit);
        foreach (string page in (string[])["report.html", "report.md"])
        {
            string text = File.ReadAllText(folder["halt/" + page]);
            string[] ways = [.. Way().Matches(text).Select(m => m.Groups[1].Value.Length > 0 ? m.Groups[1].Value : m.Groups[2].Value).Where(w => w[0] != '#')
                .Distinct()];
            Assert.All(ways, w => Assert.True(File.Exists(folder["halt/" + w]), $"{page} leads to {w}"));
            Assert.All((string[])["paper/halt.pdf", "sheet/halt-parts.csv", "tables/halt-parts.csv", "drawings/halt-plan.svg", "gauges/figures.csv"],
                w => Assert.Contains(w, ways));
            Assert.DoesNotContain("Made on request", text, StringComparison.Ordinal);
        }
    }

    /// <summary>What was not made is told with the command that makes it.</summary>
    [Fact]
    public void A_set_that_was_not_made_is_told_with_its_command()
    {
        using var folder = new TempFolder();
        Assert.Equal(0, CliRun.Of("build", folder.Write("halt.toml", Samples.Small), "-q", "--sets", "report").Exit);
        string text = File.ReadAllText(Directory.GetFiles(folder.Path, "report.md", SearchOption.AllDirectories).Single());
        Assert.Contains("full-size paper (platformforge paper), gauges and a test slice (platformforge gauges), cut lines for card (platformforge build --sets "
            + "sheet)", text, StringComparison.Ordinal);
        Assert.DoesNotContain("](paper/", text, StringComparison.Ordinal);
    }

    [GeneratedRegex(@"href=""([^""]+)""|\]\(([^)]+)\)")]
    private static partial Regex Way();
}
