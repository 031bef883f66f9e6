using System.Security.Cryptography;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Manifests;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Folders;

/// <summary>What lies in an output folder before a run, and whose it is.</summary>
internal sealed class FolderContents
{
    // SHA-256 of nothing. What has no length is not opened: it may be a pipe, whose other end nobody writes to.
    private const string HashOfNothing = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";

    private readonly Dictionary<string, string> hashes = new(StringComparer.Ordinal); // of every file found, by path
    private readonly Dictionary<string, List<string>> known = new(StringComparer.Ordinal); // what our manifest says
    private readonly List<string> links = [];

    /// <summary>Files that a manifest of ours lists and that are as it says, sorted.</summary>
    public IEnumerable<string> Ours => hashes.Where(f => IsOurs(f.Key, f.Value)).Select(f => f.Key).Order(StringComparer.Ordinal);

    public static FolderContents Of(string folder)
    {
        var contents = new FolderContents();
        contents.Walk(new(folder), "");
        contents.Learn(Path.Combine(folder, Manifest.FileName));
        return contents;
    }

    public string? HashOf(string path) => hashes.GetValueOrDefault(path);

    /// <summary>SHA-256 of a file, in small hexadecimal digits.</summary>
    public static string HashOf(FileInfo file)
    {
        if (file.Length == 0)
        {
            return HashOfNothing;
        }

        using var stream = new FileStream(file.FullName, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }

    /// <summary>The objection to replacing files that somebody changed.</summary>
    public static Finding Changed(IReadOnlyCollection<string> paths) =>
        Finding.Error("PF7304", "", Invariant($"The output folder holds {FolderFaults.Count(paths)} changed since written: {FolderFaults.Named(paths)}."),
            "Move what you changed elsewhere, or force it to be replaced.", FaultKind.Output);

    /// <summary>Why the folder may not be written to without being forced.</summary>
    public IReadOnlyList<Finding> Objections(IReadOnlyList<OutputFile> files)
    {
        var wanted = files.ToDictionary(f => f.Path, f => f, StringComparer.Ordinal);
        var changed = hashes.Where(f => known.ContainsKey(f.Key) && !IsOurs(f.Key, f.Value))
            .Where(f => !(wanted.TryGetValue(f.Key, out var file) && file.Contents.Sha256 == f.Value))
            .Select(f => f.Key).Order(StringComparer.Ordinal).ToArray();
        List<Finding> findings = [.. ForeignFiles()];
        if (changed.Length > 0)
        {
            findings.Add(Changed(changed));
        }

        return findings;
    }

    /// <summary>The objection that does not depend on what is to be written: files of somebody else.</summary>
    public IReadOnlyList<Finding> ForeignFiles()
    {
        var foreign = hashes.Keys.Where(p => !known.ContainsKey(p)).Concat(links).Order(StringComparer.Ordinal).ToArray();
        return foreign.Length == 0
            ? []
            : [Finding.Error("PF7302", "", Invariant($"The output folder holds {FolderFaults.Count(foreign)} not written by this ")
                + Invariant($"program: {FolderFaults.Named(foreign)}."),
                "Choose an empty folder, or force it: files in the way are then replaced, others left alone.", FaultKind.Output)];
    }

    private bool IsOurs(string path, string hash) => known.TryGetValue(path, out var listed) && listed.Contains(hash);

    private void Learn(string path)
    {
        var file = new FileInfo(path);
        if (!file.Exists || file.LinkTarget is not null || file.Length == 0)
        {
            return;
        }

        var bytes = File.ReadAllBytes(path);
        if (ManifestForm.ListedFiles(bytes) is not { } listed)
        {
            return;
        }

        Know(Manifest.FileName, OutputFolder.HashOf(bytes));
        foreach (var (name, sha256) in listed)
        {
            Know(name, sha256);
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
                hashes.Add(path, HashOf((FileInfo)entry));
            }
        }
    }
}
