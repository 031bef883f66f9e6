using PlatformForge.Clearance;
using PlatformForge.Projects;
using PlatformForge.Projects.Presets;
using Xunit;

namespace PlatformForge.Tests.Standards;

/// <summary>The vehicles that come with the program.</summary>
public class VehiclePresetTests
{
    public static TheoryData<string> Names() => [.. PresetShelf.Of(PresetKind.Vehicles).Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_preset_is_a_possible_vehicle_of_its_full_size_in_small_and_large_scales(string name)
    {
        Vehicle small = Read(name, "2mm"), large = Read(name, "10mm");
        Assert.Empty(VehicleRule.Findings(small));
        Assert.Empty(VehicleRule.Findings(large));
        Assert.Equal(5, large.Length / small.Length, 1e-6);
        double fullSize = small.Length * 152.4;
        Assert.InRange(fullSize, 4500, 28000);
        double width = small.Parts.SelectMany(p => p.Outline).Max(p => p.Y) * 2 * 152.4;
        Assert.InRange(width, 2100, 3300);
        Assert.All(small.Parts, p => Assert.True(p.ZLow > 0));
    }

    /// <summary>Published: 64 ft 6 in long, 46 ft 6 in between pivots; in 4 mm scale those are 258 and 186 mm.</summary>
    [Fact]
    public void The_1951_coach_is_258_mm_long_in_4_mm_scale()
    {
        var coach = Read("bogie-coach-64ft6in", "4mm");
        Assert.Equal((258, 186, 34, 37), (Round(coach.Length), Round(coach.PivotCentres), Round(coach.LeadingWheelbase), Round(coach.Sill!.HalfWidth * 2)));
    }

    /// <summary>NEM 103 (2016): model length limits of the groups in H0 are 230, 278 and 313 mm.</summary>
    [Theory]
    [InlineData("a", 230)]
    [InlineData("b", 278)]
    [InlineData("c", 313)]
    public void Continental_groups_have_their_published_lengths(string group, double length) =>
        Assert.Equal(length, Math.Round(Read("coach-continental-group-" + group, "1-87").Length));

    private static double Round(double mm) => Math.Round(mm, 6);

    private static Vehicle Read(string preset, string scale)
    {
        string text = PresetShelf.Sample("pendlewick")!.Replace("scale = \"4mm\"", $"scale = \"{scale}\"", StringComparison.Ordinal)
            + $"\n[[vehicle]]\npreset = \"{preset}\"\n";
        var outcome = ProjectReader.Read(text, "test.toml");
        Assert.Empty(outcome.Findings);
        return outcome.Value!.VehiclesOn(outcome.Value.Tracks[0])[^1];
    }
}
