using FsCheck.Xunit;
using PlatformForge.Platforms.Furniture;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Rows of ribs against a search over every row on a grid.</summary>
public class EvenRowTests
{
    // Grid of the search, mm; the stretches' ends lie on it.
    private const double Grid = 0.5;

    [Property(MaxTest = 60)]
    public void A_row_has_the_fewest_places_the_least_greatest_distance_and_is_pressed_against_what_makes_it_uneven(int seed)
    {
        var random = new Random(seed);
        double length = 40 + random.Next(120), pitch = 12 + random.Next(20);
        var free = Free(random, length, pitch);
        double[] row = EvenRow.Divide(0, length, pitch, free);
        double[] gaps = Gaps(row, length);
        Assert.All(row, x => Assert.Contains(free, f => x >= f.Low - 1e-9 && x <= f.High + 1e-9));
        Assert.All(gaps, g => Assert.InRange(g, 0, pitch + 1e-8));

        var (count, greatest) = Searched(length, pitch, free);
        Assert.Equal(count, row.Length);
        Assert.InRange(gaps.Max(), 0, greatest + 1e-8);

        // A place with unequal distances to its neighbours would stand nearer to the far one if it could.
        Assert.All(row, (x, i) => Assert.True(
            Math.Abs(gaps[i] - gaps[i + 1]) < 1e-6 || free.Exists(f => Math.Abs(x - (gaps[i] > gaps[i + 1] ? f.Low : f.High)) < 1e-6),
            $"{x} between {gaps[i]} and {gaps[i + 1]}"));
    }

    [Fact]
    public void What_is_wider_than_the_pitch_has_a_place_on_either_side_and_the_rest_keeps_it()
    {
        double[] row = EvenRow.Divide(0, 100, 20, [(0, 35), (70, 100)]);
        Assert.Equal([17.5, 35, 70, 85], row);
    }

    [Theory]
    [InlineData(30, 0)]
    [InlineData(30.01, 1)]
    [InlineData(600, 19)]
    public void Nothing_in_the_way_leaves_an_even_division(double length, int count)
    {
        double[] row = EvenRow.Divide(0, length, 30, [(0, length)]);
        Assert.Equal(count, row.Length);
        Assert.AllOrNone(row.Select((x, i) => (x, i)), r => Assert.Equal(length * (r.i + 1) / (count + 1), r.x, 1e-6));
    }

    // Free stretches with what blocks between them never wider than the pitch.
    private static List<(double Low, double High)> Free(Random random, double length, double pitch)
    {
        var free = new List<(double, double)>();
        for (double at = Grid * random.Next(1, 8); at < length;)
        {
            double high = Math.Min(length, at + (Grid * random.Next(0, 50)));
            free.Add((at, high));
            at = high + (Grid * random.Next(1, (int)(pitch / Grid / 1.5)));
        }

        return free;
    }

    private static double[] Gaps(double[] row, double length)
    {
        double[] all = [0, .. row, length];
        return [.. all.Zip(all.Skip(1), (a, b) => b - a)];
    }

    // Dynamic programming over the grid: fewest places, then the least greatest distance.
    private static (int Count, double Greatest) Searched(double length, double pitch, List<(double Low, double High)> free)
    {
        double[] places = [0, .. Enumerable.Range(1, (int)(length / Grid) - 1).Select(i => i * Grid).Where(x => free.Exists(f => x >= f.Low && x <= f.High)),
            length];
        int count = Fewest(places, pitch);
        double greatest = places.SelectMany(_ => Enumerable.Range(1, (int)(pitch / Grid)).Select(k => k * Grid)).Distinct().Order()
            .First(d => Fewest(places, d) == count);
        return (count, greatest);
    }

    private static int Fewest(double[] places, double most)
    {
        int[] fewest = new int[places.Length];
        for (int i = 1; i < places.Length; i++)
        {
            fewest[i] = int.MaxValue;
            for (int k = i - 1; k >= 0 && places[i] - places[k] <= most + 1e-9; k--)
            {
                fewest[i] = Math.Min(fewest[i], fewest[k] == int.MaxValue ? int.MaxValue : fewest[k] + (i == places.Length - 1 ? 0 : 1));
            }
        }

        return fewest[^1];
    }
}
