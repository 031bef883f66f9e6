using PlatformForge.Platforms.Plans;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>What pictures show in sockets and along fences, by what the sockets and panels measure.</summary>
public class LooksTests
{
    private static PlannedFeature Feature(params SocketSpec[] sockets) => Bench.Plan(Bench.Straight(s => s.With(sockets))).Features[^1];

    // Size of a shape's foot along and across a straight track that runs along x.
    private static (double Along, double Across) Size(ShownLoft loft) =>
        (loft.Bottom.Max(p => p.X) - loft.Bottom.Min(p => p.X), loft.Bottom.Max(p => p.Y) - loft.Bottom.Min(p => p.Y));

    private static ShownLoft[] Lofts(PlannedFeature feature) => [.. feature.Shown.SelectMany(b => b.Shapes).OfType<ShownLoft>()];

    [Fact]
    public void A_post_fills_the_narrower_side_of_its_socket_and_stands_alone_without_another_near_it()
    {
        var alone = Feature(new SocketSpec(500, 10) { Along = 2, Across = 1.5, Fit = 0.2 });
        var post = Assert.Single(Lofts(alone));
        Assert.Equal((1.7, 1.7), Rounded(Size(post)));
        Assert.Empty(alone.Shown.SelectMany(b => b.Shapes).OfType<ShownBeam>());
    }

    [Theory]
    [InlineData(40, 1.5, true)]
    [InlineData(40, 20, false)] // the other is a seat
    [InlineData(80, 1.5, false)] // too far apart for a board
    public void Two_posts_near_one_another_carry_a_board_that_reaches_beyond_both(double apart, double along, bool carries)
    {
        var second = Feature(new SocketSpec(460, 10) { Along = along }, new SocketSpec(460 + apart, 10));
        ShownBeam[] boards = [.. second.Shown.SelectMany(b => b.Shapes).OfType<ShownBeam>()];
        Assert.Equal(carries ? 2 : 0, boards.Length);
        Assert.AllOrNone(boards, b => Assert.Equal((460.0, 460 + apart, true, true),
            (b.From.At.Chainage, b.From.Towards.Chainage, b.From.Share < 0, b.To.Share > 1)));
    }

    /// <summary>A seat of 20 by 8 mm is two metres at full size at 1:76.2: its seat covers the socket, at 17 to 18 inches (common practice, no
    /// source).</summary>
    [Fact]
    public void A_seat_covers_its_socket_and_its_back_stands_on_the_side_away_from_the_track()
    {
        var lofts = Lofts(Feature(new SocketSpec(500, 15) { Along = 20, Across = 8, Fit = 0.3 }));
        var seat = Assert.Single(lofts, l => Rounded(Size(l)) == (20.3, 8.3));
        Assert.InRange(seat.High * 76.2 / 25.4, 17, 18);
        var back = lofts.MaxBy(l => l.High)!;
        Assert.True(back.Bottom.Average(p => p.Y) > seat.Bottom.Average(p => p.Y) + 2);
        Assert.InRange(back.Bottom.Max(p => p.Y), 0, seat.Bottom.Max(p => p.Y) + 1);
    }

    /// <summary>A building of 92 by 34 mm: openings in its front alone, one of them a door that reaches the ground.</summary>
    [Fact]
    public void A_building_has_one_door_and_windows_in_its_front_under_eaves_all_round()
    {
        var lofts = Lofts(Feature(new SocketSpec(500, 20) { Along = 92, Across = 34, Depth = 0.5 }));
        double[] tall = [.. lofts.Select(l => Size(l).Across)];
        var openings = lofts.Where(l => Size(l).Across < 2).ToArray();
        Assert.True(openings.Length >= 3);
        Assert.Equal(1, openings.Count(o => o.Low == 0));
        double middle = lofts.MaxBy(l => Size(l).Across)!.Bottom.Average(p => p.Y);
        Assert.All(openings, o => Assert.True(o.Bottom.Average(p => p.Y) < middle));

        // The roof reaches beyond the walls on every side and comes to a ridge along the building.
        var (walls, roof) = (lofts.MinBy(l => l.Low)!, lofts.MaxBy(l => l.High)!);
        Assert.True(Size(roof).Along > Size(walls).Along && Size(roof).Across > Size(walls).Across);
        Assert.Equal(walls.High, roof.Low, 1e-9);
        Assert.True(roof.Top.Max(p => p.Y) - roof.Top.Min(p => p.Y) < 0.1 * Size(walls).Across);
        Assert.All(openings, o => Assert.True(o.High < walls.High));
    }

    /// <summary>Pales every 150 mm at full size (from memory): a panel of eight feet, 2,438 mm, has sixteen spaces.</summary>
    [Fact]
    public void Pales_part_a_panel_evenly_and_stand_between_its_posts()
    {
        var plan = Bench.Plan(Bench.Straight(s => s.With<FenceSpec>([new() { Pitch = 32, From = 300, To = 332 }])));
        var shapes = plan.Features[0].Shown.SelectMany(b => b.Shapes).ToArray();
        double[] pales = [.. shapes.OfType<ShownLoft>().Where(l => l.Foot.Share > 0).Select(l => l.Foot.Share).Order()];
        Assert.Equal(Enumerable.Range(1, 15).Select(i => i / 16.0), pales);
        Assert.Equal(2, shapes.OfType<ShownBeam>().Count());
        Assert.Equal([300.0, 332], shapes.OfType<ShownLoft>().Where(l => l.Foot.Share == 0).Select(l => l.Foot.At.Chainage).Order());

        // A panel narrower than one space has none.
        var narrow = Bench.Plan(Bench.Straight(s => s.With<FenceSpec>([new() { Pitch = 32, From = 300, To = 303 }])));
        Assert.DoesNotContain(narrow.Features[0].Shown.SelectMany(b => b.Shapes).OfType<ShownLoft>(), l => l.Foot.Share > 0);
    }

    private static (double Along, double Across) Rounded((double Along, double Across) size) => (Math.Round(size.Along, 6), Math.Round(size.Across, 6));
}
