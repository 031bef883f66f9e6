using PlatformForge.Clearance;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Files;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using PlatformForge.Units.Memories;
using PlatformForge.Verification;
using PlatformForge.Verification.Written;

namespace PlatformForge.Projects.Runs;

/// <summary>Holds a design against the trains before anything is written, by the same independent poses as a written folder.</summary>
public static class TrialVerdict
{
    /// <summary>One verdict over all platforms of a dossier.</summary>
    /// <param name="dossier">The design.</param>
    /// <param name="extra">Vehicles that the design did not know of: would they clear it?</param>
    /// <param name="cancel">Gives up.</param>
    /// <param name="memory">What earlier runs held against the trains; nothing when null.</param>
    public static Verdict Of(Dossier dossier, IReadOnlyList<Vehicle>? extra = null, Memory? memory = null, CancellationToken cancel = default)
    {
        memory ??= Memory.None;
        var verdicts = new Verdict[dossier.Platforms.Count];
        Parallel.For(0, verdicts.Length, new ParallelOptions { CancellationToken = cancel },
            i => verdicts[i] = One(dossier, dossier.Platforms[i], extra ?? [], memory, cancel));
        return new(
            Least(verdicts.Select(v => v.Closest)),
            Least(verdicts.Select(v => v.Tightest)),
            [.. verdicts.Zip(dossier.Platforms).SelectMany(p => p.First.Vehicles.Select(v => v with { Platform = p.Second.Name }))],
            [.. verdicts.SelectMany(v => v.Sections)],
            [.. dossier.Platforms.SelectMany(p => p.Faces).SelectMany(f => Limits(dossier, f, extra ?? [])), .. verdicts.SelectMany(v => v.Findings)])
        {
            Platforms = verdicts.Length,
            NotHeld = dossier.Tracks.All(t => t.Vehicles.Count == 0) && extra is null or [] ? ["anything: there is no vehicle"] : [],
        };
    }

    private static Verdict One(Dossier dossier, PlatformDossier platform, IReadOnlyList<Vehicle> extra, Memory memory, CancellationToken cancel) => memory.Of(
        "verdict",
        new VerdictInput(
            [.. platform.Sections.Sections.Select(s => new WrittenSection(platform.Name, s.Name, s.Name, s.PrintMesh(memory), s.ToLayout))],
            [.. platform.Sections.Lines.Pieces.Select(l => Beside(platform, l, memory))],
            [.. platform.Faces.Select(f => Facts(dossier, f, extra))]),
        static (i, c) => SectionsVerifier.Verify(i.Sections, i.Beside, i.Faces, c),
        cancel);

    // A line, a strip or a bank of its own, as it comes out.
    private static WrittenSection Beside(PlatformDossier platform, LinePiece piece, Memory memory)
    {
        string name = piece.Name(platform.Sections.Sections[piece.Section - 1]);
        return new(platform.Name, name, name, piece.WrittenMesh(memory).Stretched(new(1 / piece.Stretch.X, 1 / piece.Stretch.Y)), piece.ToLayout);
    }

    private sealed record VerdictInput(IReadOnlyList<WrittenSection> Sections, IReadOnlyList<WrittenSection> Beside, IReadOnlyList<DesignFacts> Faces);

    // The design's own vehicles were held to their limits before they were swept.
    private static IEnumerable<Finding> Limits(Dossier dossier, PlatformDossier platform, IReadOnlyList<Vehicle> extra)
    {
        var face = platform.Plan.Spec.Face;
        var run = dossier.Tracks.First(t => t.Ride.Name == face.Track) with { Vehicles = extra };
        return [.. VehicleFit.Limits(run, face.From, face.To), .. VehicleFit.Beyond(run, platform.Plan.Chart, face.From, face.To)];
    }

    private static DesignFacts Facts(Dossier dossier, PlatformDossier platform, IReadOnlyList<Vehicle> extra)
    {
        var face = platform.Plan.Spec.Face;
        return new()
        {
            RailTop = platform.Plan.Site.RailTop,
            Runs = [.. dossier.Tracks.Where(t => t.Ride.Name != platform.Plan.Spec.OtherFace?.Track)
                .Select(t => t with { Vehicles = t.Ride.Name == face.Track ? [.. t.Vehicles, .. extra] : t.Vehicles,
                    RailTop = dossier.RailTopOf(t.Ride.Name) })],
            Play = platform.Budget.Play,
            Asked = platform.Budget.Margin,
            VerticalAllowance = face.BodiesPassOver ? face.VerticalGap : 0,
            VerticalGap = face.VerticalGap,
            HeldDownTo = face.BodiesPassOver ? null : -platform.Plan.Site.RailTop,
            Printer = dossier.Printer,
            Stretches = [new(platform.Name, platform.Plan.Chart, face.Side, face.From, face.To)
            {
                IsSkew = platform.Plan.Body.Across is not null || platform.Plan.Bank is { IsTurned: true },
            }],
        };
    }

    private static Nearness? Least(IEnumerable<Nearness?> all) => all.Where(n => n is not null).MinBy(n => n!.Clearance);
}
