using System.Diagnostics;

namespace PlatformForge.Benchmarks;

/// <summary>Median and least of repeated runs, ms, and the least processor time of one over all threads, after a warm-up long enough for the compiler
/// to have settled: on a busy machine the processor time tells more than the clock.</summary>
internal readonly record struct Timing(double Median, double Least, double Processor)
{
    // A method is compiled for good after thirty calls and a pause of a tenth of a second; the methods it calls come after it.
    private const int SettledRuns = 40;
    private const double SettledMilliseconds = 1500;

    public static Timing Of(Action work, int repeats)
    {
        long begin = Stopwatch.GetTimestamp();
        for (int i = 0; i < 3 || (i < SettledRuns && Stopwatch.GetElapsedTime(begin).TotalMilliseconds < SettledMilliseconds); i++)
        {
            work();
        }

        var times = new double[repeats];
        double processor = double.PositiveInfinity;
        for (int i = 0; i < repeats; i++)
        {
            var spent = Environment.CpuUsage.TotalTime;
            long start = Stopwatch.GetTimestamp();
            work();
            times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            processor = Math.Min(processor, (Environment.CpuUsage.TotalTime - spent).TotalMilliseconds);
        }

        Array.Sort(times);
        return new(times[repeats / 2], times[0], processor);
    }
}
