using System.Runtime.InteropServices;
using PlatformForge.Cli.Terminals;

namespace PlatformForge.Cli;

internal static class Program
{
    private static int Main(string[] args)
    {
        using var interrupt = new CancellationTokenSource();
        void Stop(PosixSignalContext signal)
        {
            // The first of these lets the run clean up after itself; the second ends the process as usual.
            signal.Cancel = !interrupt.IsCancellationRequested;
            interrupt.Cancel();
        }

        using var pressed = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        using var ended = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        using var hungUp = PosixSignalRegistration.Create(PosixSignal.SIGHUP, Stop);
        return CommandLine.Run(args, Terminal.OfProcess(), cancel: interrupt.Token);
    }
}
