using PlatformForge.Exports;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Paper;
using PlatformForge.Exports.Stock;
using PlatformForge.Exports.Proving;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Proofs;
using PlatformForge.Units;
using PlatformForge.Verification;

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
    public static Outcome<BuildReport> Build(ProjectSpec project, string folder, bool force, RunWatch watch, OutputChoice? choice = null, string? measured = null) =>
        Build(project, folder, FolderDisk.Real, force, watch, choice, measured);

    /// <summary>The same by the steps of a given disk.</summary>
    internal static Outcome<BuildReport> Build(
        ProjectSpec project, string folder, FolderDisk disk, bool force, RunWatch watch, OutputChoice? choice = null, string? measured = null)
    {
        if (Objections(project, choice) is { Count: > 0 } faults)
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

        dossier = dossier with
        {
            Platforms = [.. dossier.Platforms.Select(p =>
            Measured(p, edges) with { FurtherFaces = [.. p.FurtherFaces.Select(f => Measured(f, edges))] })]
        };
        choice ??= new();
        IReadOnlyList<Finding> remarks = [];
        if (choice.Gauges)
        {
            watch.Stage("making gauges and proofs");
            var proofs = ProofRun.Of(project, dossier, watch.Cancel);
            remarks = project.Placed(proofs.Findings);
            if (proofs.Value is null)
            {
                return Outcome.Fault<BuildReport>([.. design.Findings, .. remarks]);
            }

            dossier = dossier with { Proofs = proofs.Value, Findings = [.. dossier.Findings, .. remarks] };
        }

        // Each file waits on the disk as soon as it is made, and is verified as it lies there: memory holds what is being made, and not what has been.
        Verdict? verdict = null;
        Filling? filling = null;
        var written = watch.Gate.Through(() => OutputFolder.Fill(
            folder,
            disk,
            force,
            shelf =>
            {
                var made = Made(project, dossier, choice, edges, shelf, watch);
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
            ? Outcome.Of(new BuildReport(dossier, verdict!, report, Reprint.Of(filling!.Manifest, report)), [.. design.Findings, .. remarks, .. project.Placed(built.Findings), .. written.Findings])
            : Outcome.Fault<BuildReport>([.. design.Findings, .. written.Findings]);
    }

    // Makes all files and the verdict on them; a design that does not clear its vehicles is not told of further.
    private static (Outcome<Filling> Filling, Dossier Dossier, Verdict Verdict) Made(
        ProjectSpec project, Dossier dossier, OutputChoice choice, IReadOnlyList<AsBuiltEdge> edges, FileShelf shelf, RunWatch watch)
    {
        var (manifest, made, verdict) = Held(dossier, choice, shelf, watch);
        if (!verdict.Passed)
        {
            return (Outcome.Fault<Filling>(project.Placed(verdict.Findings)), dossier, verdict);
        }

        // What tells of the verdict is made once it is known.
        dossier = dossier with { Verdict = VerdictLine.Brief(verdict, edges) };
        var sheets = FullSize(dossier, project, choice);
        if (sheets.Value is not { } paper)
        {
            return (Outcome.Fault<Filling>(project.Placed(sheets.Findings)), dossier, verdict);
        }

        OutputFile[] full = [.. paper.Select(f => shelf.Put(new(f.Path, () => f.Bytes)))];
        var told = OutputFiles.Told(dossier, choice, [.. made, .. full], shelf, watch.Memory, watch.Cancel);
        return (Outcome.Of(new Filling(manifest, [.. made, .. full, .. told])), dossier, verdict);
    }

    // Makes the files, and holds what is printed against the trains while pictures and drawings are still being made: the verdict does not look at those.
    // One that fails is told without waiting for them.
    private static (Manifest Manifest, OutputFile[] Files, Verdict Verdict) Held(
        Dossier dossier, OutputChoice choice, FileShelf shelf, RunWatch watch)
    {
        watch.Stage("drawing and writing the files");
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(watch.Cancel);
        var work = OutputFiles.Work(dossier, choice, watch.Memory, stop.Token);
        var (listed, proofs, proofsShown) = ProofFiles.Work(dossier, choice.Pictures || choice.GaugePictures, watch.Memory, stop.Token);
        work = new(work.Manifest with { Proofs = listed }, [.. work.Held, .. proofs], [.. work.Shown, .. proofsShown]);
        var shown = Task.Run(() => OutputWork.Make(work.Shown, shelf, stop.Token), CancellationToken.None);
        try
        {
            var held = OutputWork.Make(work.Held, shelf, stop.Token);
            watch.Stage("holding what was made against the vehicles");
            var verdict = choice.Prints
                ? FolderVerifier.Verify(new WrittenFolder([.. held, new(Manifest.FileName, ManifestForm.ToBytes(OutputFolder.Listing(work.Manifest, held)))]), cancel: stop.Token)
                : TrialVerdict.Of(dossier, cancel: stop.Token, memory: watch.Memory);
            verdict = choice.Prints || proofs.Count == 0 ? verdict : verdict with
            {
                Findings = [.. verdict.Findings, .. ProofVerifier.Alone(work.Manifest, held, DesignCopy.Of(dossier), ProofRun.Sections(dossier))],
            };
            return (work.Manifest, verdict.Passed ? OutputWork.InOrder([.. held, .. shown.GetAwaiter().GetResult()]) : [], verdict);
        }
        finally
        {
            // Nothing goes on behind the back of a run that has ended.
            stop.Cancel();
            ((IAsyncResult)shown).AsyncWaitHandle.WaitOne();
        }
    }

    // What can be refused before anything long is done.
    private static IReadOnlyList<Finding> Objections(ProjectSpec project, OutputChoice? choice) =>
    [
        .. choice?.Paper == true ? PaperSet.Objections(project.Paper) : [],
        .. choice?.Gauges == true ? ProofMaker.Objections(project.Gauges, project.Printer, project.Layout.Gauge) : [],
        .. choice?.Sheet == true ? StockSet.Objections(project.Sheet) : [],
    ];

    // Paper to lay on the layout, and lines to cut sheet by.
    private static Outcome<IReadOnlyList<OutputFile>> FullSize(Dossier dossier, ProjectSpec project, OutputChoice choice)
    {
        Outcome<IReadOnlyList<OutputFile>> paper = Outcome.Of<IReadOnlyList<OutputFile>>([]), sheet = paper;
        Action[] wanted =
        [
            .. choice.Paper ? (Action[])[() => paper = PaperSet.Files(dossier, project.Paper)] : [],
            .. choice.Sheet ? (Action[])[() => sheet = StockSet.Files(dossier, project.Sheet)] : [],
        ];
        Parallel.ForEach(wanted, make => make());
        return paper.Value is { } sheets && sheet.Value is { } cut
            ? Outcome.Of<IReadOnlyList<OutputFile>>([.. sheets, .. cut])
            : Outcome.Fault<IReadOnlyList<OutputFile>>([.. paper.Findings, .. sheet.Findings]);
    }

    private static bool IsAsMade(IReadOnlyList<OutputFile> made, IReadOnlyList<OutputFile> readBack)
    {
        var back = readBack.ToDictionary(f => f.Path, f => f.Contents.Sha256, StringComparer.Ordinal);
        return made.All(f => back.TryGetValue(f.Path, out string? hash) && hash == f.Contents.Sha256);
    }

    private static PlatformDossier Measured(PlatformDossier face, IReadOnlyList<AsBuiltEdge> edges) =>
        face with { AsBuilt = edges.FirstOrDefault(e => e.Platform == face.FaceName) };
}
