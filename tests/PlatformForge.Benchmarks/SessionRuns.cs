using System.Diagnostics;
using System.Globalization;
using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Projects;
using PlatformForge.Projects.Overrides;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Memories;
using PlatformForge.Units.Memories;

namespace PlatformForge.Benchmarks;

/// <summary>
/// What a figure costs that was never seen before, in a process that has worked for a while: the pieces, everything, and both from nothing. And, on demand, the
/// law of the memory at any length.
/// </summary>
internal static class SessionRuns
{
    private static readonly (string What, Func<double, string[]> Set)[] Edits =
    [
        ("ramp length", x => [Of("platform[0].ramps.end.length", 90 + (30 * x))]),
        ("deck thickness", x => [Of("platform[0].deck.thickness", 1.4 + x)]),
        ("a board's place", x => [Of("platform[0].board[0].at", 590 + (15 * x))]),
        ("a fence's pitch", x => [Of("platform[0].fence.pitch", 27 + (10 * x))]),
        // a style has few values: a figure goes with it
        ("edge style", x => [$"platform[0].face.edge={((int)(x * 1e4) % 2 == 0 ? "faired" : "uniform")}", Of("clearance.running", 0.8 + (0.4 * x))]),
        ("a vehicle's width", x => [Of("vehicle[0].width", 33.5 + x)]),
    ];

    private const int Warm = 40;

    private static string Of(string key, double value) => string.Create(CultureInfo.InvariantCulture, $"{key}={value:R}");

    /// <summary>Times, median and least of the wall and median of the processor over all threads, ms.</summary>
    public static void Report(int repeats)
    {
        string text = PresetShelf.Sample("pendlewick")!;
        Console.WriteLine($"session: Pendlewick, {repeats} values never seen before each, on {Environment.ProcessorCount} cores; ms: "
            + "wall median, least, processor median");
        Head();
        foreach (var (what, set) in Edits)
        {
            Row(what, repeats, x => ProjectReader.Read(text, "pendlewick.toml", null, [.. set(x).Select(s => Override.Parse(s).Value!)]).Value!);
        }

        Readings(Math.Max(3, repeats / 4));
    }

    /// <summary>What each file costs to make, alone, in a process that has worked for a while: the dearest first, median ms.</summary>
    public static void Files(int repeats)
    {
        var costs = new Dictionary<string, List<double>>(StringComparer.Ordinal);
        for (int i = 0; i < repeats + Warm; i++)
        {
            var project = ProjectReader.Read(PresetShelf.Sample("pendlewick")!, "pendlewick.toml", null,
                [Override.Parse(Edits[0].Set((i + 0.5) / (repeats + Warm))[0]).Value!]).Value!;
            var work = OutputFiles.Work(DesignRun.Design(project, RunWatch.None).Value!, new() { Pictures = false }, Memory.None, default);
            foreach (var file in work.Held.Concat(work.Shown))
            {
                long start = Stopwatch.GetTimestamp();
                file.Make();
                (costs.TryGetValue(file.Path, out var known) ? known : costs[file.Path] = []).Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }
        }

        foreach (var (path, times) in costs.OrderByDescending(c => Median(c.Value.Skip(c.Value.Count / 2))))
        {
            Console.WriteLine($"{path,-44}{Median(times.Skip(times.Count / 2)),8:F2}");
        }
    }

    // One reading of a survey that was never seen before.
    private static void Readings(int repeats)
    {
        using var files = new SampleFolder("pendlewick-string");
        string text = PresetShelf.Sample("pendlewick-string")!, file = Path.Combine(files.Path!, "survey/pendlewick-string.csv"),
            readings = File.ReadAllText(file);
        Console.WriteLine($"Pendlewick by a string, {repeats} each");
        Row("one reading", repeats, x =>
        {
            File.WriteAllText(file, readings.Replace("100,46.5", string.Create(CultureInfo.InvariantCulture, $"100,{46.4 + (0.2 * x):R}"),
                StringComparison.Ordinal));
            return ProjectReader.Read(text, "pendlewick-string.toml", files.Path).Value!;
        }, warm: 4);
        File.WriteAllText(file, readings);
        Row("ramp length", repeats, x => ProjectReader.Read(text, "pendlewick-string.toml", files.Path, [Override.Parse(Edits[0].Set(x)[0]).Value!]).Value!,
            warm: 4);
    }

    private static void Head() => Console.WriteLine(
        $"{"",-20}{"pieces that changed",24}{"everything",24}{"and held to trains",24}{"and drawn",24}"
        + $"{"pieces from nothing",24}{"everything from nothing",24}");

    // Pieces are those of a page; everything is the whole design; then the verdict, and all files but pictures.
    private static void Row(string what, int repeats, Func<double, ProjectSpec> read, int warm = Warm)
    {
        var memory = new Memory();
        var plain = new OutputChoice { Pictures = false };
        var columns = new List<(double Wall, double Processor)>[] { [], [], [], [], [], [] };
        for (int i = 0; i < repeats + warm; i++)
        {
            var project = read((i + 0.5) / (repeats + warm));
            RunWatch known = new(_ => { }, default) { Memory = memory };
            Dossier? dossier = null;
            Action[] runs =
            [
                () => DesignRun.Shapes(project, known), () => dossier = DesignRun.Design(project, known).Value!,
                () => TrialVerdict.Of(dossier!, memory: memory),
                () => OutputFiles.Of(dossier!, plain, memory: memory), () => DesignRun.Shapes(project, RunWatch.None),
                () => DesignRun.Design(project, RunWatch.None),
            ];
            for (int run = 0; run < runs.Length; run++)
            {
                var spent = Environment.CpuUsage.TotalTime;
                long start = Stopwatch.GetTimestamp();
                runs[run]();
                double wall = Stopwatch.GetElapsedTime(start).TotalMilliseconds, processor = (Environment.CpuUsage.TotalTime - spent).TotalMilliseconds;
                if (i >= warm)
                {
                    // What comes after the pieces is what it costs on top of them: told as the sum.
                    bool after = run is 1 or 2 or 3;
                    columns[run].Add(after ? (columns[run - 1][^1].Wall + wall, columns[run - 1][^1].Processor + processor) : (wall, processor));
                }
            }
        }

        Console.WriteLine($"{what,-20}"
            + string.Concat(columns.Select(c => $"  {Median(c.Select(t => t.Wall)),8:F1}{c.Min(t => t.Wall),7:F1}{Median(c.Select(t => t.Processor)),7:F1}")));
    }

    // With sets and two tracks, an island, a lamp, a survey whose readings are turned too, walls and a trestle.
    private static readonly (string Name, TurnedKeys? Keys)[] LawSamples =
    [
        ("pendlewick", null), ("pendlewick-sets", null), ("walls", TurnedKeys.Walls), ("thornhithe", null), ("emberlow", null), ("pendlewick-string", null),
        ("trestle", TurnedKeys.Trestle), ("sandhope", null), ("straight-halt", null), ("tawnybrook", TurnedKeys.Walls),
    ];

    private static string TextOf(string sample) => sample switch
    {
        "walls" => FinishedHalts.Walls,
        "trestle" => FinishedHalts.Trestle,
        _ => PresetShelf.Sample(sample)!,
    };

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
            var (sample, keys) = LawSamples[seed % LawSamples.Length];
            using var files = new SampleFolder(sample);
            var edits = new RandomEdits(TextOf(sample), files.Path, seed, any: true, keys);
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

        Console.WriteLine($"session law: {done} edits up to seed {seed - 1}, {made} designs compared byte by byte, {stopped} runs stopped on the way, {wrong} "
            + "differ");
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
