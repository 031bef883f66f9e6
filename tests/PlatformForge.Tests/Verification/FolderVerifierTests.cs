using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Geometry;
using PlatformForge.Sections;
using PlatformForge.Units;
using PlatformForge.Verification;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>Faults planted into a sound folder, one at a time.</summary>
public class FolderVerifierTests
{
    private const string FirstStl = "stl/pendlewick-01.stl";

    [Fact]
    public void A_sound_folder_passes_with_the_clearance_of_its_curve()
    {
        var verdict = FolderVerifier.Verify(new Folders().Make());
        Assert.Empty(verdict.Findings);
        Assert.True(verdict.Passed);

        // Outer corner of a coach 228 long on pivots 162 apart, 34 wide, from the centre of the curve; the bar's facets have their
        // corners on its curve and so come nearer to the track midway, by their versine.
        double middle = Math.Sqrt((Folders.Radius * Folders.Radius) - (81 * 81));
        double corner = Math.Sqrt(Math.Pow(middle + 17, 2) + (114 * 114));
        double facet = 200.0 / Folders.Facets * (Folders.Radius + Folders.Reach) / Folders.Radius;
        double versine = facet * facet / (8 * (Folders.Radius + Folders.Reach));
        Assert.Equal(Folders.Radius + Folders.Reach - corner - versine, verdict.Closest!.Clearance, 2e-3);
        Assert.All(verdict.Sections, s => Assert.True(s.Sound));
        Assert.Equal(3, verdict.Sections.Count);
    }

    [Fact]
    public void A_changed_byte_is_found()
    {
        var folder = Changed(new Folders().Make(), FirstStl, b => [.. b[..^20], (byte)(b[^20] ^ 1), .. b[^19..]]);
        Assert.Contains(FolderVerifier.Verify(folder).Findings, f => f.Code == "PF8003" && f.Message.Contains(FirstStl, StringComparison.Ordinal));
    }

    [Fact]
    public void A_file_cut_short_is_found_and_the_others_are_still_measured()
    {
        var verdict = FolderVerifier.Verify(Changed(new Folders().Make(), FirstStl, b => b[..^70]));
        Assert.Equal(["PF8003", "PF7101"], verdict.Findings.Select(f => f.Code));
        Assert.NotNull(verdict.Closest);
        Assert.False(verdict.Passed);
    }

    [Theory]
    [InlineData(FirstStl)]
    [InlineData("3mf/pendlewick-plate-02.3mf")]
    [InlineData(DesignCopy.FileName)]
    public void A_missing_file_is_found(string path)
    {
        var whole = new Folders().Make();
        var verdict = FolderVerifier.Verify(new([.. whole.Files.Where(f => f.Path != path)]));
        Assert.Contains(verdict.Findings, f => f.Code == "PF8002" && f.Message.Contains(path, StringComparison.Ordinal));
    }

    [Fact]
    public void A_broken_manifest_ends_the_check()
    {
        var verdict = FolderVerifier.Verify(Changed(new Folders().Make(), Manifest.FileName, b => b[..200]));
        Assert.Equal("PF7401", Assert.Single(verdict.Findings).Code);
        Assert.Null(verdict.Closest);
    }

    [Fact]
    public void A_motion_written_in_columns_for_rows_is_found()
    {
        static RigidTransform Transposed(RigidTransform m) => m.Inverse() with { Translation = m.Translation };
        var verdict = FolderVerifier.Verify(new Folders { Motion = (_, m) => Transposed(m) }.Make());
        Assert.Contains(verdict.Findings, f => f.Code is "PF8033" or "PF8034");
    }

    [Fact]
    public void Two_sections_in_each_others_place_are_found()
    {
        var motions = ManifestForm.Read(new Folders().Make()[Manifest.FileName]!, Manifest.FileName).Value!.Sections.Select(s => s.ToLayout).ToArray();
        var verdict = FolderVerifier.Verify(new Folders { Motion = (i, m) => i == 0 ? motions[1] : i == 1 ? motions[0] : m }.Make());
        Assert.Contains(verdict.Findings, f => f.Code is "PF8034" or "PF8035");
    }

    [Fact]
    public void A_section_left_out_is_found()
    {
        var verdict = FolderVerifier.Verify(new Folders { Without = 1 }.Make());
        Assert.Contains(verdict.Findings, f => f.Code == "PF8034");
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    public void A_section_nearer_to_the_track_by_a_little_breaks_the_budget_by_as_much(double moved)
    {
        var sound = FolderVerifier.Verify(new Folders().Make());
        var verdict = FolderVerifier.Verify(new Folders { Motion = (i, m) => i == 1 ? Nearer(m, moved) : m }.Make());
        Assert.Contains(verdict.Findings, f => f.Code == "PF8035");
        Assert.Equal(sound.Closest!.Clearance - moved, verdict.Closest!.Clearance, 0.03 * moved);
        Assert.Equal("Pendlewick up side 2 of 3", verdict.Closest.Section);
        Assert.Equal(sound.Tightest!.Clearance < moved, verdict.Findings.Any(f => f.Code == "PF8021"));
    }

    [Fact]
    public void A_section_further_from_the_track_makes_a_step_that_is_found()
    {
        var verdict = FolderVerifier.Verify(new Folders { Motion = (i, m) => i == 1 ? Nearer(m, -1) : m }.Make());
        Assert.All(verdict.Findings, f => Assert.Equal("PF8035", f.Code));
        Assert.Equal(2, verdict.Findings.Count);
    }

    [Fact]
    public void A_section_that_floats_is_found()
    {
        var verdict = FolderVerifier.Verify(new Folders { Motion = (i, m) => i == 1 ? m.Then(RigidTransform.Shift(0, 0, 1)) : m }.Make());
        Assert.Contains(verdict.Findings, f => f.Code == "PF8032");
    }

    [Fact]
    public void One_more_vehicle_that_is_longer_fouls_what_is_built()
    {
        var longer = Pieces.Coach(330, 190, 36, name: "restaurant car");
        var verdict = FolderVerifier.Verify(new Folders().Make(), [longer]);
        var finding = Assert.Single(verdict.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF8020", FaultKind.DesignRule), (finding.Code, finding.Kind));
        Assert.Contains("restaurant car", finding.Message, StringComparison.Ordinal);
        Assert.Equal(["coach", "restaurant car"], verdict.Vehicles.Select(v => v.Vehicle));
        Assert.True(verdict.Vehicles[0].Closest!.Clearance > 0);
    }

    [Fact]
    public void A_mesh_with_a_hole_is_found_however_well_its_hash_fits()
    {
        var verdict = FolderVerifier.Verify(new Folders { Stl = (i, m) => i == 2 ? m with { Triangles = m.Triangles[3..] } : m }.Make());
        Assert.Contains(verdict.Findings, f => f is { Code: "PF8010", Kind: FaultKind.Mesh });
        Assert.Contains(verdict.Findings, f => f.Code == "PF8005");
        Assert.False(verdict.Sections[2].Sound);
    }

    [Fact]
    public void A_mesh_inside_out_is_found()
    {
        static Mesh Flipped(Mesh m) => m with { Triangles = [.. m.Triangles.Chunk(3).SelectMany(t => new[] { t[0], t[2], t[1] })] };
        Assert.Contains(FolderVerifier.Verify(new Folders { Stl = (_, m) => Flipped(m) }.Make()).Findings, f => f.Code == "PF8012");
    }

    [Fact]
    public void A_print_over_the_edge_of_the_bed_is_found()
    {
        var verdict = FolderVerifier.Verify(new Folders { OnBed = (i, m) => i == 1 ? m with { Shift = new(22, 10, 0) } : m }.Make());
        Assert.Contains("Pendlewick up side 2 of 3", Assert.Single(verdict.Findings, f => f.Code == "PF8013").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_print_too_tall_or_off_the_bed_is_found()
    {
        Assert.Equal(3, FolderVerifier.Verify(new Folders { Printer = PrinterSpec.Oblong(240, 240, 15) with { Margin = 5 } }.Make()).Findings.Count(f => f.Code == "PF8014"));
        Assert.Single(FolderVerifier.Verify(new Folders { OnBed = (i, m) => i == 0 ? m with { Shift = new(10, 10, 0.4) } : m }.Make()).Findings, f => f.Code == "PF8014");
    }

    [Fact]
    public void A_folder_written_to_disk_and_read_back_has_the_same_verdict()
    {
        string path = Path.Combine(Path.GetTempPath(), "platformforge-" + Guid.NewGuid().ToString("N"));
        try
        {
            var made = new Folders().Make();
            var manifest = ManifestForm.Read(made[Manifest.FileName]!, Manifest.FileName).Value!;
            Assert.True(OutputFolder.Write(path, manifest, [.. made.Files.Where(f => f.Path != Manifest.FileName)]).Succeeded);
            var verdict = FolderVerifier.Verify(FolderReader.Read(path).Value!);
            Assert.Empty(verdict.Findings);
            Assert.Equal(FolderVerifier.Verify(made).Closest, verdict.Closest);
        }
        finally
        {
            Directory.Delete(path, recursive: true);
        }
    }

    [Fact]
    public void A_folder_that_is_not_ours_is_a_fault_of_the_input()
    {
        var finding = Assert.Single(FolderReader.Read(Path.Combine(Path.GetTempPath(), "platformforge-none")).Findings);
        Assert.Equal(("PF8001", FaultKind.Input), (finding.Code, finding.Kind));
    }

    // The second section's middle lies at chainage 620; the track turns left, so the platform's side is away from the curve's centre.
    private static RigidTransform Nearer(RigidTransform motion, double by)
    {
        var left = Folders.Track.At(620).Tangent.Left;
        return motion.Then(RigidTransform.Shift(left.X * by, left.Y * by, 0));
    }

    private static WrittenFolder Changed(WrittenFolder folder, string path, Func<byte[], byte[]> change) =>
        new([.. folder.Files.Select(f => f.Path == path ? f with { Bytes = change(f.Bytes) } : f)]);
}
