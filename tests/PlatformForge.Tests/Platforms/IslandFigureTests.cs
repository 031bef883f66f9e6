using PlatformForge.Exports.Drawings.Plans;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Islands;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Islands between two straight tracks, where plain sums tell all: rules before anything is swept, ribs between two faces, views from the other
/// track.</summary>
public class IslandFigureTests
{
    // Edges stand at the reach, the budget and what the sweep may err by from each track.
    private const double Apart = 110, Wide = Apart - (2 * (18 + 1 + 0.01));

    private static readonly Centreline Up = TrackLayer.Lay(new("up", new Point2(0, 0), 0, [new StraightSpec(1000)])).Value!;

    private static readonly Centreline Down = TrackLayer.Lay(new("down", new Point2(1000, Apart), Math.PI, [new StraightSpec(1000)])).Value!;

    private static PlatformSpec Spec => new("island", new FaceSpec("up", Side.Left, 200, 800, EdgeStyle.Uniform))
    {
        OtherFace = new FaceSpec("down", Side.Left, double.NaN, double.NaN, EdgeStyle.Uniform) { Key = FaceSpec.OtherKey },
    };

    // Draws in towards the end of the up track by 1 in 20.
    private static readonly Centreline Slanting = TrackLayer.Lay(new("down", new Point2(1000, 95), Math.PI - Math.Atan(0.05), [new StraightSpec(1001)])).Value!;

    private static PlatformPlan Plan(Func<PlatformSpec, PlatformSpec>? change = null, Centreline? down = null)
    {
        down ??= Down;
        var both = IslandTracks.Across(change?.Invoke(Spec) ?? Spec, Up, down, Bench.Site).Value!;
        var outcome = PlatformPlanner.PlanFaces(
        [
            new(both.First, Bench.Site, Up, Bench.Envelope(Up, Side.Left, _ => 18), PlatformForge.Clearance.ClearanceBudget.Of(running: 1)),
            new(both.Second, Bench.Site, down, Bench.Envelope(down, Side.Left, _ => 18), PlatformForge.Clearance.ClearanceBudget.Of(running: 1)),
        ]);
        Xunit.Assert.True(outcome.Succeeded, string.Join("; ", outcome.Findings.Select(f => f.Code + " " + f.Message)));
        return outcome.Value!;
    }

    [Fact]
    public void An_island_has_no_fall_and_no_fence_at_a_back_that_it_has_not()
    {
        var sloping = Spec with { Deck = Spec.Deck with { Crossfall = 40 } };
        Assert.Contains(PlatformPlanner.Check(sloping, Bench.Site, Up, [Bench.Fleet]), f => f.Code == "PF4126");
        Assert.Contains(PlatformPlanner.Check(Spec.With<FenceSpec>([new()]), Bench.Site, Up, [Bench.Fleet]), f => f.Code == "PF4127");
        Assert.DoesNotContain(PlatformPlanner.Check(Spec, Bench.Site, Up, [Bench.Fleet]), f => f.Code is "PF4126" or "PF4127");
    }

    /// <summary>Two ribs part it in three; a hole where one would be moves it aside by half of both.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.2)]
    [InlineData(-0.2)]
    public void Ribs_between_two_faces_share_its_width_and_step_aside_for_a_hole(double off)
    {
        PlanRib[] Along(PlatformPlan plan) => [.. plan.Ribs.Where(r => r.Kind == RibKind.Longitudinal).OrderBy(r => r.Near.Reach[0])];
        var free = Plan(s => s with { Ribs = s.Ribs with { LongitudinalCount = 2 } });
        var ribs = Along(free);
        double[] middles = [.. ribs.Select(r => (r.Near.At(500) + r.Far.At(500)) / 2)];
        double wall = free.Body.WallBack.At(500), width = free.Body.BackWallFace.At(500) - wall;
        Assert.Equal([wall + (width / 3), wall + (2 * width / 3)], middles, (a, b) => Math.Abs(a - b) < 1e-6);
        Assert.Equal(Wide, free.Body.WidthAt(500), 1e-3);

        double inset = middles[0] - free.CopingFront.At(500) + off;
        var plan = Plan(s => (s with { Ribs = s.Ribs with { LongitudinalCount = 2 } })
            .With<HoleSpec>([new(500, inset, InsetFrom.Edge) { Diameter = 3, Fit = 0 }]));
        var moved = Along(plan);
        var kept = plan.Keepouts.Single();
        Assert.Equal(middles[1], (moved[1].Near.At(500) + moved[1].Far.At(500)) / 2, 1e-6);
        Assert.Equal(0, Math.Max(moved[0].Near.At(500) - kept.Far, kept.Near - moved[0].Far.At(500)), 1e-6);
        Assert.True(off == 0 || Math.Sign((moved[0].Near.At(500) + moved[0].Far.At(500)) / 2 - (plan.CopingFront.At(500) + inset)) == -Math.Sign(off));
    }

    /// <summary>Seen from the other track, which runs the other way, everything lies turned end for end and side for side.</summary>
    [Fact]
    public void Seen_from_the_other_track_lines_run_forwards_and_keep_their_widths()
    {
        var plan = Plan(s => s with { WhiteLine = new() { Inset = 2, Width = 1.5 } });
        var seen = FaceViews.Second(plan);
        Assert.Equal(2, seen.Body.Lines.Count);
        Assert.All(seen.Body.Lines, l => Assert.True(l.From < l.To));
        Assert.All(seen.Body.Lines, l => Assert.Equal(1.5, l.Far.At(500) - l.Near.At(500), 1e-6));
        Assert.Equal([2.0, Wide - 3.5], seen.Body.Lines.Select(l => l.Near.At(500) - seen.CopingFront.At(500)).Order(), (a, b) => Math.Abs(a - b) < 1e-6);
        Assert.True(seen.Stations.Zip(seen.Stations.Skip(1)).All(p => p.First < p.Second));
    }

    /// <summary>Lines across two straight tracks are square to both: a place a metre and a half from the first one is found without a hint.</summary>
    [Fact]
    public void A_place_on_a_trackisland_is_found_from_afar()
    {
        double[] stations = [.. Enumerable.Range(0, 61).Select(i => 60.0 * i)];
        var track = TrackLayer.Lay(new("up", new Point2(0, 0), 0, [new StraightSpec(3600)])).Value!;
        var spine = new Spine(track, Side.Left, new(stations, [.. stations.Select(s => new Point2(s, 0))], [.. stations.Select(_ => new Point2(0, 1))],
            stations));
        foreach (double s in (double[])[10, 1795, 3590])
        {
            var found = spine.Locate(new(s, 40));
            Assert.Equal((s, 40.0), (Math.Round(found.Chainage, 6), Math.Round(found.Reach, 6)));
        }

        Assert.Equal((1, 0), (spine.Stretch(100, 20), spine.Bend(100)));
    }

    /// <summary>
    /// Between tracks that draw together an island is narrowest at its end, and not beyond it. The line across leaves both edges at one angle: it is longer
    /// than the square from one to the other by the cosine of half the angle between them.
    /// </summary>
    [Fact]
    public void Between_tracks_that_draw_together_the_waist_is_at_the_end()
    {
        const double End = 799.7; // facets of no whole number of millimetres
        var plan = Plan(s => s with { Face = s.Face with { To = End } }, Slanting);
        Assert.Equal(End, plan.Waist!.First, 1e-6);
        var edge = plan.ToLayout(End, plan.CopingFront.At(End));
        double square = Math.Abs(Slanting.Locate(edge).Offset) - (18 + 1 + 0.01);
        Assert.Equal(square / Math.Cos(Math.Atan(0.05) / 2), plan.Waist.Width, 0.002);

        // The deck between both copings is widest at the other end.
        double widest = (plan.ToLayout(200, plan.Body.FarCopingBack!.At(200)) - plan.ToLayout(200, plan.Body.CopingBack.At(200))).Length;
        Assert.Equal(widest, PavingLayout.Room(plan), 0.1);
    }

    /// <summary>What stands on an island's deck keeps its land from the far wall, and off the far coping.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(9)]
    public void What_stands_keeps_its_land_from_the_far_wall(double land)
    {
        var body = Plan().Body;
        double farthest = body.Farthest(500, land), fromWall = body.FarWallFace.At(500) - farthest, fromCoping = body.FarCopingBack!.At(500) - farthest;
        Assert.InRange(fromWall, land - 1e-9, double.PositiveInfinity);
        Assert.InRange(fromCoping, -1e-9, double.PositiveInfinity);
        Assert.Equal(0, Math.Min(fromWall - land, fromCoping), 1e-9);
    }

    /// <summary>The tracks run against one another, 1000 mm either: a pier at 330 of one stands at 670 of the other, and lies where it lay.</summary>
    [Fact]
    public void Piers_seen_from_the_other_track_lie_where_they_are()
    {
        var facing = FacingSpec.For(Bench.Site.Scale) with { Piers = PierSpec.For(Bench.Site.Scale) with { At = [330, 415] } };
        var plan = PlatformPlanner.Divided(Plan(s => s with { Facing = facing }), []).Value!;
        var seen = FaceViews.Second(plan);
        Assert.Equal([330, 415, 330, 415], plan.Fittings.Single().Places.Select(p => p.Middle), (a, b) => Math.Abs(a - b) < 1e-6);
        Assert.Equal([(670.0, true), (585, true), (670, false), (585, false)],
            seen.Fittings.Single().Places.Select(p => (Math.Round(p.Middle, 6), p.IsFar)));
        Point2[] there = [.. FittingView.Rings(seen).SelectMany(r => r)];
        Assert.All(FittingView.Rings(plan).SelectMany(r => r), p => Assert.InRange(there.Min(q => (q - p).Length), 0, 1e-6));
    }

    /// <summary>Plain walls with piers stand back behind them alike on either side of an island.</summary>
    [Fact]
    public void Plain_walls_with_piers_stand_back_alike_on_either_side()
    {
        var scale = Bench.Site.Scale;
        var facing = FacingSpec.For(scale) with { Front = WallFinish.Plain, Ends = WallFinish.Plain, Piers = PierSpec.For(scale) with { Projection = 0.8 } };
        var body = Plan(s => s with { Facing = facing }).Body;
        Assert.Equal(0.8, body.Ground!.Near!.At(500) - body.WallFace.At(500), 1e-9);
        Assert.Equal(0.8, body.FarWallFace.At(500) - body.Ground.Far!.At(500), 1e-9);
    }
}
