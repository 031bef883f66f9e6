using System.Diagnostics;
using System.Runtime;
using static System.FormattableString;

namespace PlatformForge.Cli.Terminals;

/// <summary>
/// Where the time of a command goes, for those who work on that: with the variable PLATFORMFORGE_TIMES set, a line a stage on stderr at the end, with the
/// share of it in which methods were compiled. Wall times, ms.
/// </summary>
internal sealed class StageTimes
{
    private readonly List<(string Name, TimeSpan Wall, TimeSpan Compiling, long Methods)> marks = [];
    private readonly DateTime begun;

    private StageTimes()
    {
        using var process = Process.GetCurrentProcess();
        begun = process.StartTime;
    }

    /// <summary>A clock, or null where nobody asked for one.</summary>
    public static StageTimes? IfAsked() => string.IsNullOrEmpty(Environment.GetEnvironmentVariable("PLATFORMFORGE_TIMES")) ? null : new();

    /// <summary>What follows belongs to a stage of this name.</summary>
    public void Mark(string stage)
    {
#pragma warning disable RS0030 // no result depends on it
        var now = DateTime.Now;
#pragma warning restore RS0030
        marks.Add((stage, now - begun, JitInfo.GetCompilationTime(), JitInfo.GetCompiledMethodCount()));
    }

    /// <summary>Writes what was measured.</summary>
    public void Tell(TextWriter to)
    {
        Mark("");
        for (int i = 0; i + 1 < marks.Count; i++)
        {
            var (from, until) = (marks[i], marks[i + 1]);
            to.WriteLine(Invariant($"{(until.Wall - from.Wall).TotalMilliseconds,6:0} ms, {(until.Compiling - from.Compiling).TotalMilliseconds,5:0} of them ")
                + Invariant($"compiling {until.Methods - from.Methods,5} methods: {from.Name}"));
        }

        using var process = Process.GetCurrentProcess();
        to.WriteLine(Invariant($"{marks[^1].Wall.TotalMilliseconds,6:0} ms, {marks[^1].Compiling.TotalMilliseconds,5:0} of them ")
            + Invariant($"compiling {marks[^1].Methods,5} methods: all, {marks[0].Wall.TotalMilliseconds:0} ms to get here; ")
            + Invariant($"processor {process.TotalProcessorTime.TotalMilliseconds:0} ms, {GC.GetTotalAllocatedBytes() / 1e6:0} MB in {GC.CollectionCount(0)} ")
            + Invariant($"collections of {GC.GetTotalPauseDuration().TotalMilliseconds:0} ms"));
    }
}
