using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>A wall that goes all round, with a bend wherever a piece ended before: no piece may end on one, nor the one that goes on over the ring's
/// end.</summary>
public class RingBendTests
{
    private const double Joint = 0.25, High = 16;

    private static readonly WallLaying Laying = new(Joint, 0.26, High - Joint, 0.05, Joint, 0.2) { Foot = 0 };

    public static TheoryData<WallFinish, double> Cases()
    {
        var cases = new TheoryData<WallFinish, double>();
        foreach (var finish in new[] { WallFinish.Planks, WallFinish.Sleepers, WallFinish.Brick, WallFinish.Stone, WallFinish.UprightPlanks })
        {
            foreach (double length in new[] { 150.0, 189.475, 190.475, 203.1 })
            {
                cases.Add(finish, length);
            }
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void No_piece_ends_on_a_bend(WallFinish finish, double length)
    {
        double[] corners = [0, length, length + 38.475, (2 * length) + 38.475, 2 * (length + 38.475)];
        double round = corners[^1];
        double[] ends = Ends(finish, corners, []);
        double[] bends = [.. ends.Select(e => ((e % round) + round) % round).Where(e => corners.All(c => Math.Abs(c - e) > 1)).Distinct().Order()];
        Assert.NotEmpty(bends);
        Assert.All(Ends(finish, corners, bends), e => Assert.True(bends.All(b => Off(e, b, round) >= 0.02 - Tolerances.Rounding), $"{e}"));
    }

    private static double Off(double end, double bend, double round) => Math.Abs(Math.IEEERemainder(end - bend, round));

    private static double[] Ends(WallFinish finish, double[] corners, double[] bends)
    {
        WallRun[] runs = [.. corners.Zip(corners.Skip(1), (from, to) => new WallRun(from, to, true, true, to - from < 40))];
        var wall = new FlatWall(runs, [new(0, 0), new(corners[^1], 0)], [new(0, High), new(corners[^1], High)], bends, true);
        return [.. Work(finish).On(wall).Regions().SelectMany(r => new[] { r.Outline.Min(p => p.X), r.Outline.Max(p => p.X) })];
    }

    // Figures of 1:76.2 (docs/masonry.md).
    private static WallWork Work(WallFinish finish) => finish switch
    {
        WallFinish.Planks => new LevelTimberSpec(finish, 2.33, 48, 1.05, Laying),
        WallFinish.Sleepers => new LevelTimberSpec(finish, 3.33, 34, 1.05, Laying),
        WallFinish.UprightPlanks => new UprightPlankSpec(2.33, Laying),
        WallFinish.Stone => new StoneworkSpec(2.95, 5.9, 1, Laying),
        _ => new BrickworkSpec(Bond.English, 3, BrickModule.Of(BrickGauge.Metric, new(76.2)), true, Laying),
    };
}
