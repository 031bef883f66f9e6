using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using PlatformForge.Clearance.Vehicles;
using Xunit;

namespace PlatformForge.Tests.Clearance;

/// <summary>A body that leans, against turning every point of it step by step: once about the roll centre, then with the track about rail top.</summary>
public class LeanFigureTests
{
    private const int Steps = 40;

    /// <summary>
    /// Roll and cant up to 0.15 and 0.06 rad, or nil; roll centre up to 25 mm; a point up to 40 mm aside and 60 high; off the middle by up to 12 mm.
    /// </summary>
    private static readonly Gen<(LeanRange Lean, double Aside, double High, double Shift)> Cases =
        from roll in Gen.Choose(0, 150)
        from cant in Gen.Choose(0, 60)
        from centre in Gen.Choose(0, 250)
        from aside in Gen.Choose(10, 400)
        from high in Gen.Choose(-50, 600)
        from shift in Gen.Choose(-120, 120)
        from none in Gen.Choose(0, 5)
        select (new LeanRange(none == 1 ? 0 : roll / 1000.0, none == 2 ? 0 : cant / 1000.0, centre / 10.0), aside / 10.0, high / 10.0, shift / 10.0);

    [Property(MaxTest = 200)]
    public Property A_point_sinks_and_rises_as_far_as_by_turning_it() => Prop.ForAll(Cases.ToArbitrary(), c =>
    {
        double[] heights = [.. Turns(c.Lean).Select(t => Turned(c.Lean, c.Aside, c.High, c.Shift, t.Roll, t.Cant).Up)];
        double off = Grid(c.Lean, Math.Abs(c.Aside) + Math.Abs(c.High) + c.Lean.Centre + Math.Abs(c.Shift));
        Assert.InRange(c.Lean.Highest(c.Aside, c.High, c.Shift), heights.Max() - 1e-9, heights.Max() + off);
        Assert.InRange(c.Lean.Lowest(c.Aside, c.High, c.Shift), heights.Min() - off, heights.Min() + 1e-9);
    });

    [Property(MaxTest = 100)]
    public Property What_comes_within_a_window_goes_as_far_aside_as_by_turning_it() => Prop.ForAll(
        Cases.ToArbitrary(), Gen.Choose(0, 300).Zip(Gen.Choose(20, 300)).ToArbitrary(), Gen.Choose(0, 300).ToArbitrary(), (c, w, tall) =>
    {
        (double Low, double High) heights = (Math.Max(1, c.High), Math.Max(1, c.High) + (tall / 10.0)), window = (w.Item1 / 10.0, (w.Item1 + w.Item2) / 10.0);
        double off = Grid(c.Lean, Math.Abs(c.Aside) + heights.High + c.Lean.Centre) + ((heights.High - heights.Low) / Steps);
        double? told = c.Lean.Leftmost(c.Aside, heights, window), least = Farthest(c.Lean, c.Aside, heights, window, 1e-9), most = Farthest(c.Lean,
            c.Aside, heights, window, off);
        Assert.True(least is null || told >= least - 1e-9, $"{told} told, {least} found");
        Assert.True(told is null || told <= most + off, $"{told} told, {most} is the most");
    });

    [Fact]
    public void What_stands_upright_stays_where_it_is()
    {
        var upright = new LeanRange(0, 0, 12);
        Assert.True(upright.IsUpright);
        Assert.Equal(30, upright.Highest(17, 30, 4), 1e-12);
        Assert.Equal(30, upright.Lowest(17, 30, 4), 1e-12);
        Assert.Equal(17, upright.Leftmost(17, (20, 30), (25, 60))!.Value, 1e-12);
        Assert.Null(upright.Leftmost(17, (20, 30), (31, 60)));
        Assert.False(new LeanRange(0.01, 0, 12).IsUpright);
        Assert.False(new LeanRange(0, 0.01, 12).IsUpright);
    }

    private static double? Farthest(LeanRange lean, double y, (double Low, double High) heights, (double Low, double High) window, double slack)
    {
        double? best = null;
        foreach (var (roll, cant) in Turns(lean))
        {
            for (int i = 0; i <= Steps; i++)
            {
                var (left, up) = Turned(lean, y, heights.Low + ((heights.High - heights.Low) * i / Steps), 0, roll, cant);
                if (up >= window.Low - slack && up <= window.High + slack && (best is null || left > best))
                {
                    best = left;
                }
            }
        }

        return best;
    }

    private static (double Left, double Up) Turned(LeanRange lean, double y, double z, double shift, double roll, double cant)
    {
        var (left, up) = Turn(y, z - lean.Centre, roll);
        return Turn(left + shift, up + lean.Centre, cant);
    }

    private static (double, double) Turn(double y, double z, double angle) =>
        ((y * Math.Cos(angle)) - (z * Math.Sin(angle)), (y * Math.Sin(angle)) + (z * Math.Cos(angle)));

    private static IEnumerable<(double Roll, double Cant)> Turns(LeanRange lean) =>
        from i in Enumerable.Range(-Steps / 2, Steps + 1)
        from j in Enumerable.Range(-Steps / 2, Steps + 1)
        select (lean.Roll * 2 * i / Steps,
            lean.Cant * 2 * j / Steps);

    // How far anything so far from rail top moves within half a step of each angle.
    private static double Grid(LeanRange lean, double arm) => (arm * (lean.Roll + lean.Cant) / Steps) + 1e-9;
}
