using PlatformForge.Geometry;
using PlatformForge.Sections.Forecasts;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>The forecast of time and plastic against what can be worked out by hand; an outside test holds it against a slicer.</summary>
public class ForecastTests
{
    [Theory]
    [InlineData(200, 100, 0, 0, 2.1)] // 5 mm to gain 100 mm/s at 1,000 mm/s² in a tenth, the same to lose it, 190 at full speed
    [InlineData(2.5, 100, 0, 0, 0.1)] // never gets beyond 50
    [InlineData(30, 60, 60, 60, 0.5)]
    [InlineData(5, 100, 100, 0, 0.1)]
    public void A_stroke_takes_what_uniform_acceleration_takes(double length, double speed, double enter, double leave, double seconds)
    {
        Assert.Equal(seconds, new Strokes(1000, 10).Seconds(length, speed, enter, leave), 9);
    }

    [Fact]
    public void A_corner_is_taken_no_faster_than_its_jump_allows()
    {
        var strokes = new Strokes(1000, 10);
        Assert.Equal(10 / Math.Sqrt(2), strokes.Corner(Math.Sin(Math.PI / 4), 50), 9);
        Assert.Equal(50, strokes.Corner(0.05, 50), 9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    public void The_rings_of_a_cut_have_the_length_and_area_of_the_block_and_its_hole(double turn)
    {
        var solid = SolidRaiser.Raise([Block(0, 0, 40, 20, 10, BlockAction.Add), Block(10, 5, 20, 15, 11, BlockAction.Remove)]);
        var mesh = solid.Mesh.Moved(RigidTransform.AboutZ(turn));
        int[] crossing = [.. Enumerable.Range(0, mesh.TriangleCount).Where(t => Heights(mesh, t).Min() < 4 && Heights(mesh, t).Max() >= 4)];
        var speeds = new PrintSpeeds { Acceleration = 1e9, CornerJump = 1e9, SmallWall = 20 };
        var rings = new LayerTracer(mesh, speeds).Trace(4, crossing, false);
        Assert.Equal(2, rings.Count);
        Assert.Equal(120 + 40, rings.Length, 6);
        Assert.Equal(800 - 100, rings.Area, 6);
        Assert.Equal((120 / 30.0) + (40 / 20.0), rings.OuterSeconds, 4); // the hole is a small ring
        Assert.Equal((120 / 50.0) + (40 / 20.0), rings.InnerSeconds, 4);
    }

    [Fact]
    public void Plastic_is_all_of_a_thin_box_and_a_share_of_a_thick_ones_inside()
    {
        var printer = Workbench.Printer;
        var thin = SolidRaiser.Raise([Block(0, 0, 60, 60, 20, BlockAction.Add), Block(1.6, 1.6, 58.4, 58.4, 21, BlockAction.Remove)]);
        Assert.Equal(thin.ColumnVolume, PrintForecast.Of(thin.Mesh, thin.ColumnVolume, printer).Plastic, 0.01 * thin.ColumnVolume);

        // Solid block: three lines all round and three layers at either end are solid, a fifth of the rest.
        var thick = SolidRaiser.Raise([Block(0, 0, 60, 60, 20, BlockAction.Add)]);
        double inside = 3600 - (3 * 240 * printer.LineSpacing);
        double open = inside * (20 - (6 * 0.2)) * 0.8;
        Assert.Equal(72000 - open, PrintForecast.Of(thick.Mesh, thick.ColumnVolume, printer).Plastic, 0.02 * 72000);
    }

    [Fact]
    public void Tall_pieces_cut_in_part_take_what_they_take_cut_at_every_layer()
    {
        // A wall of even section: time grows with its height, whatever the number of cuts.
        static double Hours(double height)
        {
            var wall = SolidRaiser.Raise([Block(0, 0, 120, 2, height, BlockAction.Add)]);
            return PrintForecast.Of(wall.Mesh, wall.ColumnVolume, Workbench.Printer).Hours;
        }

        Assert.Equal(2, (Hours(80) - Hours(40)) / (Hours(40) - Hours(20)), 1e-6);
    }

    [Fact]
    public void A_fast_printer_takes_less_time_and_the_same_plastic()
    {
        var fast = Workbench.Printer with { Pace = PrintPace.Fast, Speeds = PrintSpeeds.Of(PrintPace.Fast) };
        var section = Workbench.PendlewickSections.Sections[1];
        var quick = PrintForecast.Of(section.PrintMesh(), section.Estimate.Volume, fast);
        Assert.InRange(quick.Hours, 0.2 * section.Estimate.Hours, 0.5 * section.Estimate.Hours);

        // The mesh in hand has its corners as 32-bit floats, seven digits.
        Assert.Equal(section.Estimate.Grams, quick.Grams, 1e-6 * quick.Grams);
    }

    /// <summary>Filling is laid no faster than the nozzle melts: a thousand mm³ at 2 mm³/s take 500 s, whatever speed is set.</summary>
    [Fact]
    public void Filling_takes_at_least_what_it_takes_to_melt()
    {
        var block = SolidRaiser.Raise([Block(0, 0, 60, 60, 20, BlockAction.Add)]);
        (double Hours, double Plastic) With(double flow)
        {
            var printer = Workbench.Printer with { Speeds = new() { Flow = flow, Acceleration = 1e9, CornerJump = 1e9 } };
            var made = PrintForecast.Of(block.Mesh, block.ColumnVolume, printer);
            return (made.Hours, made.Plastic);
        }

        var (slow, plastic) = With(2);
        double walls = 2 * 4 * 60 * 20 * Workbench.Printer.LineSpacing; // their speeds are low enough
        Assert.InRange(slow * 3600, (plastic - walls) / 2, 1.3 * plastic / 2);
        Assert.InRange(With(12).Hours, 0.1 * slow, 0.5 * slow);
        Assert.Equal(With(12).Hours, With(20).Hours, 1e-9); // at 12 mm³/s lines of 0.2 are held by nothing
    }

    /// <summary>
    /// A block of 60 by 60 by 20 where no time is lost at corners, layer by layer by hand: a ring at 30 mm/s and two at 50, filling by its lines' lengths,
    /// solid for three layers at either end, the first of the upper ones a bridge over the open filling; and between rings and filling seven moves.
    /// </summary>
    [Fact]
    public void A_block_takes_the_sum_of_its_layers()
    {
        var speeds = new PrintSpeeds
        {
            OuterWall = 30,
            Wall = 50,
            Infill = 100,
            Bridge = 60,
            FirstLayer = 20,
            Travel = 130,
            Retraction = 0.1,
            Acceleration = 1e9,
            CornerJump = 1e9,
            Flow = 1e6,
        };
        var printer = Workbench.Printer with { Layer = 0.2, Walls = 3, SolidLayers = 3, Infill = 0.2, Speeds = speeds };
        double line = printer.LineSpacing, inside = 3600 - (3 * 240 * line), lines = inside / line;
        double rings = (240 / 30.0) + (2 * 240 / 50.0), moves = 7 * ((60 / 130.0) + 0.1);
        double first = (3 * 240 / 20.0) + (lines / 20), solid = rings + (lines / 100), open = rings + (0.2 * lines / 100), bridge = rings + (lines / 60);
        double sum = first + (2 * solid) + (94 * open) + bridge + (2 * solid) + (100 * moves);
        var block = SolidRaiser.Raise([Block(0, 0, 60, 60, 20, BlockAction.Add)]);
        Assert.Equal(sum, PrintForecast.Of(block.Mesh, block.ColumnVolume, printer).Hours * 3600, 1e-3 * sum);
    }

    private static double[] Heights(Mesh mesh, int t) => [.. Enumerable.Range(3 * t, 3).Select(k => mesh.Vertices[mesh.Triangles[k]].Z)];

    private static ColumnBlock Block(double x0, double y0, double x1, double y1, double top, BlockAction action) =>
        new([new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)], new(action == BlockAction.Add ? 0 : -1), new(top), action, Paint.Deck);
}
