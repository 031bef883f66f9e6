using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Proving;
using PlatformForge.Exports.Stl;
using PlatformForge.Geometry;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Proofs;
using PlatformForge.Tests.Projects;
using PlatformForge.Verification;

namespace PlatformForge.Tests.Proofs;

/// <summary>Gauges and proofs of a project, made and written once for the tests that read them back.</summary>
internal sealed class ProofSets
{
    private readonly Dictionary<string, Mesh> read = new(StringComparer.Ordinal);

    public ProofSets(string text, params string[] sets)
    {
        var project = Samples.Sound(text, sets);
        var dossier = DesignRun.Design(project, RunWatch.None).Value!;
        var made = ProofRun.Of(project, dossier);
        Assert.True(made.Value is not null, string.Join("; ", made.Findings.Select(f => f.Message)));
        Dossier = dossier with { Proofs = made.Value };
        Set = Files(Dossier);
    }

    public static OutputSet Files(Dossier dossier)
    {
        var (manifest, files) = OutputFiles.Of(dossier, new() { Pictures = false, Drawings = false, Tables = false, Report = false, Masks = false });
        var (proofs, listed) = ProofFiles.Of(dossier);
        return new(manifest with { Proofs = listed }, [.. files, .. proofs]);
    }

    public static Lazy<ProofSets> Pendlewick { get; } = new(() => new(Samples.Pendlewick));

    public Dossier Dossier { get; }

    public OutputSet Set { get; }

    public ProofSet Proofs => Dossier.Proofs!;

    public byte[] File(string path) => Set.Files.Single(f => f.Path == path).Bytes;

    /// <summary>A proof's mesh as its STL file holds it.</summary>
    public Mesh Written(ManifestProof proof)
    {
        lock (read)
        {
            return read.TryGetValue(proof.Stl, out var mesh) ? mesh : read[proof.Stl] = StlReader.Read(File(proof.Stl), proof.Stl).Value!.Mesh;
        }
    }

    /// <summary>The same where it stands on the layout.</summary>
    public Mesh Placed(ManifestProof proof) => Written(proof).Moved(proof.ToLayout!);

    public IEnumerable<ManifestProof> Of(string kind) => Set.Manifest.Proofs.Where(p => p.Kind == kind);

    public Proof Made(ManifestProof proof) => Proofs.Proofs.Single(p => p.Name == proof.Name);

    public double Figure(ManifestProof proof, string what) => Made(proof).Figures.Single(f => f.What == what).Value;

    public WrittenFolder Folder(Func<Manifest, Manifest> told)
    {
        var (manifest, files) = Set;
        return new([.. files, new(Manifest.FileName, ManifestForm.ToBytes(told(OutputFolder.Listing(manifest, files))))]);
    }
}
