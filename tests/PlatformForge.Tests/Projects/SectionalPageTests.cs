using System.Text.RegularExpressions;
using PlatformForge.Tests.Cli;
using PlatformForge.Tests.House;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>The example of the page on sectional track does what the page says.</summary>
public sealed class SectionalPageTests : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly string page = File.ReadAllText(Path.Combine(SourceTree.Root, "docs", "sectional-track.md"));

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_survey_tells_what_the_page_shows_and_the_check_clears()
    {
        folder.Write("siding.csv", Block("csv"));
        string file = folder.Write("siding.toml", Block("toml"));
        var survey = CliRun.Of("survey", file);
        Assert.Equal(0, survey.Exit);
        Assert.Contains(Block("text"), survey.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("warning", survey.Error, StringComparison.Ordinal);
        var check = CliRun.Of("check", file);
        Assert.Equal(0, check.Exit);
        Assert.Contains($"survey residual {Stated("joints and radii")} mm", check.Out, StringComparison.Ordinal);
        Assert.Matches(@"wherever the survey lets the true track lie beside siding, play and budget are kept in full, with \d\.\d\d mm or more to spare",
            check.Out);
    }

    [Theory]
    [InlineData("joints alone", "radii")]
    [InlineData("neither", "radii|joints")]
    public void What_the_page_says_a_line_is_worth_is_so(string row, string without)
    {
        folder.Write("siding.csv", Block("csv"));
        string file = folder.Write("siding.toml", Regex.Replace(Block("toml"), $"^(?:{without}) = .*\n", "", RegexOptions.Multiline));
        Assert.Contains($"takes up to {Stated(row)} mm of the gap", CliRun.Of("survey", file).Out, StringComparison.Ordinal);
    }

    private string Block(string language) => Regex.Match(page, $"^```{language}\n(.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline).Groups[1].Value;

    private string Stated(string row) => Regex.Match(page, $@"^\| {row} \| (\d\.\d\d) mm \|", RegexOptions.Multiline).Groups[1].Value;
}
