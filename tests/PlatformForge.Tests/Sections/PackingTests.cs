using PlatformForge.Geometry;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Plates;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Laws of laying pieces on beds, by their outlines alone.</summary>
public class PackingTests
{
    /// <summary>The border of the places where two convex pieces meet is as long as both their borders together (Minkowski's sum), whichever corner either
    /// begins with.</summary>
    [Fact]
    public void The_border_of_what_two_pieces_forbid_is_as_long_as_both_of_theirs()
    {
        var random = new Random(3);
        for (int i = 0; i < 60; i++)
        {
            Point2[] a = Turned(Ring(random), i), b = Turned(Ring(random), i / 2);
            Assert.Equal(Around(a) + Around(b), Around(NoFit.Of(a, b, 0).Ring), 1e-9);
        }
    }

    /// <summary>A regular hexagon on its own likeness: edges of both have one direction, and what is forbidden is a hexagon of twice the size.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(5)]
    public void Edges_of_one_direction_become_one(int first)
    {
        Point2[] ring = Turned([.. Enumerable.Range(0, 6).Select(k => Point2.FromAngle(k * Math.PI / 3) * 0.5)], first);
        Assert.Equal(6, Around(NoFit.Of(ring, ring, 0).Ring), 1e-9);
    }

    /// <summary>Three strips of 65 with twice 4 between them lie side by side on 204, three of 66 do not: the middle one lies at no corner of the
    /// bed.</summary>
    [Theory]
    [InlineData(65, 1)]
    [InlineData(66, 2)]
    public void Strips_lie_side_by_side_as_many_as_the_bed_takes(double wide, int beds)
    {
        var packed = PlatePacker.Pack([Piece(1, 204, wide), Piece(2, 204, wide), Piece(3, 204, wide)], Workbench.Printer);
        Assert.Equal(beds, packed.Count);
        Assert.All(packed.SelectMany(b => b), p => Assert.Equal(0, p.ToBed.Apply(default).Z));
    }

    /// <summary>
    /// Six strips that fill two beds to the last 1.5 mm in one order and not in others: laid by width, and as numbered, 84 and 76 come first and leave room for
    /// no third. That order is found by their lengths.
    /// </summary>
    [Fact]
    public void The_order_by_length_is_tried()
    {
        (double Wide, double Length, int Number)[] strips = [(83.5, 6, 1), (59.5, 5, 4), (75.5, 4, 2), (51.5, 3, 5), (67.5, 2, 3), (51.5, 1, 6)];
        PieceToPack[] Pieces(Func<double, double> length) => [.. strips.Select(s => Piece(s.Number, 204, s.Wide) with { Length = length(s.Length) })];
        Assert.Equal(2, PlatePacker.Pack(Pieces(l => l), Workbench.Printer).Count);
        Assert.Equal(3, PlatePacker.Pack(Pieces(l => -l), Workbench.Printer).Count);
    }

    /// <summary>
    /// A strip longer than a square bed's side lies best along the diagonal: (b - (l + w) / √2) / 2 is left of the room, by trigonometry. What is told is
    /// exact to a ten-thousandth of a millimetre, also for lengths at which the steps of the search just fall short.
    /// </summary>
    [Fact]
    public void Room_is_told_to_a_ten_thousandth()
    {
        var room = new BedRoom(PrinterSpec.Oblong(150, 150, 1).Bed, 0);
        for (double length = 160; length < 230; length += 1.37)
        {
            Point2[] strip = [new(0, 0), new(length, 0), new(length, 3), new(0, 3)];
            Assert.InRange(room.Best(strip, double.PositiveInfinity).Room - ((150 - ((length + 3) / Math.Sqrt(2))) / 2), -1e-4, 2e-7);
        }
    }

    /// <summary>Unless it is said otherwise 8 mm are kept free all round.</summary>
    [Theory]
    [InlineData(204, true)]
    [InlineData(204.01, false)]
    public void Eight_millimetres_are_kept_free_unasked(double side, bool fits) =>
        Assert.Equal(fits, new BedShape(PrinterSpec.Oblong(220, 220, 1)).Fits(Piece(1, side, side).Hull));

    /// <summary>A slim sliver lies square to the bed as a long strip does: along one of its sides.</summary>
    [Fact]
    public void Small_pieces_lie_square_to_the_bed_too()
    {
        var room = new BedRoom(PrinterSpec.Oblong(150, 150, 1).Bed, 0);
        var (_, turn) = room.Best([.. new Point2[] { new(0, 0), new(0.8, 0), new(0.8, 0.4), new(0, 0.4) }.Select(p => Rotated(p, 0.3))], 0);
        double quarters = (turn + 0.3) / (Math.PI / 2);
        Assert.Equal(Math.Round(quarters), quarters, 1e-9);
    }

    private static Point2 Rotated(Point2 p, double by) => (Point2.FromAngle(by) * p.X) + (Point2.FromAngle(by).Left * p.Y);

    private static PieceToPack Piece(int number, double length, double width) =>
        new([new(0, 0), new(length, 0), new(length, width), new(0, width)], length, number, length * width);

    private static Point2[] Ring(Random random) =>
        ConvexRing.Hull([.. Enumerable.Range(0, 7).Select(_ => new Point2(random.NextDouble() * 50, random.NextDouble() * 30))]);

    private static Point2[] Turned(Point2[] ring, int by) => [.. ring.Skip(by % ring.Length), .. ring.Take(by % ring.Length)];

    private static double Around(Point2[] ring) => ring.Select((p, i) => (ring[(i + 1) % ring.Length] - p).Length).Sum();
}
