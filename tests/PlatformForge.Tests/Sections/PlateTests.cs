using PlatformForge.Geometry;
using PlatformForge.Sections.Beds;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Plates;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Sections on beds.</summary>
public class PlateTests
{
    [Fact]
    public void Every_section_is_on_one_bed_within_its_margin_and_apart_from_the_others()
    {
        var set = Workbench.PendlewickSections;
        Assert.Equal(set.Sections.Select(s => s.Number), set.Plates.SelectMany(p => p.Sections).Select(s => s.Section.Number).Order());
        foreach (var plate in set.Plates)
        {
            Point2[][] outlines = [.. plate.Sections.Select(Outline)];
            Assert.All(outlines.SelectMany(o => o), p => Assert.True(p.X >= 8 - 1e-6 && p.Y >= 8 - 1e-6 && p.X <= 212 + 1e-6 && p.Y <= 212 + 1e-6));
            for (int i = 0; i < outlines.Length; i++)
            {
                for (int k = i + 1; k < outlines.Length; k++)
                {
                    Assert.True(Apart(outlines[i], outlines[k]) >= Workbench.Printer.Spacing - 1e-6);
                }
            }
        }
    }

    [Fact]
    public void Five_sections_share_two_beds() => Assert.Equal(2, Workbench.PendlewickSections.Plates.Count);

    [Fact]
    public void Pieces_that_just_fit_together_share_a_bed()
    {
        // Two strips of 100 by 204 side by side with 4 between them fill a bed of 204.
        var sections = new[] { Piece(1, 204, 100), Piece(2, 204, 100) };
        var plate = Assert.Single(PlatePacker.Pack(sections, Workbench.Printer));

        // They lie from margin to margin of a bed of 220 whose corner is the origin.
        Point2[] corners = [.. plate.Sections.SelectMany(Outline)];
        Assert.Equal((8, 212, 8, 212), (Math.Round(corners.Min(p => p.X), 4), Math.Round(corners.Max(p => p.X), 4), Math.Round(corners.Min(p => p.Y), 4),
            Math.Round(corners.Max(p => p.Y), 4)));
        Assert.Equal(2, PlatePacker.Pack(sections, Workbench.Printer with { Spacing = 4.1 }).Count);
        Assert.Equal(5, PlatePacker.Pack([.. sections, Piece(3, 150, 150), Piece(4, 150, 150), Piece(5, 150, 150), Piece(6, 150, 150)],
            Workbench.Printer).Count);
    }

    [Fact]
    public void A_piece_alone_lies_in_the_middle_of_its_bed()
    {
        var plate = Assert.Single(PlatePacker.Pack([Piece(1, 100, 50)], Workbench.Printer));
        var corners = Outline(plate.Sections[0]);
        Assert.Equal(110, (corners.Min(p => p.X) + corners.Max(p => p.X)) / 2, 1e-6);
        Assert.Equal(110, (corners.Min(p => p.Y) + corners.Max(p => p.Y)) / 2, 1e-6);
    }

    /// <summary>An outline of fewer corners lies round the true one, at most a fifth of a millimetre outside it.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_coarse_outline_lies_close_round_the_true_one(int seed)
    {
        var random = new Random(seed);
        Point2[] hull =
            [.. ConvexRing.Hull([.. Enumerable.Range(0, 90).Select(i => Point2.FromAngle((i + random.NextDouble()) * Math.PI / 45) * 40)
                .Select(p => new Point2(p.X, 1.5 * p.Y))])];
        var ring = CoarseHull.Around(hull);
        Assert.InRange(ring.Length, 6, 2 * hull.Length / 3);
        Assert.All(ring, (a, i) =>
        {
            var along = ring[(i + 1) % ring.Length] - a;
            double[] inside = [.. hull.Select(p => Point2.Cross(along, p - a) / along.Length)];
            Assert.InRange(inside.Min(), -1e-9, 1e-9); // no corner outside, and each side goes along the true outline
        });
        Assert.All(ring, p => Assert.InRange(hull.Select((a, i) => Distance(p, a, hull[(i + 1) % hull.Length])).Min(), 0, 0.2));
    }

    private static double Distance(Point2 p, Point2 a, Point2 b)
    {
        var along = b - a;
        return (a + (along * Math.Clamp(Point2.Dot(p - a, along) / Point2.Dot(along, along), 0, 1)) - p).Length;
    }

    [Fact]
    public void Every_piece_that_fits_the_bed_at_any_turn_is_laid_on_one()
    {
        var random = new Random(1);
        var bed = new BedShape(Workbench.Printer);
        int slanted = 0, refused = 0;
        for (int i = 0; i < 300; i++)
        {
            // Strips from as long as the bed to as long as its diagonal, straight or curved.
            double length = 200 + (85 * random.NextDouble()), width = 3 + (45 * random.NextDouble()), bulge = i % 2 == 0 ? 0 : 6 * random.NextDouble();
            Point2[] arc = [.. Enumerable.Range(0, 25).Select(k => new Point2(length * k / 24, bulge * 4 * k * (24 - k) / (24.0 * 24)))];
            var piece = Piece(1, length, width) with { Hull = ConvexRing.Hull([.. arc, .. arc.Select(p => p + new Point2(0, width))]) };
            var plates = PlatePacker.Pack([piece], Workbench.Printer);
            if (!bed.Fits(piece.Hull))
            {
                refused++;
                Assert.Empty(plates);
                continue;
            }

            slanted += length > 204 ? 1 : 0;
            var outline = Outline(Assert.Single(Assert.Single(plates).Sections));
            Assert.All(outline, p => Assert.True(p.X >= 8 - 1e-6 && p.Y >= 8 - 1e-6 && p.X <= 212 + 1e-6 && p.Y <= 212 + 1e-6));
        }

        Assert.True(slanted > 30 && refused > 30, $"{slanted} slanted, {refused} refused");
    }

    [Fact]
    public void A_bed_s_estimate_is_the_sum_of_its_sections()
    {
        foreach (var plate in Workbench.PendlewickSections.Plates)
        {
            Assert.Equal(plate.Sections.Sum(s => s.Section.Estimate.Grams), plate.Estimate.Grams, 6);
        }
    }

    private static PlatformSection Piece(int number, double length, double width) => Workbench.PendlewickSections.Sections[0] with
    {
        Number = number,
        Hull = [new(0, 0), new(length, 0), new(length, width), new(0, width)],
    };

    private static Point2[] Outline(PlacedSection placed) => [.. placed.Section.Hull.Select(p =>
    {
        var q = placed.ToBed.Apply(new(p.X, p.Y, 0));
        return new Point2(q.X, q.Y);
    })];

    // Widest strip between two convex outlines: one of its sides lies along an edge or square to the join of two corners.
    private static double Apart(Point2[] a, Point2[] b)
    {
        double best = double.NegativeInfinity;
        void Try(Point2 direction)
        {
            var n = direction * (1 / direction.Length);
            best = Math.Max(best, b.Min(p => Point2.Dot(n, p)) - a.Max(p => Point2.Dot(n, p)));
        }

        foreach (var (ring, sign) in new[] { (a, -1), (b, 1) })
        {
            for (int i = 0; i < ring.Length; i++)
            {
                Try((ring[(i + 1) % ring.Length] - ring[i]).Left * sign);
            }
        }

        foreach (var p in a)
        {
            foreach (var q in b)
            {
                Try(q - p);
            }
        }

        return best;
    }

    [Fact]
    public void Two_sides_that_lie_in_line_to_rounding_keep_a_corner_on_the_line()
    {
        // The middle corner of the lower side leaves the line by the last digit.
        Point2[] placed = [new(0, 0), new(5, -1e-17), new(10, 0), new(10, 4), new(0, 4)], moving = [new(0, 0), new(3, 0), new(3, 2), new(0, 2)];
        var ring = PlatformForge.Sections.Plates.NoFit.Of(placed, moving, 1).Ring;
        Assert.All(ring, p => Assert.True(double.IsFinite(p.X) && double.IsFinite(p.Y)));
        Assert.Equal((-4, 11, -3, 5), (Math.Round(ring.Min(p => p.X), 9), Math.Round(ring.Max(p => p.X), 9), Math.Round(ring.Min(p => p.Y), 9),
            Math.Round(ring.Max(p => p.Y), 9)));
    }
}
