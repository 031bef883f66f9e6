using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Cli;

/// <summary>Every bad input that the product promises a clear answer to: place, key, figure, remedy, exit code; nothing is written.</summary>
public class BadDesignTests
{
    private const string Curve = "alignment = [{ straight = 300 }, { curve = 600, length = 400, hand = \"left\" }, { straight = 300 }]";

    [Theory]
    [InlineData(4, 7, "alignment = [{ straight = 400 }, { curve = 100, length = 150, hand = \"left\" }, { straight = 400 }]", "PF3021", "vehicle[0].pivots",
        11)]
    [InlineData(4, 12, "width = 34\nleast_radius = 700", "PF3022", "vehicle[0].least_radius", 13, Curve)]
    [InlineData(4, 17, "face = { track = \"main\", side = \"left\", from = 350, to = 1350 }", "PF4003", "platform[0].face.to", 17)]
    [InlineData(4, 17, "face = { track = \"main\", side = \"left\", from = 350, to = 800 }", "PF4004", "platform[0].face.to", 17)]
    [InlineData(4, 17, "face = { track = \"main\", side = \"left\", from = 350, to = 540 }\ndeck = { width = 5 }", "PF4010", "platform[0].deck.width", 18)]
    [InlineData(4, 17, "face = { track = \"main\", side = \"left\", from = 350, to = 540 }\nboard = [{ at = 440, inset = 45 }]", "PF4030",
        "platform[0].board[0]", 18)]
    [InlineData(4, 17, "face = { track = \"main\", side = \"left\", from = 350, to = 540 }\nramps = { start = { length = 150 }, end = { length = 150 } }",
        "PF4007", "platform[0].ramps", 18)]
    [InlineData(4, 14, "running = 48", "PF4024", "clearance", 13)]
    [InlineData(3, 12, "width = 34\nbogie_wheelbase = 170", "PF1014", "vehicle[0].bogie_wheelbase", 13)]
    [InlineData(3, 11, "pivots = 240", "PF1014", "vehicle[0].pivots", 11)]
    [InlineData(3, 12, "width = -34", "PF1008", "vehicle[0].width", 12)]
    [InlineData(4, 17, "face = { track = \"main\", side = \"left\", from = 350, to = 540 }\n[printer]\nbed = [30, 30]\nmargin = 5", "PF6001", "printer", 18)]
    public void A_broken_rule_ends_with_4_and_tells_what_would_work(int exit, int line, string text, string code, string key, int told, string? track = null)
    {
        using var folder = new TempFolder();
        string project = Samples.With(line, text);
        string file = folder.Write("halt.toml", track is null ? project : project.Replace("alignment = [{ straight = 900 }]", track));
        var run = CliRun.Of("build", file);
        Assert.Equal(exit, run.Exit);
        string[] lines = run.Error.Split('\n');
        int at = Array.FindIndex(lines, l => l.Contains($"error {code}  {key}", StringComparison.Ordinal));
        Assert.True(at >= 0, run.Error);
        Assert.StartsWith($"{file}:{told}:", lines[at], StringComparison.Ordinal);
        Assert.Matches(@"\d", lines[at + 1]);
        Assert.NotEqual("", lines[at + 2].Trim());
        Assert.Equal(["halt.toml"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void A_folder_with_files_of_somebody_else_is_left_alone()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small);
        Directory.CreateDirectory(folder["halt"]);
        folder.Write("halt/thesis.txt", "mine");
        var run = CliRun.Of("build", file);
        Assert.Equal(6, run.Exit);
        Assert.Contains("thesis.txt", run.Error, StringComparison.Ordinal);
        Assert.Single(folder.Listing("halt"));
    }

    [Fact]
    public void A_folder_that_can_not_be_written_ends_with_6()
    {
        using var folder = new TempFolder();
        string file = folder.Write("halt.toml", Samples.Small);
        folder.Write("taken", "a file where the folder should be");
        Assert.Equal(6, CliRun.Of("build", file, "-o", folder["taken"]).Exit);
        Assert.Equal(6, CliRun.Of("build", file, "-o", folder["taken/below"]).Exit);
        Assert.Equal("a file where the folder should be", File.ReadAllText(folder["taken"]));
    }

    [Theory]
    [InlineData(new byte[] { 0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0 })]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x5B, 0 })]
    [InlineData(new byte[0])]
    [InlineData(new byte[] { 0x5B, 0x6C, 0x61, 0x79 })]
    public void A_truncated_or_binary_file_ends_with_3_and_a_place(byte[] bytes)
    {
        using var folder = new TempFolder();
        File.WriteAllBytes(folder["halt.toml"], bytes);
        var run = CliRun.Of("build", folder["halt.toml"]);
        Assert.Equal(3, run.Exit);
        Assert.Matches(@"halt\.toml:\d+:\d+  error PF1", run.Error);
        Assert.Single(Directory.GetFileSystemEntries(folder.Path));
    }

    [Theory]
    [InlineData("verify")]
    [InlineData("check")]
    [InlineData("build")]
    public void What_is_not_there_ends_with_3(string command)
    {
        using var folder = new TempFolder();
        var run = CliRun.Of(command, folder["nothing"]);
        Assert.Equal(3, run.Exit);
        Assert.Contains("nothing", run.Error, StringComparison.Ordinal);
    }
}
