using System.Diagnostics;
using System.Globalization;

namespace PlatformForge.Benchmarks;

/// <summary>How the times of one piece of work spread over many runs, and what the collector had to do with the slow ones.</summary>
internal static class SpreadRuns
{
    // What it calls is compiled for good, by what was seen of it, only after some hundred runs: twenty runs after thirty others took half as long again.
    private const int Warm = 100;

    /// <summary>Runs the work and tells its times by the oldest generation that was collected meanwhile, ms.</summary>
    public static void Report(string name, Action work, int repeats)
    {
        var runs = new List<(double Wall, double Processor, double Pause, int Oldest, double Megabytes)>();
        for (int i = -Warm; i < repeats; i++)
        {
            int[] before = [.. Enumerable.Range(0, 3).Select(GC.CollectionCount)];
            var (pause, spent, bytes) = (GC.GetTotalPauseDuration(), Environment.CpuUsage.TotalTime, GC.GetTotalAllocatedBytes());
            long start = Stopwatch.GetTimestamp();
            work();
            double wall = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            int oldest = Enumerable.Range(0, 3).LastOrDefault(g => GC.CollectionCount(g) > before[g], -1);
            if (i >= 0)
            {
                runs.Add((wall, (Environment.CpuUsage.TotalTime - spent).TotalMilliseconds, (GC.GetTotalPauseDuration() - pause).TotalMilliseconds, oldest,
                    (GC.GetTotalAllocatedBytes() - bytes) / 1e6));
            }
        }

        Console.WriteLine($"{name}, {repeats} runs               wall: least   tenth  median  ninth tenth; processor: least  median; paused, MB new (medians)");
        Row("all", runs);
        foreach (var group in runs.GroupBy(r => r.Oldest).OrderBy(g => g.Key))
        {
            Row(group.Key < 0 ? "nothing collected" : string.Create(CultureInfo.InvariantCulture, $"generation {group.Key} collected"), [.. group]);
        }
    }

    private static void Row(string name, List<(double Wall, double Processor, double Pause, int Oldest, double Megabytes)> runs)
    {
        double At(Func<(double Wall, double Processor, double Pause, int Oldest, double Megabytes), double> of, double part) =>
            runs.Select(of).Order().ElementAt((int)(part * (runs.Count - 1)));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"  {name,-24}{runs.Count,5}  {At(r => r.Wall, 0),8:F1}{At(r => r.Wall, 0.1),8:F1}{At(r => r.Wall, 0.5),8:F1}{At(r => r.Wall, 0.9),8:F1}"
            + $"  {At(r => r.Processor, 0),8:F1}{At(r => r.Processor, 0.5),8:F1}  {At(r => r.Pause, 0.5),8:F1}{At(r => r.Megabytes, 0.5),8:F1}"));
    }
}
