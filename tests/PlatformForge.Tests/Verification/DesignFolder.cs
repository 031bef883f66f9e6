using PlatformForge.Clearance;
using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Folders;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Requests;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Clearance.Motion;
using PlatformForge.Tests.Cli;
using PlatformForge.Track.Charts;
using PlatformForge.Verification;
using PlatformForge.Verification.Written;

namespace PlatformForge.Tests.Verification;

/// <summary>A design by lot through every room to files in a folder on the disk, and those read back and verified as <c>verify</c> does.</summary>
/// <param name="Design">The design.</param>
/// <param name="Refused">Why it came to no files, by the code of a finding; null where it did.</param>
/// <param name="Verdict">What verification said of the folder; null where there is none.</param>
internal sealed record DesignFolder(RandomDesign Design, string? Refused, Verdict? Verdict)
{
    /// <summary>Whether nothing is wrong with it and everything was held; true where there are no files.</summary>
    public bool IsClear => Verdict is null || (Verdict.NotHeld.Count == 0 && Verdict.Findings.All(f => f.Severity != Units.Severity.Error)
        && !(Verdict.Tightest?.Clearance < -GridUsesUp));

    /// <summary>What 32-bit coordinates and the plan grid use up, mm.</summary>
    public const double GridUsesUp = 0.001;

    // What is held against vehicles, and nothing that is only looked at.
    private static readonly OutputChoice Prints = new() { Tables = false, Report = false, Masks = false, Pictures = false, Drawings = false };

    public static DesignFolder Of(RandomDesign design)
    {
        var (spec, face, budget, run) = (design.Spec, design.Spec.Face, design.Budget, design.Runs[0]);
        var chart = KinkRounder.Chart(run.Ride).Line;
        var swept = EnvelopeSweeper.Sweep(new(chart, face.From, face.To, design.Runs)
        {
            Beyond = HeldHeights.Beyond(budget),
            Play = budget.Play,
            Edge = HeldHeights.Edge(spec)
        });
        if (swept.Value is not { } envelope)
        {
            return new(design, swept.Findings[0].Code, null);
        }

        var planned = PlatformPlanner.Plan(new(spec, RandomDesign.Site, chart, envelope, budget) { StartsAtBuffers = run.StartsAtBuffers, Faced = run });
        var cut = planned.Value is { } sound ? SectionMaker.Make(sound, PrinterSpec.Oblong(300, 300, 300), new()) : null;
        if (planned.Value is not { } plan || cut?.Value is not { } sections)
        {
            return new(design, planned.Findings.Concat(cut?.Findings ?? []).First(f => f.Severity == Units.Severity.Error).Code, null);
        }

        var dossier = new Dossier
        {
            Project = "by lot",
            Scale = RandomDesign.Site.Scale,
            Gauge = 16.5,
            RailTop = RandomDesign.Site.RailTop,
            Tracks = design.Runs,
            Printer = PrinterSpec.Oblong(300, 300, 300),
            Platforms = [new(sections.Plan, envelope, budget, sections) { Ride = run.Ride }],
            InputHash = new('0', 64),
            Version = "0.1.0",
        };
        var made = OutputFiles.Made(dossier, Prints);
        using var folder = new TempFolder();
        var written = OutputFolder.Write(folder.Path, made.Manifest, made.Files);
        return written.Succeeded
            ? new(design, null, FolderVerifier.Verify(FolderReader.Read(folder.Path).Value!))
            : new(design, written.Findings[0].Code, null);
    }
}
