using System.Diagnostics;
using System.Globalization;

namespace PlatformForge.Benchmarks;

/// <summary>
/// What long platforms, fences, boards and many platforms cost: each of <see cref="ScaleProjects"/> goes through <c>check</c> and <c>build</c> in a process of
/// its own, and its time and largest memory are held against what is asked (docs/decisions/0058-streamed-builds.md).
/// </summary>
internal static class ScaleRuns
{
    private const double MostMegabytes = 400;
    private const double Unbound = double.PositiveInfinity;

    // Seconds one waits, on two cores with nothing else to do; half of what the first of its kind took where that was told.
    private static readonly (string Project, double Check, double Build)[] Asked =
    [
        ("length-1250", Unbound, Unbound), ("length-2500", Unbound, Unbound), ("length-5000", Unbound, Unbound), ("length-10000", 3, 9),
        ("gaps-250", Unbound, Unbound), ("gaps-502", Unbound, Unbound), ("gaps-1000", Unbound, 15),
        ("boards-225", Unbound, Unbound), ("boards-450", Unbound, Unbound), ("boards-900", Unbound, 8.5),
        ("platforms-50", Unbound, Unbound), ("platforms-100", Unbound, Unbound), ("platforms-200", 10, Unbound),
    ];

    /// <summary>Runs those whose name contains a word.</summary>
    /// <param name="program">PlatformForge.Cli.dll, compiled ahead as it is packed.</param>
    /// <param name="word">Part of the names; empty runs all.</param>
    /// <returns>How many were over what is asked.</returns>
    public static int Report(string program, string word)
    {
        string folder = Directory.CreateTempSubdirectory("platformforge-scale").FullName;
        int over = 0;
        try
        {
            ScaleProjects.Write(folder);
            Console.WriteLine("project          command  exit   seconds  asked  processor     MB  asked");
            foreach (var (project, check, build) in Asked.Where(a => a.Project.Contains(word, StringComparison.Ordinal)))
            {
                foreach (string command in new[] { "check", "build" })
                {
                    string[] output = command == "build" ? ["--output", Path.Combine(folder, "out")] : [];
                    over += Run(program, project, command, command == "check" ? check : build,
                        [command, "-q", Path.Combine(folder, project + ".toml"), .. output]);
                }

                Directory.Delete(Path.Combine(folder, "out"), recursive: true);
            }

            return over;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static int Run(string program, string project, string command, double asked, string[] arguments)
    {
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(new ProcessStartInfo("dotnet", [program, .. arguments])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var told = Task.WhenAll(process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        double most = 0, processor = 0;
        while (!process.WaitForExit(10))
        {
            process.Refresh();
            try
            {
                (most, processor) = (Math.Max(most, process.PeakWorkingSet64 / 1048576.0), process.TotalProcessorTime.TotalSeconds);
            }
            catch (InvalidOperationException)
            {
                break; // it has just ended
            }
        }

        process.WaitForExit();
        double seconds = clock.Elapsed.TotalSeconds;
        _ = told.Result;
        bool holds = process.ExitCode == 0 && seconds <= asked && most <= MostMegabytes;
        string time = double.IsFinite(asked) ? asked.ToString("F1", CultureInfo.InvariantCulture) : "-";
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{project,-16} {command,-7} {process.ExitCode,5} {seconds,9:F1} {time,6} {processor,10:F1} {most,6:F0} {MostMegabytes,6:F0} "
                + $" {(holds ? "" : "OVER")}"));
        return holds ? 0 : 1;
    }
}
