using PlatformForge.Exports;
using PlatformForge.Exports.Folders;
using PlatformForge.Platforms.AsBuilt;
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
    public static Outcome<BuildReport> Build(ProjectSpec project, string folder, bool force, RunWatch watch, OutputChoice? choice = null, string? measured = null)
    {
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

        dossier = dossier with { Platforms = [.. dossier.Platforms.Select(p => p with { AsBuilt = edges.FirstOrDefault(e => e.Platform == p.Name) })] };
        watch.Stage("drawing and writing the files");
        var (manifest, files) = OutputFiles.Of(dossier, choice, cancel: watch.Cancel);
        Verdict? verdict = null;
        var written = watch.Gate.Through(() => OutputFolder.Write(
            folder,
            manifest,
            files,
            force,
            readBack =>
            {
                watch.Stage("reading the files back and holding them against the vehicles");
                verdict = FolderVerifier.Verify(new WrittenFolder(readBack), cancel: watch.Cancel);
                return project.Placed(verdict.Findings);
            },
            watch.Cancel));
        return written.Value is { } report && verdict is { } passed
            ? Outcome.Of(new BuildReport(dossier, passed, report, Reprint.Of(manifest, report)), [.. design.Findings, .. project.Placed(built.Findings), .. written.Findings])
            : Outcome.Fault<BuildReport>([.. design.Findings, .. written.Findings]);
    }
}
