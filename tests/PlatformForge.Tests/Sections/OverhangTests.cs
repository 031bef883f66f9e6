using PlatformForge.Geometry;
using PlatformForge.Sections.Poses;
using PlatformForge.Solids;
using PlatformForge.Solids.Kernel;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>What hangs free, on bodies whose patches are worked out by hand; layers of 0.2, a nozzle of 0.4, bridges of 20 mm.</summary>
public class OverhangTests
{
    /// <summary>A pocket of 0.6 square is a channel no wider than two lines; its roof is two triangles, each as wide as it is high over its long
    /// side.</summary>
    [Fact]
    public void A_pocket_s_roof_is_a_channel_as_wide_as_half_a_square()
    {
        var report = Measure(Box(100, 110, 50, 60, 0, 5), Box(104, 104.6, 54, 54.6, -1, 1) with { Action = BlockAction.Remove });
        Assert.Equal((0, 0.36), (report.Unsupported, Math.Round(report.Bridged, 3)));
        Assert.Equal(0.6 / Math.Sqrt(2), report.WidestBridge, 1e-3);
    }

    /// <summary>The largest place is told by the middle of its area: a ledge of 3 by 30 beside a table's legs.</summary>
    [Fact]
    public void The_largest_place_is_told_by_its_middle()
    {
        var report = Measure(Box(0, 2, 0, 30, 0, 10), Box(12, 14, 0, 30, 0, 10), Box(0, 17, 0, 30, 9, 11));
        Assert.Equal(90, report.Largest, 1e-6);
        Assert.Equal(0, (report.LargestAt - new Point3(15.5, 15, 9)).Length, 1e-6);
    }

    /// <summary>
    /// A bridge stands on half of its border: a square between two walls does so exactly, one a little shorter than it is wide does not. Bridges are held to 12
    /// mm here, less than from corner to corner: within that all that lies between walls is one.
    /// </summary>
    [Theory]
    [InlineData(10, 0)]
    [InlineData(9.75, 97.5)]
    public void A_bridge_stands_on_half_of_its_border(double deep, double unsupported)
    {
        var mesh = SolidRaiser.Raise([Box(0, 2, 0, deep, 0, 10), Box(12, 14, 0, deep, 0, 10), Box(0, 14, 0, deep, 10, 11)]).Mesh;
        var report = OverhangMeter.Measure(mesh, 0.2, 0.4, 12);
        Assert.Equal(unsupported, report.Unsupported, 1e-6);
        Assert.Equal((10 * deep) - unsupported, report.Bridged, 1e-6);
    }

    /// <summary>A rim of a line round a post holds itself wherever its corners lie along the post's sides: what counts is how far they are from the
    /// wall.</summary>
    [Fact]
    public void A_rim_of_a_line_holds_itself_beside_the_middle_of_a_side_as_at_its_ends()
    {
        static Point2[] Ring(double radius, double turn) => [.. Enumerable.Range(0, 24).Select(k => Point2.FromAngle(((k + turn) * Math.PI / 12)) * radius)];
        double post = 3.45, side = 2 * post * Math.Sin(Math.PI / 24), rim = (post * Math.Cos(Math.PI / 24)) + 0.2;
        Assert.InRange(side / 2, 0.44, 0.46); // the nearest corner of the post is farther than two lines of 0.2
        var mesh = SolidRaiser.Raise([new(Ring(post, 0), new(0), new(5), BlockAction.Add, Paint.Wall),
            new(Ring(rim, 0.5), new(3), new(5), BlockAction.Add, Paint.Wall)]).Mesh;
        Assert.Equal(0, OverhangMeter.Measure(mesh, 0.2, 0.2, 20).Unsupported, 1e-9);

        // Twice as far out it does not.
        var wide = SolidRaiser.Raise([new(Ring(post, 0), new(0), new(5), BlockAction.Add, Paint.Wall),
            new(Ring(rim + 0.3, 0.5), new(3), new(5), BlockAction.Add, Paint.Wall)]).Mesh;
        Assert.InRange(OverhangMeter.Measure(wide, 0.2, 0.2, 20).Unsupported, 5, 15);
    }

    /// <summary>Walls do not lie, however near to the bed: only what looks down on it does.</summary>
    [Fact]
    public void Walls_beside_the_bed_do_not_count_as_lying()
    {
        // Up look a slab of 60 by 60 at 20, 8 thick, and a table of 60 by 40 at 10: three fifths of it lie on the bed, too few. Lying is all within 9 mm.
        var mesh = SolidRaiser.Raise([Box(0, 60, 0, 60, 12, 20), Box(20, 40, 20, 40, 0, 12), Box(70, 110, 0, 60, 0, 10)]).Mesh;
        var (pose, turn) = PoseFinder.Find(mesh, [new(20), new(10)], new(3, 0), PlatformForge.Sections.Forms.PrintPose.Automatic, 9, 0);
        Assert.Equal(PlatformForge.Sections.Forms.PrintPose.Upright, pose);
        Assert.Equal(new Point3(1, 0, 0), turn.Row0);
    }

    /// <summary>Turns are rotations whatever the length of the axis that they are given, and lay it along x.</summary>
    [Theory]
    [InlineData(30, 40)]
    [InlineData(-5, 12)]
    public void Turns_lay_the_long_axis_along_x(double x, double y)
    {
        double length = Math.Sqrt((x * x) + (y * y));
        HeightPlane level = new(7);
        foreach (var turn in new[] { PrintTurn.Upright(new(x, y)), PrintTurn.Standing(level, new(x, y)), PrintTurn.Lying(level, new(x, y)) })
        {
            Assert.Equal(0, (turn.Apply(new(x, y, 0)) - new Point3(length, 0, 0)).Length, 1e-12 * length);
            Assert.Equal(1, turn.Apply(new(-y, x, 0)).Length / length, 1e-12);
        }
    }

    private static PlatformForge.Sections.Forms.OverhangReport Measure(params ColumnBlock[] blocks) =>
        OverhangMeter.Measure(SolidRaiser.Raise(blocks).Mesh, 0.2, 0.4, 20);

    private static ColumnBlock Box(double x0, double x1, double y0, double y1, double z0, double z1) =>
        new([new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)], new(z0), new(z1), BlockAction.Add, Paint.Wall);
}
