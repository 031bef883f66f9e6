using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Cli;

/// <summary>Cross-sections at chainages of the user's choice.</summary>
public partial class CrossSectionTests
{
    [Fact]
    public void A_cross_section_is_drawn_at_every_chainage_asked_for()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small);
        Assert.Equal(0, CliRun.Of("build", file, "--no-pictures", "-q", "--cross-section", "400", "--cross-section", "512.5").Exit);
        foreach (string at in new[] { "400", "512.5" })
        {
            string drawing = File.ReadAllText(folder[$"halt/drawings/halt-cross-section-{at}.svg"]);
            Assert.Contains($"Cross-section at chainage {at}", drawing, StringComparison.Ordinal);
            Assert.Contains("coach, governs here", drawing, StringComparison.Ordinal);

            // Figures are read from the lower edge or from the right-hand side of the sheet (ISO 129-1): upright ones are turned to the left.
            double[] turned = [.. Turns().Matches(drawing).Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture))];
            Assert.Contains(turned, angle => Math.Abs(angle + 90) < 0.01);
            Assert.All(turned, angle => Assert.InRange(angle, -90.01, 89.9));
        }
    }

    [GeneratedRegex(@"<text[^>]*rotate\((-?[\d.]+)")]
    private static partial Regex Turns();

    [Theory]
    [InlineData("900", "350 to 540 (halt)")]
    [InlineData("middle", "such as 640")]
    [InlineData("NaN", "such as 640")]
    public void A_chainage_that_is_none_or_off_the_platform_ends_with_2_and_says_what_would_do(string chainage, string told)
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small);
        var run = CliRun.Of("build", file, "--cross-section", chainage);
        Assert.Equal(2, run.Exit);
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
        Assert.Single(Directory.GetFileSystemEntries(folder.Path));
    }
}
