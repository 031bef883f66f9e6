namespace PlatformForge.Exports.Folders;

/// <summary>
/// Files that are written and not yet on the disk. The system is waited for by a thread of its own, one file after another, while the next are being made:
/// each takes some milliseconds in which a core would stand idle. Whoever needs them on the disk asks for all of them.
/// </summary>
internal sealed class DiskQueue : IDisposable
{
    // A system lets a program hold a thousand files open or so; a disk so far behind is waited for.
    private const int Most = 16;

    private readonly Queue<FileStream> files = new();
    private Thread? waiting;
    private Exception? fault;

    /// <summary>Takes a file whose every byte has been handed to the system, and closes it once the disk has it; not where many wait already.</summary>
    public bool Takes(FileStream file)
    {
        lock (files)
        {
            if (files.Count >= Most)
            {
                return false;
            }

            files.Enqueue(file);
            if (waiting is null)
            {
                waiting = new(Work) { IsBackground = true, Name = "waiting for the disk" };
                waiting.Start();
            }

            return true;
        }
    }

    /// <summary>Waits until all files are on the disk.</summary>
    /// <exception cref="IOException">The system could not write one of them.</exception>
    public void Await()
    {
        Finish();
        if (fault is not null)
        {
            throw new IOException(fault.Message, fault);
        }
    }

    /// <summary>Waits until no file is held open; whether the disk took them is nobody's concern any more.</summary>
    public void Dispose() => Finish();

    private void Finish()
    {
        Thread? last;
        lock (files)
        {
            last = waiting;
        }

        last?.Join();
    }

    // Ends when there is nothing left to wait for.
    private void Work()
    {
        while (Next() is { } file)
        {
            try
            {
                using (file)
                {
                    DiskFlush.Of(file);
                }
            }
            catch (Exception refused) when (refused is IOException or UnauthorizedAccessException or ObjectDisposedException)
            {
                fault ??= refused;
            }
        }
    }

    private FileStream? Next()
    {
        lock (files)
        {
            if (files.TryDequeue(out var file))
            {
                return file;
            }

            waiting = null;
            return null;
        }
    }
}
