using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Gltf;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Paper;
using PlatformForge.Exports.Pictures;
using PlatformForge.Exports.Proving;
using PlatformForge.Exports.Stock;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Projects.Watches;
using PlatformForge.Units;
using PlatformForge.Verification;
using PlatformForge.Verification.Written;

namespace PlatformForge.Projects.Runs;

/// <summary>What a build came to.</summary>
/// <param name="Dossier">Everything known of the design.</param>
/// <param name="Verdict">What reading back the written files found.</param>
/// <param name="Folder">What was written and what had not changed.</param>
/// <param name="Reprints">Which sections are to be printed again.</param>
public sealed record BuildReport(Dossier Dossier, Verdict Verdict, FolderReport Folder, IReadOnlyList<Reprint> Reprints);

/// <summary>The whole run: design, files, verification of the files as read back from disk, and only then into place.</summary>
public static class BuildRun
{
    /// <summary>
    /// Builds a project into a folder. A design that fails verification is not put in place, and a run that is stopped or fails
    /// leaves the folder as it was.
    /// </summary>
    /// <param name="project">The project.</param>
    /// <param name="folder">Output folder; made when it is not there.</param>
    /// <param name="force">Write even beside and over files of somebody else.</param>
    /// <param name="watch">Who watches.</param>
    /// <param name="choice">What is wanted as files; all of it when null.</param>
    /// <param name="measured">File of gaps measured on the finished layout, for the report; null when there are none. What is wrong on the
    /// layout is told, and does not keep the files from being written.</param>
    public static Outcome<BuildReport> Build(ProjectSpec project, string folder, bool force, RunWatch watch, OutputChoice? choice = null,
        string? measured = null) =>
        Build(project, folder, FolderDisk.Real, force, watch, choice, measured);

    /// <summary>The same by the steps of a given disk.</summary>
    internal static Outcome<BuildReport> Build(
        ProjectSpec project, string folder, FolderDisk disk, bool force, RunWatch watch, OutputChoice? choice = null, string? measured = null)
    {
        if (LeftOutSets.Objections(project, choice) is { Count: > 0 } faults)
        {
            return Outcome.Fault<BuildReport>(project.Placed(faults));
        }

        // A folder that can't be written is told before the long work, not after it.
        if (watch.Gate.Through(() => OutputFolder.Objections(folder, force)) is { Count: > 0 } objections)
        {
            return Outcome.Fault<BuildReport>(objections);
        }

        var design = DesignRun.Design(project, watch);
        if (design.Value is not { } dossier)
        {
            return Outcome.Fault<BuildReport>(design.Findings);
        }

        var built = measured is null ? Outcome.Of<IReadOnlyList<AsBuiltEdge>>([]) : AsBuiltCheck.OfFile(dossier, measured);
        if (built.Value is not { } edges)
        {
            return Outcome.Fault<BuildReport>([.. design.Findings, .. project.Placed(built.Findings)]);
        }

        dossier = SurveyAdvices.In(project, dossier, watch);
        dossier = Measured(dossier, edges);
        var (wanted, leftOut) = LeftOutSets.Without(project, choice ?? new());
        dossier = dossier with { Findings = [.. dossier.Findings, .. project.Placed(leftOut)] };

        var outcome = Write(project, dossier, wanted, edges, (folder, disk, force), watch);
        return outcome.Value is { } report
            ? Outcome.Of(
                report,
                [.. design.Findings, .. report.Dossier.Findings.Skip(design.Value.Findings.Count), .. project.Placed(built.Findings), .. outcome.Findings])
            : Outcome.Fault<BuildReport>([.. design.Findings, .. outcome.Findings]);
    }

    // Makes the files, verifies them as they lie on the disk and puts them in place.
    private static Outcome<BuildReport> Write(
        ProjectSpec project,
        Dossier dossier,
        OutputChoice wanted,
        IReadOnlyList<AsBuiltEdge> edges,
        (string Folder, FolderDisk Disk, bool Force) place,
        RunWatch watch)
    {
        // Each file waits on the disk as soon as it is made, and is verified as it lies there: memory holds what is being made, and not what has been.
        Verdict? verdict = null;
        Filling? filling = null;
        var written = watch.Gate.Through(() => OutputFolder.Fill(
            place.Folder,
            place.Disk,
            place.Force,
            shelf =>
            {
                var made = Made(project, dossier, wanted, edges, shelf, watch);
                (dossier, verdict, filling) = (made.Dossier, made.Verdict, made.Filling.Value);
                return made.Filling;
            },
            readBack =>
            {
                // The verdict is on these very bytes, or it is made anew on what is there instead.
                watch.Stage("reading the files back");
                verdict = IsAsMade(filling!.Files, readBack) ? verdict! : FolderVerifier.Verify(new WrittenFolder(readBack), cancel: watch.Cancel);
                return project.Placed(verdict.Findings);
            },
            watch.Cancel));
        return written.Value is { } report
            ? Outcome.Of(new BuildReport(dossier, verdict!, report, Reprint.Of(filling!.Manifest, report)), written.Findings)
            : Outcome.Fault<BuildReport>(written.Findings);
    }

    // Makes all files and the verdict on them; a design that does not clear its vehicles is not told of further.
    private static (Outcome<Filling> Filling, Dossier Dossier, Verdict Verdict) Made(
        ProjectSpec project, Dossier dossier, OutputChoice choice, IReadOnlyList<AsBuiltEdge> edges, FileShelf shelf, RunWatch watch)
    {
        var (held, proven, verdict) = Held(project, dossier, choice, shelf, watch);
        if (held.Value is not { } made)
        {
            return (Outcome.Fault<Filling>(held.Findings), proven, verdict);
        }

        // What tells of the verdict is made once it is known.
        dossier = proven with { Verdict = VerdictLine.Brief(verdict, edges) };
        OutputFile[] files = [.. made.Files, .. OutputWork.Make([.. made.Paper.SelectMany(p => p.Bound(dossier.VerdictLine))], shelf, watch.Cancel)];

        // The sheets that the book of drawings waited for are let go of before reports are written.
        var known = dossier;
        var told = new PictureTurns().InTurn(known.Platforms, () => OutputFiles.Told(known, choice, files, shelf, watch.Memory, watch.Cancel));
        return (Outcome.Of(new Filling(made.Manifest, [.. files, .. told])), dossier, verdict);
    }

    // Makes the files, and holds what is printed against the trains while pictures, drawings, paper and sheet are still being made: the verdict does not
    // look at those. One that fails is told without waiting for them.
    private static (Outcome<HeldFiles> Files, Dossier Dossier, Verdict Verdict) Held(
        ProjectSpec project, Dossier dossier, OutputChoice choice, FileShelf shelf, RunWatch watch)
    {
        watch.Stage("drawing and writing the files");
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(watch.Cancel);
        var work = OutputFiles.Work(dossier, choice, watch.Memory, stop.Token);
        using var beside = new BesideWork(stop);
        var scene = SceneFile.Work(dossier, choice);
        List<Task<OutputFile[]>> shown = [beside.Begin(() => OutputWork.Make([.. work.Shown, .. scene], shelf, stop.Token))];
        var proofs = choice.Gauges ? ProofRun.Of(project, dossier, stop.Token) : null;
        var remarks = project.Placed(proofs is { Value: null } && choice.EverySet ? [.. LeftOutSets.Told("gauges", proofs.Findings)]
            : proofs?.Findings ?? []);
        if (proofs is { Value: null } && !choice.EverySet)
        {
            return (Outcome.Fault<HeldFiles>(remarks), dossier, Unheld);
        }

        dossier = dossier with { Proofs = proofs?.Value, Findings = [.. dossier.Findings, .. remarks] };
        var full = beside.Begin(() => FullSize(dossier, project, choice, shelf, stop.Token));
        var (listed, proofPrints, proofsShown) = ProofFiles.Work(dossier, choice.Pictures || choice.GaugePictures, watch.Memory, stop.Token);
        shown.Add(beside.Begin(() => OutputWork.Make(proofsShown, shelf, stop.Token)));
        work = work with { Manifest = work.Manifest with { Proofs = listed }, Held = [.. work.Held, .. proofPrints] };
        var held = OutputWork.Make(work.Held, shelf, stop.Token);
        watch.Stage("holding what was made against the vehicles");
        var (known, manifest) = (dossier, work.Manifest);
        var verdict = work.Turns.InTurn(known.Platforms, () => Verdict(known, choice, manifest, held, watch, stop.Token));
        if (!verdict.Passed)
        {
            return (Outcome.Fault<HeldFiles>(project.Placed(verdict.Findings)), dossier, verdict);
        }

        var made = full.GetAwaiter().GetResult();
        dossier = dossier with { Findings = [.. dossier.Findings, .. project.Placed(made.Value is null ? [] : made.Findings)] };
        return (made.Value is { } sheets
            ? Outcome.Of(new HeldFiles(work.Manifest, OutputWork.InOrder([.. held, .. shown.SelectMany(s => s.GetAwaiter().GetResult()), .. sheets.Files]),
                sheets.Paper))
            : Outcome.Fault<HeldFiles>(project.Placed(made.Findings)), dossier, verdict);
    }

    // Work on threads of its own; nothing of it goes on behind the back of a run that has ended.
    private sealed class BesideWork(CancellationTokenSource stop) : IDisposable
    {
        private readonly List<Task> tasks = [];

        public Task<T> Begin<T>(Func<T> make)
        {
            var task = Task.Run(make, CancellationToken.None);
            tasks.Add(task);
            return task;
        }

        public void Dispose()
        {
            stop.Cancel();
            tasks.ForEach(task => ((IAsyncResult)task).AsyncWaitHandle.WaitOne());
        }
    }

    private static readonly Verdict Unheld = new(null, null, [], [], []);

    // What was made and held: its files, and the paper that is still to be bound with the verdict on its key.
    private sealed record HeldFiles(Manifest Manifest, OutputFile[] Files, IReadOnlyList<LaidPaper> Paper);

    private sealed record FullSizeFiles(OutputFile[] Files, IReadOnlyList<LaidPaper> Paper);

    private static Verdict Verdict(Dossier dossier, OutputChoice choice, Manifest manifest, OutputFile[] held, RunWatch watch, CancellationToken cancel)
    {
        if (choice.Prints)
        {
            byte[] listing = ManifestForm.ToBytes(OutputFolder.Listing(manifest, held));
            return FolderVerifier.Verify(new WrittenFolder([.. held, new(Manifest.FileName, listing)]), cancel: cancel);
        }

        var verdict = TrialVerdict.Of(dossier, cancel: cancel, memory: watch.Memory);
        return manifest.Proofs.Count == 0 ? verdict : verdict with
        {
            Findings = [.. verdict.Findings, .. ProofVerifier.Alone(manifest, held, DesignCopy.Of(dossier), ProofRun.Sections(dossier))],
        };
    }

    // Paper to lay on the layout, and lines to cut sheet by.
    private static Outcome<FullSizeFiles> FullSize(
        Dossier dossier, ProjectSpec project, OutputChoice choice, FileShelf shelf, CancellationToken cancel)
    {
        var sheet = choice.Sheet ? LeftOutSets.Kept(choice, "sheet", StockSet.Work(dossier, project.Sheet), []) : Outcome.Of<IReadOnlyList<FileWork>>([]);
        var paper = choice.Paper ? LeftOutSets.Kept(choice, "paper", PaperSet.Laid(dossier, project.Paper), []) : Outcome.Of<IReadOnlyList<LaidPaper>>([]);
        return paper.Value is { } laid && sheet.Value is { } cut
            ? Outcome.Of(new FullSizeFiles(OutputWork.Make([.. laid.SelectMany(p => p.Sheets()), .. cut], shelf, cancel), laid),
                [.. paper.Findings, .. sheet.Findings])
            : Outcome.Fault<FullSizeFiles>([.. paper.Findings, .. sheet.Findings]);
    }

    private static bool IsAsMade(IReadOnlyList<OutputFile> made, IReadOnlyList<OutputFile> readBack)
    {
        var back = readBack.ToDictionary(f => f.Path, f => f.Contents.Sha256, StringComparer.Ordinal);
        return made.All(f => back.TryGetValue(f.Path, out string? hash) && hash == f.Contents.Sha256);
    }

    // With what was measured on the layout at each face.
    private static Dossier Measured(Dossier dossier, IReadOnlyList<AsBuiltEdge> edges) => dossier with
    {
        Platforms = [.. dossier.Platforms.Select(p => Measured(p, edges) with { FurtherFaces = [.. p.FurtherFaces.Select(f => Measured(f, edges))] })],
    };

    private static PlatformDossier Measured(PlatformDossier face, IReadOnlyList<AsBuiltEdge> edges) =>
        face with { AsBuilt = edges.FirstOrDefault(e => e.Platform == face.FaceName) };
}
