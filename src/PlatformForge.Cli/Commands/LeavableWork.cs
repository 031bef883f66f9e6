using System.Runtime.ExceptionServices;
using PlatformForge.Projects.Watches;

namespace PlatformForge.Cli.Commands;

/// <summary>
/// Work on a thread of its own, so that Ctrl-C ends the command at once, however long a step of the work may take. Work that is writing is never left: it
/// stops by itself, and cleans up.
/// </summary>
internal static class LeavableWork
{
    // Bytes. As much as the main thread has where systems are generous.
    private const int Stack = 16 << 20;

    public static T Run<T>(Func<T> work, WritingGate gate, CancellationToken cancel)
        where T : class
    {
        if (!cancel.CanBeCanceled)
        {
            return work();
        }

        cancel.ThrowIfCancellationRequested();
        T? result = null;
        ExceptionDispatchInfo? fault = null;
        using var done = new ManualResetEventSlim();
        var thread = new Thread(() => Do(work, ref result, ref fault, done), Stack) { IsBackground = true };
        thread.Start();
        if (WaitHandle.WaitAny([done.WaitHandle, cancel.WaitHandle]) == 1 && gate.TryClose())
        {
            throw new OperationCanceledException(cancel);
        }

        thread.Join();
        fault?.Throw();
        return result!;
    }

    private static void Do<T>(Func<T> work, ref T? result, ref ExceptionDispatchInfo? fault, ManualResetEventSlim done)
    {
        try
        {
            result = work();
        }
#pragma warning disable CA1031 // thrown again on the thread that waits
        catch (Exception e)
#pragma warning restore CA1031
        {
            fault = ExceptionDispatchInfo.Capture(e);
        }

        try
        {
            done.Set();
        }
        catch (ObjectDisposedException)
        {
            // Nobody waits any more.
        }
    }
}
