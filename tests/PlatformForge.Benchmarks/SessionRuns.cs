using System.Diagnostics;
using System.Globalization;
using PlatformForge.Projects;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Tests.Memories;
using PlatformForge.Units.Memories;

namespace PlatformForge.Benchmarks;

/// <summary>
/// What a figure costs that was never seen before, in a process that has worked for a while: the pieces, everything, and both from nothing. And, on demand, the law of the
/// memory at any length.
/// </summary>
internal static class SessionRuns
{
    private static readonly (string What, Func<double, string> Set)[] Edits =
    [
        ("ramp length", x => $"platform[0].ramps.end.length={(90 + (30 * x)).ToString("R", CultureInfo.InvariantCulture)}"),
        ("deck thickness", x => $"platform[0].deck.thickness={(1.4 + x).ToString("R", CultureInfo.InvariantCulture)}"),
        ("a socket's place", x => $"platform[0].board[0].at={(590 + (15 * x)).ToString("R", CultureInfo.InvariantCulture)}"),
        ("edge style", x => $"platform[0].face.edge={(x < 0.5 ? "faired" : "uniform")}"),
    ];

    private const int Warm = 40;

    /// <summary>Times, least and median, ms: wall, with the processor time of all threads beside it.</summary>
    public static void Report(int repeats)
    {
        string text = PresetShelf.Sample("pendlewick")!;
        Console.WriteLine($"session: Pendlewick, {repeats} values never seen before each, on {Environment.ProcessorCount} cores");
        Console.WriteLine("                        pieces that changed      all, remembering      pieces from nothing      all from nothing   ms: median, least, processor");
        foreach (var (what, set) in Edits)
        {
            var memory = new Memory();
            var columns = new List<(double Wall, double Processor)>[] { [], [], [], [] };
            for (int i = 0; i < repeats + Warm; i++)
            {
                // The style has two values: it is turned together with a figure that is new each time.
                double x = (i + 0.5) / (repeats + Warm);
                string[] sets = what == "edge style" ? [set(i % 2), $"clearance.running={(0.8 + (0.4 * x)).ToString("R", CultureInfo.InvariantCulture)}"] : [set(x)];
                var project = ProjectReader.Read(text, "pendlewick.toml", null, [.. sets.Select(s => Override.Parse(s).Value!)]).Value!;
                RunWatch known = new(_ => { }, default) { Memory = memory };
                Action[] runs = [() => DesignRun.Shapes(project, known), () => DesignRun.Design(project, known), () => DesignRun.Shapes(project, RunWatch.None), () => DesignRun.Design(project, RunWatch.None)];
                for (int run = 0; run < runs.Length; run++)
                {
                    var spent = Environment.CpuUsage.TotalTime;
                    long start = Stopwatch.GetTimestamp();
                    runs[run]();
                    double wall = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
                    if (i >= Warm)
                    {
                        columns[run].Add((wall, (Environment.CpuUsage.TotalTime - spent).TotalMilliseconds));
                    }
                }
            }

            Console.WriteLine($"{what,-20}" + string.Concat(columns.Select(c => $"  {Median(c.Select(t => t.Wall)),7:F1} {c.Min(t => t.Wall),6:F1} {Median(c.Select(t => t.Processor)),6:F1}")));
        }
    }

    // With sets and two tracks, an island, a lamp, a survey whose readings are turned too.
    private static readonly string[] LawSamples = ["pendlewick", "pendlewick-sets", "pendlewick", "thornhithe", "emberlow", "pendlewick-string", "sandhope", "straight-halt"];

    /// <summary>Random edits of any keys, with runs stopped anywhere; each held, byte by byte, against a run from nothing.</summary>
    /// <param name="count">How many edits.</param>
    /// <param name="seed">First seed; twelve edits each.</param>
    /// <param name="seconds">Ends after so long, whatever is left.</param>
    /// <returns>How many differed.</returns>
    public static int Law(int count, int seed, double seconds)
    {
        long begun = Stopwatch.GetTimestamp();
        int wrong = 0, stopped = 0, made = 0, done = 0;
        bool IsOver() => done >= count || Stopwatch.GetElapsedTime(begun).TotalSeconds > seconds;
        for (; !IsOver(); seed++)
        {
            string sample = LawSamples[seed % LawSamples.Length];
            using var files = new SampleFolder(sample);
            var edits = new RandomEdits(PresetShelf.Sample(sample)!, files.Path, seed, any: true);
            for (int i = 0; i < 12 && !IsOver(); i++, done++)
            {
                if (edits.Step() is { } difference)
                {
                    wrong++;
                    Console.WriteLine($"seed {seed}, {sample}, step {i + 1}: {difference}");
                }
            }

            (stopped, made) = (stopped + edits.Stopped, made + edits.Made);
        }

        Console.WriteLine($"session law: {done} edits up to seed {seed - 1}, {made} designs compared byte by byte, {stopped} runs stopped on the way, {wrong} differ");
        return wrong;
    }

    // A sample's files in a folder of their own; no folder where it has none.
    private sealed class SampleFolder : IDisposable
    {
        public SampleFolder(string sample)
        {
            if (PresetShelf.FilesOf(sample) is { Count: > 0 } files && files.Any(f => f.Path.EndsWith(".csv", StringComparison.Ordinal)))
            {
                Path = Directory.CreateTempSubdirectory().FullName;
                foreach (var (path, text) in files)
                {
                    string full = System.IO.Path.Combine(Path, path);
                    Directory.CreateDirectory(System.IO.Path.GetDirectoryName(full)!);
                    File.WriteAllText(full, text);
                }
            }
        }

        public string? Path { get; }

        public void Dispose()
        {
            if (Path is not null)
            {
                Directory.Delete(Path, recursive: true);
            }
        }
    }

    private static double Median(IEnumerable<double> figures)
    {
        double[] sorted = [.. figures.Order()];
        return sorted[sorted.Length / 2];
    }
}
