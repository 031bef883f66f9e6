using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Exports.Drawings.Plans;
using PlatformForge.Exports.Reports.Chapters;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Exports.Workshop;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Tests.Sections;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>A thing before a wall that no room has heard of: an iron plate 4 mm wide, from 3 to 7 mm up, its front half a mm before the wall. Every room
/// makes, draws and tells it by its figures.</summary>
public class FittingResultTests
{
    private const double At = 75, Half = 2, Low = 3, High = 7, Out = 0.5;

    private static readonly Lazy<SectionSet> Plated = new(() =>
    {
        var set = Workbench.Made(Workbench.Straight(150, change: s => s with { Facing = FacingSpec.For(new(76.2)) }), Workbench.Printer, new());
        return set with { Plan = set.Plan with { Fittings = [Plates] } };
    });

    private static FittingRow Plates => new("tie plate", "tie plates", "platform[0].facing.plates")
    {
        Places =
        [
            new(1, false, At, At - Half, At + Half, 2 * Half)
            {
                Footprint = new(At - Half, At + Half, Out, 0),
                Projection = Out,
                Parts = [new([new(-Half, Out), new(-Half, 0), new(Half, 0), new(Half, Out)], Half, Low, High)],
            },
        ],
        IsBefore = true,
        Face = FittingFace.Iron,
        Painting = new(1, [(1, "black")], "plates are black"),
        Words = new(["Tie plates hold the walls."], null, " plates", "All lie beside one.", "Shown at {0}."),
    };

    [Fact]
    public void It_is_a_block_as_wide_and_high_and_deep_as_its_part()
    {
        var chart = new FacetedPlan(Plated.Value.Plan);
        var blocks = new List<ColumnBlock>();
        FittingBlocks.Add(chart, new(chart), 0, 1000, blocks);
        var block = Assert.Single(blocks);
        Assert.Equal(Paint.Iron, block.Paint);
        var (x, y) = (block.Outline.Select(p => p.X).ToArray(), block.Outline.Select(p => p.Y).ToArray());
        Assert.Equal((2 * Half * Out, Low, High), (Math.Round((x.Max() - x.Min()) * (y.Max() - y.Min()), 9),
            Math.Round(block.Lower.At(block.Outline[0]), 9), Math.Round(block.Upper.At(block.Outline[0]), 9)));
    }

    [Fact]
    public void Plan_and_elevation_show_it()
    {
        var plan = Plated.Value.Plan;
        var (near, far, from, to) = Assert.Single(FittingView.Of(plan));
        Assert.Equal((At - Half, At + Half), (from, to));
        Assert.Equal(Out, far.At(At) - near.At(At), 1e-9);
        var sight = Assert.Single(FittingSight.Of(plan, false));
        Assert.Equal([new Point2(-Half, Low), new(Half, Low), new(Half, High), new(-Half, High)], Assert.Single(sight.Outlines));
        Assert.Empty(FittingSight.Of(plan, true));
    }

    [Fact]
    public void Report_and_tables_list_it()
    {
        var set = Plated.Value;
        var told = Assert.Single(FacingReport.Of(set)!.Fittings!);
        Assert.Equal(("tie plate", At - Half, At + Half), (told.Kind, told.From, told.To));
        var row = Assert.Single(WallPlaces.Table(set).Rows);
        Assert.Equal(("tie plate", At, 2 * Half), (row[0].Words, row[3].Figure, row[4].Figure));
        var to = new DocumentBuilder();
        FittingSentences.Say(to, set);
        string[] said = [.. to.Blocks.OfType<Paragraph>().Select(p => p.Text)];
        Assert.Equal(["Tie plates hold the walls.", "Front: 1 plates, their middles at 75.0 mm. No section's joint lies between them."], said);
    }

    [Fact]
    public void It_is_painted_as_it_says()
    {
        double[] areas = new double[Enum.GetValues<Paint>().Length];
        areas[(int)Paint.Iron] = 1000;
        Assert.Contains(PaintTables.Amounts(areas, [Plates]).Rows, r => r[0].Words == "tie plates" && r[1].Figure == 10);
        Assert.Equal(("tie plates", "black"), Assert.Single(PaintTables.Mixes(areas, [Plates]).Rows) is var mix ? (mix[0].Words, mix[2].Words) : default);
    }
}
