using PlatformForge.Projects;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Schemas;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>What the lists print is taken, what is ambiguous is asked, and a starting file for a scale has that scale's figures.</summary>
public class WordsForScalesAndLengths
{
    public static TheoryData<string> Scales => [.. PresetShelf.Of(PresetKind.Scales).Select(p => p.Name)];

    [Fact]
    public void Some_names_are_shared() => Assert.NotEmpty(PresetShelf.Of(PresetKind.Scales).SelectMany(p => p.SharedNames));

    [Theory]
    [MemberData(nameof(Scales))]
    public void Every_scale_is_found_by_all_that_its_line_in_the_list_says(string name)
    {
        var preset = PresetShelf.Find(PresetKind.Scales, name)!;
        Assert.All(preset.OtherNames.Append(preset.Name).Append(preset.Title), text => Assert.Equal([name], PresetShelf.Scales(text).Select(p => p.Name)));
        Assert.AllOrNone(preset.SharedNames, text => Assert.True(PresetShelf.Scales(text).Count > 1 && PresetShelf.Scales(text).Contains(preset), text));

        // Its ratio as the title prints it leads to it, alone or among others.
        string ratio = preset.Title.Split(' ', ',').First(w => w.StartsWith("1:", StringComparison.Ordinal));
        Assert.Contains(preset, PresetShelf.Scales(ratio));
    }

    [Theory]
    [InlineData("1:148", "1-148")]
    [InlineData("1 : 148", "1-148")]
    [InlineData("1/87", "1-87")]
    [InlineData("4 mm", "4mm")]
    [InlineData("n british", "1-148")]
    [InlineData("1:87.09", "3.5mm")]
    [InlineData("N", "1-148 1-160")]
    [InlineData("O", "1-48 7mm")]
    [InlineData("TT", "1-120 3mm")]
    [InlineData("1:76.2", "4mm 4mm-18.2 4mm-18.83")]
    [InlineData("1:43.5", "7mm 7mm-33")]
    [InlineData("1:50", "")]
    [InlineData("1:", "")]
    [InlineData("M", "")]
    public void A_scale_is_taken_as_it_is_printed(string text, string names) =>
        Assert.Equal(names.Split(' ', StringSplitOptions.RemoveEmptyEntries), PresetShelf.Scales(text).Select(p => p.Name).Order(StringComparer.Ordinal));

    [Fact]
    public void A_name_that_several_scales_share_is_asked_and_their_own_are_told()
    {
        string text = StartingFile.Write().Replace("scale = \"4mm\"", "scale = \"N\"", StringComparison.Ordinal);
        var finding = Assert.Single(ProjectReader.Read(text, "halt.toml").Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF1089", "layout.scale"), (finding.Code, finding.Key));
        Assert.Contains("\"1-148\" or \"1-160\"", finding.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1/32 in", 25.4 / 32)]
    [InlineData("3 1/4 in", 82.55)]
    [InlineData("3-1/4 inches", 82.55)]
    [InlineData("1 ft 1/2 in", 317.5)]
    [InlineData("2 feet", 609.6)]
    [InlineData("-1/2 in", -12.7)]
    [InlineData("4 ft 6 1/2 in full size", ((4 * 304.8) + (6.5 * 25.4)) / 76.2)]
    public void Fractions_of_an_inch_are_lengths(string text, double mm) => Assert.Equal(mm, LengthText.Read(text, new(76.2))!.Value, 1e-9);

    [Theory]
    [InlineData("1/0 in")]
    [InlineData("1//2 in")]
    [InlineData("1/2/3 in")]
    [InlineData("/2 in")]
    [InlineData("3 in 1 ft")]
    public void What_is_no_length_is_none(string text) => Assert.Null(LengthText.Read(text, new(76.2)));

    [Theory]
    [InlineData("1-160")]
    [InlineData("1-148")]
    [InlineData("2mm")]
    [InlineData("1-120")]
    [InlineData("3mm")]
    [InlineData("1-87")]
    [InlineData("4mm")]
    [InlineData("1-64")]
    [InlineData("7mm")]
    [InlineData("1-32")]
    public void A_starting_file_for_a_scale_has_its_defaults_and_is_a_sound_design(string name)
    {
        var preset = PresetShelf.Find(PresetKind.Scales, name)!;
        string text = StartingFile.Write(preset);
        var read = ProjectReader.Read(text, "halt.toml");
        Assert.True(read.Succeeded, string.Join("; ", read.Findings.Select(f => f.Code + f.Key + f.Message)));
        double ratio = read.Value!.Layout.Scale.Ratio;

        // 915 mm above rail, a slab of 900 mm, 8 ft to a fence panel.
        Assert.Contains(FormattableString.Invariant($"height = {Math.Round(915 / ratio, 4)}"), text, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"slab_length = {Math.Round(900 / ratio, 4)}"), text, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"pitch = {Math.Round(8 * 304.8 / ratio, 4)}"), text, StringComparison.Ordinal);

        var design = DesignRun.Design(read.Value, new RunWatch(_ => { }, default));
        Assert.True(design.Succeeded, string.Join("; ", design.Findings.Select(f => f.Code + " " + f.Key + " " + f.Message)));
        Assert.DoesNotContain(design.Findings, f => f.Code is "PF6007" or "PF6009");
    }

    [Fact]
    public void The_usual_starting_file_is_that_of_4_mm() => Assert.Equal(StartingFile.Write(), StartingFile.Write(PresetShelf.Find(PresetKind.Scales, "4mm")));
}
