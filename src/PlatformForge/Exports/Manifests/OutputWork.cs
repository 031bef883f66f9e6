using PlatformForge.Exports.Files;
using PlatformForge.Exports.Pictures;

namespace PlatformForge.Exports.Manifests;

/// <summary>The files of a run, still to be made.</summary>
/// <param name="Manifest">What the folder will hold, its list of files not yet filled in.</param>
/// <param name="Held">What verification reads: print files, the design copy and the report.</param>
/// <param name="Shown">Everything else.</param>
internal sealed record OutputWork(Manifest Manifest, IReadOnlyList<FileWork> Held, IReadOnlyList<FileWork> Shown)
{
    /// <summary>What much is held for, one after another.</summary>
    public PictureTurns Turns { get; init; } = new();

    /// <summary>Makes files side by side, the first of them first; in the order in which they were asked for.</summary>
    /// <param name="work">The files.</param>
    /// <param name="shelf">Where they go as they are made.</param>
    /// <param name="cancel">Gives up between files.</param>
    /// <param name="progress">Told the path of each file when it is made.</param>
    public static OutputFile[] Make(IReadOnlyList<FileWork> work, FileShelf shelf, CancellationToken cancel, IProgress<string>? progress = null)
    {
        var files = new OutputFile[work.Count];
        int next = -1;

        // One by one, since a picture costs a hundred tables: ranges of them would leave a thread with several pictures, and the others with nothing.
        void Take(int _)
        {
            for (int i = Interlocked.Increment(ref next); i < files.Length; i = Interlocked.Increment(ref next))
            {
                cancel.ThrowIfCancellationRequested();
                files[i] = shelf.Put(work[i]);
                progress?.Report(work[i].Path);
            }
        }

        Parallel.For(0, Math.Min(work.Count, Environment.ProcessorCount), new ParallelOptions { CancellationToken = cancel }, Take);
        return files;
    }

    /// <summary>Files by path.</summary>
    public static OutputFile[] InOrder(IEnumerable<OutputFile> files) => [.. files.OrderBy(f => f.Path, StringComparer.Ordinal)];
}
