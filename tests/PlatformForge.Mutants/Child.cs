using System.Diagnostics;
using System.Globalization;

namespace PlatformForge.Mutants;

/// <summary>A process that runs classes of tests with one mutant switched on: what one mutant leaves behind in statics is not the next one's.</summary>
internal static class Child
{
    /// <summary>Exit code of a run in which a test failed.</summary>
    public const int TestFailed = 10;

    /// <summary>Number of no mutant, for a run that notes which ones it comes past.</summary>
    public const int Noting = -2;

    private static readonly TimeSpan Asleep = TimeSpan.FromMinutes(15);

    private const int MostBytes = 0x60000000;

    /// <summary>Exit code of a run that took more processor than it was given: a mutant that loops without end.</summary>
    public const int TookTooLong = 11;

    private const string Given = "PLATFORMFORGE_SECONDS";

    /// <summary>What the process itself does.</summary>
    public static int Run(string[] types)
    {
        double given = double.Parse(Environment.GetEnvironmentVariable(Given) ?? "1e9", CultureInfo.InvariantCulture);
        using var watch = new Timer(
            _ =>
            {
                if (Environment.CpuUsage.TotalTime.TotalSeconds > given)
                {
                    Environment.Exit(TookTooLong);
                }
            },
            null,
            TimeSpan.FromSeconds(1),
            TimeSpan.FromSeconds(1));
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        using var run = new ClassRun();
        bool all = types.All(run.Pass);
        Console.WriteLine(all ? $"passed {run.Passed}" : run.Failed);
        if (all)
        {
            Console.WriteLine(Environment.CpuUsage.TotalTime.TotalSeconds.ToString(CultureInfo.InvariantCulture));
            var reached = typeof(Units.Finding).Assembly.GetType("PlatformForge.MutantSwitch")!.GetMethod("Reached")!.Invoke(null, null);
            Console.WriteLine(string.Join(' ', (IEnumerable<int>)reached!));
        }

        return all ? 0 : TestFailed;
    }

    /// <summary>Starts it and waits. Seconds given are the processor's, so that a busy machine makes nothing look endless; what sleeps is stopped by the clock.</summary>
    /// <returns>Exit code (null when it was stopped at the limit) and what it said: of a run that passed also its seconds of processor and the mutants it came past.</returns>
    public static (int? Exit, string[] Said) Start(string folder, int mutant, IEnumerable<string> types, double seconds)
    {
        var start = new ProcessStartInfo("dotnet") { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string argument in types.Prepend("child").Prepend(Path.Combine(folder, "PlatformForge.Mutants.dll")))
        {
            start.ArgumentList.Add(argument);
        }

        start.Environment["PLATFORMFORGE_MUTANT"] = mutant.ToString(CultureInfo.InvariantCulture);
        start.Environment[Given] = seconds.ToString(CultureInfo.InvariantCulture);
        start.Environment["DOTNET_GCHeapHardLimit"] = MostBytes.ToString("X", CultureInfo.InvariantCulture);
        start.Environment["DOTNET_DbgEnableMiniDump"] = "0";
        using var process = Process.Start(start)!;
        var said = process.StandardOutput.ReadToEndAsync();
        _ = process.StandardError.ReadToEndAsync();
        bool ended = process.WaitForExit(Asleep);
        if (!ended)
        {
            process.Kill(entireProcessTree: true);
            process.WaitForExit();
        }

        return ended ? (process.ExitCode, said.Result.Split('\n')) : (null, []);
    }
}
