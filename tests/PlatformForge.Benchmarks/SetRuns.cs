using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using static System.FormattableString;

namespace PlatformForge.Benchmarks;

/// <summary>
/// What the sets of files cost that are made on request, in processes of their own: the plain build and the one with everything by turns, so that both meet the
/// same machine; and the full-size paper of a platform of 10 m.
/// </summary>
internal static partial class SetRuns
{
    private const string Long = "length-10000";

    /// <summary>Runs a project with the usual sets, with each further one and with all.</summary>
    /// <param name="program">PlatformForge.Cli.dll.</param>
    /// <param name="project">The project file.</param>
    /// <param name="repeats">How often each.</param>
    public static void Report(string program, string project, int repeats)
    {
        const string Usual = "prints,pictures,drawings,tables,report,masks";
        string[] sets = [Usual, Usual + ",paper", Usual + ",sheet", Usual + ",gauges", "all"];
        string folder = Directory.CreateTempSubdirectory().FullName;
        var runs = sets.ToDictionary(s => s, _ => new List<(double Wall, double Processor)>());
        for (int i = 0; i < repeats; i++)
        {
            foreach (string set in sets)
            {
                runs[set].Add(Run(program, ["build", project, "--output", Path.Combine(folder, Path.GetRandomFileName()), "--sets", set, "--quiet"]));
            }
        }

        Console.WriteLine(Invariant($"{project}, {repeats} times each, ms: median and least of the wall's clock, of the processor; ")
            + "over the usual sets by the medians");
        var plain = runs[Usual];
        foreach (var (set, times) in runs)
        {
            string name = set == Usual ? "usual sets" : set.Replace(Usual + ",", "with ", StringComparison.Ordinal);
            double wall = Median(times, t => t.Wall) - Median(plain, t => t.Wall);
            double processor = Median(times, t => t.Processor) - Median(plain, t => t.Processor);
            Line(name, times, Invariant($"  {wall,7:+0;-0} {processor,7:+0;-0}"));
        }

        ScaleProjects.Write(folder);
        List<(double, double)> paper =
            [.. Enumerable.Range(0, repeats)
                .Select(_ =>
                    Run(program, ["paper", Path.Combine(folder, Long + ".toml"), "--output", Path.Combine(folder, Path.GetRandomFileName()), "--quiet"]))];
        Line("paper of 10 m, whole command", paper, "");
        Directory.Delete(folder, recursive: true);
    }

    private static void Line(string name, List<(double Wall, double Processor)> times, string more) => Console.WriteLine(
        Invariant($"{name,-30} {Median(times, t => t.Wall),7:F0} {times.Min(t => t.Wall),7:F0} ")
        + Invariant($"{Median(times, t => t.Processor),7:F0} {times.Min(t => t.Processor),7:F0}{more}"));

    private static double Median(List<(double Wall, double Processor)> times, Func<(double Wall, double Processor), double> of) =>
        times.Select(of).Order().ElementAt(times.Count / 2);

    private static (double Wall, double Processor) Run(string program, string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", [program, .. arguments]) { UseShellExecute = false, RedirectStandardError = true };
        start.Environment["PLATFORMFORGE_TIMES"] = "1"; // a process that has ended can no longer be asked: it tells its own
        long begun = Stopwatch.GetTimestamp();
        using var process = Process.Start(start)!;
        string told = process.StandardError.ReadToEnd();
        process.WaitForExit();
        double wall = Stopwatch.GetElapsedTime(begun).TotalMilliseconds;
        return process.ExitCode == 0 && Spent().Match(told) is { Success: true } spent
            ? (wall, double.Parse(spent.Groups[1].Value, CultureInfo.InvariantCulture))
            : throw new InvalidOperationException(Invariant($"{string.Join(' ', arguments)}\n{told}"));
    }

    [GeneratedRegex(@"processor (\d+) ms")]
    private static partial Regex Spent();
}
