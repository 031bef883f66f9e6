using FsCheck.Xunit;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Charts;

namespace PlatformForge.Tests.Clearance.Bounds;

/// <summary>
/// What the sweep adds for poses that it skips is enough by itself, wherever the steps happen to fall: each bound is held against poses of another
/// making between two that are
/// <see cref="SweepBounds.LongestStep"/> apart, the most that there can be.
/// </summary>
[Properties(Arbitrary = [typeof(LongRuns)], QuietOnSuccess = true)]
public class SweepBoundsProperties
{
    private const double Step = SweepBounds.LongestStep, Halfway = Step / 2;

    // Rates are differences of poses so far apart, mm of run.
    private const double Pace = 0.02, RateCloseness = 1e-6;

    [Property(MaxTest = 12)]
    public void A_corner_leaves_its_chord_by_no_more_than_is_added(LongRun run) => CornersKeepToChords(Smooth(run));

    [Property(MaxTest = 4)]
    public void Nor_with_a_kink_under_the_vehicle(LongRun run) => CornersKeepToChords(Kinked(run));

    [Property(MaxTest = 12)]
    public void An_edge_reaches_no_farther_between_poses_than_is_added_at_them(LongRun run) => EdgesKeepToPoses(Smooth(run));

    [Property(MaxTest = 4)]
    public void Nor_does_it_with_a_kink_under_the_vehicle(LongRun run) => EdgesKeepToPoses(Kinked(run));

    /// <summary>How fast the ends of an edge leave it, before and after a pose: steps of unlike lengths, either first.</summary>
    [Property(MaxTest = 6)]
    public void The_speed_at_which_a_place_leaves_its_edge_changes_by_no_more_than_is_allowed_for(LongRun run)
    {
        var own = Smooth(run);
        foreach (double u in own.Telling(2 * Step))
        {
            foreach (var (before, after) in new[] { (Step, Step / 6), (Step / 6, Step) })
            {
                double allowed = own.Bounds.EdgeDrift(u, before, after) + RateCloseness;
                double[] now = Leaving(own, u), was = Leaving(own, u - before), then = Leaving(own, u + after);
                for (int i = 0; i < now.Length; i++)
                {
                    double changes = Math.Max(Math.Abs(now[i] - was[i]), Math.Abs(then[i] - now[i]));
                    Assert.True(changes <= allowed, $"{u}: {changes} over {allowed} ({run})");
                }
            }
        }
    }

    /// <summary>
    /// A trace is bent where an axle stands on a kink; stations are so close that their join passes over the bend within a fifth of the tolerance.
    /// </summary>
    [Property(MaxTest = 6)]
    public void A_kink_bends_a_trace_by_no_more_than_stations_are_chosen_for(LongRun run)
    {
        var own = Kinked(run);
        double spacing = own.Bounds.Spacing;
        foreach (double kink in run.Kinked().Kinks.Select(k => k.Chainage))
        {
            for (int axle = 0; axle < 4; axle++)
            {
                double u = kink;
                for (int round = 0; round < 6; round++)
                {
                    u += kink - own.Axles(u)[axle];
                }

                if (u > own.Bounds.First + 1 && u < own.Bounds.Last - 1)
                {
                    double bend = Slopes(own, u - (2 * Pace)).Zip(Slopes(own, u + (2 * Pace)), (a, b) => Math.Abs(a - b)).Max();
                    Assert.InRange(bend * spacing / 4, 0, 0.2 * BoundCase.Tolerance);
                }
            }
        }
    }

    [Property(MaxTest = 20)]
    public void Where_it_is_said_to_glide_the_vehicle_keeps_its_place_beside_the_chart(LongRun run)
    {
        var own = Smooth(run);
        for (double u = own.Bounds.First; u < own.Bounds.Last; u += 57)
        {
            double end = own.Bounds.GlideEnd(u);
            if (end > u + 1)
            {
                var here = own.Places(u);
                foreach (double on in new[] { (u + end) / 2, end })
                {
                    Assert.All(own.Places(on).Zip(here), p => Assert.Equal(p.Second.Offset, p.First.Offset, 10 * BoundCase.Closeness));
                    Assert.All(own.Places(on).Zip(here), p => Assert.Equal(p.Second.Chainage + on - u, p.First.Chainage, 10 * BoundCase.Closeness));
                }
            }
        }
    }

    /// <summary>Before the first pose and after the last nothing of the vehicle is at a station; it is not run much farther than that.</summary>
    [Property(MaxTest = 20)]
    public void The_vehicle_comes_from_before_the_stations_and_leaves_them_for_good(LongRun run)
    {
        var own = Smooth(run);
        double longest = 1.2 * ((2 * own.Form.HalfLength) + own.Form.Centres) + (4 * Step);
        Assert.All(own.Places(own.Bounds.First), p => Assert.InRange(p.Chainage, LongRun.From - longest, LongRun.From));
        Assert.All(own.Places(own.Bounds.Last), p => Assert.InRange(p.Chainage, LongRun.To, LongRun.To + longest));
    }

    [Property(MaxTest = 20)]
    public void Before_buffers_it_halts_with_its_end_at_the_end_of_the_track(LongRun run)
    {
        var track = run.Smooth();
        TrackRun Buffers(TrackRun r) => r with { StartsAtBuffers = true, EndsAtBuffers = true };
        var own = new BoundCase(track, track, LongRuns.OneWay(run.Vehicle, turned: false), (20, track.Length - 20), Buffers);
        Assert.Equal(0, own.Places(own.Bounds.First).Min(p => p.Chainage), 1e-6); // both ends of these tracks are straight
        Assert.Equal(track.Length, own.Places(own.Bounds.Last).Max(p => p.Chainage), 1e-6);
        Assert.True(own.Bounds.Halts && !Smooth(run).Bounds.Halts);
    }

    /// <summary>Steps and stations keep what is added within the tolerance, and no step is shorter than that asks for.</summary>
    [Property(MaxTest = 20)]
    public void Steps_use_the_tolerance_and_keep_it(LongRun run)
    {
        var bounds = Smooth(run).Bounds;
        double u = bounds.First, before = 0, tolerance = BoundCase.Tolerance, spacing = Math.Min(1, bounds.Spacing);
        while (u < bounds.Last)
        {
            double step = bounds.Step(u), corner = 2 * bounds.CornerAllowance(u, step, spacing), edge = bounds.EdgeAllowance(u, before, step, spacing);
            Assert.InRange(Math.Max(corner, edge), 0, tolerance);
            double used = Math.Max(2 * bounds.CornerAllowance(u, step, 0), bounds.EdgeAllowance(u, step, step, 0));
            Assert.True(step == Step || used > 0.55 * tolerance, $"{step} at {u} ({run})");
            (before, u) = (step, u + step);
        }
    }

    /// <summary>The count by which vehicles are put in order counts steps that are really taken.</summary>
    [Property(MaxTest = 20)]
    public void The_forecast_of_poses_is_about_right(LongRun run)
    {
        var bounds = Smooth(run).Bounds;
        double poses = 0;
        for (double u = bounds.First; u < bounds.Last; poses++)
        {
            double glide = bounds.GlideEnd(u);
            u = glide > u ? glide : u + bounds.Step(u);
            poses -= glide >= u ? 1 : 0;
        }

        Assert.InRange(bounds.Poses, (0.9 * poses) - 5, (1.1 * poses) + 5);
    }

    private static void CornersKeepToChords(BoundCase own)
    {
        foreach (double u in own.Telling(Step).Where(u => !own.PassesKink(u, u + Step)))
        {
            double added = own.Bounds.CornerAllowance(u, Step, 0) - own.Bounds.CornerAllowance(u, 0, 0) + BoundCase.Closeness;
            TrackPlace[] from = own.Places(u), middle = own.Places(u + Halfway), to = own.Places(u + Step);
            for (int i = 0; i < middle.Length; i++)
            {
                double share = (middle[i].Chainage - from[i].Chainage) / (to[i].Chainage - from[i].Chainage);
                double off = middle[i].Offset - from[i].Offset - (share * (to[i].Offset - from[i].Offset));
                Assert.True(Math.Abs(off) <= added, $"{u}: {off} off, {added} added");
            }
        }
    }

    private static void EdgesKeepToPoses(BoundCase own)
    {
        foreach (double u in own.Telling(Step).Where(u => !own.PassesKink(u, u + Step)))
        {
            double after = own.Bounds.EdgeAllowance(u, 0, Step, 0), before = own.Bounds.EdgeAllowance(u + Step, Step, 0, 0);
            Point2[] from = own.Corners(u), middle = own.Corners(u + Halfway), to = own.Corners(u + Step);
            var places = own.Places(u + Halfway);
            for (int i = 0; i < middle.Length; i++)
            {
                int next = own.Form.Corners[i].Next, side = own.Form.Corners[i].EdgeSide;
                foreach (double share in side == 0 ? [] : new[] { 0.02, 0.3, 0.5, 0.85 })
                {
                    double station = places[i].Chainage + (share * (places[next].Chainage - places[i].Chainage));
                    double reach = side * own.Crossing(middle[i], middle[next], station);
                    double first = side * own.Crossing(from[i], from[next], station), last = side * own.Crossing(to[i], to[next], station);
                    double known = Math.Max(first + after, last + before);
                    Assert.True(reach <= known, $"{u}, edge {i}: {reach - known} farther between");
                }
            }
        }
    }

    // Speed of both ends of every edge square to it, outward, per mm of run; nil for edges that run square to the vehicle.
    private static double[] Leaving(BoundCase own, double u)
    {
        Point2[] now = own.Corners(u), before = own.Corners(u - (Pace / 2)), after = own.Corners(u + (Pace / 2));
        var corners = own.Form.Corners;
        return [.. corners.SelectMany((c, i) =>
        {
            var edge = now[c.Next] - now[i];
            double Speed(int at) => c.EdgeSide == 0 ? 0 : Point2.Cross(after[at] - before[at], edge) / (edge.Length * Pace);
            return new[] { Speed(i), Speed(c.Next) };
        })];
    }

    private static double[] Slopes(BoundCase own, double u) =>
        [.. own.Places(u - Pace).Zip(own.Places(u + Pace)).Select(p => (p.Second.Offset - p.First.Offset) / (p.Second.Chainage - p.First.Chainage))];

    private static BoundCase Smooth(LongRun run)
    {
        var track = run.Smooth();
        return new(track, track, LongRuns.OneWay(run.Vehicle, turned: run.Kinks[0] > 0), (LongRun.From, LongRun.To));
    }

    private static BoundCase Kinked(LongRun run)
    {
        var ride = run.Kinked();
        return new(ride, KinkRounder.Chart(ride).Line, LongRuns.OneWay(run.Vehicle, turned: run.Kinks[0] > 0), (LongRun.From, LongRun.To));
    }
}
