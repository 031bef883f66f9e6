namespace PlatformForge.Exports.Folders;

/// <summary>
/// The few steps by which a folder is changed, each of which the system does wholly or not at all. Every change of a folder goes through here, so that a
/// test can end a run before any of them.
/// </summary>
internal class FolderDisk
{
    /// <summary>The system's own files.</summary>
    public static FolderDisk Real { get; } = new();

    /// <summary>Whether something of that name is there; a link is, wherever it leads.</summary>
    public static bool Exists(string path) => File.Exists(path) || IsLink(path);

    /// <summary>Whether it is a link, to whatever, broken or not.</summary>
    public static bool IsLink(string path) => new FileInfo(path).LinkTarget is not null;

    /// <summary>Whether it is a folder, and not a link to one.</summary>
    public static bool IsFolder(string path) => Directory.Exists(path) && !IsLink(path);

    public void MakeFolder(string path)
    {
        Before("make the folder " + path);
        Directory.CreateDirectory(path);
    }

    public void RemoveFolder(string path)
    {
        Before("remove the folder " + path);
        Directory.Delete(path);
    }

    /// <summary>Renames a file, over another one if need be. A link is renamed as such.</summary>
    public void Move(string from, string to)
    {
        Before("move " + to);
        File.Move(from, to, overwrite: true);
    }

    public void Delete(string path)
    {
        Before("delete " + path);
        File.Delete(path);
    }

    /// <summary>Writes a new file and waits until the system has handed it to the disk.</summary>
    /// <param name="path">Where.</param>
    /// <param name="bytes">All of it.</param>
    /// <param name="queue">Where it waits for the disk; null waits for it here.</param>
    public void Write(string path, byte[] bytes, DiskQueue? queue = null)
    {
        bool Whole(Stream stream)
        {
            stream.Write(bytes);
            return true;
        }

        Write(path, Whole, queue);
    }

    /// <summary>The same piece by piece.</summary>
    /// <param name="path">Where.</param>
    /// <param name="fill">Fills it; its answer is whether the file is wanted. What is not wanted, or was not filled to its end, need not be waited for, and
    /// is to be deleted.</param>
    /// <param name="queue">Where it waits for the disk; without one it is waited for here, and on Windows always: nobody could read it meanwhile.</param>
    public void Write(string path, Func<Stream, bool> fill, DiskQueue? queue = null)
    {
        Before("begin " + path);
        Stream? stream = Open(path);
        try
        {
            Before("fill " + path);
            if (fill(stream))
            {
                stream.Flush();
                stream = Flushes && stream is FileStream file && Left(file, queue) ? null : stream;
            }
        }
        finally
        {
            stream?.Dispose();
        }
    }

    /// <summary>Gives a file a length.</summary>
    public virtual void SetLength(FileStream file, long length) => file.SetLength(length);

    /// <summary>Begins a new file.</summary>
    protected virtual Stream Open(string path) => new DiskFile(path, Buffer);

    private const int Buffer = 1 << 16; // bytes

    // Whether a file is left to the queue, which closes it.
    private static bool Left(FileStream file, DiskQueue? queue)
    {
        if (queue is not null && !OperatingSystem.IsWindows() && queue.Takes(file))
        {
            return true;
        }

        DiskFlush.Of(file);
        return false;
    }

    /// <summary>Whether a file is waited for until it is on the disk: what the promise needs where a system may lose power. A kill loses nothing that was
    /// written.</summary>
    protected virtual bool Flushes => true;

    /// <summary>Called before every step.</summary>
    protected virtual void Before(string step)
    {
    }
}
