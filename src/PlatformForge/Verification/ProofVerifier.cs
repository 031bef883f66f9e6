using PlatformForge.Exports.Files;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Units;
using PlatformForge.Verification.Rules;
using PlatformForge.Verification.Written;
using static System.FormattableString;

namespace PlatformForge.Verification;

/// <summary>Gauges and proofs of a folder, read back: sound meshes, the same in both their files, on the bed; slide gauges on their rails and beside the
/// platform.</summary>
public static class ProofVerifier
{
    /// <summary>Verifies those of a folder that holds no prints of the platform.</summary>
    /// <param name="manifest">What the folder holds.</param>
    /// <param name="files">Its files.</param>
    /// <param name="design">What it was designed for.</param>
    /// <param name="sections">The platform's sections, to hold gauges against.</param>
    public static IReadOnlyList<Finding> Alone(Manifest manifest, IReadOnlyList<OutputFile> files, DesignCopy design, IReadOnlyList<WrittenSection> sections)
    {
        var folder = new WrittenFolder(files);
        var plates = new List<(string File, ThreeMfModel Model)>();
        var findings = new List<Finding>();
        foreach (string path in manifest.Proofs.Select(p => p.Plate).Distinct(StringComparer.Ordinal))
        {
            var read = ThreeMfReader.Read(folder[path] ?? [], path);
            findings.AddRange(read.Findings);
            plates.AddRange(read.Value is { } model ? [(path, model)] : []);
        }

        var (meshes, faults) = Read(manifest, folder);
        return [.. findings, .. faults, .. new PlateRule(manifest, meshes).Check(plates, design.Printer), .. Check(manifest, design, meshes, sections)];
    }

    /// <summary>The proofs' meshes as they are written, by file, and what is wrong with them.</summary>
    internal static (Dictionary<string, Mesh> Meshes, IReadOnlyList<Finding> Faults) Read(Manifest manifest, WrittenFolder folder) =>
        WrittenMeshes.Read(manifest.Proofs.Select(p => (p.Name, p.Stl)), folder);

    /// <summary>What has a place on the layout, held against its track and its platform.</summary>
    internal static IEnumerable<Finding> Check(Manifest manifest, DesignCopy design, IReadOnlyDictionary<string, Mesh> meshes,
        IReadOnlyList<WrittenSection> sections)
    {
        Point2 back = new(1 / manifest.Stretch.X, 1 / manifest.Stretch.Y);
        var platforms = sections.GroupBy(s => s.Platform, StringComparer.Ordinal).ToDictionary(g => g.Key, g =>
            new JoinedSections([.. g.Select(s => s.Mesh.Moved(s.ToLayout))]), StringComparer.Ordinal);
        var work = manifest.Proofs.Where(p => p.ToLayout is not null && meshes.ContainsKey(p.Stl)).ToArray();
        var found = new Finding[work.Length][];
        Parallel.For(0, work.Length, i =>
        {
            var placed = meshes[work[i].Stl].Stretched(back).Moved(work[i].ToLayout!);
            found[i] = [.. One(work[i], placed, design, platforms.GetValueOrDefault(work[i].Platform) ?? JoinedSections.None)];
        });
        return found.SelectMany(f => f);
    }

    private static IEnumerable<Finding> One(ManifestProof proof, Mesh placed, DesignCopy design, JoinedSections platform)
    {
        if (proof.Rides is { } rides)
        {
            return design.Tracks.FirstOrDefault(t => t.Name == rides.Track) is { } track
                ? new RidingRule(track.ToCentreline(), design.Gauge, track.RailTop ?? design.RailTop).Check(proof, placed, platform.Meshes)
                : [Finding.Error("PF7523", "", Invariant($"{proof.Name} rides on track '{rides.Track}', which {DesignCopy.FileName} does not know."),
                    "Build the folder again.", FaultKind.Mesh)];
        }

        if (platform.Meshes.Count == 0)
        {
            return [];
        }

        return platform.Hold(placed) ? [] : [Finding.Error("PF7524", "", Invariant($"{proof.Name} does not lie where its sections do."),
                "Build the folder again.", FaultKind.Mesh)];
    }
}
