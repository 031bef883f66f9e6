using PlatformForge.Exports;
using PlatformForge.Exports.LineArt;
using PlatformForge.Geometry;
using PlatformForge.Sections;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Exports;

public class LineArtTests
{
    private static readonly Point3 Isometric = new(1, 1, 1);

    /// <summary>Pendlewick's sections with their joints, on one side of the track or the other.</summary>
    private static PlatformDossier Made(Side side)
    {
        var plan = side == Side.Right ? Workbench.PendlewickPlan : Workbench.PendlewickMirrored();
        var sections = SectionMaker.Make(plan, Workbench.Printer, new()).Value!;
        return HandDossier.Pendlewick(side).Platforms[0] with { Plan = sections.Plan, Sections = sections };
    }

    /// <summary>
    /// A cube in isometric projection shows nine of its twelve edges, all foreshortened by the root of two thirds: six contours in a regular hexagon and
    /// three creases
    /// that meet in its middle (ISO 5456-3, isometric axonometry).
    /// </summary>
    [Fact]
    public void A_cube_shows_nine_equal_edges()
    {
        var picture = new LinePicture([HandSolids.Box(20, 20, 20)], Isometric, new(1000, 100));
        double edge = 20 * picture.Scale * Math.Sqrt(2.0 / 3);
        var lines = picture.Lines();
        Assert.Equal(6, lines.Count(l => l.Contour));
        Assert.Equal(3, lines.Count(l => !l.Contour));
        Assert.All(lines, l => Assert.Equal(edge, (l.To - l.From).Length, 0.02 * edge));
        Assert.Equal(100, picture.Size.Y, 1e-9);
        Assert.Equal(100 * Math.Sqrt(3) / 2, picture.Size.X, 1e-9);
    }

    /// <summary>What stands before another body hides of it what it covers, and nothing else.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.25)]
    [InlineData(0.5)]
    [InlineData(0.9)]
    public void A_wall_hides_what_it_covers(double share)
    {
        // Seen level along y: a wall of 60 by 40 before one of 40 by 40, so low that it covers a share of it.
        var behind = HandSolids.Box(40, 4, 40);
        var before = HandSolids.Box(60, 4, 40).Moved(RigidTransform.Shift(-10, -30, 40 * (share - 1)));
        var picture = new LinePicture([behind, before], new(0, -1, 0), new(200, 200));
        double left = picture.Of(default).X;
        double upright = picture.Lines().Where(l => Math.Abs(l.From.X - left) < 1e-6 && Math.Abs(l.To.X - left) < 1e-6).Sum(l => (l.To - l.From).Length);
        double dots = 3.0 / 8;
        Assert.Equal(40 * (1 - share) * picture.Scale, upright, dots);
    }

    /// <summary>
    /// Each section of the assembly is the one that is printed, moved and not mirrored, and the bores of neighbours face one another across the gap.
    /// </summary>
    [Theory]
    [InlineData(Side.Left, false)]
    [InlineData(Side.Left, true)]
    [InlineData(Side.Right, false)]
    [InlineData(Side.Right, true)]
    public void Sections_are_moved_apart_without_being_mirrored(Side side, bool turnedOver)
    {
        var platform = Made(side);
        var row = new ExplodedRow(platform, 30, turnedOver);
        var sections = platform.Sections.Sections;
        Assert.Equal(sections.Count, row.Sections.Count);
        Assert.All(sections.Zip(row.Sections), p => Assert.Equal(p.First.Solid.Mesh.Volume(), p.Second.Volume(), 1e-3));
        Assert.Equal(sections.Sum(s => s.Bores.Count) / 2, row.Dowels.Count);
        Assert.NotEmpty(row.Dowels);
        foreach (var dowel in row.Dowels)
        {
            double apart = (dowel.To - dowel.From).Length;
            Assert.InRange(apart, 29, 31.5);
            Assert.True(dowel.Body.Volume() > 0);
        }
    }

    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void The_row_rises_to_the_right_and_the_arrow_tells_which_way_chainage_goes(Side side)
    {
        var platform = Made(side);
        foreach (bool turned in (bool[])[false, true])
        {
            var row = new ExplodedRow(platform, 30, turned);
            var picture = new LinePicture(row.Sections, row.Toward, new(300, 300));
            Point2 Middle(Mesh m) => m.Vertices.Select(picture.Of).Aggregate(new Point2(0, 0), (a, b) => a + b) * (1.0 / m.Vertices.Length);
            var along = Middle(row.Sections[^1]) - Middle(row.Sections[0]);
            Assert.Equal(row.Rising, along.X > 0);
            Assert.Equal(row.Rising, along.Y < 0);
        }
    }

    /// <summary>Strokes hold every line once: the length of all is the same, and strokes are fewer.</summary>
    [Fact]
    public void Strokes_hold_every_line_once()
    {
        var row = new ExplodedRow(Made(Side.Right), 20, true);
        var lines = new LinePicture(row.Sections, row.Toward, new(300, 200)).Lines();
        var strokes = LineChains.Of(lines);
        double of(IReadOnlyList<Point2> points) => points.Zip(points.Skip(1), (a, b) => (b - a).Length).Sum();
        foreach (bool contour in (bool[])[true, false])
        {
            double wanted = lines.Where(l => l.Contour == contour).Sum(l => (l.To - l.From).Length);
            Assert.Equal(wanted, strokes.Where(s => s.Contour == contour).Sum(s => of(s.Points)), 0.005 * lines.Count);
        }

        Assert.True(strokes.Count < lines.Count / 2, $"{strokes.Count} strokes for {lines.Count} lines");
    }
}
