using FsCheck.Xunit;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>The nearest free place to one that is taken, against looking at every tenth of a millimetre.</summary>
public class FreePlaceProperties
{
    private const double Hair = 1e-6;

    [Property(MaxTest = 100)]
    public void It_is_free_and_none_that_is_free_is_nearer(int seed)
    {
        var random = new Random(seed);
        double Of(double low, double high) => low + (random.NextDouble() * (high - low));
        double least = Of(0, 20), most = least + Of(-2, 60), wanted = Of(-10, 90);
        (double From, double To)[] taken = [
            .. Enumerable.Range(0, random.Next(0, 6)).Select(_ => Of(-10, 80)).Select(at => (at, at + Of(0, 25))),
            (wanted - Of(0.2, 9), wanted + Of(0.2, 9))];
        bool Free(double s) => s > least - Hair && s < most + Hair && Array.TrueForAll(taken, t => s < t.From + Hair || s > t.To - Hair);
        double[] free = [.. Enumerable.Range(-100, 1200).Select(i => i / 10.0).Where(Free)];
        double? found = FreePlace.Nearest(wanted, taken, least, most);
        Assert.Equal(free.Length > 0, found is not null);
        if (found is { } place)
        {
            Assert.Equal(free.Min(s => Math.Abs(s - wanted)), Math.Abs(place - wanted), 0.1 + Hair);
            Assert.True(Free(place));
        }
    }

    /// <summary>What is told as free is free when it is typed in to a tenth of a millimetre, as it was told: rounded away from what it clears.</summary>
    [Fact]
    public void Places_are_told_to_a_tenth_away_from_what_they_clear()
    {
        Assert.Equal(30.1, FreePlace.Nearest(26, [(20, 30.04)], 19, 90)!.Value, Hair);
        Assert.Equal(19.9, FreePlace.Nearest(21, [(19.96, 30)], 10, 90)!.Value, Hair);
        Assert.Equal(10.1, FreePlace.Nearest(5, [], 10.02, 90)!.Value, Hair);
        Assert.Equal(89.9, FreePlace.Nearest(95, [], 10, 89.98)!.Value, Hair);
        Assert.Equal(30, FreePlace.Nearest(25.1, [(20, 30.0)], 19, 90)!.Value, Hair);
        Assert.Null(FreePlace.Nearest(5, [(0, 100)], 10, 90));
    }
}
