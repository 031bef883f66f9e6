using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Islands;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Islands between two straight tracks, where plain sums tell all: rules before anything is swept, ribs between two faces, views from the other track.</summary>
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

    private static PlatformPlan Plan(Func<PlatformSpec, PlatformSpec>? change = null)
    {
        var both = IslandTracks.Across(change?.Invoke(Spec) ?? Spec, Up, Down, Bench.Site).Value!;
        var outcome = PlatformPlanner.PlanFaces(
        [
            new(both.First, Bench.Site, Up, Bench.Envelope(Up, Side.Left, _ => 18), PlatformForge.Clearance.ClearanceBudget.Of(running: 1)),
            new(both.Second, Bench.Site, Down, Bench.Envelope(Down, Side.Left, _ => 18), PlatformForge.Clearance.ClearanceBudget.Of(running: 1)),
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
        var plan = Plan(s => (s with { Ribs = s.Ribs with { LongitudinalCount = 2 } }).With<HoleSpec>([new(500, inset, InsetFrom.Edge) { Diameter = 3, Fit = 0 }]));
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
        var spine = new Spine(track, Side.Left, new(stations, [.. stations.Select(s => new Point2(s, 0))], [.. stations.Select(_ => new Point2(0, 1))], stations));
        foreach (double s in (double[])[10, 1795, 3590])
        {
            var found = spine.Locate(new(s, 40));
            Assert.Equal((s, 40.0), (Math.Round(found.Chainage, 6), Math.Round(found.Reach, 6)));
        }

        Assert.Equal((1, 0), (spine.Stretch(100, 20), spine.Bend(100)));
    }
}
