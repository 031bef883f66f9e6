using System.Diagnostics;
using System.Globalization;

namespace PlatformForge.Benchmarks;

/// <summary>What a command costs in a process of its own: wall and processor time, and how much of it goes into the start and into compiling.</summary>
internal static class ColdRuns
{
    private static readonly (string Name, string[] Arguments)[] Commands =
    [
        ("check", ["check"]), ("build --no-pictures", ["build", "--no-pictures"]), ("build", ["build"]),
    ];

    /// <summary>Runs the commands on a project, each so many times.</summary>
    /// <param name="program">PlatformForge.Cli.dll, as it was built or as it lies in an installed tool.</param>
    /// <param name="project">The project file.</param>
    /// <param name="repeats">How often.</param>
    public static void Report(string program, string project, int repeats)
    {
        string folder = Directory.CreateTempSubdirectory().FullName;
        Console.WriteLine($"{program} on {project}, {repeats} times each: ms, median and least");
        foreach (var (name, arguments) in Commands)
        {
            var walls = new List<double>();
            var last = new List<string>();
            for (int i = 0; i < repeats; i++)
            {
                string output = Path.Combine(folder, Path.GetRandomFileName());
                string[] more = arguments[0] == "build" ? ["--output", output] : [];
                var start = new ProcessStartInfo("dotnet", [program, arguments[0], project, .. arguments[1..], .. more])
                {
                    RedirectStandardError = true,
                    RedirectStandardOutput = true,
                    UseShellExecute = false
                };
                start.Environment["PLATFORMFORGE_TIMES"] = "1";
                long begun = Stopwatch.GetTimestamp();
                using var process = Process.Start(start)!;
                var said = process.StandardError.ReadToEndAsync();
                _ = process.StandardOutput.ReadToEnd();
                process.WaitForExit();
                walls.Add(Stopwatch.GetElapsedTime(begun).TotalMilliseconds);
                last = [.. said.Result.Split('\n').Where(l => l.Contains(" of them compiling", StringComparison.Ordinal))];
            }

            walls.Sort();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-22} {walls[walls.Count / 2],7:F0} {walls[0],7:F0}   the last of them:"));
            last.ForEach(l => Console.WriteLine("    " + l));
        }

        Directory.Delete(folder, recursive: true);
    }
}
