using PlatformForge.Projects;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Schemas;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Cli;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

public class ShortFileTests
{
    [Theory]
    [InlineData("2mm", 220, null)]
    [InlineData("1-148", 180, 300.0)]
    [InlineData("1-87", 220, 500.0)]
    [InlineData("4mm", 220, 610.0)]
    [InlineData("4mm", 220, double.PositiveInfinity)]
    [InlineData("7mm", 256, 1500.0)]
    public void A_short_file_fits_on_a_screen_and_is_a_sound_design_as_it_is(string scale, double bed, double? radius)
    {
        var preset = PresetShelf.Find(PresetKind.Vehicles, "bogie-coach-57ft")!;
        string text = ShortFile.Write(new(PresetShelf.Find(PresetKind.Scales, scale)!, scale == "2mm" ? [] : [preset], (bed, bed),
            radius is { } r ? [new(r, scale != "1-87")] : []));
        Assert.InRange(text.AsSpan().Count('\n'), 20, ShortFile.MostLines);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 120, line));
        var read = ProjectReader.Read(text, "halt.toml");
        Assert.True(read.Succeeded, string.Join("; ", read.Findings.Select(f => f.Code + f.Key + f.Message)));
        var design = DesignRun.Design(read.Value!, new RunWatch(_ => { }, default));
        Assert.True(design.Succeeded, string.Join("; ", design.Findings.Select(f => f.Code + " " + f.Key + " " + f.Message)));
        Assert.DoesNotContain(design.Findings, f => f.Severity != Severity.Note);
    }

    [Fact]
    public void All_that_may_be_named_keeps_to_the_lines()
    {
        var vehicles = PresetShelf.Of(PresetKind.Vehicles).Take(ShortFile.MostVehicles).ToArray();
        // Full-size vehicles of the garden scales are longer than a key of a model takes.
        foreach (var scale in PresetShelf.Of(PresetKind.Scales).Where(s => s.Name is not ("1-5.5" or "1-8" or "1-11")))
        {
            string text = ShortFile.Write(new(scale, vehicles, (220, 220), [new(900, true), new(900, false), new(900, true)]));
            Assert.InRange(text.AsSpan().Count('\n'), 20, ShortFile.MostLines);
            Assert.True(ProjectReader.Read(text, "halt.toml").Succeeded, scale.Name);
        }
    }

    [Fact]
    public void Options_of_init_go_into_the_file()
    {
        using var folder = new TempFolder();
        var run = CliRun.Of("init", folder["halt.toml"], "--scale", "1:148", "--vehicle", "van-four-wheel", "--vehicle", "bogie-coach-57ft", "--bed",
            "bed-180x180", "--track", "350 right");
        Assert.True(run.Exit == 0, run.Error);
        var read = ProjectReader.ReadFile(folder["halt.toml"]).Value!;
        Assert.Equal(148, read.Layout.Scale.Ratio);
        Assert.Equal(2, read.Vehicles.Count);
        Assert.Equal(180, read.Printer.Bed.Max(p => p.X));
        Assert.Contains("curve = 350", File.ReadAllText(folder["halt.toml"]), StringComparison.Ordinal);
        Assert.Contains("hand = \"right\"", File.ReadAllText(folder["halt.toml"]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--vehicle", "bogie-coach-57", "bogie-coach-57ft")]
    [InlineData("--vehicle", "my-coach.toml", "init --form my-coach.toml")]
    [InlineData("--bed", "large", "220x220")]
    [InlineData("--bed", "5x5", "220x220")]
    [InlineData("--track", "610 upwards", "900 left")]
    [InlineData("--track", "-3", "900 left")]
    public void What_cannot_be_meant_is_refused_and_nothing_is_written(string option, string value, string says)
    {
        using var folder = new TempFolder();
        var run = CliRun.Of("init", folder["halt.toml"], option, value);
        Assert.Equal(2, run.Exit);
        Assert.Contains(option, run.Error, StringComparison.Ordinal);
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder["halt.toml"]));
    }
}
