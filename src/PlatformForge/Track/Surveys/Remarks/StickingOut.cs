using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Remarks;

/// <summary>
/// Finds the offset from a string that is grossly misread, such as 21.9 for 219: distances along a string rise, so that the
/// track turns back on itself only where a figure is wrong.
/// </summary>
internal static class StickingOut
{
    // The figure at fault is looked for so many readings before and behind the place where the track turns back.
    private const int Window = 2;

    /// <summary>The reading that lies farthest from what its neighbours say, with the value that would fit.</summary>
    /// <param name="key">Key of the survey.</param>
    /// <param name="run">At least five offsets from one string, distances rising.</param>
    /// <param name="turn">Index of the reading at which the track turns back.</param>
    public static Finding Near(string key, IReadOnlyList<PlaceReading> run, int turn)
    {
        int from = Math.Max(0, turn - Window), to = Math.Min(run.Count - 1, turn + Window);
        int worst = Enumerable.Range(from, to - from + 1).MaxBy(i => Math.Abs(run[i].Ordinate!.Offset - Between(run, i)));
        var (reading, ordinate) = (run[worst], run[worst].Ordinate!);
        double unit = reading.Unit.Millimetres(), fitting = Expected(run, worst) / unit;
        return RunRule.At(reading, Finding.Error(
            "PF2143",
            key,
            Invariant($"The offset of {ordinate.Offset / unit:0.##} {reading.Unit.Sign()} at {ordinate.Distance:0.##} mm sticks out from its neighbours; ")
                + Invariant($"about {fitting:0.#} would fit."),
            Invariant($"Read it again: {fitting:0.#} {reading.Unit.Sign()} or so. Look for a decimal point out of place, a lost sign or two figures ")
                + "exchanged."));
    }

    // Straight on from, or between, the nearest two others: among neighbours of a wild figure it is the wild one that lies farthest off.
    private static double Between(IReadOnlyList<PlaceReading> run, int i) =>
        Through(run, i, i == 0 ? [1, 2] : i == run.Count - 1 ? [i - 1, i - 2] : [i - 1, i + 1]);

    /// <summary>The value of the polynomial through the four nearest others.</summary>
    private static double Expected(IReadOnlyList<PlaceReading> run, int i) =>
        Through(run, i, [.. Enumerable.Range(0, run.Count).Where(k => k != i).OrderBy(k => Math.Abs(k - i)).Take(i < 2 || i > run.Count - 3 ? 3 : 4)]);

    private static double Through(IReadOnlyList<PlaceReading> run, int i, int[] others)
    {
        double At(int k) => run[k].Ordinate!.Distance;
        return others.Sum(a => run[a].Ordinate!.Offset * others.Where(b => b != a).Aggregate(1.0, (w, b) => w * (At(i) - At(b)) / (At(a) - At(b))));
    }
}
