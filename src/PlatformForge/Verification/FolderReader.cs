using PlatformForge.Exports.Files;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Verification;

/// <summary>Reads a finished output folder into memory, and nothing more: the only place of the room that touches files.</summary>
public static class FolderReader
{
    // A build that puts its files in place meanwhile takes a few hundredths of a second.
    private const int MostTries = 40;
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);

    /// <summary>
    /// Reads the manifest and every file it names, after whatever a stopped run left there was finished or cleared. Files that are not there, that are
    /// links, or that are longer or shorter than listed are left out for the verifier to miss. A folder that a build changes meanwhile is read anew.
    /// </summary>
    /// <returns>PF8001 when there is no folder, no manifest in it, or the system refuses to read; PF73xx where a stopped run cannot be brought to an
    /// end.</returns>
    public static Outcome<WrittenFolder> Read(string folder)
    {
        try
        {
            for (int i = 0; i < MostTries; i++)
            {
                if (OutputFolder.Settle(folder) is { Count: > 0 } unsettled)
                {
                    if (!unsettled.All(OutputFolder.IsOfAnotherRun))
                    {
                        return Outcome.Fault<WrittenFolder>(unsettled);
                    }
                }
                else
                {
                    var before = List(folder);
                    var read = Once(folder);
                    if (IsStill(folder, before, read.Value))
                    {
                        return read;
                    }
                }

                Thread.Sleep(Pause);
            }

            return Outcome.Fault<WrittenFolder>(Finding.Error("PF8040", "", Invariant($"A build is writing into '{folder}', so that it cannot be read whole."),
                "Wait until the build has ended.", FaultKind.Output));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Fault(Invariant($"'{folder}' cannot be read: {fault.Message.TrimEnd('.')}."));
        }
    }

    private static Outcome<WrittenFolder> Once(string folder)
    {
        var list = new FileInfo(Path.Combine(folder, Manifest.FileName));
        if (NoManifest(folder, list) is { } none)
        {
            return Fault(none);
        }

        var files = new List<OutputFile> { new(Manifest.FileName, File.ReadAllBytes(list.FullName)) };
        long taken = list.Length;
        var refused = new Dictionary<string, string>(StringComparer.Ordinal);
        var listed = new HashSet<string>(StringComparer.Ordinal) { Manifest.FileName };
        foreach (var file in ManifestForm.Read(files[0].Bytes, list.FullName).Value?.Files ?? [])
        {
            listed.Add(file.Path);
            taken += file.Bytes;
            if (file.Bytes < 0 || taken > InputLimits.FolderBytes)
            {
                return Fault(Invariant($"The files that {Manifest.FileName} in '{folder}' lists come to more than ")
                    + Invariant($"the limit of {InputLimits.Bytes(InputLimits.FolderBytes)}."));
            }

            if (Refusal(folder, file) is { } why)
            {
                refused[file.Path] = why;
            }
            else if (File.Exists(Path.Combine(folder, file.Path)))
            {
                files.Add(new(file.Path, file.Bytes == 0 ? [] : File.ReadAllBytes(Path.Combine(folder, file.Path))));
            }
        }

        return Outcome.Of(new WrittenFolder(files)
        {
            Refused = refused,
            Unlisted = [.. Prints(new(folder), "").Where(p => !listed.Contains(p)).Order(StringComparer.Ordinal)],
        });
    }

    // What keeps the manifest from being read; null where nothing does.
    private static string? NoManifest(string folder, FileInfo list)
    {
        if (!list.Exists || list.LinkTarget is not null || list.Length == 0)
        {
            return Directory.Exists(folder) ? Invariant($"'{folder}' holds no {Manifest.FileName}.") : Invariant($"There is no folder '{folder}'.");
        }

        return list.Length > InputLimits.JsonBytes
            ? Invariant($"{Manifest.FileName} in '{folder}' has {list.Length} bytes, over the limit of {InputLimits.JsonBytes}.")
            : null;
    }

    // Why a listed file is not read though something is there, in words that follow its name; null where it may be.
    private static string? Refusal(string folder, ManifestFile file)
    {
        if (ThroughLink(folder, file.Path))
        {
            return "is a link, or lies beyond one";
        }

        var place = new FileInfo(Path.Combine(folder, file.Path));
        return !place.Exists ? null
            : place.Length != file.Bytes ? Invariant($"is not as it was written: {place.Length} bytes for {file.Bytes}")
            : file.Bytes > InputLimits.FileBytes
            ? Invariant($"has {file.Bytes} bytes, over the limit of {InputLimits.Bytes(InputLimits.FileBytes)} for one file")
            : null;
    }

    // Nothing was put in place between the first look and the last.
    private static bool IsStill(string folder, (long Bytes, DateTime Written)? before, WrittenFolder? read) =>
        !OutputFolder.IsChanging(folder) && List(folder) == before
        && (read is null || File.ReadAllBytes(Path.Combine(folder, Manifest.FileName)).AsSpan().SequenceEqual(read[Manifest.FileName]));

    // Length and time of the manifest; null where there is none.
    private static (long Bytes, DateTime Written)? List(string folder) =>
        new FileInfo(Path.Combine(folder, Manifest.FileName)) is { Exists: true } list ? (list.Length, list.LastWriteTimeUtc) : null;

    private static bool ThroughLink(string folder, string path)
    {
        string place = folder;
        return path.Split('/').Any(step => new FileInfo(place = Path.Combine(place, step)).LinkTarget is not null);
    }

    // Everything that a slicer would take, in this folder and those within; links are not followed.
    private static IEnumerable<string> Prints(DirectoryInfo folder, string prefix)
    {
        foreach (var entry in folder.EnumerateFileSystemInfos())
        {
            if (entry is DirectoryInfo inner && entry.LinkTarget is null)
            {
                foreach (string path in entry.Name == OutputFolder.StagingName ? [] : Prints(inner, prefix + entry.Name + "/"))
                {
                    yield return path;
                }
            }
            else if (Path.GetExtension(entry.Name) is var end
                && (end.Equals(".stl", StringComparison.OrdinalIgnoreCase) || end.Equals(".3mf", StringComparison.OrdinalIgnoreCase)))
            {
                yield return prefix + entry.Name;
            }
        }
    }

    private static Outcome<WrittenFolder> Fault(string what) =>
        Outcome.Fault<WrittenFolder>(Finding.Error("PF8001", "", what, "Name a folder that this program built."));
}
