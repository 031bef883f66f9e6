using FsCheck.Xunit;
using PlatformForge.Clearance.Sweeping;
using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Track.Charts;

namespace PlatformForge.Tests.Clearance.Bounds;

/// <summary>How much a line bends over a stretch, against curvatures taken millimetre by millimetre.</summary>
[Properties(Arbitrary = [typeof(LongRuns)], QuietOnSuccess = true)]
public class RunSpanProperties
{
    private const double Margin = 300, Rounding = 1e-12;

    [Property(MaxTest = 30)]
    public void A_span_holds_every_curvature_of_its_stretch_and_none_from_farther_off_than_a_bin(LongRun run)
    {
        var track = run.Smooth();
        var span = Of(track, track);
        foreach (var (from, to) in Stretches(run, span))
        {
            var over = span.Over(from, to);
            Assert.All(Curvatures(track, from, to, 1), k => Assert.InRange(k, over.Least - Rounding, over.Most + Rounding));
            double missed = over.Rate * 1; // between two samples
            double[] near = [.. Curvatures(track, from - RunSpan.Bin, to + RunSpan.Bin, 1)];
            Assert.InRange(over.Least, near.Min() - missed - Rounding, near.Max() + missed + Rounding);
            Assert.InRange(over.Most, over.Least, near.Max() + missed + Rounding);
            Assert.InRange(over.Least, near.Min() - missed - Rounding, over.Most);
        }
    }

    [Property(MaxTest = 30)]
    public void The_rate_is_the_greatest_of_the_elements_that_it_touches(LongRun run)
    {
        var track = run.Smooth();
        var span = Of(track, track);
        foreach (var (from, to) in Stretches(run, span))
        {
            double Greatest(double a, double b) => Enumerable.Range(0, track.Elements.Count)
                .Where(i => track.StartOf(i) <= b && track.StartOf(i) + track.Elements[i].Length > a)
                .Select(i => Math.Abs(track.Elements[i].EndCurvature - track.Elements[i].StartCurvature) / track.Elements[i].Length).DefaultIfEmpty(0).Max();
            Assert.InRange(span.Over(from, to).Rate, Greatest(from, to) - Rounding, Greatest(from - RunSpan.Bin, to + RunSpan.Bin) + Rounding);
        }
    }

    [Property(MaxTest = 30)]
    public void It_turns_by_all_its_kinks_whatever_their_hand(LongRun run)
    {
        var ride = run.Kinked();
        var span = Of(ride, KinkRounder.Chart(ride).Line);
        foreach (var (from, to) in Stretches(run, span))
        {
            double Turns(double a, double b) => ride.Kinks.Where(k => k.Chainage >= a && k.Chainage < b).Sum(k => Math.Abs(k.Turn));
            Assert.InRange(span.Over(from, to).KinkTurn, Turns(from, to) - Rounding, Turns(from - RunSpan.Bin, to + RunSpan.Bin) + Rounding);
        }
    }

    /// <summary>A vehicle beside a chart that is another line meets the bends of both.</summary>
    [Property(MaxTest = 20)]
    public void It_holds_the_bends_of_the_chart_alongside_too(LongRun run)
    {
        var (chart, ride) = Beside(run);
        var span = Of(ride, chart);
        foreach (var (from, to) in Stretches(run, span))
        {
            var over = span.Over(from, to);
            Assert.All(Curvatures(ride, from, to, 2), k => Assert.InRange(k, over.Least - Rounding, over.Most + Rounding));
            for (double s = from; s <= to; s += 2)
            {
                Assert.InRange(chart.At(chart.Locate(ride.PointAt(s), s).Chainage).Curvature, over.Least - Rounding, over.Most + Rounding);
            }
        }
    }

    /// <summary>Distance and angle are looked at every 40 mm, between which a line bends off by no more than a versine.</summary>
    [Property(MaxTest = 20)]
    public void The_distance_and_the_angle_to_another_track_are_its_greatest(LongRun run)
    {
        var (chart, ride) = Beside(run);
        var span = new RunSpan(new(ride, [run.Vehicle]), chart, LongRun.From, LongRun.To, Margin);
        double offset = 0, angle = 0, least = double.PositiveInfinity, most = double.NegativeInfinity, sharpest = 0;
        for (double s = LongRun.From; s <= LongRun.To; s += 2)
        {
            var frame = chart.At(s);
            var place = ride.Locate(frame.Position, s);
            var beside = ride.At(place.Chainage);
            offset = Math.Max(offset, (beside.Position - frame.Position).Length);
            (least, most) = (Math.Min(least, place.Chainage), Math.Max(most, place.Chainage));
            angle = Math.Max(angle, Math.Acos(Math.Min(1, Point2.Dot(frame.Tangent, beside.Tangent))));
            sharpest = Math.Max(sharpest, Math.Abs(frame.Curvature) + Math.Abs(beside.Curvature));
        }

        Assert.InRange(span.Offset, offset - (40 * 40 * sharpest / 8) - 1e-6, offset + 1e-6);
        Assert.InRange(span.Skew, angle - (20 * sharpest) - 1e-6, angle + 1e-6);
        Assert.Equal(least, span.From, 1e-6);
        Assert.Equal(most, span.To, 1e-6);
        Assert.False(span.IsChart);
    }

    [Property(MaxTest = 20)]
    public void Two_stretches_one_after_the_other_are_one(LongRun run)
    {
        var ride = run.Kinked();
        foreach (var (from, to) in Stretches(run, Of(ride, ride)))
        {
            double middle = (0.3 * from) + (0.7 * to);
            var whole = CurvatureSpan.Over(ride, from, to);
            var joined = CurvatureSpan.Over(ride, from, middle).Join(CurvatureSpan.Over(ride, middle, to));
            Assert.Equal((whole.Least, whole.Most, whole.Rate), (joined.Least, joined.Most, joined.Rate));
            Assert.Equal(whole.KinkTurn, joined.KinkTurn, Rounding);
        }
    }

    private static RunSpan Of(Centreline ride, Centreline chart) => new(new(ride, []), chart, LongRun.From, LongRun.To, Margin);

    // Short and long ones, about joints and anywhere, beyond the stations by up to the margin.
    private static IEnumerable<(double From, double To)> Stretches(LongRun run, RunSpan span)
    {
        var track = run.Smooth();
        for (int i = 1; i < track.Elements.Count; i++)
        {
            foreach (var (before, after) in new[] { (-4.0, 9.0), (3, 90), (70, -1), (150, 180) })
            {
                double from = Math.Max(track.StartOf(i) - before, span.From - Margin), to = Math.Min(track.StartOf(i) + after, span.To + Margin);
                if (from < to)
                {
                    yield return (from, to);
                }
            }
        }
    }

    // One element after another: at a joint both count.
    private static IEnumerable<double> Curvatures(Centreline line, double from, double to, double step)
    {
        for (double s = from; s <= to; s += step)
        {
            yield return line.At(s).Curvature;
        }

        yield return line.At(to).Curvature;
    }

    // The same elements 30 mm to one side, not quite the same way.
    private static (Centreline Chart, Centreline Ride) Beside(LongRun run) =>
        (run.Smooth(), TrackLayer.Lay(new("beside", new(10, 30), -0.01, [.. run.Elements])).Value!);
}
