namespace PlatformForge.Projects.Watches;

/// <summary>Through which a run goes to write, so that whoever stops it knows whether it may simply be left where it is.</summary>
public sealed class WritingGate
{
    private readonly Lock key = new();
    private int inside;
    private bool closed;

    /// <summary>Does what writes; once the gate is closed nothing more is done.</summary>
    public T Through<T>(Func<T> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        lock (key)
        {
            if (closed)
            {
                throw new OperationCanceledException();
            }

            inside++;
        }

        try
        {
            return work();
        }
        finally
        {
            lock (key)
            {
                inside--;
            }
        }
    }

    /// <summary>Closes the gate for good unless somebody writes at this moment.</summary>
    /// <returns>Whether it is closed now: then the run may be left where it is.</returns>
    public bool TryClose()
    {
        lock (key)
        {
            return closed |= inside == 0;
        }
    }
}
