using System.Security.Cryptography;
using PlatformForge.Exports.Manifests;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Folders;

/// <summary>
/// Writes a run's files into a folder, all or none: first beside their places, then, from the moment that a record of it lies there, renamed into
/// them. Whoever looks after a kill at any moment settles first what was left, and so sees wholly the old folder or wholly the new one.
/// Only files that a manifest of ours lists are ever replaced or removed, and only while they are still as we wrote them; links are never followed.
/// </summary>
public static class OutputFolder
{
    /// <summary>Name of the folder, inside the output folder, in which files wait until all are there.</summary>
    public const string StagingName = ".platformforge-new";

    /// <summary>Writes the files and the manifest that lists them.</summary>
    /// <param name="folder">Output folder; made when it is not there.</param>
    /// <param name="manifest">What the folder holds; its list of files is filled in here.</param>
    /// <param name="files">Files to be there afterwards.</param>
    /// <param name="force">Write even beside and over files that are not ours; those not in the way are left alone.</param>
    /// <param name="approve">Looks at every file as it was read back from disk, before any is put in place; an error among its
    /// findings leaves the folder as it was.</param>
    /// <param name="cancel">Gives up and leaves the folder as it was; once renaming has begun it is carried through.</param>
    /// <returns>PF7301 no usable folder, PF7302 files of somebody else, PF7303 a file could not be written,
    /// PF7304 files of ours that were changed since, PF7305 another run is writing there, PF7310 a link in the way, PF7311 to PF7313 a stopped run that
    /// cannot be brought to an end, PF7314 a folder or file where it cannot be.</returns>
    public static Outcome<FolderReport> Write(
        string folder,
        Manifest manifest,
        IReadOnlyList<OutputFile> files,
        bool force = false,
        Func<IReadOnlyList<OutputFile>, IReadOnlyList<Finding>>? approve = null,
        CancellationToken cancel = default) => Write(folder, manifest, files, FolderDisk.Real, force, approve, cancel);

    /// <summary>The same by the steps of a given disk.</summary>
    internal static Outcome<FolderReport> Write(
        string folder,
        Manifest manifest,
        IReadOnlyList<OutputFile> files,
        FolderDisk disk,
        bool force = false,
        Func<IReadOnlyList<OutputFile>, IReadOnlyList<Finding>>? approve = null,
        CancellationToken cancel = default)
    {
        CheckPaths(files);
        return Held(folder, disk, force, staging =>
        {
            var present = FolderContents.Of(folder);
            return !force && present.Objections(files) is { Count: > 0 } objections
                ? Outcome.Fault<FolderReport>(objections)
                : Write(folder, manifest, files, staging, present, force, approve, cancel);
        });
    }

    /// <summary>
    /// Whether a folder could be written to, asked before the long work begins: the findings that <see cref="Write(string, Manifest, IReadOnlyList{OutputFile}, bool, Func{IReadOnlyList{OutputFile}, IReadOnlyList{Finding}}?, CancellationToken)"/>
    /// would end with whatever the files are. Leaves the folder as it was, but for what a stopped run left there: that is finished or cleared.
    /// </summary>
    /// <param name="folder">Output folder; need not be there.</param>
    /// <param name="force">Whether files of somebody else are no objection.</param>
    public static IReadOnlyList<Finding> Objections(string folder, bool force) =>
        Held(folder, FolderDisk.Real, force, _ => new Outcome<string>(folder, force ? [] : FolderContents.Of(folder).ForeignFiles())).Findings;

    /// <summary>
    /// For whoever is about to read a folder: finishes or clears what a stopped run left there. Nothing is done, and nothing said, where no run left anything, and
    /// where what was left was never committed and cannot be cleared.
    /// </summary>
    /// <returns>Why the folder cannot be seen whole; empty when it can.</returns>
    public static IReadOnlyList<Finding> Settle(string folder) => Settle(folder, FolderDisk.Real);

    internal static IReadOnlyList<Finding> Settle(string folder, FolderDisk disk)
    {
        if (!Directory.Exists(StagingArea.Of(folder)) && !FolderDisk.IsLink(StagingArea.Of(folder)))
        {
            return [];
        }

        var findings = Held(folder, disk, force: false, _ => Outcome.Of(folder)).Findings;
        return findings.Count > 0 && StagingArea.HoldsRecord(folder) ? findings : [];
    }

    /// <summary>Whether a run is putting its files in place at this moment, or was stopped while it did.</summary>
    public static bool IsChanging(string folder) => StagingArea.HoldsRecord(folder);

    /// <summary>Whether a finding says no more than that another run is at work in the folder: it will end.</summary>
    public static bool IsOfAnotherRun(Finding finding) => finding.Code == "PF7305";

    private static Outcome<T> Held<T>(string folder, FolderDisk disk, bool force, Func<StagingArea, Outcome<T>> work)
        where T : class
    {
        try
        {
            using var staging = new StagingArea(folder, disk);
            staging.Settle(force);
            return work(staging);
        }
        catch (FolderFault fault)
        {
            return Outcome.Fault<T>(fault.Finding);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException or System.Security.SecurityException or ArgumentException)
        {
            return Outcome.Fault<T>(Refusal(folder, fault));
        }
    }

    private static Outcome<FolderReport> Write(
        string folder,
        Manifest manifest,
        IReadOnlyList<OutputFile> files,
        StagingArea staging,
        FolderContents present,
        bool force,
        Func<IReadOnlyList<OutputFile>, IReadOnlyList<Finding>>? approve,
        CancellationToken cancel)
    {
        var full = Listing(manifest, files);
        var hashes = full.Files.ToDictionary(f => f.Path, f => f.Sha256, StringComparer.Ordinal);
        var list = new OutputFile(Manifest.FileName, ManifestForm.ToBytes(full));
        var changed = files.Where(f => present.HashOf(f.Path) != hashes[f.Path]).ToList();
        if (present.HashOf(list.Path) != HashOf(list.Bytes))
        {
            changed.Add(list);
        }

        foreach (var file in changed)
        {
            cancel.ThrowIfCancellationRequested();
            staging.Add(file);
        }

        var findings = approve?.Invoke([.. files.Append(list).Select(f => staging.ReadBack(f.Path))]) ?? [];
        if (findings.Any(f => f.Severity == Severity.Error))
        {
            return Outcome.Fault<FolderReport>(findings);
        }

        var stale = present.Ours.Where(p => !hashes.ContainsKey(p) && p != Manifest.FileName).ToArray();
        cancel.ThrowIfCancellationRequested();
        if (changed.Count + stale.Length > 0)
        {
            staging.Commit(
                [.. stale.Select(p => new RemovedFile(p, present.HashOf(p)!))],
                [.. changed.Select(f => new ReplacedFile(f.Path, present.HashOf(f.Path), HashOf(f.Bytes)))],
                force);
        }

        var written = changed.Select(f => f.Path).Order(StringComparer.Ordinal).ToArray();
        return Outcome.Of(
            new FolderReport(folder, written, [.. hashes.Keys.Append(Manifest.FileName).Except(written).Order(StringComparer.Ordinal)], [.. stale.Order(StringComparer.Ordinal)]),
            findings);
    }

    /// <summary>The manifest with its list of files filled in.</summary>
    internal static Manifest Listing(Manifest manifest, IEnumerable<OutputFile> files) =>
        manifest with { Files = [.. files.Select(f => new ManifestFile(f.Path, f.Bytes.Length, HashOf(f.Bytes))).OrderBy(f => f.Path, StringComparer.Ordinal)] };

    internal static string HashOf(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static void CheckPaths(IReadOnlyList<OutputFile> files)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { Manifest.FileName };
        foreach (var file in files)
        {
            if (!ManifestForm.IsInside(file.Path) || file.Path.StartsWith(StagingName, StringComparison.OrdinalIgnoreCase) || !taken.Add(file.Path))
            {
                throw new BrokenInvariantException(Invariant($"Exports: '{file.Path}' is no path of its own below the output folder."));
            }
        }
    }

    private static Finding Refusal(string folder, Exception fault)
    {
        string why = fault switch
        {
            UnauthorizedAccessException or System.Security.SecurityException => "permission is denied",
            PathTooLongException => "a path is too long for this system",
            DirectoryNotFoundException => "a part of its path is not there",
            _ when File.Exists(folder) => "it is a file",
            IOException => "the system refuses: " + fault.Message.TrimEnd('.'),
            _ => "its name is not one this system takes",
        };
        string code = Directory.Exists(folder) ? "PF7303" : "PF7301";
        return Finding.Error(code, "", Invariant($"The output folder '{folder}' cannot be written: {why}. Nothing was changed."), "Choose a folder that you may write to, with room left on its disk.", FaultKind.Output);
    }
}
