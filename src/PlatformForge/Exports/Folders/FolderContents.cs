using PlatformForge.Exports.Manifests;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Folders;

/// <summary>What lies in an output folder before a run, and whose it is.</summary>
internal sealed class FolderContents
{
    private const int NamedAtMost = 3;

    private readonly Dictionary<string, string> hashes = new(StringComparer.Ordinal); // of every file found, by path
    private readonly Dictionary<string, List<string>> known = new(StringComparer.Ordinal); // what our manifests say
    private readonly List<string> links = [];

    /// <summary>Files that a manifest of ours lists and that are as it says, sorted.</summary>
    public IEnumerable<string> Ours => hashes.Where(f => IsOurs(f.Key, f.Value)).Select(f => f.Key).Order(StringComparer.Ordinal);

    public static FolderContents Of(string folder)
    {
        var contents = new FolderContents();
        contents.Walk(new(folder), "");

        // A run that died while renaming left its own list waiting: what it had renamed by then is ours too.
        contents.Learn(Path.Combine(folder, Manifest.FileName), isCurrent: true);
        contents.Learn(Path.Combine(folder, OutputFolder.StagingName, Manifest.FileName), isCurrent: false);
        return contents;
    }

    public string? HashOf(string path) => hashes.GetValueOrDefault(path);

    /// <summary>Why the folder may not be written to without being forced.</summary>
    public IReadOnlyList<Finding> Objections(IReadOnlyList<OutputFile> files)
    {
        var wanted = files.ToDictionary(f => f.Path, f => f, StringComparer.Ordinal);
        var changed = hashes.Where(f => known.ContainsKey(f.Key) && !IsOurs(f.Key, f.Value))
            .Where(f => !(wanted.TryGetValue(f.Key, out var file) && OutputFolder.HashOf(file.Bytes) == f.Value))
            .Select(f => f.Key).Order(StringComparer.Ordinal).ToArray();
        List<Finding> findings = [.. ForeignFiles()];
        if (changed.Length > 0)
        {
            findings.Add(Finding.Error("PF7304", "", Invariant($"The output folder holds {Count(changed)} changed since written: {Named(changed)}."), "Move what you changed elsewhere, or force it to be replaced.", FaultKind.Output));
        }

        return findings;
    }

    /// <summary>The objection that does not depend on what is to be written: files of somebody else.</summary>
    public IReadOnlyList<Finding> ForeignFiles()
    {
        var foreign = hashes.Keys.Where(p => !known.ContainsKey(p)).Concat(links).Order(StringComparer.Ordinal).ToArray();
        return foreign.Length == 0
            ? []
            : [Finding.Error("PF7302", "", Invariant($"The output folder holds {Count(foreign)} not written by this program: {Named(foreign)}."), "Choose an empty folder, or force it: files in the way are then replaced, others left alone.", FaultKind.Output)];
    }

    private bool IsOurs(string path, string hash) => known.TryGetValue(path, out var listed) && listed.Contains(hash);

    private void Learn(string path, bool isCurrent)
    {
        if (!File.Exists(path))
        {
            return;
        }

        var bytes = File.ReadAllBytes(path);
        if (ManifestForm.Read(bytes, Manifest.FileName).Value is not { } manifest)
        {
            return;
        }

        string hash = OutputFolder.HashOf(bytes);
        if (isCurrent || hashes.GetValueOrDefault(Manifest.FileName) == hash)
        {
            Know(Manifest.FileName, hash);
        }

        foreach (var file in manifest.Files)
        {
            Know(file.Path, file.Sha256);
        }
    }

    private void Know(string path, string hash)
    {
        if (!known.TryGetValue(path, out var listed))
        {
            known.Add(path, listed = []);
        }

        listed.Add(hash);
    }

    private void Walk(DirectoryInfo folder, string prefix)
    {
        foreach (var entry in folder.EnumerateFileSystemInfos())
        {
            string path = prefix + entry.Name;
            if (entry.Attributes.HasFlag(FileAttributes.ReparsePoint))
            {
                links.Add(path); // never followed: it may lead outside
            }
            else if (entry is DirectoryInfo inner)
            {
                if (path != OutputFolder.StagingName)
                {
                    Walk(inner, path + "/");
                }
            }
            else
            {
                using var stream = new FileStream(entry.FullName, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
                hashes.Add(path, Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(stream)));
            }
        }
    }

    private static string Count(string[] paths) => paths.Length == 1 ? "a file" : Invariant($"{paths.Length} files");

    private static string Named(string[] paths) =>
        string.Join(", ", paths.Take(NamedAtMost).Select(p => $"'{p}'")) + (paths.Length > NamedAtMost ? " and others" : "");
}
