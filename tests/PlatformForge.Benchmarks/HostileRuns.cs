using System.Diagnostics;
using System.Globalization;
using System.Text;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Projects;
using PlatformForge.Projects.Presets;
using PlatformForge.Tests.Verification;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;

namespace PlatformForge.Benchmarks;

/// <summary>
/// Hostile input against the promise of docs/limits.md: each case runs the command line as a process of its own, and its processor time, largest
/// memory and exit code are told. Then as many random mutations of files of every kind as are asked for are read in this process: none may throw.
/// </summary>
internal static class HostileRuns
{
    private const double MostSeconds = 5, MostMegabytes = 500, KilledAfter = 120;

    private static readonly string[] Scraps = ["[", "]", "[[", "{", "}", "=", ",", ";", "\"", "\"\"\"", "#", "\n", "\\u12", "nan", "1e308", "-1e999", "<g>",
        "</g>", "]]>", "0\nARC\n", "\0", "é"];

    // What a short run takes of the cases, and by how much less large folders are spoilt then.
    private const int Every = 3, Less = 10;

    /// <param name="seed">Seed of the mutations.</param>
    /// <param name="count">How many of each kind.</param>
    /// <param name="few">Whether only every third case is run.</param>
    /// <returns>How many cases broke the promise.</returns>
    public static int Report(int seed, int count, bool few = false)
    {
        string folder = Directory.CreateTempSubdirectory("platformforge-hostile").FullName;
        try
        {
            Console.WriteLine($"hostile input: at most {MostSeconds} s of processor time, {MostMegabytes} MB, and no exit code 1");
            int broken = Cases(folder).Where((_, i) => !few || i % Every == 0).Concat(Folders(folder, few)).Sum(c => Run(c.Name, c.Arguments));
            int thrown = Mutations(seed, count);
            Console.WriteLine($"{broken} cases broke the promise; {thrown} of {4 * count} mutations (seed {seed}) threw");
            return broken + thrown;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static IEnumerable<(string Name, string[] Arguments)> Cases(string folder)
    {
        string good = PresetShelf.Sample("pendlewick")!;
        (string, string[]) Project(string name, string text)
        {
            string file = Path.Combine(folder, name.Replace(' ', '-') + ".toml");
            File.WriteAllText(file, text);
            return (name, ["check", "-q", file]);
        }

        (string, string[]) Survey(string name, string kind, string end, string text)
        {
            File.WriteAllText(Path.Combine(folder, name.Replace(' ', '-') + end), text);
            return Project(name, Measured(kind, name.Replace(' ', '-') + end));
        }

        yield return Project("20,000 dots", Repeat("a.", 20_000) + "a = 1");
        yield return Project("100,000 headings", string.Concat(Enumerable.Range(0, 100_000).Select(i => $"[a{i}]\n")));
        yield return Project("9,000 headings", good + string.Concat(Enumerable.Range(0, 9000).Select(i => $"[x.a{i}]\n")));
        yield return Project("60,000 unknown keys", string.Concat(Enumerable.Range(0, 60_000).Select(i => $"key{i} = 1\n")));
        yield return Project("100,000 brackets", "a = " + Repeat("[", 100_000));
        yield return Project("a number of 900,000 digits", "a = " + Repeat("9", 900_000));
        foreach (string figure in new[] { "pivots = 1e-9", "pivots = 1", "width = 1e-308", "width = 0.01", "end_trim = 1" })
        {
            string key = figure.Split(' ')[0];
            yield return Project(figure, key == "end_trim" ? good.Replace("fit = 0.2", "fit = 0.2\n" + figure) : Replaced(good, key, figure));
        }

        yield return Survey("svg style of 300,000 elements", "drawing", ".svg", Svg($"<style>{Repeat("<a>", 300_000)}{Repeat("</a>", 300_000)}</style>"));
        yield return Survey("svg of 300,000 groups", "drawing", ".svg", Svg(Repeat("<g>", 300_000) + Repeat("</g>", 300_000)));
        yield return Survey("svg of 1,000,000 attributes", "drawing", ".svg",
            Svg($"<path {string.Concat(Enumerable.Range(0, 1_000_000).Select(i => $"a{i}=\"1\" "))}/>"));
        yield return Survey("svg of 1,000,000 curves", "drawing", ".svg", Svg($"<path d=\"{Repeat("M0 0c1 9 2 -9 3 0", 1_000_000)}\"/>"));
        yield return Survey("svg with a style of 16 MB", "drawing", ".svg", Svg($"<path style=\"{Repeat("a:b;", 4_000_000)}\" d=\"M0 0L1000 0\"/>"));
        yield return Survey("dxf arc of 1e300 degrees", "drawing", ".dxf", Dxf("0\nARC\n8\n0\n10\n0\n20\n0\n40\n600\n50\n0\n51\n1e300\n"));
        yield return Survey("dxf of 1,200,000 pairs", "drawing", ".dxf", Dxf("0\nLWPOLYLINE\n8\n0\n" + Repeat("10\n1\n20\n0\n", 600_000)));
        yield return Survey("dxf of 60,000 lines", "drawing", ".dxf", Dxf(Repeat("0\nLINE\n8\n0\n10\n0\n20\n0\n11\n600\n21\n0\n", 60_000)));
        var random = new Random(1);
        yield return Survey("150 readings with 5 mm scatter", "points", ".csv", Rows(150, i => (10.0 * i, random.NextDouble() * 10)));
        yield return Survey("3,000 readings of waves", "points", ".csv", Rows(3000, i => (10.0 * i, (40 * Math.Sin(i / 30.0)) + (0.4 * random.NextDouble()))));
        yield return Survey("90,000 bad rows", "points", ".csv", "x;y\n" + Repeat("a;b\n", 90_000));
        yield return Survey("a row of 19 MB", "points", ".csv", "x;y\n" + Repeat(";", 19_000_000));
    }

    // Each spoilt copy is made when its turn comes and taken away after the next: some are large.
    private static IEnumerable<(string Name, string[] Arguments)> Folders(string folder, bool few)
    {
        string built = Path.Combine(folder, "built"), copy = Path.Combine(folder, "copy"), project = Path.Combine(folder, "halt.toml");
        File.WriteAllText(project, PresetShelf.Sample("straight-halt")!);
        yield return ("build to be spoilt", ["build", "-q", project, "--output", built]);
        foreach (var (name, spoil) in HostileFolders.Cases(few ? Less : 1).Where((_, i) => !few || i % Every == 0))
        {
            foreach (string file in Directory.EnumerateFiles(built, "*", SearchOption.AllDirectories))
            {
                string to = Path.Combine(copy, Path.GetRelativePath(built, file));
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(file, to, overwrite: true);
            }

            spoil(copy);
            yield return (name, ["verify", copy]);
            Directory.Delete(copy, recursive: true);
        }
    }

    private static int Run(string name, string[] arguments)
    {
        string tool = Path.GetFullPath("src/PlatformForge.Cli/bin/Release/net10.0/PlatformForge.Cli.dll");
        using var process = Process.Start(new ProcessStartInfo("dotnet", [tool, .. arguments])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true
        })!;
        var told = Task.WhenAll(process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        var clock = Stopwatch.StartNew();
        double most = 0, seconds = 0;
        while (!process.WaitForExit(20))
        {
            process.Refresh();
            try
            {
                (most, seconds) = (Math.Max(most, process.PeakWorkingSet64 / 1048576.0), process.TotalProcessorTime.TotalSeconds);
            }
            catch (InvalidOperationException)
            {
                break; // it has just ended
            }

            if (clock.Elapsed.TotalSeconds > KilledAfter)
            {
                process.Kill();
            }
        }

        process.WaitForExit();
        int letters = told.Result.Sum(t => t.Length);
        bool holds = process.ExitCode is not (1 or > 127 or < 0) && seconds <= MostSeconds && most <= MostMegabytes && letters < 20_000;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{name,-40} exit {process.ExitCode,3} {seconds,6:F1} s {most,6:F0} MB {letters,7} letters  {(holds ? "" : "BROKEN")}"));
        return holds ? 0 : 1;
    }

    private static int Mutations(int seed, int count)
    {
        var random = new Random(seed);
        byte[] stl = new byte[84 + 500];
        stl[80] = 10;
        int thrown = 0;
        for (int i = 0; i < count; i++)
        {
            string project = Mutated(random, PresetShelf.Sample("pendlewick")!), table = Mutated(random, Rows(30, r => (10.0 * r, 0))),
                drawing = Mutated(random, Svg("<g><path d=\"M0 0c1 9 2 -9 3 0A5 6 7 0 1 8 9\"/></g>"));
            byte[] bytes = [.. stl.Select(b => random.Next(40) == 0 ? (byte)random.Next(256) : b)];
            foreach (var read in new Action[]
            {
                () => ProjectReader.Read(project, "x"),
                () => SurveyReader.Read(new PointsSpec("up", "k", [new("x.csv", table, MeasuredLine.Centre)], 0.5)),
                () => SurveyReader.Read(new DrawingSpec("up", "k", [new("x.svg", drawing, MeasuredLine.Centre)], 0.5, DrawingFormat.Svg, null)),
                () => (StlReader.Read(bytes, "x"), ThreeMfReader.Read(bytes, "x")).ToString(),
            })
            {
                try
                {
                    read();
                }
#pragma warning disable CA1031 // whatever a reader throws is what is looked for
                catch (Exception fault)
#pragma warning restore CA1031
                {
                    thrown++;
                    Console.WriteLine($"mutation {i}: {fault.GetType().Name}: {fault.Message}");
                }
            }
        }

        return thrown;
    }

    private static string Mutated(Random random, string text)
    {
        for (int i = random.Next(1, 6); i > 0; i--)
        {
            int at = random.Next(text.Length), end = Math.Min(text.Length, at + random.Next(40));
            text = random.Next(4) switch
            {
                0 => text[..at] + Scraps[random.Next(Scraps.Length)] + text[at..],
                1 => text[..at] + text[end..],
                2 => text[..at] + Repeat(text[at..end], random.Next(1, 300)) + text[end..],
                _ => text[..at] + Scraps[random.Next(Scraps.Length)] + text[end..],
            };
        }

        return text;
    }

    private static string Replaced(string text, string key, string figure)
    {
        int at = text.IndexOf("\n" + key + " = ", StringComparison.Ordinal) + 1;
        return text[..at] + figure + text[text.IndexOf('\n', at)..];
    }

    private static string Measured(string kind, string file) => $$"""
        layout = { name = "Hostile", scale = "4mm", rail_top = 8 }
        clearance = { running = 1 }
        track = [{ name = "up", survey = { kind = "{{kind}}", file = "{{file}}", ruler_error = 0.5, unit = "mm" } }]
        vehicle = [{ name = "coach", length = 200, pivots = 140, width = 34 }]
        platform = [{ name = "p", face = { track = "up", side = "left", from = 400, to = 800 } }]
        """;

    private static string Rows(int count, Func<int, (double X, double Y)> at) =>
        "x;y\n" + string.Concat(Enumerable.Range(0, count).Select(at).Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:F2};{p.Y:F2}\n")));

    private static string Svg(string inside) => "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"1000mm\" height=\"1000mm\" viewBox=\"0 0 1000 "
        + $"1000\">{inside}</svg>";

    private static string Dxf(string entities) => $"0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n";

    private static string Repeat(string text, int times) => new StringBuilder(text.Length * times).Insert(0, text, times).ToString();
}
