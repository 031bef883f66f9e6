using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
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

    /// <summary>The kinds that a platform of any country and age may have to clear.</summary>
    [Theory]
    [InlineData("van-four-wheel")]
    [InlineData("wagon-four-wheel")]
    [InlineData("coach-six-wheel")]
    [InlineData("coach-noncorridor")]
    [InlineData("bogie-coach")]
    [InlineData("multiple-unit-car")]
    [InlineData("multiple-unit-two-car")]
    [InlineData("bogie-wagon")]
    [InlineData("tank-engine")]
    [InlineData("tender-engine")]
    [InlineData("tender-engine-4-6-2-with-tender")]
    [InlineData("locomotive-bo-bo")]
    [InlineData("locomotive-co-co")]
    [InlineData("coach-continental")]
    [InlineData("coach-american")]
    [InlineData("tramcar")]
    [InlineData("articulated-twin")]
    [InlineData("articulated-triplet")]
    public void Every_kind_is_on_the_shelf(string kind) =>
        Assert.Contains(PresetShelf.Of(PresetKind.Vehicles), p => p.Name.StartsWith(kind, StringComparison.Ordinal));

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_figure_of_a_preset_has_its_source_beside_it(string name)
    {
        string file = Directory.EnumerateFiles(Path.Combine(House.SourceTree.Root, "presets", "vehicles"), name + ".toml").Single();
        string[] figures = [.. File.ReadLines(file).Where(l => l.Contains("full size\"", StringComparison.Ordinal))];
        Assert.NotEmpty(figures);
        Assert.All(figures, l => Assert.Matches("# +(published|from memory|common practice, no source)", l));
    }

    /// <summary>Every line of a preset with full-size figures is one of those that are counted and listed.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Every_figure_is_listed_with_its_source(string name)
    {
        var preset = PresetShelf.Find(PresetKind.Vehicles, name)!;
        string file = Directory.EnumerateFiles(Path.Combine(House.SourceTree.Root, "presets", "vehicles"), name + ".toml").Single();
        Assert.True(preset.Figures.Count >= File.ReadLines(file).Count(l => l.Contains("full size\"", StringComparison.Ordinal)));
        Assert.All(preset.Figures, f => Assert.StartsWith(PresetFigure.Say(f.Standing), f.Source, StringComparison.Ordinal));
    }

    /// <summary>Engines have what sticks out low down, coaches what they step from, and everything with buffers has them.</summary>
    [Theory]
    [InlineData("tank-engine-2-6-2", "cylinders", "steps", "buffers")]
    [InlineData("tender-engine-4-6-0", "cylinders", "steps", "buffers")]
    [InlineData("coach-six-wheel", "footboards", "axleboxes", "buffers")]
    [InlineData("bogie-coach-57ft", "corridor connection", "bogie frames", "buffers", "footboards")]
    [InlineData("locomotive-co-co", "cab steps", "bogie frames", "buffers")]
    [InlineData("coach-american-85ft", "diaphragms", "truck frames", "steps")]
    [InlineData("articulated-triplet", "gangway", "bogie frames", "buffers")]
    public void Presets_have_the_parts_that_matter(string name, params string[] parts)
    {
        var vehicle = Read(name, "4mm");
        Assert.All(parts, part => Assert.Contains(vehicle.Parts, p => p.Name.Contains(part, StringComparison.Ordinal)));
    }

    /// <summary>Trucks run as vehicles of their own beside the engine.</summary>
    [Theory]
    [InlineData("tank-engine-2-6-2", "leading truck", "trailing truck")]
    [InlineData("tender-engine-4-6-0", "leading truck")]
    [InlineData("tender-engine-4-6-2-with-tender", "engine, leading truck", "engine, trailing truck")]
    public void Engines_with_trucks_have_them_as_vehicles_of_their_own(string name, params string[] trucks)
    {
        var vehicles = PlatformForge.Projects.VehicleReader.Read(name, new PlatformForge.Units.ModelScale(76.2)).Value!;
        var own = vehicles.Where(v => v.TruckOf is not null).ToArray();
        Assert.Equal(trucks, own.Select(v => v.Name[^trucks.First(t => v.Name.EndsWith(t, StringComparison.Ordinal)).Length..]));
        Assert.All(own, t => Assert.Contains(vehicles, v => v.Name == t.TruckOf));
        Assert.All(own, t => Assert.Contains("frames", t.Parts[0].Name, StringComparison.Ordinal));
    }

    /// <summary>A versine of 21 ft over a curve of 135 ft radius is 4.9 in: the play stated.</summary>
    [Fact]
    public void The_six_wheel_coach_knows_the_play_of_its_middle_axle() =>
        Assert.Equal(5 * 25.4 / 76.2, Read("coach-six-wheel", "4mm").MiddleAxlePlay!.Value, 1e-9);

    /// <summary>Published: 64 ft 6 in long, 46 ft 6 in between pivots; in 4 mm scale those are 258 and 186 mm.</summary>
    [Fact]
    public void The_1951_coach_is_258_mm_long_in_4_mm_scale()
    {
        var coach = Read("bogie-coach-64ft6in", "4mm");
        double body = coach.Parts[0].Outline.Max(p => p.X) - coach.Parts[0].Outline.Min(p => p.X);
        Assert.Equal((258, 186, 34, 37), (Round(body), Round(coach.PivotCentres), Round(coach.LeadingWheelbase), Round(coach.Sill!.HalfWidth * 2)));
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
        return outcome.Value!.VehiclesOn(outcome.Value.Tracks[0]).Last(v => v.TruckOf is null);
    }
}
