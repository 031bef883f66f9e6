using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Proofs;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Projects;
using PlatformForge.Units;
using PlatformForge.Verification;
using Xunit;

namespace PlatformForge.Tests.Proofs;

/// <summary>What a strip of 100 mm measured is taken into every file, and undone when the files are read back.</summary>
public class BedCorrectionTests
{
    private const double Along = 99.6, Across = 100.3;

    // Of a coordinate below 256 mm as a 32-bit float.
    private const double Rounding = 2e-5;

    private static readonly Lazy<Dossier> Plain = new(() => DesignRun.Design(Samples.Sound(Samples.Pendlewick), RunWatch.None).Value!);
    private static readonly Lazy<Dossier> Corrected =
        new(() => DesignRun.Design(Samples.Sound(Samples.Pendlewick, FormattableString.Invariant($"printer.strip=[{Along}, {Across}]")), RunWatch.None).Value!);
    private static readonly Lazy<OutputSet> Set = new(() => OutputFiles.Of(Corrected.Value, new() { Pictures = false, Drawings = false, Tables = false }));

    private static byte[] File(string path) => Set.Value.Files.Single(f => f.Path == path).Bytes;

    [Fact]
    public void Printed_on_that_printer_every_piece_comes_out_as_it_was_designed()
    {
        var sections = Corrected.Value.Platforms[0].Sections.Sections;
        foreach (var (entry, section) in Set.Value.Manifest.Sections.Zip(sections))
        {
            // The printer makes 100 mm along the bed 99.6, and 100 mm across it 100.3.
            var written = StlReader.Read(File(entry.Stl), entry.Stl).Value!.Mesh;
            Point3[] printed = [.. written.Vertices.Select(v => new Point3(v.X * Along / 100, v.Y * Across / 100, v.Z))];
            var (low, high) = (section.Solid.Mesh with { Vertices = [.. section.Solid.Mesh.Vertices.Select(section.ToLayout.Inverse().Apply)] }).Box();
            Assert.Equal(high.X - low.X, printed.Max(v => v.X) - printed.Min(v => v.X), Rounding);
            Assert.Equal(high.Y - low.Y, printed.Max(v => v.Y) - printed.Min(v => v.Y), Rounding);
            Assert.Equal(section.Solid.MeshVolume, (written with { Vertices = printed }).Volume(), section.Solid.MeshVolume * 1e-6);
            Assert.Equal(section.Solid.MeshVolume / (Along / 100 * Across / 100), written.Volume(), section.Solid.MeshVolume * 1e-6);
        }
    }

    [Fact]
    public void Pieces_are_shifted_on_their_beds_and_not_turned_since_the_correction_is_the_beds()
    {
        foreach (var plate in Set.Value.Manifest.Sections.GroupBy(s => s.Plate))
        {
            var model = ThreeMfReader.Read(File(plate.Key), plate.Key).Value!;
            Assert.All(model.Items, item => Assert.Equal((new Point3(1, 0, 0), new Point3(0, 1, 0), new Point3(0, 0, 1)),
                (item.Placement.X, item.Placement.Y, item.Placement.Z)));
            Assert.All(plate, s => Assert.Equal(StlReader.Read(File(s.Stl), s.Stl).Value!.Mesh.Volume(),
                model.Objects.Single(o => o.Id == s.ObjectId).Mesh!.Volume(), 1e-2));
        }
    }

    [Fact]
    public void Reading_back_undoes_it_and_finds_the_clearance_of_the_plain_design()
    {
        var verdict = FolderVerifier.Verify(Folder(m => m));
        Assert.True(verdict.IsClear, string.Join("; ", verdict.Findings.Select(f => f.Message)));
        var plain = TrialVerdict.Of(Plain.Value);
        Assert.Equal(plain.Closest!.Clearance, verdict.Closest!.Clearance, 3);
        Assert.Equal(Corrected.Value.Platforms[0].Sections.Sections.Sum(s => s.Solid.ColumnVolume), verdict.Sections.Sum(s => s.Volume), 1.0);
    }

    [Fact]
    public void A_manifest_that_hides_it_is_found_out()
    {
        var verdict = FolderVerifier.Verify(Folder(m => m with { Stretch = new(1, 1) }));
        Assert.False(verdict.Passed);
        Assert.Contains("PF7401", FolderVerifier.Verify(Folder(m => m with { Stretch = new(1.2, 1) })).Findings.Select(f => f.Code));
    }

    [Fact]
    public void A_correction_of_nothing_changes_no_byte_of_any_solid()
    {
        var none = DesignRun.Design(Samples.Sound(Samples.Pendlewick, "printer.strip=[100, 100]"), RunWatch.None).Value!;
        Assert.All(none.Platforms[0].Sections.Sections.Zip(Plain.Value.Platforms[0].Sections.Sections), p =>
            Assert.Equal(StlWriter.ToBytes(p.Second.WrittenMesh(), ""), StlWriter.ToBytes(p.First.WrittenMesh(), "")));
    }

    [Theory]
    [InlineData(94, 100, "PF7500")]
    [InlineData(100, 3.94, "PF7500")]
    [InlineData(110.2, 100, "PF7500")]
    [InlineData(98.6, 100, "PF7501")]
    [InlineData(99.7, 100.1, "PF7502")]
    public void What_no_strip_can_have_measured_is_refused_and_what_it_seldom_does_is_told(double along, double across, string code)
    {
        var findings = StripRule.Check(PrinterSpec.Oblong(220, 220, 200) with { MeasuredStrip = new(along, across) });
        Assert.Contains(code, findings.Select(f => f.Code));
        Assert.Equal(code == "PF7500", findings.Any(f => f.Severity == Severity.Error));
    }

    private static WrittenFolder Folder(Func<Manifest, Manifest> told)
    {
        var (manifest, files) = Set.Value;
        return new([.. files, new(Manifest.FileName, ManifestForm.ToBytes(told(OutputFolder.Listing(manifest, files))))]);
    }
}
