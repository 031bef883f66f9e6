using PlatformForge.Geometry;
using PlatformForge.Sections.Forecasts;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>The forecast on bodies small enough to be worked out to the last digit.</summary>
public class ForecastLawTests
{
    // Speeds at which no time is lost at corners, and lines are held by nothing.
    private static readonly PrintSpeeds Steady = new() { Acceleration = 1e12, CornerJump = 1e12, Flow = 1e9, Retraction = 0 };

    /// <summary>
    /// Filled whole, a piece takes its volume, whatever its form: a layer's area in its middle is right for all that widens or narrows evenly. A piece of 45
    /// layers is cut at every one.
    /// </summary>
    [Fact]
    public void Filled_whole_a_wedge_takes_its_volume()
    {
        ColumnBlock wedge = new([new(0, 0), new(4, 0), new(4, 10), new(0, 10)], new(0), new(9, -1.5, 0), BlockAction.Add, Paint.Deck);
        var solid = SolidRaiser.Raise([wedge]);
        Assert.Equal(4 * 10 * 6, PrintForecast.Of(solid.Mesh, solid.ColumnVolume, Workbench.Printer with { Infill = 1 }).Plastic, 1e-3);
    }

    /// <summary>A tall piece is cut at a twenty-fourth of its layers and more: what its area changes by between two of them, over half of that, is the most
    /// that is missed.</summary>
    [Theory]
    [InlineData(12)]
    [InlineData(20)]
    [InlineData(45)]
    public void Filled_whole_a_tall_wedge_takes_its_volume_but_for_what_lies_between_two_cuts(double high)
    {
        ColumnBlock wedge = new([new(0, 0), new(4, 0), new(4, 10), new(0, 10)], new(0), new(high, -high / 6, 0), BlockAction.Add, Paint.Deck);
        var solid = SolidRaiser.Raise([wedge]);
        Assert.Equal(4 * 10 * high * 2 / 3, solid.ColumnVolume, 1e-2);
        Assert.InRange(Math.Abs(PrintForecast.Of(solid.Mesh, solid.ColumnVolume, Workbench.Printer with { Infill = 1 }).Plastic - solid.ColumnVolume), 0,
            40 * high / 2 / 24);
    }

    /// <summary>The same of one that stands on its tip, whichever corner its triangles begin with.</summary>
    [Fact]
    public void Filled_whole_a_pyramid_on_its_tip_takes_its_volume()
    {
        Point3[] corners = [new(0, 0, 0), new(5, -5, 8), new(5, 5, 8), new(-5, 5, 8), new(-5, -5, 8)];
        int[] sides = [2, 1, 0, 3, 2, 0, 4, 3, 0, 1, 4, 0], top = [1, 2, 3, 1, 3, 4];
        var mesh = new Mesh(corners, [.. sides, .. top], []);
        double volume = 100 * 8 / 3.0, layers = 40; // of each the rule of middles misses t³ / 24 times the second derivative of the area, 2 × (10 / 8)²
        Assert.Equal(volume, mesh.Volume(), 1e-9);
        double missed = layers * 0.2 * 0.2 * 0.2 / 24 * 2 * (100 / 64.0);
        Assert.Equal(volume - missed, PrintForecast.Of(mesh, volume, Workbench.Printer with { Infill = 1 }).Plastic, 1e-6);
    }

    /// <summary>
    /// Where half of a block ends, half of the inside is made solid under it for three layers: a block of 60 by 60 by 10 with one of
    /// 30 by 60 by 10 on it.
    /// </summary>
    [Fact]
    public void Under_a_step_the_part_that_ends_is_made_solid()
    {
        var printer = Workbench.Printer;
        double line = printer.LineSpacing, low = 3600 - (3 * 240 * line), high = 1800 - (3 * 180 * line);
        double below = (3 * low) + (44 * 0.2 * low) + (3 * 0.6 * low), above = (47 * 0.2 * high) + (3 * high);
        double walls = (50 * 3 * 240 * line) + (50 * 3 * 180 * line), sum = 0.2 * (walls + below + above);
        var solid = SolidRaiser.Raise([Box(0, 60, 0, 60, 0, 10), Box(0, 30, 0, 60, 0, 20)]);
        Assert.Equal(sum, PrintForecast.Of(solid.Mesh, solid.ColumnVolume, printer).Plastic, 1e-6 * sum);
    }

    /// <summary>
    /// One layer of 12 by 10 by hand, to the last digit: a ring and two behind it and the filling, all at the speed of the first layer, and seven moves as long
    /// as the square root of the outline's area.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_piece_of_one_layer_takes_its_lines_and_moves(int pieces)
    {
        var speeds = Steady with { FirstLayer = 20, Bridge = 0.1, Travel = 0.5, OuterWall = 1, Wall = 1, SmallWall = 1, Infill = 1 };
        var printer = Workbench.Printer with { Speeds = speeds };
        double line = printer.LineSpacing, inside = 120 - (3 * 44 * line);
        var solid = SolidRaiser.Raise([.. Enumerable.Range(0, pieces).Select(i => Box(20 * i, (20 * i) + 12, 0, 10, 0, 0.2))]);
        var made = PrintForecast.Of(solid.Mesh, solid.ColumnVolume, printer);
        double seconds = pieces * ((3 * 44 / 20.0) + (inside / line / 20) + (7 * Math.Sqrt(120) / 0.5));
        Assert.Equal(seconds, made.Hours * 3600, 1e-5 * seconds);
        Assert.Equal(pieces * 120 * 0.2, made.Plastic, 1e-9);
    }

    /// <summary>A blade as thin as a line is gone round once and holds no filling: a ring and two moves, layer for layer.</summary>
    [Fact]
    public void A_blade_of_one_line_is_gone_round_once()
    {
        var speeds = Steady with { FirstLayer = 30, OuterWall = 30, Wall = 0.5, Travel = 100 };
        var solid = SolidRaiser.Raise([Box(0, 100, 0, 0.375, 0, 10)]);
        double layer = (200.75 / 30) + (2 * Math.Sqrt(37.5) / 100);
        Assert.Equal(50 * layer, PrintForecast.Of(solid.Mesh, solid.ColumnVolume, Workbench.Printer with { Speeds = speeds }).Hours * 3600, 1e-4 * 50 * layer);
    }

    /// <summary>A ring up to that of a circle of 6.5 mm radius is small (2π × 6.5 = 40.8); a square of 10.3 is longer by the least that counts.</summary>
    [Theory]
    [InlineData(10.2, true)]
    [InlineData(10.3, false)]
    public void Rings_up_to_a_circle_of_thirteen_across_are_small(double side, bool small)
    {
        var mesh = SolidRaiser.Raise([Box(0, side, 0, side, 0, 2)]).Mesh;
        int[] all = [.. Enumerable.Range(0, mesh.TriangleCount)
            .Where(t => Enumerable.Range(3 * t, 3).Select(k => mesh.Vertices[mesh.Triangles[k]].Z).Distinct().Count() > 1)];
        var rings = new LayerTracer(mesh, Steady with { SmallWall = 10, OuterWall = 40 }).Trace(1, all, false);
        Assert.Equal(4 * side / (small ? 10 : 40), rings.OuterSeconds, 1e-3);
    }

    private static ColumnBlock Box(double x0, double x1, double y0, double y1, double z0, double z1) =>
        new([new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)], new(z0), new(z1), BlockAction.Add, Paint.Deck);
}
