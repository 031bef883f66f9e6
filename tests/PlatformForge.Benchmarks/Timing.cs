using System.Diagnostics;

namespace PlatformForge.Benchmarks;

/// <summary>Median and least of repeated runs, ms, after a warm-up long enough for the compiler to have settled.</summary>
internal readonly record struct Timing(double Median, double Least)
{
    public static Timing Of(Action work, int repeats)
    {
        for (int i = 0; i < Math.Max(3, repeats / 3); i++)
        {
            work();
        }

        var times = new double[repeats];
        for (int i = 0; i < repeats; i++)
        {
            long start = Stopwatch.GetTimestamp();
            work();
            times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        Array.Sort(times);
        return new(times[repeats / 2], times[0]);
    }
}
