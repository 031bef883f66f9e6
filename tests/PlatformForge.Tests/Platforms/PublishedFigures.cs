using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Figures of the room held against published ones; the source stands beside each.</summary>
public class PublishedFigures
{
    [Theory]
    [InlineData(76.2, 12.008)]
    [InlineData(87, 10.517)]
    [InlineData(148, 6.182)]
    [InlineData(43.5429, 21.014)]
    public void The_default_height_is_915_at_full_size(double ratio, double model)
    {
        // 915 mm: Track Design Handbook RT/CE/S/04 (1996) A.8.1, by way of modelrailforum. The model figures: 915/ratio, STANDARDS 2.8. British
        // practice in 4 mm scale is 12 mm at most (modelrailforum 'platform size'), which this agrees with to 0.01.
        var spec = PlatformSpec.For(new ModelScale(ratio), "up side", new FaceSpec("up", Side.Left, 0, 1));
        Assert.Equal(model, spec.Height, 5e-4);
    }

    [Fact]
    public void Four_foot_nine_from_the_track_centre_is_the_published_edge_of_straight_track()
    {
        // 4 ft 9 in = 1447.8 (Digest 62.0, scalefour.org) and 730 from the running edge of 1435 gauge = 1447.5 (RT/CE/S/04) agree to 0.3 at full size;
        // at 1:76.2 both are 19.0. A vehicle 2.8 m wide then has 47.5 to the edge: STANDARDS 3.2's stepping vector.
        Assert.Equal(18.996, (730 + (1435 / 2.0)) / 76.2, 5e-4);
        var row = new GapRow(EdgeStyle.Uniform, "coach", 0, 0, 0, 47.5, 0, 1150 - 915, 1);
        Assert.Equal(239.75, row.Diagonal, 5e-3);
        Assert.True(row is { HorizontalWithinLimit: true, DiagonalWithinLimit: true, VerticalWithinLimit: false, WithinLimit: false });

        var board = new GapRow(EdgeStyle.Uniform, "coach", 0, 0, 0, 127.5, 0, 100, 1);
        Assert.Equal(162.04, board.Diagonal, 5e-3);
        Assert.True(board.WithinLimit);
    }

    [Theory]
    [InlineData(275, 230, true, true, false)] // hypot 358.5 is over 350 although both others are kept
    [InlineData(275, 216, true, true, true)]
    [InlineData(276, 0, false, true, true)]
    [InlineData(0, 231, true, false, true)]
    public void The_three_stepping_limits_are_independent(double horizontal, double vertical, bool h, bool v, bool d)
    {
        // 275 horizontal, 350 diagonal, 230 vertical: an engineer's post on railforums.co.uk, 'Maximum platform gap?' (STANDARDS 3.2).
        var row = new GapRow(EdgeStyle.Fitted, "coach", 0, 0, 0, horizontal / 76.2, 0, vertical / 76.2, 76.2);
        Assert.Equal((h, v, d), (row.HorizontalWithinLimit, row.VerticalWithinLimit, row.DiagonalWithinLimit));
        Assert.Equal(h && v && d, row.WithinLimit);
    }

    [Fact]
    public void Twelve_feet_wide_is_forty_eight_and_six_feet_twenty_four()
    {
        // Island 12 ft = 48 mm, edge to obstruction 6 ft = 24 mm in 4 mm scale (modelrailforum, rmweb; STANDARDS 2.7).
        var scale = new ModelScale(76.2);
        Assert.Equal(48, DeckSpec.For(scale).Width, 1e-9);
        var narrow = PlatformPlanner.Plan(Bench.Straight(s => s with { Deck = s.Deck with { Width = 23.9 }, Ribs = s.Ribs with { LongitudinalCount = 0 } }));
        var warning = Assert.Single(narrow.Findings, f => f.Code == "PF4201");
        Assert.Equal(("platform[0].deck.width", Severity.Warning), (warning.Key, warning.Severity));
        Assert.Contains("24", warning.Remedy, StringComparison.Ordinal);
        Assert.True(narrow.Succeeded);
        Assert.DoesNotContain(PlatformPlanner.Plan(Bench.Straight(s => s with { Deck = s.Deck with { Width = 24 } })).Findings, f => f.Code == "PF4201");
    }

    [Fact]
    public void A_fence_that_leaves_less_than_six_feet_to_the_edge_is_a_warning_with_the_inset_that_would_do()
    {
        var outcome =
            PlatformPlanner.Plan(Bench.Straight(s => (s with { Deck = s.Deck with { Width = 30 } }).With<FenceSpec>([new() { Inset = 6, PinDiameter = 1 }])));
        var warning = Assert.Single(outcome.Findings, f => f.Code == "PF4202");
        Assert.Contains("23.5 mm are clear", warning.Message, StringComparison.Ordinal);
        Assert.Contains("5.5 mm", warning.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void The_published_taper_is_the_default_one()
    {
        // 1 in 40 or flatter at a platform's end, at least 2 m long, which is 50 mm (Bane NOR TRV:03993).
        double taper = new FaceSpec("up", Side.Left, 0, 1).Taper;
        Assert.Equal(50, 2000 / taper, 1e-9);
    }
}
