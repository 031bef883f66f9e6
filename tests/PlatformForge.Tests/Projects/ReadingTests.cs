using PlatformForge.Clearance;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

public class ReadingTests
{
    [Fact]
    public void Pendlewick_reads_as_its_scenario_states_it()
    {
        var project = Samples.Sound(Samples.Pendlewick);
        Assert.Equal(("Pendlewick", 76.2, 16.5, 8.0), (project.Layout.Name, project.Layout.Scale.Ratio, project.Layout.Gauge, project.Layout.RailTop));
        Assert.Equal<AlignmentElementSpec>(
            [
                new StraightSpec(300),
                new TransitionSpec(260, 760, Hand.Left),
                new CurveSpec(760, Hand.Left, Length: 620),
                new TransitionSpec(200, 1500, Hand.Left),
                new CurveSpec(1500, Hand.Left, Length: 20),
            ],
            Assert.Single(project.Tracks).Alignment.Elements);
        Assert.Equal(
            [("long coach", 262.0, 188.0), ("suburban coach", 228, 162), ("tender engine", 150, 74), ("tank engine", 142, 66), ("van", 84, 40)],
            project.Vehicles.Select(v => (v.Name, v.Parts[0].Outline.Max(p => p.X) - v.Parts[0].Outline.Min(p => p.X), v.PivotCentres)));
        var cylinders = project.Vehicles[2].Parts[1];
        Assert.Equal(("cylinders", 62.0, 84.0, 17.75), (cylinders.Name, cylinders.Outline.Min(p => p.X), cylinders.Outline.Max(p => p.X),
            cylinders.Outline.Max(p => p.Y)));
        var platform = Assert.Single(project.Platforms);
        Assert.Equal(("up", Side.Right, 270.0, 1000.0, 62.0, 12.0),
            (platform.Face.Track, platform.Face.Side, platform.Face.From, platform.Face.To, platform.Deck.Width, platform.Height));
        Assert.Equal(8, platform.StartRamp!.Gradient);
        Assert.Equal(2, platform.Sockets.Count);
        Assert.Equal(new FenceGapSpec(700, 716), Assert.Single(platform.Fence!.Gaps));
        Assert.Equal(1.1, project.Clearance.BudgetWith(0, 16.5, 12, 50).Margin, 12);
    }

    [Fact]
    public void What_is_left_out_takes_the_defaults_of_the_scale()
    {
        var four = Samples.Sound(Samples.Small).Platforms[0];
        var two = Samples.Sound(Samples.With(3, "scale = \"2mm\"")).Platforms[0];
        var defaults = PlatformSpec.For(new ModelScale(76.2), "halt", four.Face);
        Assert.Equal((defaults with { Features = four.Features, ForcedCuts = four.ForcedCuts }).Seated, four);
        Assert.Equal(four.Deck.Width / 2, two.Deck.Width, 12);
        Assert.Equal(four.Deck.Thickness, two.Deck.Thickness);
    }

    [Theory]
    [InlineData("2.5", 2.5)]
    [InlineData("\"2.5 mm\"", 2.5)]
    [InlineData("\"1 cm\"", 10)]
    [InlineData("\"0.5 in\"", 12.7)]
    [InlineData("\"4 ft 6 in full size\"", 18)]
    [InlineData("\"6 in full size\"", 2)]
    [InlineData("\"762 mm full size\"", 10)]
    [InlineData("\"1.524 m full-size\"", 20)]
    public void A_length_may_be_a_text_with_its_unit(string written, double mm) =>
        Assert.Equal(mm, Samples.Sound(Samples.Small + "deck = { thickness = " + written + " }").Platforms[0].Deck.Thickness, 12);

    [Theory]
    [InlineData("\"4 ft\" ", "1219.2 mm")]
    [InlineData("\"4 fathoms\"", "is not a length")]
    [InlineData("\"6 in 4 ft\"", "is not a length")]
    [InlineData("\"-2 mm\"", "-2 mm")]
    [InlineData("\"1e9 mm\"", "is not a length")]
    public void A_length_that_is_none_or_out_of_range_is_refused(string written, string told) =>
        Assert.Contains(told, Assert.Single(Samples.Read(Samples.Small + "deck = { thickness = " + written + " }").Findings).Message, StringComparison.Ordinal);

    [Fact]
    public void A_scale_is_known_by_all_its_names_and_may_be_corrected()
    {
        Assert.Equal((76.2, 16.5), Gauge("\"00\""));
        Assert.Equal((76.2, 18.2), Gauge("\"em\""));
        Assert.Equal((87.0, 16.5), Gauge("\"H0\""));
        Assert.Equal((160, 9.05), Gauge("\"1-160\"\ngauge = 9.05"));
        static (double, double) Gauge(string scale)
        {
            var layout = Samples.Sound(Samples.With(3, "scale = " + scale)).Layout;
            return (layout.Scale.Ratio, layout.Gauge);
        }
    }

    [Fact]
    public void A_vehicle_preset_supplies_what_the_project_leaves_out()
    {
        string[] lines = Samples.Small.Split('\n');
        string text = string.Join('\n', lines[..8]) + "\npreset = \"bogie-coach-57ft\"\nwidth = 37\n" + string.Join('\n', lines[12..]);
        var vehicle = Assert.Single(Samples.Sound(text).Vehicles);
        Assert.Equal(228, vehicle.Parts[0].Outline.Max(p => p.X) - vehicle.Parts[0].Outline.Min(p => p.X), 9); // 57 ft over the body, without buffers
        Assert.Equal(160, vehicle.PivotCentres, 9);
        Assert.Equal(18.5, vehicle.Parts[0].Outline.Max(p => p.Y), 9);
    }

    [Fact]
    public void Ends_of_bed_outlines_and_oblong_beds_are_both_taken()
    {
        Assert.Equal(4, Samples.Sound(Samples.Small + "[printer]\nbed = [180, 200]").Printer.Bed.Count);
        var round = Samples.Sound(Samples.Small + "[printer]\nbed = [[0, 0], [0, 100], [60, 100], [100, 60], [100, 0]]").Printer.Bed;
        Assert.Equal(5, round.Count);
        Assert.Contains("encloses", Assert.Single(Samples.Read(Samples.Small + "[printer]\nbed = [[0, 0], [10, 10], [20, 20]]").Findings).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_budget_is_the_sum_of_its_entries_unless_the_project_says_otherwise()
    {
        const string Entries = "running = 1\nprint = 0.3\nfitting = 0.4\nwheelset_play = 0.2";
        Assert.Equal(1.7, Samples.Sound(Samples.With(14, Entries)).Clearance.BudgetWith(0, 16.5, 12, 50).Margin, 12);
        var roots = Samples.Sound(Samples.With(14, Entries + "\nrule = \"root-of-squares\"")).Clearance.BudgetWith(0, 16.5, 12, 50);
        Assert.Equal((BudgetRule.RootOfSquares, 1.5), (roots.Rule, Math.Round(roots.Margin, 12)));
    }

    [Fact]
    public void Comments_blanks_and_the_order_of_keys_do_not_change_what_a_project_is()
    {
        string plain = Samples.Sound(Samples.Small).InputHash;
        Assert.Equal(plain,
            Samples.Sound("# a comment\n" + Samples.Small.Replace("name = \"Quillhaven\"\nscale = \"4mm\"",
                "scale   =  \"4mm\"\n\nname = \"Quillhaven\" # here")).InputHash);
        Assert.NotEqual(plain, Samples.Sound(Samples.With(4, "rail_top = 8.000001")).InputHash);
    }
}
