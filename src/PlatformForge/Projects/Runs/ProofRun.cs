using PlatformForge.Exports.Drawings.Sections;
using PlatformForge.Exports.Files;
using PlatformForge.Proofs;
using PlatformForge.Units;
using PlatformForge.Verification.Written;

namespace PlatformForge.Projects.Runs;

/// <summary>Gauges and proofs of a design.</summary>
public static class ProofRun
{
    /// <summary>All proofs of a design, or every reason why they cannot be made.</summary>
    public static Outcome<ProofSet> Of(ProjectSpec project, Dossier dossier, CancellationToken cancel = default) => ProofMaker.Make(
        new(
            [.. dossier.Platforms.Select(p => new ProofPlatform(p.Sections, [.. p.Faces.Select(f => Face(dossier, f))]))],
            project.Printer, project.Sections, dossier.Gauge, dossier.RailHead, dossier.Scale, project.Gauges),
        cancel);

    /// <summary>The sections as they would be read back.</summary>
    internal static IReadOnlyList<WrittenSection> Sections(Dossier dossier) =>
        [.. dossier.Platforms.SelectMany(p => p.Sections.Sections.Select(s => new WrittenSection(p.Name, s.Name, s.Name, s.PrintMesh(), s.ToLayout)))];

    private static ProofFace Face(Dossier dossier, PlatformDossier face)
    {
        var tightest = face.Tightest.MinBy(t => t.Left);
        var run = dossier.Tracks.First(t => t.Ride.Name == face.Track);
        double at = tightest?.Chainage ?? CrossSectionDrawing.Telling(face.Plan);
        return new(face.FaceName, face.Plan, face.Ride ?? face.Plan.Chart, run.Vehicles, at, tightest is { Pose.OtherTrack.Length: 0 }
            ? tightest.Pose.Vehicle.Name : "");
    }
}
