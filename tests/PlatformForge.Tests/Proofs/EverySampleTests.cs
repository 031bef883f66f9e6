using System.Text;
using PlatformForge.Exports;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Proving;
using PlatformForge.Exports.Stock;
using PlatformForge.Geometry;
using PlatformForge.Projects;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Proofs;
using PlatformForge.Tests.Cli;
using PlatformForge.Tests.House;
using PlatformForge.Verification;
using PlatformForge.Verification.Distances;
using Xunit;

namespace PlatformForge.Tests.Proofs;

/// <summary>Whoever takes a sample and asks for every set has it: gauges that hold where they stand, and cut lines.</summary>
public class EverySampleTests
{
    // Whole gauges for a small track, narrow sleepers, slices over joints, over a skew cut, two faces and brick; the rest of the shelf
    // and of the finished platforms in the long run.
    private static readonly string[] Usual = ["sandhope", "straight-halt", "thornhithe", "tawnybrook", "cindlemoor"];

    private static readonly string Finished = Path.Combine(SourceTree.Root, "presets", "finished");

    public static TheoryData<string> Names => [.. Simulations.Long
        ? [.. PresetShelf.SampleNames, .. Directory.GetFiles(Finished, "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)!)
            .Order(StringComparer.Ordinal)] : Usual];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_sample_has_gauges_that_hold_and_cut_lines(string sample)
    {
        var project = Read(sample);
        var dossier = DesignRun.Design(project, RunWatch.None).Value!;
        var proofs = ProofRun.Of(project, dossier);
        Assert.True(proofs.Value is not null, string.Join("; ", proofs.Findings.Select(f => f.Message)));
        dossier = dossier with { Proofs = proofs.Value };
        var (files, listed) = ProofFiles.Of(dossier, pictures: false);
        var manifest = OutputFolder.Listing(new Manifest(dossier.Project, dossier.Version, dossier.InputHash, [], [])
        {
            Proofs = listed,
            Stretch = dossier.Printer.Stretch
        }, [.. files]);
        Assert.Contains(listed, p => p.Rides is not null);
        Assert.Contains(listed, p => p.Kind == "test slice");
        Assert.DoesNotContain(files, f => f.Path.EndsWith(".png", StringComparison.Ordinal));
        Assert.Empty(ProofVerifier.Alone(manifest, [.. files], DesignCopy.Of(dossier), ProofRun.Sections(dossier)).Select(f => f.Code + " " + f.Message));

        // Each is on the drawing of its platform by its mark, footprints and masks too.
        string drawn = string.Concat(files.Where(f => f.Path.EndsWith(".svg", StringComparison.Ordinal)).Select(f => Encoding.UTF8.GetString(f.Bytes)));
        Assert.All(proofs.Value.Proofs.Where(p => p.Mark.Length > 0 && p.Kind != ProofKind.SlideGauge),
            p => Assert.Contains($">{p.Mark}  {p.Name}: ", drawn, StringComparison.Ordinal));

        // The files of every set begin with the same names, an island's with both of its tracks'.
        var cut = StockSet.Files(dossier, project.Sheet);
        var names = OutputFiles.Names(dossier);
        Assert.All(cut.Value ?? [], f => Assert.Contains(names, n => Path.GetFileName(f.Path).StartsWith(n + "-", StringComparison.Ordinal)));
        Assert.True(cut.Value is { Count: > 0 }, string.Join("; ", cut.Findings.Select(f => f.Message)));
    }

    private static ProjectSpec Read(string sample)
    {
        if (PresetShelf.Sample(sample) is not { } written)
        {
            return ProjectReader.ReadFile(Path.Combine(Finished, sample + ".toml")).Value!;
        }

        using var folder = new TempFolder();
        foreach (var (path, text) in PresetShelf.FilesOf(sample))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(folder[path])!);
            File.WriteAllText(folder[path], text);
        }

        File.WriteAllText(folder["sample.toml"], written);
        return ProjectReader.ReadFile(folder["sample.toml"]).Value!;
    }

    [Fact]
    public void A_corner_right_under_an_edge_of_a_face_lies_within_its_solid()
    {
        // A cube whose top is cut along its diagonals: every line up from the diagonals goes through an edge, and that from the middle through a corner of
        // four.
        Point3[] corners = [new(-5, -5, 0), new(5, -5, 0), new(5, 5, 0), new(-5, 5, 0), new(-5, -5, 10), new(5, -5, 10), new(5, 5, 10), new(-5, 5, 10),
            new(0, 0, 10)];
        int[] faces = [0, 2, 1, 0, 3, 2, 4, 5, 8, 5, 6, 8, 6, 7, 8, 7, 4, 8, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7];
        Mesh cube = new(corners, faces, new byte[faces.Length / 3]);
        foreach (var p in (Point3[])[new(0, 0, 5), new(2, 2, 5), new(-2, 2, 5), new(3, 1, 5), new(0, 4, 5)])
        {
            Mesh small = new([p, p, p], [0, 1, 2], [0]);
            Assert.True(MeshGap.IsWithin(small.Vertices, [cube], 0.1), $"{p}");
            Assert.False(MeshGap.IsWithin(small.Moved(RigidTransform.Shift(0, 0, 6)).Vertices, [cube], 0.1), $"above {p}");
            Assert.False(MeshGap.IsWithin(small.Moved(RigidTransform.Shift(10, 0, 0)).Vertices, [cube], 0.1), $"beside {p}");
        }
    }
}
