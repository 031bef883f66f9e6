using PlatformForge.Exports.Drawings.Gaps;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Drawings.Plans;
using PlatformForge.Exports.Drawings.Sections;
using PlatformForge.Exports.Files;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>The sheets of a platform that sets of bodies run past: seven bodies of three sets.</summary>
public class SetDrawingTests
{
    private static readonly Lazy<Dossier> Made =
        new(() => DesignRun.Design(Samples.Sound(PresetShelf.Sample("pendlewick-sets")!), new(_ => { }, default)).Value!);

    private static PlatformDossier Platform => Made.Value.Platforms[0];

    [Theory]
    [InlineData("gaps")]
    [InlineData("gaps by style")]
    [InlineData("cross-section")]
    [InlineData("plan")]
    public void Words_stay_inside_the_frame(string name)
    {
        var sheet = Draw(name);
        foreach (var text in sheet.Items.OfType<SheetText>())
        {
            Assert.All(text.Box(), c => Assert.True(c.X >= 7 && c.Y >= 7 && c.X <= sheet.Width - 7 && c.Y <= sheet.Height - 7,
                $"'{text.Text}' leaves the frame"));
        }
    }

    [Fact]
    public void A_caption_names_the_vehicle_with_the_least_gap_alone()
    {
        string[] captions = [.. Draw("gaps by style").Items.OfType<SheetText>().Select(t => t.Text)
            .Where(t => t.StartsWith("least ", StringComparison.Ordinal))];
        Assert.Equal(2, captions.Length); // two of the three styles come to the same edge here, and share a plot
        Assert.Contains(Draw("gaps by style").Items.OfType<SheetText>(), t => t.Text.EndsWith(" is the same here", StringComparison.Ordinal));
        Assert.All(captions, c => Assert.EndsWith("two-car unit, front car", c, StringComparison.Ordinal));
    }

    [Fact]
    public void The_plan_names_every_body_of_the_set_that_governs_and_stands_it_where_the_table_says()
    {
        string[] words = [.. Draw("plan").Items.OfType<SheetText>().Select(t => t.Text)];
        Assert.Contains("two-car unit, front car", words);
        Assert.Contains("two-car unit, rear car", words);
        Assert.All(Platform.Poses, pose => Assert.Contains(Platform.Tightest, t => t.Pose.Vehicle == pose.Vehicle
            && t.Pose.Pose.LeadingChainage == pose.Pose.LeadingChainage));
    }

    [Fact]
    public void The_legend_of_the_cross_section_has_every_vehicle_once_and_one_that_governs()
    {
        string words = string.Join('\n', Draw("cross-section").Items.OfType<SheetText>().Select(t => t.Text));
        Assert.Single(Platform.Plan.Requirement.Vehicles, v => words.Contains(v + ", governs here", StringComparison.Ordinal));
        string[] trucks = [.. Platform.Envelope.Parts.Where(p => p.Vehicle.TruckOf is not null).Select(p => p.Vehicle.Name).Distinct()];
        Assert.Equal(2, trucks.Length);
        Assert.All(Platform.Plan.Requirement.Vehicles.Except(trucks), v => Assert.Equal(2, words.Split(v).Length));
        Assert.All(trucks, t => Assert.DoesNotContain(t, words, StringComparison.Ordinal));

        // Whoever has no line of its own is named among those whose reach lies inside the others', and nobody else is.
        const string Inside = "inside these: ";
        string told = words.ReplaceLineEndings(" "), inside = told[(told.IndexOf(Inside, StringComparison.Ordinal) + Inside.Length)..];
        Assert.Contains(Inside, told, StringComparison.Ordinal);
        bool HasALine(string v) => told.Contains(v + ", governs here", StringComparison.Ordinal) || told.Contains(v + ", its reach", StringComparison.Ordinal);
        Assert.All(Platform.Plan.Requirement.Vehicles.Except(trucks), v => Assert.NotEqual(HasALine(v), inside.Contains(v, StringComparison.Ordinal)));
        Assert.Contains(Platform.Plan.Requirement.Vehicles.Except(trucks), v => !HasALine(v));
    }

    [Fact]
    public void No_two_vehicles_look_alike_and_bodies_of_a_set_share_a_pattern()
    {
        string[] names = [.. Enumerable.Range(0, 14).Select(i => $"v{i}")];
        var looks = new VehicleLooks(names, [("v0", "set"), ("v1", "set"), ("v2", "set")]);
        Assert.Equal(names.Length, names.Select(n => looks.Of(n).Colour).Distinct().Count());
        Assert.Equal(looks.Of("v0").Pattern, looks.Of("v2").Pattern);
        Assert.NotEqual(looks.Of("v2").Pattern, looks.Of("v3").Pattern);
    }

    [Fact]
    public void An_outline_goes_round_boxes_once_and_knows_what_lies_inside()
    {
        var outline = new ReachOutline([(-10, 10, 5, 20), (-4, 12, 2, 6), (-3, 3, 30, 31)]);
        var rings = outline.Rings();
        Assert.Equal(2, rings.Count);
        Assert.Equal((-10.0, 12.0, 2.0, 20.0), (rings[0].Min(p => p.X), rings[0].Max(p => p.X), rings[0].Min(p => p.Y), rings[0].Max(p => p.Y)));
        Assert.True(new ReachOutline([(-9, 11, 5.5, 6)]).IsInside(outline));
        Assert.False(new ReachOutline([(-9, 11, 5.5, 7)]).IsInside(outline));
        Assert.False(new ReachOutline([(0, 1, 25, 26)]).IsInside(outline));
    }

    [Theory]
    [InlineData("gaps")]
    [InlineData("gaps by style")]
    public void No_words_of_a_gap_plot_lie_on_other_words_and_doors_are_named_where_no_line_passes(string name)
    {
        var sheet = Draw(name);
        var texts = sheet.Items.OfType<SheetText>()
            .Select(t => (t.Text, X0: t.Box().Min(p => p.X), X1: t.Box().Max(p => p.X), Y0: t.Box().Min(p => p.Y), Y1: t.Box().Max(p => p.Y))).ToArray();
        for (int i = 0; i < texts.Length; i++)
        {
            Assert.DoesNotContain(texts[(i + 1)..], t => t.X0 < texts[i].X1 && texts[i].X0 < t.X1 && t.Y0 < texts[i].Y1 && texts[i].Y0 < t.Y1);
        }

        var doors = texts.Where(t => t.Text.EndsWith(" door", StringComparison.Ordinal)).ToArray();
        var lines = sheet.Items.OfType<SheetPath>().Where(p => !p.Closed && p.Points.Count > 2).SelectMany(p => p.Points).ToArray();
        Assert.Equal(name == "gaps" ? 6 : 12, doors.Length);
        Assert.All(doors, d => Assert.DoesNotContain(lines, p => p.X > d.X0 && p.X < d.X1 && p.Y > d.Y0 && p.Y < d.Y1));
    }

    [Fact]
    public void Lines_that_run_together_are_named_together()
    {
        Assert.Equal("long coach, nearest door", GapLabels.Words(["long coach"], []));
        Assert.Equal("a, b and c, farthest door", GapLabels.Words([], ["a", "b", "c"]));
        Assert.Equal("unit: front car and rear car, every door", GapLabels.Words(["unit, front car", "unit, rear car"], ["unit, front car", "unit, rear car"]));
        Assert.Equal("a, nearest door; b, farthest door", GapLabels.Words(["a"], ["b"]));
    }

    [Theory]
    [InlineData(0.4, 0)]
    [InlineData(-0.01, -1)]
    [InlineData(-1.8, -3)]
    public void Where_bodies_stand_over_the_edge_the_axis_of_gaps_goes_below_nil(double least, double axis) =>
        Assert.Equal(axis, GapPlot.LeastOf([new("coach", [1, 2, 3], [2, least, double.NaN], [3, 3, double.NaN])]));

    [Fact]
    public void Colours_of_words_can_be_read_on_paper()
    {
        // Black and white are 21 to 1 by the guidelines; a colour dark enough stays as it is, a light one is darkened.
        Assert.Equal(HouseStyle.Ink, VehicleLooks.ForWords(HouseStyle.Ink));
        var light = VehicleLooks.ForWords(new(0xFF, 0xE0, 0x60));
        Assert.True(light.R < 0x90 && light.G < 0x90);
    }

    private static Sheet Draw(string name) => name switch
    {
        "plan" => PlanDrawing.Draw(Made.Value, Platform),
        "gaps" => GapDrawing.Draw(Made.Value, Platform),
        "gaps by style" => GapStylesDrawing.Draw(Made.Value, Platform),
        _ => CrossSectionDrawing.Draw(Made.Value, Platform, CrossSectionDrawing.Telling(Platform.Plan)),
    };
}
