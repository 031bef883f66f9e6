namespace PlatformForge.Solids.Kernel;

/// <summary>The thread that helps with one solid at a time, and sleeps while there is none.</summary>
internal static class HelpingThread
{
    private static readonly SemaphoreSlim Wake = new(0);
    private static readonly Lock Start = new();

    private static SideBySide? wanted;
    private static bool isStarted;

    /// <summary>Asks for help; whoever asks last gets it next, as what was asked for before may be over by then.</summary>
    public static void Call(SideBySide work)
    {
        Volatile.Write(ref wanted, work);
        EnsureStarted();
        Wake.Release();
    }

    private static void EnsureStarted()
    {
        lock (Start)
        {
            if (!isStarted)
            {
                isStarted = true;
                new Thread(Serve) { IsBackground = true, Name = "solids" }.Start();
            }
        }
    }

    private static void Serve()
    {
        while (true)
        {
            Wake.Wait();
            Interlocked.Exchange(ref wanted, null)?.Help();
        }
    }
}
