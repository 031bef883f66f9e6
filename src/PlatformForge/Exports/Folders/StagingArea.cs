using System.Security.Cryptography;
using PlatformForge.Exports.Files;

namespace PlatformForge.Exports.Folders;

/// <summary>
/// The folder in which files wait, inside the output folder so that renaming never crosses disks. Held by one run at a time.
/// What a stopped run left in it is finished or cleared by the next; it is gone when a run ends, unless a record in it is still to be carried out.
/// </summary>
internal sealed class StagingArea : IDisposable
{
    private const string LockName = "lock", RecordDraft = "commit.new";

    // Somebody else may let go of the area between two steps of taking it.
    private const int MostTries = 20;

    // The lock file is given a length by whoever holds it, by which the holder knows it for the one that stands there.
    private const int MostMark = 1 << 16;

    private readonly string folder;
    private readonly string area;
    private readonly FolderDisk disk;
    private readonly FolderCommit commit;
    private readonly FileStream hold;
    private readonly DiskQueue queue = new();
    private readonly List<string> made = [];
    private readonly HashSet<string> staged = new(StringComparer.Ordinal);

    public StagingArea(string folder, FolderDisk disk)
    {
        this.folder = folder;
        this.disk = disk;
        area = Of(folder);
        commit = new(folder, area, disk);
        try
        {
            hold = Take();
        }
        catch
        {
            // Another run may take the area between the look and the step: that is its own affair, and no reason to be told instead of ours.
            Quietly(UnmakeFolders);
            throw;
        }
    }

    public static string Of(string folder) => Path.Combine(folder, OutputFolder.StagingName);

    /// <summary>Whether a run was stopped, or is at work, between the moment that the folder became the new one and the end.</summary>
    public static bool HoldsRecord(string folder) => File.Exists(Path.Combine(Of(folder), CommitRecord.FileName))
        || File.Exists(Path.Combine(Of(folder), CommitRecord.UndoName));

    /// <summary>Finishes what a stopped run had committed, undoes what it was undoing, and clears what it had not committed.</summary>
    /// <param name="force">Whether files that were changed since then, and a record that cannot be read, stand in the way.</param>
    public void Settle(bool force)
    {
        foreach (string name in new[] { CommitRecord.UndoName, CommitRecord.FileName }.Where(n => File.Exists(Path.Combine(area, n))))
        {
            if (Read(name) is { } record)
            {
                Finish(record, name, force);
            }
            else if (!force)
            {
                throw new FolderFault(FolderFaults.NoRecord(folder, name));
            }

            disk.Delete(Path.Combine(area, name));
        }

        Clear(area);
    }

    /// <summary>Makes a file and lets it wait, unless the folder holds it already. Several may be made at a time.</summary>
    /// <param name="work">The file.</param>
    /// <param name="known">SHA-256 of what stands in its place; null when nothing does.</param>
    public OutputFile Add(FileWork work, string? known)
    {
        var (length, hash) = work.Write is { } write ? Streamed(work.Path, write, known) : Whole(work.Path, work.Make(), known);
        if (hash != known)
        {
            lock (staged)
            {
                staged.Add(work.Path);
            }
        }

        return new(work.Path, new DiskContents(folder, hash == known ? commit.Place(work.Path) : commit.Waiting(work.Path), length, hash));
    }

    /// <summary>Whether a file waits to be put in place.</summary>
    public bool Holds(string path) => staged.Contains(path);

    /// <summary>A file as it lies on the disk at this moment: in the waiting room, or in its place when it stays as it is.</summary>
    public OutputFile ReadBack(string path) => new(path, DiskContents.At(folder, staged.Contains(path) ? commit.Waiting(path) : commit.Place(path)));

    /// <summary>Puts the waiting files in their places and takes the stale ones away, or leaves all as it was.</summary>
    /// <param name="stale">Files to be taken away.</param>
    /// <param name="replace">The waiting files.</param>
    /// <param name="force">Whether a file may be replaced that was changed after it was looked at.</param>
    public void Commit(IReadOnlyList<RemovedFile> stale, IReadOnlyList<ReplacedFile> replace, bool force)
    {
        RefuseObstacles(stale, replace);
        queue.Await();
        var record = CommitRecord.Of(stale, replace, MissingFolders(replace));
        if (!force && commit.ChangedSince(record, undoing: false) is { Count: > 0 } changed)
        {
            throw new FolderFault(FolderContents.Changed(changed));
        }

        string draft = Path.Combine(area, RecordDraft), final = Path.Combine(area, CommitRecord.FileName), undo = Path.Combine(area, CommitRecord.UndoName);
        disk.Write(draft, record.ToBytes());
        disk.Move(draft, final);
        try
        {
            commit.Carry(record);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            try
            {
                disk.Move(final, undo);
                commit.Undo(record);
                disk.Delete(undo);
            }
            catch (Exception second) when (second is IOException or UnauthorizedAccessException)
            {
                throw new FolderFault(FolderFaults.Unfinished(folder, second.Message.TrimEnd('.')));
            }

            throw;
        }

        made.Clear(); // they are wanted now

        // A record that can't be taken away has nothing left to be done.
        Quietly(() => disk.Delete(final));
    }

    public void Dispose()
    {
        queue.Dispose();

        // What can't be cleared has no record, so that the next run clears it.
        try
        {
            Quietly(() =>
            {
                if (!HoldsRecord(folder))
                {
                    Clear(area);
                }
            });

            // Where an open file can be deleted it is, so that nobody takes hold of it after us.
            Quietly(() =>
            {
                if (!OperatingSystem.IsWindows())
                {
                    disk.Delete(Path.Combine(area, LockName));
                }
            });
        }
        finally
        {
            hold.Dispose();
        }

        Quietly(() =>
        {
            if (OperatingSystem.IsWindows())
            {
                disk.Delete(Path.Combine(area, LockName));
            }
        });
        Quietly(UnmakeFolders);
    }

    private (long Length, string Hash) Whole(string path, byte[] bytes, string? known)
    {
        string hash = OutputFolder.HashOf(bytes);
        if (hash != known)
        {
            disk.Write(Room(path), bytes, queue);
        }

        return (bytes.Length, hash);
    }

    private (long Length, string Hash) Streamed(string path, Action<Stream> write, string? known)
    {
        long length = 0;
        string hash = "", room = Room(path);
        disk.Write(room, stream =>
        {
            write(stream);
            (length, hash) = (stream.Length, DiskContents.HashOf(stream));
            return hash != known;
        }, queue);
        if (hash == known)
        {
            disk.Delete(room);
        }

        return (length, hash);
    }

    // Where a file may wait, its folder made.
    private string Room(string path)
    {
        string room = commit.Waiting(path);
        commit.MakeFolders(Path.GetDirectoryName(room)!);
        return room;
    }

    private static void Quietly(Action step)
    {
        try
        {
            step();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
        }
    }

    private CommitRecord? Read(string name)
    {
        var file = new FileInfo(Path.Combine(area, name));
        return file.LinkTarget is null && file.Length > 0 ? CommitRecord.Read(File.ReadAllBytes(file.FullName)) : null;
    }

    private void Finish(CommitRecord record, string name, bool force)
    {
        foreach (string path in record.Replace.Select(f => f.Path).Concat(record.Remove.Select(f => f.Path)))
        {
            RefuseLinks(path);
        }

        // After a power cut a waiting file may have lost its end; what was set aside is older, and whole.
        bool undoing = name == CommitRecord.UndoName || !commit.IsWhole(record);
        if (!force && commit.ChangedSince(record, undoing) is { Count: > 0 } changed)
        {
            throw new FolderFault(FolderFaults.ChangedSince(folder, changed));
        }

        try
        {
            if (undoing)
            {
                commit.Undo(record);
            }
            else
            {
                commit.Carry(record);
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new FolderFault(FolderFaults.Unfinished(folder, fault.Message.TrimEnd('.')));
        }
    }

    private void RefuseObstacles(IReadOnlyList<RemovedFile> stale, IReadOnlyList<ReplacedFile> replace)
    {
        var going = stale.Select(f => f.Path).ToHashSet(StringComparer.Ordinal);
        foreach (string path in replace.Select(f => f.Path))
        {
            RefuseLinks(path);
            if (Directory.Exists(commit.Place(path)) || Above(path).Any(step => File.Exists(commit.Place(step)) && !going.Contains(step)))
            {
                throw new FolderFault(FolderFaults.Obstacle(folder, path));
            }
        }
    }

    // Neither the place of a file nor any folder on the way to it may lead elsewhere.
    private void RefuseLinks(string path)
    {
        if (Above(path).Append(path).FirstOrDefault(step => FolderDisk.IsLink(commit.Place(step))) is { } link)
        {
            throw new FolderFault(FolderFaults.Link(folder, link));
        }
    }

    private string[] MissingFolders(IReadOnlyList<ReplacedFile> replace) =>
        [.. replace.SelectMany(f => Above(f.Path)).Distinct().Where(step => !Directory.Exists(commit.Place(step)))];

    // The folders on the way to a file, the outer before the inner.
    private static IEnumerable<string> Above(string path)
    {
        for (int slash = path.IndexOf('/', StringComparison.Ordinal); slash >= 0; slash = path.IndexOf('/', slash + 1))
        {
            yield return path[..slash];
        }
    }

    private FileStream Take()
    {
        string path = Path.Combine(area, LockName);
        for (int i = 0; i < MostTries; i++)
        {
            if (FolderDisk.IsLink(area) || FolderDisk.IsLink(path))
            {
                throw new FolderFault(FolderFaults.Link(folder, FolderDisk.IsLink(area) ? OutputFolder.StagingName
                    : OutputFolder.StagingName + "/" + LockName));
            }

            try
            {
                Make(area);
                var stream = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 0);
                if (Mark(stream, path))
                {
                    return stream;
                }

                stream.Dispose(); // its holder took the file away between our opening and holding it
            }
            catch (Exception gone) when (gone is DirectoryNotFoundException or FileNotFoundException && i + 1 < MostTries)
            {
                // The area was taken away under us; that a file to be made is not found means the same, where the area is back by now.
            }
            catch (IOException fault) when (fault.GetType() == typeof(IOException) && File.Exists(path))
            {
                throw new FolderFault(FolderFaults.Busy(folder));
            }
            catch (IOException fault) when (fault.GetType() == typeof(IOException) && i + 1 < MostTries)
            {
                // The lock was held when we opened it, or the area stood there when we made it, and its holder has taken it away since.
            }
        }

        throw new FolderFault(FolderFaults.Busy(folder));
    }

    // Gives the lock file a length and sees whether it is the one that stands there. Where the system refuses the length (no room, a limit on files), nobody
    // else
    // is at work, and no lock is left.
    private bool Mark(FileStream stream, string path)
    {
        int mark = RandomNumberGenerator.GetInt32(1, MostMark);
        try
        {
            disk.SetLength(stream, mark);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException)
        {
            stream.Dispose();
            Quietly(() => disk.Delete(path));
            throw new FolderFault(FolderFaults.Refusal(folder, fault));
        }

        return new FileInfo(path) is { Exists: true } standing && standing.Length == mark;
    }

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
            disk.MakeFolder(step);
            if (step != Path.GetFullPath(area))
            {
                made.Add(step);
            }
        }
    }

    // Links are taken away, never followed.
    private void Clear(string path)
    {
        foreach (string entry in Directory.EnumerateFileSystemEntries(path).Order(StringComparer.Ordinal).ToArray())
        {
            if (FolderDisk.IsFolder(entry))
            {
                Clear(entry);
                disk.RemoveFolder(entry);
            }
            else if (path != area || Path.GetFileName(entry) != LockName)
            {
                disk.Delete(entry);
            }
        }
    }

    private void UnmakeFolders()
    {
        foreach (string path in Enumerable.Reverse(made).Prepend(area).Where(p => FolderDisk.IsFolder(p) && !Directory.EnumerateFileSystemEntries(p).Any()))
        {
            disk.RemoveFolder(path);
        }
    }
}
