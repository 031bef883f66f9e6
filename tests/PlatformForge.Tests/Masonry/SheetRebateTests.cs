using PlatformForge.Exports.Drawings;
using PlatformForge.Exports.Drawings.Elevations;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Masonry;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Sections.Rules;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Projects;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Rebates for bought sheet, and the strips to cut for them.</summary>
public class SheetRebateTests
{
    private static readonly Lazy<Dossier> Designed = new(() => DesignRun.Design(
        Samples.Read(PresetShelf.Sample("tawnybrook")!, "platform[0].facing.front=sheet", "platform[0].facing.depth=0.5").Value!, RunWatch.None).Value!);

    private static PlatformDossier Platform => Designed.Value.Platforms[0];

    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void Walls_stand_back_by_the_rebate_all_round_and_nothing_stands_out_of_them(Side side)
    {
        FacingSpec facing = FacingSpec.For(new(76.2)) with { Front = WallFinish.Sheet, Depth = 0.5 };
        var plan = Workbench.Straight(96, side, s => s with { Facing = facing });
        var made = Assert.Single(Workbench.Made(plan, Workbench.Printer, new()).Sections);
        var plain = Assert.Single(Workbench.Made(Workbench.Straight(96, side), Workbench.Printer, new()).Sections);
        Assert.True(MeshCheck.Inspect(made.Solid.Mesh) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 });
        Assert.True(MeshCheck.Inspect(made.PrintMesh()) is { IsClosed: true, DegenerateTriangles: 0 });

        // Closed form: half a millimetre off front, back and both ends, as high as the walls, 20 over the baseboard less the deck of 1.5, 59 from wall to wall;
        // and under the coping of 1.2 the deck begins at the front wall.
        double taken = (((96 * 59) - (95 * 58)) * 18.5) + (96 * 0.5 * (1.5 - 1.2));
        Assert.Equal(taken, plain.Solid.ColumnVolume - made.Solid.ColumnVolume, 1e-3);
        Assert.All(made.Faced, w => Assert.Empty(w.Regions));
        Assert.Equal(0, made.Overhangs.Unsupported);
    }

    [Fact]
    public void Each_wall_of_each_section_has_a_strip_of_its_developed_length_and_heights_at_full_size()
    {
        var strips = SheetStripDrawing.Of(Platform).ToArray();
        Assert.Equal(3 + 3 + 2, strips.Length); // front and back in three sections, and both ends
        var plan = Platform.Sections.Plan;
        double wall = 20 - plan.Spec.Deck.Thickness;
        Assert.All(strips.Where(s => s.Section > 1 && s.From == s.Wall.Stretches[0].From && s.Wall.Stretches[0].Face == WallNames.FrontOf(1)),
            s => Assert.Equal(wall, s.Height, 0.05));

        // As long as the wall's foot on the layout, by its corners and nothing that the relief tells.
        foreach (var strip in strips.Where(s => s.Wall.Stretches.Any(t => t.Face == WallNames.FrontOf(1) && t.From == s.From)))
        {
            var section = Platform.Sections.Sections[strip.Section - 1];
            double trim = Platform.Sections.Joint.EndTrim, from = section.From + (strip.Section > 1 ? trim : 0),
                to = section.To - (strip.Section < 3 ? trim : 0);
            double[] at = [Math.Max(from, plan.Body.WallsFrom), .. plan.Stations.Where(s => s > from && s < to), Math.Min(to, plan.Body.WallsTo)];
            var points = at.Select(s => plan.ToLayout(s, plan.Body.WallLine.At(s))).ToArray();
            Assert.Equal(points.Zip(points.Skip(1), (a, b) => (b - a).Length).Sum(), strip.Length, 0.02);
        }

        var sheet = SheetStripDrawing.Draw(Designed.Value, Platform);
        Assert.Equal(420, sheet.Width);
        double[] drawn = [.. sheet.Items.OfType<SheetPath>().Where(p => p.Fill?.Colour == HouseStyle.White && p.Points.Count > 3)
            .Select(p => p.Points.Max(q => q.X) - p.Points.Min(q => q.X))];
        Assert.All(strips, s => Assert.Contains(drawn, d => Math.Abs(d - s.Length) < 1e-6));
    }

    [Fact]
    public void It_costs_no_clearance_and_the_depth_is_asked_of_the_wall_alone()
    {
        Assert.Contains(PlatformDrawings.Of(Designed.Value, Platform, "x", []), d => d.Path == "drawings/x-strips.svg");
        // nothing stands out, so nothing hangs free
        Assert.DoesNotContain(FacingRule.Check(Platform.Sections.Plan, Workbench.Printer, new()), f => f.Code == "PF5035");
        var thin = Workbench.Straight(96, change: s => s with { Facing = FacingSpec.For(new(76.2)) with { Front = WallFinish.Sheet, Depth = 1.2 } });
        Assert.Contains(FacingRule.Check(thin, Workbench.Printer, new()), f => f.Code == "PF5030");
    }
}
