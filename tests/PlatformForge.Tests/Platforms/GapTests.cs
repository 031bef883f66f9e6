using FsCheck.Xunit;
using PlatformForge.Clearance;
using PlatformForge.Platforms.Specs;
using Xunit;

namespace PlatformForge.Tests.Platforms;

public class GapTests
{
    // Stations every 2 mm over a metre; the sill lies between two reaches.
    private static SillReach Sill(string name, Func<double, double> greatest, Func<double, double> least, double length = 1000) => new(
        Bench.Fleet with { Name = name },
        16,
        0,
        2,
        [.. Enumerable.Range(0, (int)(length / 2) + 1).Select(i => greatest(2.0 * i))],
        [.. Enumerable.Range(0, (int)(length / 2) + 1).Select(i => least(2.0 * i))]);

    [Fact]
    public void A_row_tells_least_mean_and_largest_gap_and_where()
    {
        // Edge at 19 from 200 to 800. The coach's sill is at 17 with a bump to 17.5 at 400 and, thrown away, a dip to 15 at 600.
        var request = Bench.Straight(s => s with { Height = 12 }) with { Sills = [Sill("coach", s => s == 400 ? 17.5 : 17, s => s == 600 ? 15 : 17)] };
        var plan = Bench.Plan(request);
        Assert.Equal(3, plan.Gaps.Rows.Count);
        var row = plan.Gaps.Rows.Single(r => r.Style == EdgeStyle.Fitted);
        double edge = plan.CopingFront.At(500);
        Assert.Equal(("coach", 400.0, 600.0), (row.Vehicle, row.LeastAt, row.LargestAt));
        Assert.Equal(edge - 17.5, row.Least, 1e-9);
        Assert.Equal(edge - 15, row.Largest, 1e-9);
        Assert.Equal(edge - 17 + ((-0.25 + 1) / 301), row.Mean, 1e-9);
        Assert.Equal(4, row.Step, 1e-12);
        Assert.Equal(Math.Sqrt((row.Largest * row.Largest) + 16), row.Diagonal, 1e-12);

        // 4 mm step is 304.8 at full size, over the 230; a gap of 4 mm is 304.8 too, over the 275.
        Assert.False(row.VerticalWithinLimit);
        Assert.False(row.HorizontalWithinLimit);
        Assert.True(row with { Largest = 3.6 } is { HorizontalWithinLimit: true, DiagonalWithinLimit: false });
    }

    [Fact]
    public void Nobody_boards_from_a_ramp_so_rows_leave_ramps_out_and_traces_do_not()
    {
        var request = Bench.Straight(s => s with { Height = 12, StartRamp = new(Gradient: 8), EndRamp = new(Gradient: 8) })
            with
        { Sills = [Sill("coach", s => s < 290 || s > 710 ? 10 : 17, _ => 9)] };
        var plan = Bench.Plan(request);
        Assert.Equal(plan.CopingFront.At(500) - 17, plan.Gaps.Rows[0].Least, 1e-9);
        var trace = Assert.Single(plan.Gaps.Traces);
        Assert.Equal((200, 800), (trace.Stations[0], trace.Stations[^1]));
        Assert.Equal(plan.CopingFront.At(500) - 10, trace.Nearest[0], 1e-9);
        Assert.Equal(plan.CopingFront.At(500) - 9, trace.Farthest[^1], 1e-9);
    }

    [Fact]
    public void A_vehicle_whose_doors_never_come_has_no_row()
    {
        var plan = Bench.Plan(Bench.Straight() with { Sills = [Sill("van", _ => double.NaN, _ => double.NaN)] });
        Assert.Empty(plan.Gaps.Rows);
        Assert.All(Assert.Single(plan.Gaps.Traces).Nearest, g => Assert.True(double.IsNaN(g)));
    }

    [Property(MaxTest = 15)]
    public void Every_gap_figure_grows_from_fitted_to_faired_to_uniform(int seed)
    {
        var request = Bench.Request(seed, EdgeStyle.Faired);
        request = request with { Sills = [Sill("coach", s => 15 + Math.Sin(s / 50), s => 14 + Math.Sin(s / 50), request.Chart.Length)] };
        var rows = Bench.Plan(request).Gaps.Rows;
        Assert.Equal([EdgeStyle.Fitted, EdgeStyle.Faired, EdgeStyle.Uniform], rows.Select(r => r.Style));
        foreach (var (near, far) in rows.Zip(rows.Skip(1)))
        {
            Assert.True(near.Least <= far.Least + 1e-12 && near.Mean <= far.Mean + 1e-12 && near.Largest <= far.Largest + 1e-12);
        }
    }
}
