using System.Buffers.Binary;
using PlatformForge.Exports;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.LineArt;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
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

    /// <summary>A wall of bricks has its foot and its corners in ink like any other, and not every edge of every brick.</summary>
    [Fact]
    public void A_faced_wall_keeps_its_outline()
    {
        var plan = Workbench.Straight(150, Side.Left, s => s with { Facing = FacingSpec.For(new(76.2)) });
        var mesh = Workbench.Made(plan, Workbench.Printer, new()).Sections[0].Solid.Mesh;
        var picture = new LinePicture([mesh], new(1, -1, 1), new(1000, 1000));
        double low = mesh.Vertices.Min(p => p.Z), high = mesh.Vertices.Max(p => p.Z);
        var foot = mesh.Vertices.Where(p => p.Z < low + 1e-6).ToArray();
        double front = foot.Min(p => p.Y), from = foot.Min(p => p.X), to = foot.Max(p => p.X);
        Assert.InRange(Inked(new(from, front, low), new(to, front, low)), 0.85, 1.05);
        Assert.InRange(Inked(new(to, front, low), new(to, front, (low + high) / 2)), 0.85, 1.5);

        // Share of a line of the model that is drawn: its lines lie within the depth of a joint of it.
        double Inked(Point3 a, Point3 b)
        {
            Point2 p = picture.Of(a), q = picture.Of(b), along = (q - p) * (1 / (q - p).Length);
            double near = 0.5 * picture.Scale;
            return picture.Lines().Where(l => Math.Max(Off(l.From), Off(l.To)) < near && Math.Abs(Point2.Cross(along, l.To - l.From))
                < 0.02 * (l.To - l.From).Length)
                .Sum(l => (l.To - l.From).Length) / (q - p).Length;

            double Off(Point2 x) => Math.Abs(Point2.Cross(along, x - p));
        }
    }

    /// <summary>Bricks are told by their colour, not by ink or by specks of it at their corners. Seen nearly along itself their wall goes far back within a few
    /// dots, and is no black plane for that: less than one line along it is drawn, where the edges of its courses alone would be some thirty.</summary>
    [Fact]
    public void A_faced_wall_seen_nearly_along_itself_keeps_its_bricks_out_of_ink()
    {
        var plan = Workbench.Straight(150, Side.Left, s => s with { Facing = FacingSpec.For(new(76.2)) });
        var mesh = Workbench.Made(plan, Workbench.Printer, new()).Sections[0].Solid.Mesh;
        var before = mesh.Vertices.MinBy(p => p.Y);

        // What is drawn within the wall, a quarter off its ends, its foot and its coping, by the length of the wall.
        double Within(Point3 toward)
        {
            var picture = new LinePicture([mesh], toward, new(300, 300));
            double low = mesh.Vertices.Min(p => p.Z), high = mesh.Vertices.Max(p => p.Z), from = mesh.Vertices.Min(p => p.X), to = mesh.Vertices.Max(p => p.X);
            Point2 At(double x, double z) => picture.Of(new(from + (x * (to - from)), before.Y, low + (z * (high - low))));
            Point2 corner = At(0.25, 0.25), along = At(0.75, 0.25) - corner, up = At(0.25, 0.75) - corner;
            double area = Point2.Cross(along, up);
            bool Inside(Point2 p) => Point2.Cross(p - corner, up) / area is >= 0 and <= 1 && Point2.Cross(along, p - corner) / area is >= 0 and <= 1;
            return picture.Lines().Where(l => Inside((l.From + l.To) * 0.5)).Sum(l => (l.To - l.From).Length) / along.Length;
        }

        Assert.InRange(Within(new(10, -1, 3)), 0, 1);
        Assert.InRange(Within(new(6, -1, 2)), 0, 0.1);
        Assert.InRange(Within(new(1, -1, 1)), 0, 0.1);
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
        Assert.Equal(sections.Sum(s => s.Bores.Count) / 2, row.Loose.Count);
        Assert.NotEmpty(row.Loose);
        foreach (var dowel in row.Loose)
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

    /// <summary>Of each joint a letter stands beside the row, and its two arrows end on the end faces that meet there: on a corner of the one section's solid
    /// and of the other's.</summary>
    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void The_arrows_of_a_letter_end_on_the_two_faces_that_meet(Side side)
    {
        var platform = Made(side);
        var row = new ExplodedRow(platform, 30, turnedOver: true);
        var art = new LineArtSheet(row, new(20, 40), new(380, 200));
        var joints = platform.Sections.Sections.SkipLast(1).ToArray();
        foreach (var section in joints)
        {
            var sheet = new Sheet(420, 297, "letters");
            double reach = platform.Plan.CopingFront.At(section.To);
            var edge = platform.Plan.ToLayout(section.To, reach);
            Point3 corner = new(edge.X, edge.Y, platform.Plan.TopAt(section.To, reach));
            int one = section.Number - 1;
            art.Letter(sheet, "A", row.Place(one, corner), row.Place(one + 1, corner));
            Point2[] tips = [.. sheet.Items.OfType<SheetPath>().Where(p => p.Closed && p.Points.Count == 3).Select(p => p.Points[0])];
            Assert.Equal(2, tips.Length);
            double Off(int at) => row.Sections[at].Vertices.Min(v => (art.Of(v) - tips[at - one]).Length);
            Assert.All((int[])[one, one + 1],
                at => Assert.True(Off(at) < 1, $"the arrow of joint {section.Number} ends {Off(at):0.00} mm of the sheet from section {at + 1}"));
        }

        Assert.NotEmpty(joints);
    }

    /// <summary>A line to a number begins within its section's outline: some triangle of the solid covers the dot on the sheet.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_line_to_a_number_ends_on_its_section(bool turnedOver)
    {
        var row = new ExplodedRow(Made(Side.Right), turnedOver ? 30 : 0, turnedOver);
        var art = new LineArtSheet(row, new(20, 40), new(380, 200));
        var sheet = new Sheet(420, 297, "numbers");
        art.Number(sheet, Enumerable.Range(1, row.Sections.Count));
        Point2[] dots = [.. sheet.Items.OfType<SheetCircle>().Where(c => c.Radius < 1).Select(c => c.Middle)];
        Assert.Equal(row.Sections.Count, dots.Length);
        Assert.All(row.Sections.Zip(dots), p => Assert.True(Covers(p.First, p.Second), $"the dot at {p.Second} lies on nothing"));

        bool Covers(Mesh mesh, Point2 at) => Enumerable.Range(0, mesh.Triangles.Length / 3).Any(t =>
        {
            Point2[] c = [.. Enumerable.Range(0, 3).Select(k => art.Of(mesh.Vertices[mesh.Triangles[(3 * t) + k]]) - at)];
            double[] turns = [.. Enumerable.Range(0, 3).Select(k => Point2.Cross(c[k], c[(k + 1) % 3]))];
            return turns.All(x => x > 0) || turns.All(x => x < 0);
        });
    }

    /// <summary>Plates that are let in from below are drawn as what they are, over the two pockets that they fill.</summary>
    [Fact]
    public void Plates_float_over_their_pockets()
    {
        var joint = new JointSpec { Kind = JointKind.Plate };
        var sections = SectionMaker.Make(Workbench.PendlewickPlan, Workbench.Printer, new() { Joint = joint }).Value!;
        var platform = HandDossier.Pendlewick(Side.Right).Platforms[0] with { Plan = sections.Plan, Sections = sections };
        var row = new ExplodedRow(platform, 30, turnedOver: true);
        Assert.Equal(sections.Sections.Sum(s => s.Pockets.Count) / 2, row.Loose.Count);
        Assert.NotEmpty(row.Loose);
        double top = row.Sections.SelectMany(s => s.Vertices).Max(v => v.Z);
        Assert.All(row.Loose, p =>
        {
            Assert.Equal(joint.DowelLength * joint.PlateWidth * joint.PlateThickness, p.Body.Volume(), 1e-6);
            Assert.True(p.Body.Vertices.Min(v => v.Z) > top, "a plate floats clear of the sections");
            Assert.Equal((p.From - p.Ways.ToFrom).Length, (p.To - p.Ways.ToTo).Length, 0.5);
        });
    }

    /// <summary>The views in lines are pictures too, as large as the sheet at 127 pixels to the inch, so that words of 2.2 mm are eleven pixels high.</summary>
    [Fact]
    public void Views_in_lines_come_as_PNG_too()
    {
        var files = OutputFiles.Of(HandDossier.Pendlewick(), new() { Pictures = false, Prints = false, Tables = false, Report = false, Masks = false }).Files;
        var pngs = files.Where(f => f.Path.EndsWith(".png", StringComparison.Ordinal)).ToArray();
        Assert.Equal(["drawings/pendlewick-up-side-assembly.png", "drawings/pendlewick-up-side-isometric.png"], pngs.Select(f => f.Path));
        Assert.All(pngs,
            f => Assert.Equal((2100, 1485), (BinaryPrimitives.ReadInt32BigEndian(f.Bytes.AsSpan(16)),
                BinaryPrimitives.ReadInt32BigEndian(f.Bytes.AsSpan(20)))));
        Assert.All(pngs, f => Assert.Contains(files, g => g.Path == Path.ChangeExtension(f.Path, ".svg")));
    }
}
