using System.Security.Cryptography;
using PlatformForge.Clearance;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Sections;
using PlatformForge.Units;
using PlatformForge.Verification.Distances;
using PlatformForge.Verification.Rules;
using static System.FormattableString;

namespace PlatformForge.Verification;

/// <summary>
/// Front door of the room for a finished folder: what was written is read back and held against the trains. Pure: the bytes
/// come from <see cref="FolderReader"/>.
/// </summary>
public static class FolderVerifier
{
    /// <summary>
    /// Verifies a folder against the design copy it holds.
    /// </summary>
    /// <param name="folder">What was read.</param>
    /// <param name="extra">Further vehicles to run on every faced track: would they clear what is built?</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>A verdict in every case: a folder too damaged to measure has findings and no clearances.</returns>
    public static Verdict Verify(WrittenFolder folder, IReadOnlyList<Vehicle>? extra = null, CancellationToken cancel = default)
    {
        var findings = new List<Finding>();
        var manifest = Take(ManifestForm.Read(folder[Manifest.FileName] ?? [], Manifest.FileName), findings);
        if (manifest is null)
        {
            return new(null, null, [], [], findings);
        }

        findings.AddRange(manifest.Files.SelectMany(f => Untouched(f, folder[f.Path], folder.Refused.GetValueOrDefault(f.Path))));
        var design = folder[DesignCopy.FileName] is { } bytes ? Take(DesignForm.Read(bytes, DesignCopy.FileName), findings) : null;
        var plates = ReadPlates(manifest, folder, findings);
        var (sections, figures) = ReadSections(manifest, folder, plates, findings);
        if (design is null)
        {
            findings.Add(Finding.Error("PF8004", "", Invariant($"Without {DesignCopy.FileName} there is nothing to hold the sections against."), "Build the folder again.", FaultKind.Mesh));
            return new(null, null, [], figures, findings);
        }

        findings.AddRange(figures.SelectMany(f => WallRule.Check(f, design.Printer)));
        findings.AddRange(OnBeds(manifest, plates, design.Printer));
        bool isWhole = sections.Count == manifest.Sections.Count;
        var verdicts = design.Platforms.Select(p => SectionsVerifier.Verify(
            [.. sections.Where(s => s.Platform == p.Name)], Facts(design, p, extra ?? [], isWhole), cancel)).ToArray();
        findings.AddRange(design.Platforms.SelectMany(p => design.Tracks.Where(t => t.Name == p.Face.Track)
            .Select(t => t.ToRun() with { Vehicles = extra ?? [] })
            .SelectMany(run => VehicleFit.Limits(run, p.Face.From, p.Face.To).Concat(VehicleFit.Beyond(run, p.ToChart(), p.Face.From, p.Face.To)))));
        return Merged(verdicts, figures, findings);
    }

    // What a platform is held to, from the design copy.
    private static DesignFacts Facts(DesignCopy design, DesignPlatform platform, IReadOnlyList<Vehicle> extra, bool isWhole)
    {
        var face = platform.Face;
        return new()
        {
            RailTop = design.RailTop,
            Runs = [.. design.Tracks.Select(t => t.ToRun() with { Vehicles = t.Name == face.Track ? [.. t.Vehicles, .. extra] : t.Vehicles })],
            Play = platform.Budget.Play,
            Asked = platform.Budget.Margin,
            VerticalAllowance = face.BodiesPassOver ? face.VerticalGap : 0,
            VerticalGap = face.VerticalGap,
            HeldDownTo = face.BodiesPassOver ? null : -design.RailTop,
            Stretches = isWhole ? [new(platform.Name, platform.ToChart(), (int)face.Side, face.From, face.To)] : [],
        };
    }

    private static T? Take<T>(Outcome<T> outcome, List<Finding> findings)
        where T : class
    {
        findings.AddRange(outcome.Findings);
        return outcome.Value;
    }

    private static IEnumerable<Finding> Untouched(ManifestFile file, byte[]? bytes, string? refused)
    {
        if (refused is not null)
        {
            yield return Finding.Error("PF8003", "", Invariant($"'{file.Path}' {refused}."), "Build the folder again, into an empty folder if you want to keep the changed file.", FaultKind.Mesh);
        }
        else if (bytes is null)
        {
            yield return Finding.Error("PF8002", "", Invariant($"'{file.Path}' is named by the manifest but is not there."), "Build the folder again.", FaultKind.Mesh);
        }
        else if (bytes.Length != file.Bytes || Convert.ToHexStringLower(SHA256.HashData(bytes)) != file.Sha256)
        {
            yield return Finding.Error("PF8003", "", Invariant($"'{file.Path}' is not as it was written: {bytes.Length} bytes for {file.Bytes}, or other contents."), "Build the folder again, into an empty folder if you want to keep the changed file.", FaultKind.Mesh);
        }
    }

    private static List<(string File, ThreeMfModel Model)> ReadPlates(Manifest manifest, WrittenFolder folder, List<Finding> findings)
    {
        var plates = new List<(string File, ThreeMfModel Model)>();
        foreach (string path in manifest.Files.Select(f => f.Path).Where(p => p.EndsWith(".3mf", StringComparison.Ordinal)))
        {
            if (folder[path] is { } bytes && Take(ThreeMfReader.Read(bytes, path), findings) is { } model)
            {
                plates.Add((path, model));
                findings.AddRange(model.Objects.Where(o => o.Mesh is not null).SelectMany(o => MeshRule.Check(Invariant($"{o.Name} in '{path}'"), MeshSoundness.Of(o.Mesh!), byIndex: true)));
            }
        }

        return plates;
    }

    private static (List<WrittenSection> Sections, List<SectionVerdict> Figures) ReadSections(
        Manifest manifest, WrittenFolder folder, List<(string File, ThreeMfModel Model)> plates, List<Finding> findings)
    {
        var sections = new List<WrittenSection>();
        var figures = new List<SectionVerdict>();
        foreach (var entry in manifest.Sections)
        {
            if (folder[entry.Stl] is not { } bytes || Take(StlReader.Read(bytes, entry.Stl), findings) is not { } stl)
            {
                continue;
            }

            var soundness = MeshSoundness.Of(stl.Mesh);
            var faults = MeshRule.Check(Invariant($"{entry.Name} in '{entry.Stl}'"), soundness, byIndex: false).ToArray();
            findings.AddRange(faults);
            var (low, high) = stl.Mesh.Box();
            sections.Add(new(entry.Platform, entry.Name, entry.Stl, stl.Mesh, entry.ToLayout));
            figures.Add(new(entry.Name, entry.Stl, stl.Mesh.TriangleCount, soundness.Volume, high - low, faults.Length == 0, WallRule.Thinnest(stl.Mesh)));

            var twins = plates.SelectMany(p => p.Model.Objects.Where(o => o.Id == entry.ObjectId && o.Mesh is not null && Holds(p.File, entry)).Select(o => (p.File, o.Mesh)));
            findings.AddRange(twins.SelectMany(t => TwinRule.Check(entry, t.File, stl.Mesh, t.Mesh!)));
        }

        return (sections, figures);
    }

    private static bool Holds(string file, ManifestSection entry) => file == entry.Plate;

    private static IEnumerable<Finding> OnBeds(Manifest manifest, List<(string File, ThreeMfModel Model)> plates, PrinterSpec printer)
    {
        foreach (string path in manifest.Sections.Select(s => s.Plate).Distinct())
        {
            foreach (var (_, model) in plates.Where(p => p.File == path))
            {
                var names = model.Items.Select(i => model.Objects.First(o => o.Id == i.ObjectId).Name).ToArray();
                var placed = model.PlacedMeshes();
                foreach (var finding in placed.Count == names.Length ? BedRule.Check(path, names, placed, printer) : [])
                {
                    yield return finding;
                }
            }
        }

        foreach (var entry in manifest.Sections)
        {
            int printed = plates.Where(p => p.File == entry.Plate).Sum(p => p.Model.Items.Count(i => i.ObjectId == entry.ObjectId));
            if (printed != 1 && plates.Any(p => p.File == entry.Plate))
            {
                yield return Finding.Error("PF8006", "", Invariant($"'{entry.Plate}' prints {entry.Name} {printed} times."), "It should be there once: build the folder again.", FaultKind.Mesh);
            }
        }
    }

    private static Verdict Merged(Verdict[] verdicts, List<SectionVerdict> figures, List<Finding> findings)
    {
        var vehicles = new List<VehicleVerdict>();
        foreach (var verdict in verdicts.SelectMany(v => v.Vehicles))
        {
            int at = vehicles.FindIndex(v => v.Vehicle == verdict.Vehicle && v.Track == verdict.Track);
            if (at < 0)
            {
                vehicles.Add(verdict);
            }
            else
            {
                vehicles[at] = vehicles[at] with { Closest = TrackSearch.Less(vehicles[at].Closest, verdict.Closest), Tightest = TrackSearch.Less(vehicles[at].Tightest, verdict.Tightest) };
            }
        }

        return new(
            verdicts.Select(v => v.Closest).Aggregate((Nearness?)null, TrackSearch.Less),
            verdicts.Select(v => v.Tightest).Aggregate((Nearness?)null, TrackSearch.Less),
            vehicles,
            figures,
            [.. findings, .. verdicts.SelectMany(v => v.Findings).Distinct()])
        {
            Platforms = verdicts.Length,
        };
    }
}
