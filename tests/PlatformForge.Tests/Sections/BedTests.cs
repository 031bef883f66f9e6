using FsCheck.Xunit;
using PlatformForge.Geometry;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forms;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>What lies on a bed at some turn.</summary>
public class BedTests
{
    [Fact]
    public void A_strip_lies_across_a_square_up_to_the_diagonal_less_its_width()
    {
        double longest = (200 * Math.Sqrt(2)) - 10;
        var bed = new BedShape(PrinterSpec.Oblong(220, 220, 1) with { Margin = 10 });
        Assert.True(bed.Fits(Strip(longest - 0.001, 10)));
        Assert.False(bed.Fits(Strip(longest + 0.001, 10)));
    }

    [Fact]
    public void An_oblong_bed_has_its_front_left_corner_at_the_origin() =>
        Assert.Equal([new(0, 0), new(220, 0), new(220, 180), new(0, 180)], PrinterSpec.Oblong(220, 180, 250).Bed);

    [Fact]
    public void Pieces_lie_where_the_bed_is()
    {
        // A square as large as the bed less its margins lies nowhere but within them, wherever the bed lies: at the origin or with its middle there.
        Point2[] square = [new(7, 3), new(207, 3), new(207, 203), new(7, 203)];
        foreach (var corner in new Point2[] { new(0, 0), new(-110, -110), new(35, 12) })
        {
            Point2[] ring = [.. PrinterSpec.Oblong(220, 220, 1).Bed.Select(p => p + corner)];
            var room = new BedRoom(ring, 10);
            Assert.Equal(0, room.At(square, 0), 1e-6);
            Assert.All(room.Shifts(square, 0), s => Assert.Equal(0, (corner + new Point2(10, 10) - square[0] - s).Length, 1e-5));
        }
    }

    [Fact]
    public void A_hexagonal_bed_takes_what_its_sides_leave()
    {
        // Inscribed circle of a regular hexagon of side a: a√3/2; a many-sided disc of that radius just fits.
        Point2[] ring = [.. Enumerable.Range(0, 6).Select(k => Point2.FromAngle(k * Math.PI / 3) * 100)];
        var bed = new BedShape(new PrinterSpec(ring, 1) { Margin = 0 });
        double radius = 100 * Math.Sqrt(3) / 2;
        Assert.True(bed.Fits(Disc(radius - 0.1)));
        Assert.False(bed.Fits(Disc(radius + 0.1)));
    }

    [Fact]
    public void A_notch_in_the_bed_is_kept_out_of()
    {
        Point2[] ell = [new(0, 0), new(200, 0), new(200, 100), new(100, 100), new(100, 200), new(0, 200)];
        var bed = new BedShape(new PrinterSpec(ell, 1) { Margin = 0 });
        Assert.True(bed.Fits(Strip(200, 99)));
        Assert.False(bed.Fits(Strip(150, 120)));
    }

    [Property(MaxTest = 40)]
    public void Room_on_a_random_bed_is_what_trying_every_turn_finds(int seed)
    {
        var random = new Random(seed);
        Point2[] Ring(double size, int corners) =>
            ConvexRing.Hull(Enumerable.Range(0, corners).Select(_ => new Point2(random.NextDouble() * size, random.NextDouble() * size)));
        Point2[] bedRing = Ring(200, 9), piece = Ring(100 + (random.NextDouble() * 60), 7);
        if (bedRing.Length < 3 || piece.Length < 3)
        {
            return;
        }

        var room = new BedRoom(bedRing, 0);
        var (best, turn) = room.Best(piece, double.PositiveInfinity);
        Assert.Equal(best, room.At(piece, turn), 9);
        double tried = Enumerable.Range(0, 720).Max(k => room.At(piece, k * Math.PI / 360));
        Assert.InRange(tried, best - 1, best + 1e-3);

        // What has room lies inside the bed at some shift; what has none lies at no shift.
        var shifts = room.Shifts(piece, turn);
        Assert.Equal(best > 0, shifts.Length > 0);
        foreach (var shift in shifts)
        {
            foreach (var p in piece)
            {
                var (s, c) = Math.SinCos(turn);
                Point2 q = new((c * p.X) - (s * p.Y) + shift.X, (s * p.X) + (c * p.Y) + shift.Y);
                for (int i = 0; i < bedRing.Length; i++)
                {
                    var side = bedRing[(i + 1) % bedRing.Length] - bedRing[i];
                    Assert.True(Point2.Cross(side, q - bedRing[i]) >= -1e-5 * side.Length);
                }
            }
        }
    }

    private static Point2[] Strip(double length, double width) => [new(0, 0), new(length, 0), new(length, width), new(0, width)];

    private static Point2[] Disc(double radius) => [.. Enumerable.Range(0, 90).Select(k => Point2.FromAngle(k * Math.PI / 45) * radius)];
}
