using PlatformForge.Clearance;
using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Clearance;

public class PlayAndBudgetTests
{
    private static readonly Vehicle Coach = new("coach", 188, 34, 34, [
        VehiclePart.Box("body", PartCarrier.Body, -131, 131, 34.5, 10, 50),
        VehiclePart.Box("frames", PartCarrier.LeadingBogie, -25, 25, 30, 2, 9)]);

    [Theory]
    [InlineData(16.5, 14.5, 0.7, 0.3)]
    [InlineData(18.83, 17.75, 0.4, 0.14)]
    [InlineData(16.5, 15.5, 0.7, 0)]
    public void Wheelset_play_is_half_of_what_the_gauge_leaves(double gauge, double backToBack, double flange, double play) =>
        Assert.Equal(play, RunningPlay.WheelsetPlay(gauge, backToBack, flange), 1e-12);

    [Fact]
    public void On_straight_track_play_adds_shift_between_the_pivots_and_yaw_at_the_ends()
    {
        double Reach(RunningPlay play, int part)
        {
            var track = DemoStock.Lay("straight", new StraightSpec(1000));
            return EnvelopeSweeper.Sweep(new(track, 450, 500, [new(track, [Coach])]) { Play = play, StraightBeyondEnds = true }).Value!.Parts[part].Left[20];
        }

        Assert.Equal(17.25 + (0.4 * 131 / 94), Reach(new(0.3, 0.1), 0), 0.01); // the end passes every station
        Assert.Equal(15 + (0.3 * 25 / 17), Reach(new(0.3, 0.1), 1), 0.01); // a bogie has no pivot play of its own
        Assert.Equal(17.25 + (40 * Math.Sin(0.02)), Reach(new(0, 0, 0.02, 10), 0), 0.01);
    }

    /// <summary>The vehicle is really shifted and yawed to its four extremes and swept by brute force.</summary>
    [Theory]
    [InlineData(-68, 68)]
    [InlineData(50, 60)]
    [InlineData(-62, -49)]
    [InlineData(10, 20)]
    public void No_combination_of_shift_and_yaw_leaves_the_envelope(double fromX, double toX)
    {
        const double Q = 0.4;
        var track = DemoStock.QuillhavenTrack();
        var stations = Enumerable.Range(0, 21).Select(i => 300.0 + (i * 10)).ToArray();
        var body = new Vehicle("coach", 97, 0, 0, [VehiclePart.Box("part", PartCarrier.Body, fromX, toX, 18.6, 4, 50),
            VehiclePart.Box("floor", PartCarrier.Body, -68, 68, 10, 4, 5)]);
        var envelope = EnvelopeSweeper.Sweep(new(track, 300, 500, [new(track, [body])]) { Play = new(Q) }).Value!;
        foreach (var (front, back) in new[] { (Q, Q), (Q, -Q), (-Q, Q), (-Q, -Q) })
        {
            double shift = (front + back) / 2, yaw = (front - back) / 97;
            var moved = body.Parts[0] with { Outline = [.. body.Parts[0].Outline.Select(p => new Point2(p.X - (yaw * p.Y), p.Y + shift + (yaw * p.X)))] };
            var truth = BruteSweep.Sweep(track, track, body with { Parts = [moved] }, stations, 0.5)[0];
            ReachLine left = new(Side.Left, envelope.From, envelope.Spacing, envelope.Parts[0].Left, []), right = left with { Reach = envelope.Parts[0].Right };
            for (int i = 0; i < stations.Length; i++)
            {
                Assert.True(left.At(stations[i]) >= truth.Left[i] - 1e-3);
                Assert.True(right.At(stations[i]) >= truth.Right[i] - 1e-3);
            }
        }
    }

    [Fact]
    public void Budget_adds_up_line_by_line_and_the_sum_governs_unless_told_otherwise()
    {
        var budget = ClearanceBudget.Of(1.0, print: 0.2, fitting: 0.3, laying: 0.6, play: new(0.25, 0.1));
        Assert.Equal(["running clearance", "print tolerance", "fitting of the sections", "track laying", "wheelset play", "pivot play"],
            budget.Lines.Select(l => l.Name));
        Assert.Equal(2.1, budget.Sum, 1e-12);
        Assert.Equal(1.7, budget.RootOfSquares, 1e-12); // 1 + √(0.04 + 0.09 + 0.36)
        Assert.Equal(budget.Sum, budget.Margin);
        Assert.Equal(budget.RootOfSquares, (budget with { Rule = BudgetRule.RootOfSquares }).Margin);
    }
}
