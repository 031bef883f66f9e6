namespace PlatformForge.Exports.Folders;

/// <summary>
/// Carries out a record, or undoes it. Every file that gives way is set aside first, so that nothing is gone before the end; either way
/// may be broken off anywhere and begun again.
/// </summary>
/// <param name="folder">The output folder.</param>
/// <param name="area">The staging area in it.</param>
/// <param name="disk">Does the steps.</param>
internal sealed class FolderCommit(string folder, string area, FolderDisk disk)
{
    private const string WaitingName = "files", AsideName = "replaced";

    public string Place(string path) => Path.Combine(folder, path);

    /// <summary>Where a file waits to be put in place.</summary>
    public string Waiting(string path) => Path.Combine(area, WaitingName, path);

    /// <summary>Makes a folder and those above it.</summary>
    public void MakeFolders(string path)
    {
        if (!Directory.Exists(path))
        {
            MakeFolders(Path.GetDirectoryName(path)!);
            disk.MakeFolder(path);
        }
    }

    /// <summary>Puts in place what still waits, and takes away what is to go.</summary>
    public void Carry(CommitRecord record)
    {
        foreach (var file in record.Remove.Where(f => HashAt(Place(f.Path)) == f.Old))
        {
            SetAside(file.Path);
        }

        foreach (var file in record.Replace.Where(f => FolderDisk.Exists(Waiting(f.Path))))
        {
            MakeFolders(Path.GetDirectoryName(Place(file.Path))!);
            if (FolderDisk.Exists(Place(file.Path)))
            {
                SetAside(file.Path);
            }

            disk.Move(Waiting(file.Path), Place(file.Path));
        }

        foreach (var file in record.Remove)
        {
            RemoveEmpty(Path.GetDirectoryName(Place(file.Path))!);
        }
    }

    /// <summary>Puts back what was set aside, and takes back what was put in place.</summary>
    public void Undo(CommitRecord record)
    {
        foreach (var file in record.Replace.Reverse())
        {
            bool moved = !FolderDisk.Exists(Waiting(file.Path)) && FolderDisk.Exists(Place(file.Path)) && HashAt(Place(file.Path)) == file.New;
            if (FolderDisk.Exists(Aside(file.Path)))
            {
                disk.Move(Aside(file.Path), Place(file.Path));
            }
            else if (moved && file.Old is null)
            {
                disk.Move(Place(file.Path), Waiting(file.Path));
            }
        }

        foreach (var file in record.Remove.Where(f => FolderDisk.Exists(Aside(f.Path))))
        {
            MakeFolders(Path.GetDirectoryName(Place(file.Path))!);
            disk.Move(Aside(file.Path), Place(file.Path));
        }

        foreach (string made in record.Folders.Reverse().Select(Place).Where(IsEmpty))
        {
            disk.RemoveFolder(made);
        }
    }

    /// <summary>Files in the way of what is still to be done that are neither as the run found them nor as it leaves them: somebody changed them
    /// since.</summary>
    public IReadOnlyList<string> ChangedSince(CommitRecord record, bool undoing)
    {
        bool Touched(string path) => FolderDisk.Exists(undoing ? Aside(path) : Waiting(path));
        bool IsStrange(string path, string? old, string? next) => HashAt(Place(path)) is { } hash && hash != old && hash != next;
        return
        [
            .. record.Replace.Where(f => Touched(f.Path) && IsStrange(f.Path, f.Old, f.New)).Select(f => f.Path),
            .. record.Remove.Where(f => undoing && Touched(f.Path) && IsStrange(f.Path, f.Old, null)).Select(f => f.Path),
        ];
    }

    /// <summary>Whether every new file is there, waiting or in place, byte by byte. After a kill it always is; after a power cut it may not be.</summary>
    public bool IsWhole(CommitRecord record) => record.Replace.All(f => FolderDisk.Exists(Waiting(f.Path)) ? HashAt(Waiting(f.Path)) == f.New
        : FolderDisk.Exists(Place(f.Path)));

    /// <summary>SHA-256 of a file; null where there is none, empty for a link.</summary>
    public static string? HashAt(string path)
    {
        if (!FolderDisk.Exists(path))
        {
            return null;
        }

        return FolderDisk.IsLink(path) ? "" : FolderContents.HashOf(new FileInfo(path));
    }

    private string Aside(string path) => Path.Combine(area, AsideName, path);

    private void SetAside(string path)
    {
        MakeFolders(Path.GetDirectoryName(Aside(path))!);
        disk.Move(Place(path), Aside(path));
    }

    private void RemoveEmpty(string path)
    {
        for (string step = Path.GetFullPath(path); step != Path.GetFullPath(folder) && IsEmpty(step); step = Path.GetDirectoryName(step)!)
        {
            disk.RemoveFolder(step);
        }
    }

    private static bool IsEmpty(string path) => FolderDisk.IsFolder(path) && !Directory.EnumerateFileSystemEntries(path).Any();
}
