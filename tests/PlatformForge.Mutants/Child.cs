using System.Diagnostics;
using System.Globalization;

namespace PlatformForge.Mutants;

/// <summary>
/// A process that runs tests: first each test once, noting which mutants it comes past, then mutant after mutant until time is up. What a mutant breaks
/// ends the process and not the run: the parent notes a verdict for the one that was on and starts another.
/// </summary>
internal static class Child
{
    /// <summary>Exit code: everything asked for is done, or time is up.</summary>
    public const int Ready = 0;

    /// <summary>Exit code: a mutant or test took more processor than it was given.</summary>
    public const int TookTooLong = 11;

    /// <summary>Exit code: the next mutant wants a process of its own.</summary>
    public const int Again = 12;

    private const int MostBytes = 0x60000000;

    private static readonly TimeSpan Asleep = TimeSpan.FromMinutes(3);

    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(0.5);

    /// <summary>Starts one and waits for its end.</summary>
    public static int Start(string folder, IEnumerable<string> arguments, string log)
    {
        var start = new ProcessStartInfo("dotnet") { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string argument in arguments.Prepend("child").Prepend(Path.Combine(folder, "PlatformForge.Mutants.dll")))
        {
            start.ArgumentList.Add(argument);
        }

        start.Environment["DOTNET_GCHeapHardLimit"] = MostBytes.ToString("X", CultureInfo.InvariantCulture);
        start.Environment["DOTNET_DbgEnableMiniDump"] = "0";
        using var process = Process.Start(start)!;
        using var said = File.AppendText(log);
        process.OutputDataReceived += (_, line) => Say(line.Data);
        process.ErrorDataReceived += (_, line) => Say(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        process.WaitForExit();
        return process.ExitCode;

        void Say(string? line)
        {
            lock (start)
            {
                said.WriteLine(line);
            }
        }
    }

    /// <summary>What the process itself does.</summary>
    public static int Run(string[] args)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        var asked = Asked.Of(args);
        var trial = new Trial(AppContext.BaseDirectory);
        return asked.Command == "note" ? Noting.Run(asked, trial) : Trying.Run(asked, trial);
    }

    /// <summary>
    /// Ends the process when <paramref name="work"/> takes more seconds of processor than given (a busy machine makes nothing look endless), or sleeps.
    /// Seconds asleep are counted in beats and not by the clock, so that a run may be stopped and go on.
    /// </summary>
    public static T Within<T>(double seconds, Func<T> work)
    {
        var began = Environment.CpuUsage.TotalTime;
        int beats = 0;
        using var watch = new Timer(
            _ =>
            {
                if ((Environment.CpuUsage.TotalTime - began).TotalSeconds > seconds || ++beats * Beat > Asleep + TimeSpan.FromSeconds(20 * seconds))
                {
                    Environment.Exit(TookTooLong);
                }
            },
            null,
            Beat,
            Beat);
        return work();
    }
}
