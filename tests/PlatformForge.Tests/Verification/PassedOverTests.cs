using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Verification;
using PlatformForge.Verification.Written;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>What is passed over as too far off, too low or between two poses is never the nearest: odd shapes whose clearance plane geometry tells.</summary>
public class PassedOverTests
{
    private const double Length = 262, Pivots = 188, Width = 34.5, Radius = 500;

    // Radius of the circle that a body's outer corner sweeps: √((√(R² − a²/4) + w/2)² + L²/4).
    private static readonly double Corner = Math.Sqrt(Math.Pow(Math.Sqrt((Radius * Radius) - (Pivots * Pivots / 4)) + (Width / 2), 2) + (Length * Length / 4));

    /// <summary>A needle 290 mm long that points at the track from across the layout's origin: its tip counts, wherever the rest of it is.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(4000, -2500)]
    public void The_tip_of_a_long_needle_counts(double x, double y)
    {
        Point3 P(double u, double v, double z) => new(x + u, y + v, z);
        var track = new Centreline("up", [new(new(x - 800, y - 150), 0, 1600, 0, 0)]);
        var needle = new Mesh([P(-60, -130, 20), P(60, 130, 20), P(64, 130, 20), P(62, 132, 23)], [0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3], []);
        Assert.Equal(20 - (Width / 2), Closest(track, needle).Clearance, 1e-6);
    }

    /// <summary>Boards of a crossing lie between the rails, under every vehicle: the wall far behind them is what is nearest all the same.</summary>
    [Fact]
    public void What_lies_low_on_the_track_does_not_hide_what_stands_beside_it()
    {
        var track = Pieces.Straight(1200);
        Mesh wall = Pieces.Bar(track, 400, 800, 100, 140, 0, 20), boards = Pieces.Bar(track, 590, 610, -7, 7, 0, Pieces.RailTop);
        var verdict = SectionsVerifier.Verify([Pieces.Section(wall), Pieces.Section(boards, "crossing")], Pieces.Facts(track, Pieces.Coach(width: Width)));
        Assert.Equal(100 - (Width / 2), verdict.Closest!.Clearance, 1e-6);
    }

    /// <summary>
    /// A roof that rises towards the track is met where it is as high as the body: there its level line is a straight edge outside the curve, which the body's
    /// corner passes at the foot of the perpendicular from the curve's centre.
    /// </summary>
    [Fact]
    public void A_slope_is_met_along_the_line_on_which_it_is_as_high_as_the_body()
    {
        const double Top = Pieces.RailTop + 40 - 0.002, Away = 30; // of what files round, a body's top is lower by 0.002
        var roof = new Mesh([new(0, 10 - Away, Top + 10), new(-80, -30 - Away, Top - 30), new(80, -30 - Away, Top - 30)], [0, 1, 2], []);
        Assert.Equal(Radius + Away - Corner, Closest(Curve(), roof).Clearance, 1e-4);
    }

    /// <summary>A corner that passes a sharp post comes nearest between two of the poses that are tried first.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.4)]
    [InlineData(0.9)]
    [InlineData(1.3)]
    public void A_sharp_corner_is_followed_past_a_sharp_post(double along)
    {
        const double Left = 0.3;
        double at = along / Radius, far = Corner + Left;
        Point3 P(double aside, double back, double z) =>
            new(((far + back) * Math.Sin(at)) + (aside * Math.Cos(at)), Radius - ((far + back) * Math.Cos(at)) + (aside * Math.Sin(at)), z);
        var post = new Mesh([P(0, 0, 0), P(0, 0, 30), P(1, 6, 0), P(-1, 6, 0)], [0, 1, 2, 0, 3, 1, 1, 3, 2, 0, 2, 3], []);
        Assert.Equal(Left, Closest(Curve(), post).Clearance, 1e-4);
    }

    // Turns left about (0, R), with its middle at the layout's origin.
    private static Centreline Curve() =>
        new("up", [new(new(Radius * Math.Sin(-1.4), Radius * (1 - Math.Cos(-1.4))), -1.4, 1400, 1 / Radius, 1 / Radius)]);

    private static Nearness Closest(Centreline track, Mesh mesh) =>
        SectionsVerifier.Verify([Pieces.Section(mesh)], Pieces.Facts(track, Pieces.Coach(Length, Pivots, Width))).Closest!;
}
