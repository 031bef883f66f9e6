using PlatformForge.Cli.Terminals;

namespace PlatformForge.Cli;

internal static class Program
{
    private static int Main(string[] args)
    {
        using var interrupt = new CancellationTokenSource();
        Console.CancelKeyPress += (_, press) =>
        {
            // The first Ctrl-C lets the run clean up after itself; the second ends the process as usual.
            press.Cancel = !interrupt.IsCancellationRequested;
            interrupt.Cancel();
        };
        return CommandLine.Run(args, Terminal.OfProcess(), interrupt.Token);
    }
}
