using System.Security.Cryptography;
using PlatformForge.Exports.Files;
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
        return Fill(
            folder,
            disk,
            force,
            shelf =>
            {
                foreach (var file in files)
                {
                    cancel.ThrowIfCancellationRequested();
                    shelf.Put(new(file.Path, () => file.Bytes));
                }

                return Outcome.Of(new Filling(manifest, files));
            },
            approve,
            cancel);
    }

    /// <summary>Writes files as they are made: each waits on the disk as soon as it is, and only its length and hash are kept.</summary>
    /// <param name="folder">Output folder; made when it is not there.</param>
    /// <param name="force">Write even beside and over files that are not ours; those not in the way are left alone.</param>
    /// <param name="fill">Makes the files, on as many threads as it likes, or ends in findings; what it throws goes on as it came. Either leaves the folder
    /// as it was.</param>
    /// <param name="approve">Looks at every file as it lies on the disk by then, before any is put in place; an error among its
    /// findings leaves the folder as it was.</param>
    /// <param name="cancel">Gives up and leaves the folder as it was; once renaming has begun it is carried through.</param>
    /// <returns>As <c>Write</c> does.</returns>
    public static Outcome<FolderReport> Fill(
        string folder,
        bool force,
        Func<FileShelf, Outcome<Filling>> fill,
        Func<IReadOnlyList<OutputFile>, IReadOnlyList<Finding>>? approve = null,
        CancellationToken cancel = default) => Fill(folder, FolderDisk.Real, force, fill, approve, cancel);

    /// <summary>The same by the steps of a given disk.</summary>
    internal static Outcome<FolderReport> Fill(
        string folder,
        FolderDisk disk,
        bool force,
        Func<FileShelf, Outcome<Filling>> fill,
        Func<IReadOnlyList<OutputFile>, IReadOnlyList<Finding>>? approve = null,
        CancellationToken cancel = default)
    {
        // What goes wrong while files are made is no fault of the folder's, unless the shelf says so.
        bool making = false;
        return Held(folder, disk, force, Work, () => making);

        Outcome<FolderReport> Work(StagingArea staging)
        {
            var present = FolderContents.Of(folder);
            if (!force && present.ForeignFiles() is { Count: > 0 } foreign)
            {
                return Outcome.Fault<FolderReport>(foreign);
            }

            var shelf = new StagingShelf(folder, staging, present);
            making = true;
            var filled = fill(shelf);
            making = false;
            if (filled.Value is not { } filling)
            {
                return Outcome.Fault<FolderReport>(filled.Findings);
            }

            CheckPaths(filling.Files);
            return !force && present.Objections(filling.Files) is { Count: > 0 } objections
                ? Outcome.Fault<FolderReport>(objections)
                : Finish(folder, filling, shelf, staging, present, force, approve, cancel);
        }
    }

    /// <summary>
    /// Whether a folder could be written to, asked before the long work begins: the findings that
    /// <see cref="Write(string, Manifest, IReadOnlyList{OutputFile}, bool, Func{IReadOnlyList{OutputFile}, IReadOnlyList{Finding}}?, CancellationToken)"/>
    /// would end with whatever the files are. Leaves the folder as it was, but for what a stopped run left there: that is finished or cleared.
    /// </summary>
    /// <param name="folder">Output folder; need not be there.</param>
    /// <param name="force">Whether files of somebody else are no objection.</param>
    public static IReadOnlyList<Finding> Objections(string folder, bool force) =>
        Held(folder, FolderDisk.Real, force, _ => new Outcome<string>(folder, force ? [] : FolderContents.Of(folder).ForeignFiles())).Findings;

    /// <summary>
    /// For whoever is about to read a folder: finishes or clears what a stopped run left there. Nothing is done, and nothing said, where no run left
    /// anything, and
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

    private static Outcome<T> Held<T>(string folder, FolderDisk disk, bool force, Func<StagingArea, Outcome<T>> work, Func<bool>? isElsewhere = null)
        where T : class
    {
        try
        {
            using var staging = new StagingArea(folder, disk);
            staging.Settle(force);
            return work(staging);
        }
        catch (Exception fault) when (FolderFault.In(fault) is { } told)
        {
            return Outcome.Fault<T>(told.Finding);
        }
        catch (Exception fault) when (isElsewhere?.Invoke() != true
            && (fault is IOException or UnauthorizedAccessException or NotSupportedException or System.Security.SecurityException or ArgumentException))
        {
            return Outcome.Fault<T>(FolderFaults.Refusal(folder, fault));
        }
    }

    private static Outcome<FolderReport> Finish(
        string folder,
        Filling filling,
        StagingShelf shelf,
        StagingArea staging,
        FolderContents present,
        bool force,
        Func<IReadOnlyList<OutputFile>, IReadOnlyList<Finding>>? approve,
        CancellationToken cancel)
    {
        var full = Listing(filling.Manifest, filling.Files);
        OutputFile[] all = [.. filling.Files, shelf.Put(new(Manifest.FileName, () => ManifestForm.ToBytes(full)))];
        cancel.ThrowIfCancellationRequested();
        var findings = approve?.Invoke([.. all.Select(f => staging.ReadBack(f.Path))]) ?? [];
        if (findings.Any(f => f.Severity == Severity.Error))
        {
            return Outcome.Fault<FolderReport>(findings);
        }

        var changed = all.Where(f => staging.Holds(f.Path)).ToArray();
        string[] kept = [.. all.Select(f => f.Path).Except(changed.Select(f => f.Path)).Order(StringComparer.Ordinal)];
        var stale = present.Ours.Except(all.Select(f => f.Path)).ToArray();
        cancel.ThrowIfCancellationRequested();
        if (changed.Length + stale.Length > 0)
        {
            staging.Commit(
                [.. stale.Select(p => new RemovedFile(p, present.HashOf(p)!))],
                [.. changed.Select(f => new ReplacedFile(f.Path, present.HashOf(f.Path), f.Contents.Sha256))],
                force);
        }

        return Outcome.Of(new FolderReport(folder, [.. changed.Select(f => f.Path).Order(StringComparer.Ordinal)], kept,
            [.. stale.Order(StringComparer.Ordinal)]), findings);
    }

    /// <summary>The manifest with its list of files filled in.</summary>
    internal static Manifest Listing(Manifest manifest, IEnumerable<OutputFile> files) =>
        manifest with
        {
            Files = [.. files.Select(f => new ManifestFile(f.Path, f.Contents.Length, f.Contents.Sha256))
            .OrderBy(f => f.Path, StringComparer.Ordinal)]
        };

    internal static string HashOf(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>Refuses a path that is none below the output folder.</summary>
    internal static void CheckPath(string path)
    {
        if (!ManifestForm.IsInside(path) || path.StartsWith(StagingName, StringComparison.OrdinalIgnoreCase))
        {
            throw NoPath(path);
        }
    }

    private static void CheckPaths(IReadOnlyList<OutputFile> files)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { Manifest.FileName };
        foreach (var file in files)
        {
            CheckPath(file.Path);
            if (!taken.Add(file.Path))
            {
                throw NoPath(file.Path);
            }
        }
    }

    private static BrokenInvariantException NoPath(string path) => new(Invariant($"Exports: '{path}' is no path of its own below the output folder."));
}
