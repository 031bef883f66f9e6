namespace PlatformForge.Solids.Kernel;

/// <summary>The thread that helps with one solid at a time, and sleeps while there is none.</summary>
internal static class HelpingThread
{
    private static readonly SemaphoreSlim Wake = new(0);
    private static readonly Lock Start = new();

    private static SideBySide? served;
    private static bool isStarted;

    /// <summary>Asks for help; there is none where another solid has it.</summary>
    public static void Call(SideBySide work)
    {
        if (Interlocked.CompareExchange(ref served, work, null) is null)
        {
            EnsureStarted();
            Wake.Release();
        }
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
            served?.Help();
            Volatile.Write(ref served, null);
        }
    }
}
