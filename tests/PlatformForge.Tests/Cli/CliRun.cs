using System.Text.Json;
using PlatformForge.Cli;
using PlatformForge.Cli.Terminals;
using PlatformForge.Units.Memories;

namespace PlatformForge.Tests.Cli;

/// <summary>One command line run in this process, its streams caught.</summary>
internal sealed record CliRun(int Exit, string Out, string Error)
{
    public static CliRun Of(params string[] args) => With(default, args);

    public static CliRun With(CancellationToken cancel, params string[] args) => Run(args, null, cancel);

    /// <summary>The same for a test that gives several commands about one project: what an earlier one found out is not found out again. That the answers are
    /// those of a run from nothing is held by the tests of the session.</summary>
    public static CliRun In(Memory memory, params string[] args) => Run(args, memory, CancellationToken.None);

    private static CliRun Run(string[] args, Memory? memory, CancellationToken cancel)
    {
        using StringWriter results = new() { NewLine = "\n" }, messages = new() { NewLine = "\n" };
        int exit = CommandLine.Run(args, new Terminal(results, messages), memory, cancel);
        var run = new CliRun(exit, results.ToString(), messages.ToString());

        // Whatever happens, nobody is shown a stack trace or a colour code in a file.
        Assert.DoesNotContain("   at PlatformForge", run.Out + run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', run.Out + run.Error);
        return run;
    }

    /// <summary>The one JSON object on stdout.</summary>
    public JsonElement Json()
    {
        Assert.Empty(Error);
        using var document = JsonDocument.Parse(Out);
        return document.RootElement.Clone();
    }
}
