using System.Text.Json;
using PlatformForge.Cli;
using PlatformForge.Cli.Terminals;

namespace PlatformForge.Tests.Cli;

/// <summary>One command line run in this process, its streams caught.</summary>
internal sealed record CliRun(int Exit, string Out, string Error)
{
    public static CliRun Of(params string[] args) => With(default, args);

    public static CliRun With(CancellationToken cancel, params string[] args)
    {
        using StringWriter results = new() { NewLine = "\n" }, messages = new() { NewLine = "\n" };
        int exit = CommandLine.Run(args, new Terminal(results, messages), cancel);
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
