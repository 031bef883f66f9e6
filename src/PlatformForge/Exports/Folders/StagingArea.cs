namespace PlatformForge.Exports.Folders;

/// <summary>
/// The folder in which files wait, inside the output folder so that renaming never crosses disks. Held by one run at a time;
/// gone when the run ends, well or badly, with every rename undone if one of them failed.
/// </summary>
internal sealed class StagingArea : IDisposable
{
    private const string LockName = "lock";

    private readonly string folder;
    private readonly string area;
    private readonly string replaced;
    private readonly FileStream hold;
    private readonly List<string> made = [];

    public StagingArea(string folder)
    {
        this.folder = folder;
        area = Path.Combine(folder, OutputFolder.StagingName);
        replaced = Path.Combine(area, "replaced");
        try
        {
            Make(area);
            hold = Take();
        }
        catch
        {
            UnmakeFolders();
            throw;
        }
    }

    /// <summary>Writes a file into the waiting room.</summary>
    public void Add(OutputFile file)
    {
        string path = Waiting(file.Path);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, file.Bytes);
    }

    /// <summary>A file read back from disk as it will be: from the waiting room, or from its place when it stays as it is.</summary>
    public OutputFile ReadBack(string path) =>
        new(path, File.ReadAllBytes(File.Exists(Waiting(path)) ? Waiting(path) : Place(path)));

    /// <summary>Renames the waiting files into their places and takes the stale ones away, or leaves all as it was.</summary>
    public void Commit(IReadOnlyList<OutputFile> files, IReadOnlyList<string> stale)
    {
        var undo = new Stack<Action>();
        try
        {
            foreach (string path in stale)
            {
                SetAside(path, undo);
            }

            foreach (var file in files)
            {
                string place = Place(file.Path);
                Make(Path.GetDirectoryName(place)!);
                SetAside(file.Path, undo);
                File.Move(Waiting(file.Path), place);
                undo.Push(() => File.Delete(place));
            }
        }
        catch
        {
            while (undo.TryPop(out var step))
            {
                step();
            }

            throw;
        }

        made.Clear(); // they are wanted now
        foreach (string path in stale)
        {
            RemoveEmpty(Path.GetDirectoryName(Place(path))!);
        }
    }

    public void Dispose()
    {
        hold.Dispose();
        Directory.Delete(area, recursive: true);
        UnmakeFolders();
    }

    private FileStream Take()
    {
        try
        {
            return new(Path.Combine(area, LockName), FileMode.OpenOrCreate, FileAccess.Write, FileShare.None);
        }
        catch (IOException fault) when (fault.GetType() == typeof(IOException) && File.Exists(Path.Combine(area, LockName)))
        {
            throw new StagingBusyException("Another run holds the staging area.", fault);
        }
    }

    private void SetAside(string path, Stack<Action> undo)
    {
        string place = Place(path), aside = Path.Combine(replaced, path);
        if (!File.Exists(place))
        {
            return;
        }

        Directory.CreateDirectory(Path.GetDirectoryName(aside)!);
        File.Move(place, aside, overwrite: true);
        undo.Push(() => File.Move(aside, place));
    }

    private string Place(string path) => Path.Combine(folder, path);

    private string Waiting(string path) => Path.Combine(area, path == LockName ? "lock.new" : path);

    /// <summary>Makes a folder and those above it, and remembers which were not there.</summary>
    private void Make(string path)
    {
        var missing = new Stack<string>();
        for (string? step = Path.GetFullPath(path); step is not null && !Directory.Exists(step); step = Path.GetDirectoryName(step))
        {
            missing.Push(step);
        }

        foreach (string step in missing)
        {
            Directory.CreateDirectory(step);
            if (step != Path.GetFullPath(area))
            {
                made.Add(step);
            }
        }
    }

    private void UnmakeFolders()
    {
        for (int i = made.Count - 1; i >= 0; i--)
        {
            if (Directory.Exists(made[i]) && !Directory.EnumerateFileSystemEntries(made[i]).Any())
            {
                Directory.Delete(made[i]);
            }
        }
    }

    private void RemoveEmpty(string path)
    {
        for (string step = Path.GetFullPath(path); step != Path.GetFullPath(folder) && Directory.Exists(step) && !Directory.EnumerateFileSystemEntries(step).Any(); step = Path.GetDirectoryName(step)!)
        {
            Directory.Delete(step);
        }
    }
}

/// <summary>The staging area is held by another run.</summary>
internal sealed class StagingBusyException : Exception
{
    public StagingBusyException()
    {
    }

    public StagingBusyException(string message)
        : base(message)
    {
    }

    public StagingBusyException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
