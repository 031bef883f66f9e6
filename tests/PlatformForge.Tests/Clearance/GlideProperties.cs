using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Track;
using PlatformForge.Track.Charts;

namespace PlatformForge.Tests.Clearance;

/// <summary>
/// What the sweep saves, glides along uniform track and one run for both ways round, changes nothing: held against a fine sweep without
/// either. A chart that is another line of the same elements keeps it from gliding; a vehicle for each way is swept by itself.
/// </summary>
[Properties(Arbitrary = [typeof(LongRuns)], QuietOnSuccess = true)]
public class GlideProperties
{
    // On kinked track stations come so close that a finer one takes seconds.
    private const double FineTolerance = 0.001, FineOnKinks = 0.004;

    // Places of the two lines of the same elements, sums along a glide of a metre.
    private const double Rounding = 1e-7;

    [Property(MaxTest = 40)]
    public void On_smooth_track_the_sweep_lies_on_a_fine_one_within_its_bound(LongRun run) => AgainstFine(run, run.Smooth(), run.Smooth(), FineTolerance);

    [Property(MaxTest = 10)]
    public void On_kinked_track_the_sweep_lies_on_a_fine_one_within_its_bound(LongRun run)
    {
        var ride = run.Kinked();
        AgainstFine(run, ride, KinkRounder.Chart(ride).Line, FineOnKinks);
    }

    [Property(MaxTest = 20)]
    public void Before_buffers_both_ways_round_at_once_are_the_two_ways_by_themselves(LongRun run)
    {
        var track = run.Smooth();
        var own = new TrackRun(track, [run.Vehicle]) { StartsAtBuffers = true, EndsAtBuffers = true };
        var apart = own with { Vehicles = [LongRuns.OneWay(run.Vehicle, turned: false), LongRuns.OneWay(run.Vehicle, turned: true)] };
        var (together, each) = (EnvelopeSweeper.Sweep(new(track, 20, track.Length - 20, [own])).Value!,
            EnvelopeSweeper.Sweep(new(track, 20, track.Length - 20, [apart])).Value!);
        int parts = run.Vehicle.Parts.Count;
        Assert.Equal(each.Count, together.Count);
        for (int part = 0; part < parts; part++)
        {
            for (int i = 0; i < each.Count; i++)
            {
                Assert.Equal(Math.Max(each.Parts[part].Left[i], each.Parts[part + parts].Left[i]), together.Parts[part].Left[i], Rounding);
                Assert.Equal(Math.Max(each.Parts[part].Right[i], each.Parts[part + parts].Right[i]), together.Parts[part].Right[i], Rounding);
            }
        }
    }

    private static void AgainstFine(LongRun run, Centreline ride, Centreline chart, double tolerance)
    {
        var quick = EnvelopeSweeper.Sweep(new(ride.Kinks.Count > 0 ? chart : ride, LongRun.From, LongRun.To,
            [new(ride, [run.Vehicle])])
        { StraightBeyondEnds = true }).Value!;
        Vehicle[] ways = [LongRuns.OneWay(run.Vehicle, turned: false), LongRuns.OneWay(run.Vehicle, turned: true)];
        var fine = EnvelopeSweeper.Sweep(new(chart, LongRun.From, LongRun.To, [new(ride, ways)]) { StraightBeyondEnds = true, Tolerance = tolerance }).Value!;
        Assert.InRange(quick.ErrorBound, 0, 0.01);
        int parts = run.Vehicle.Parts.Count;
        for (int part = 0; part < parts; part++)
        {
            foreach (var side in new[] { Side.Left, Side.Right })
            {
                var (line, own) = (Line(quick, side, part), Line(fine, side, part, part + parts));
                double below = Enumerable.Range(0, own.Count).Max(i => own.Reach[i] - fine.ErrorBound - line.At(own.ChainageOf(i)));
                double over = Enumerable.Range(0, line.Count).Max(i => line.Reach[i] - own.At(line.ChainageOf(i)) - quick.ErrorBound);
                Assert.True(below <= Rounding, $"{run.Vehicle.Parts[part].Name} {side}: {below} mm below the truth ({run})");
                Assert.True(over <= Rounding, $"{run.Vehicle.Parts[part].Name} {side}: {over} mm over the bound ({run})");
            }
        }
    }

    private static ReachLine Line(SweptEnvelope envelope, Side side, params int[] parts) => new(side, envelope.From, envelope.Spacing,
        [.. Enumerable.Range(0, envelope.Count).Select(i => parts.Max(p => (side == Side.Left ? envelope.Parts[p].Left : envelope.Parts[p].Right)[i]))], []);
}
