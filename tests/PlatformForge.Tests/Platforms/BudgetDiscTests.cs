using FsCheck.Xunit;
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

    /// <summary>Of two stations as of a hundred: both are ends of the line, which goes on straight beyond them.</summary>
    [Fact]
    public void Two_stations_are_a_line()
    {
        double[] kept = BudgetDisc.Roll([0, 1], [18, 18.75], 2.5, _ => 0);
        Assert.Equal([18 + (2.5 * 1.25), 18.75 + (2.5 * 1.25)], kept, (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact]
    public void A_peak_is_rounded_by_the_disc()
    {
        var kept = BudgetDisc.Roll(Stations, Array.ConvertAll(Stations, s => 20 - Math.Abs(s - 50)), 5, _ => 0);

        // Stations lie over the arc by no more than its versine over one station: 1²/8 of its second derivative, which is (1 + m²)^1.5 / 5 up to the slope m of
        // 1.
        double versine = Math.Pow(2, 1.5) / 5 / 8;
        Assert.InRange(kept[50], 25, 25 + versine);
        Assert.InRange(kept[53], 20 + Math.Sqrt(25 - 9), 20 + Math.Sqrt(25 - 9) + versine);
        Assert.Equal(20 - 10 + (5 * Math.Sqrt(2)), kept[60], 9);
    }

    /// <summary>Every point of the line and every place beside it, in steps of a fortieth of a station.</summary>
    [Property(MaxTest = 20)]
    public void The_join_between_stations_is_nowhere_within_the_disc(int seed)
    {
        const int Fine = 40;
        var random = new Random(seed);
        double budget = 0.2 + (3 * random.NextDouble()), steep = random.NextDouble();
        double reach = 18;
        double[] swept = [.. Stations[..20].Select(_ => reach += steep * (random.NextDouble() - 0.5))];
        double[] kept = BudgetDisc.Roll(Stations[..20], swept, budget, _ => 0);
        double Join(double[] line, int place) => line[place / Fine]
            + (place % Fine == 0 ? 0 : (line[(place / Fine) + 1] - line[place / Fine]) * (place % Fine) / Fine);
        for (int at = 0; at <= 19 * Fine; at++)
        {
            for (int from = 0; from <= 19 * Fine; from++)
            {
                double aside = (at - from) / (double)Fine;
                Assert.True(Math.Abs(aside) > budget || Join(kept, at) >= Join(swept, from) + Math.Sqrt((budget * budget) - (aside * aside)) - 1e-9);
            }
        }
    }

    [Fact]
    public void On_the_inside_of_a_curve_slopes_are_steeper_and_need_more()
    {
        var swept = Array.ConvertAll(Stations, s => 18 + (0.1 * s));
        double[] straight = BudgetDisc.Roll(Stations, swept, 1, _ => 0), inside = BudgetDisc.Roll(Stations, swept, 1, _ => 1 / 115.0);
        Assert.All(straight.Zip(inside), p => Assert.True(p.Second > p.First));
    }
}
