using PlatformForge.Clearance;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>Places where walls of a hundredth or of half their thickness stood: skew ends on curves, feet of trestles, piers under banks.</summary>
public class ThinEndTests
{
    /// <summary>On a circle the back and the inside of its wall are circles too: their radii differ by the wall's thickness, to the end askew.</summary>
    [Theory]
    [InlineData(Side.Left, 25)]
    [InlineData(Side.Right, 25)]
    [InlineData(Side.Right, -20)]
    public void A_back_wall_is_as_thick_at_a_skew_end_on_a_curve(Side side, double angle)
    {
        const double radius = 420, thick = 1.6;
        var track = TrackLayer.Lay(new("up", new(0, 0), 0, [new CurveSpec(radius, Hand.Left, 650)])).Value!;
        var spec = new PlatformSpec("curved", new FaceSpec("up", side, 200, 410, EdgeStyle.Uniform))
        {
            Height = 12,
            Skew = new() { End = angle },
            Deck = new() { Width = 48, Thickness = 1.6 },
            Walls = new() { BackThickness = thick },
        };
        var envelope = Platforms.Bench.Envelope(track, side, _ => 18);
        var outcome = PlatformPlanner.Plan(new(spec, Pendlewick.Site, track, envelope, ClearanceBudget.Of(running: 1)));
        Assert.True(outcome.Succeeded, string.Join("; ", outcome.Findings.Select(f => f.Message)));
        var plan = outcome.Value!;
        Point2 middle = new(0, radius);
        double Radius(PlanLine line, int i) => (plan.ToLayout(line.Stations[i], line.Reach[i]) - middle).Length;
        var (back, inside) = (plan.Body.Back, plan.Body.BackWallFace);
        Assert.All(Enumerable.Range(0, back.Stations.Length), i => Assert.Equal(thick, Math.Abs(Radius(back, i) - Radius(inside, i)), 0.03));
    }

    /// <summary>A ramp that is nearly high enough for bents at its foot has a wall there, or none.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.0035)]
    [InlineData(0.1)]
    [InlineData(1)]
    public void A_trestles_solid_foot_is_as_long_as_an_end_wall_is_thick(double lack)
    {
        var trestle = TrestleSpec.For(new ModelScale(87));
        var spec = new PlatformSpec("halt", new FaceSpec("up", Side.Left, 300, 600)) { Trestle = trestle, Walls = new() { EndThickness = 1.6 } };
        double foot = trestle.LeastHeight + spec.Deck.Thickness + TrestleStretch.Fall(spec) - lack;
        var stretch = TrestleStretch.Of(spec, new(300, 380, 520, 600, foot, foot + 10, foot))!;
        Assert.Equal(600, stretch.To + (stretch.From - 300), 1e-9);
        Assert.Equal(lack == 0 ? 0 : Math.Max(1.6, lack * 8), stretch.From - 300, 1e-6);
    }

    [Theory]
    [InlineData(BackKind.Wall, true)]
    [InlineData(BackKind.Bank, false)]
    [InlineData(BackKind.Open, false)]
    public void Piers_stand_in_walls_that_are_seen(BackKind kind, bool behind)
    {
        var facing = new FacingSpec { Piers = new() { On = PierWalls.Both } };
        var plan = Workbench.Straight(200, Side.Left, s => (s with { Facing = facing, Back = new() { Kind = kind } }).Seated);
        Assert.Contains(plan.Piers, p => !p.IsFar);
        Assert.Equal(behind, plan.Piers.Any(p => p.IsFar));
    }
}
