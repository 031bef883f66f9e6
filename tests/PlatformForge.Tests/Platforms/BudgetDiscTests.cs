using PlatformForge.Platforms.Edges;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>A rolling disc against lines whose parallels are known from school geometry.</summary>
public class BudgetDiscTests
{
    private static readonly double[] Stations = [.. Enumerable.Range(0, 101).Select(i => (double)i)];

    [Fact]
    public void A_level_line_needs_the_budget_alone() =>
        Assert.All(BudgetDisc.Roll(Stations, Array.ConvertAll(Stations, _ => 18.0), 1.1, _ => 0), t => Assert.Equal(19.1, t, 12));

    [Theory]
    [InlineData(0.1)]
    [InlineData(-0.75)]
    public void A_sloping_line_needs_its_parallel(double slope)
    {
        var swept = Array.ConvertAll(Stations, s => 18 + (slope * s));
        var kept = BudgetDisc.Roll(Stations, swept, 2.5, _ => 0);
        for (int i = 0; i < kept.Length; i++)
        {
            Assert.Equal(swept[i] + (2.5 * Math.Sqrt(1 + (slope * slope))), kept[i], 9);
        }
    }

    [Fact]
    public void A_peak_is_rounded_by_the_disc()
    {
        var kept = BudgetDisc.Roll(Stations, Array.ConvertAll(Stations, s => 20 - Math.Abs(s - 50)), 5, _ => 0);
        Assert.Equal(25, kept[50], 9);
        Assert.Equal(20 + Math.Sqrt(25 - 9), kept[53], 9);
        Assert.Equal(20 - 10 + (5 * Math.Sqrt(2)), kept[60], 9);
    }

    [Fact]
    public void On_the_inside_of_a_curve_slopes_are_steeper_and_need_more()
    {
        var swept = Array.ConvertAll(Stations, s => 18 + (0.1 * s));
        double[] straight = BudgetDisc.Roll(Stations, swept, 1, _ => 0), inside = BudgetDisc.Roll(Stations, swept, 1, _ => 1 / 115.0);
        Assert.All(straight.Zip(inside), p => Assert.True(p.Second > p.First));
    }
}
