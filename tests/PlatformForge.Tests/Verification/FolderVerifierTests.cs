using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Clearance;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Folders;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Geometry;
using PlatformForge.Projects;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using PlatformForge.Verification;
using PlatformForge.Verification.Rules;
using PlatformForge.Verification.Written;
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

    /// <summary>Without play what is left of the budget is the clearance less what the budget asks for: 1 running and 0.2 for the print.</summary>
    [Fact]
    public void What_is_left_of_the_budget_is_the_clearance_less_what_the_budget_asks()
    {
        var verdict = FolderVerifier.Verify((new Folders { Budget = ClearanceBudget.Of(1, print: 0.2) }).Make());
        Assert.Equal(verdict.Closest!.Clearance - 1.2, verdict.Tightest!.Clearance, 1e-6);
    }

    [Theory]
    [InlineData(0.01, true)]
    [InlineData(-0.01, false)]
    public void A_budget_that_asks_for_more_than_there_is_is_broken(double spare, bool kept)
    {
        double there = FolderVerifier.Verify((new Folders { Budget = ClearanceBudget.Of(1) }).Make()).Closest!.Clearance;
        var verdict = FolderVerifier.Verify((new Folders { Budget = ClearanceBudget.Of(there - 0.5 - spare, print: 0.5) }).Make());
        Assert.Equal(kept, verdict.Passed);
        Assert.Equal(kept ? [] : ["PF8021"], verdict.Findings.Select(f => f.Code));
    }

    /// <summary>Up the bars' faces, 20 mm from the baseboard, every height is as near as another: one is told whatever order the triangles come in, the
    /// highest.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Of_heights_as_near_as_one_another_the_highest_is_told(int seed)
    {
        var random = new Random(seed);
        Mesh Shuffled(Mesh m)
        {
            int[] order = [.. Enumerable.Range(0, m.TriangleCount)];
            random.Shuffle(order);
            return m with { Triangles = [.. order.SelectMany(i => m.Triangles[(3 * i)..((3 * i) + 3)])] };
        }

        var verdict = FolderVerifier.Verify(new Folders { Stl = (_, m) => Shuffled(m) }.Make());
        Assert.Empty(verdict.Findings);
        Assert.Equal(20 - Pieces.RailTop, verdict.Closest!.Height, 1e-6);
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
        Assert.Equal(3, FolderVerifier.Verify(new Folders { Printer = PrinterSpec.Oblong(240, 240, 15) with { Margin = 5 } }.Make()).Findings
            .Count(f => f.Code == "PF8014"));
        Assert.Single(FolderVerifier.Verify(new Folders { OnBed = (i, m) => i == 0 ? m with { Shift = new(10, 10, 0.4) } : m }.Make()).Findings,
            f => f.Code == "PF8014" && f.Message.Contains("plate-01", StringComparison.Ordinal));
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

    /// <summary>An empty list is a folder that is not ours, and not one into which somebody writes.</summary>
    [Fact]
    public void An_empty_manifest_is_a_fault_of_the_input()
    {
        string path = Directory.CreateTempSubdirectory("platformforge-empty-").FullName;
        try
        {
            File.WriteAllBytes(Path.Combine(path, Manifest.FileName), []);
            var finding = Assert.Single(FolderReader.Read(path).Findings);
            Assert.Equal(FaultKind.Input, finding.Kind);
            Assert.NotEqual("PF8040", finding.Code);
        }
        finally
        {
            Directory.Delete(path, recursive: true);
        }
    }

    [Theory]
    [InlineData(0.3)]
    [InlineData(-0.3)]
    [InlineData(1)]
    [InlineData(-3)]
    public void A_section_turned_by_a_little_is_told_as_the_steps_it_makes(double degrees)
    {
        // The second section is 200 mm long: about its middle its ends go 100 mm times the tangent of the angle to either side.
        var verdict = FolderVerifier.Verify(new Folders { Motion = (i, m) => i == 1 ? Turned(m, degrees * Math.PI / 180) : m }.Make());
        double expected = Math.Abs(100 * Math.Tan(degrees * Math.PI / 180));
        double[] steps = [.. verdict.Findings.Where(f => f.Code == "PF8035")
            .Select(f => Math.Abs(double.Parse(Regex.Match(f.Message, @"steps by ([0-9.]+) mm").Groups[1].Value, CultureInfo.InvariantCulture)))];
        Assert.Equal(2, steps.Length);
        Assert.All(steps, s => Assert.Equal(expected, s, 0.04 + (0.05 * expected)));
    }

    [Fact]
    public void A_section_of_a_platform_that_the_design_copy_does_not_know_is_not_called_clear()
    {
        var verdict = FolderVerifier.Verify(new Folders { Platform = (i, name) => i == 1 ? "elsewhere" : name }.Make());
        Assert.Contains(verdict.Findings, f => f is { Code: "PF8041", Kind: FaultKind.Mesh } && f.Message.Contains("2 of 3", StringComparison.Ordinal));
        Assert.Contains("2 of 3", Assert.Single(verdict.NotHeld), StringComparison.Ordinal);
        Assert.False(verdict.IsClear);
    }

    [Theory]
    [InlineData(2, "as do 1 more")]
    [InlineData(3, "as do 2 more")]
    public void Sections_of_one_unknown_platform_are_told_together(int strangers, string told)
    {
        var verdict = FolderVerifier.Verify(new Folders { Platform = (i, name) => i < strangers ? "elsewhere" : name }.Make());
        Assert.Contains(told, Assert.Single(verdict.Findings, f => f.Code == "PF8041").Message, StringComparison.Ordinal);
        Assert.Equal(strangers, verdict.NotHeld.Count);
    }

    [Fact]
    public void A_design_copy_without_platforms_or_without_vehicles_is_not_called_clear()
    {
        var bare = FolderVerifier.Verify(new Folders { Design = d => d with { Platforms = [] } }.Make());
        Assert.Contains(bare.Findings, f => f.Code == "PF8042");
        Assert.Equal(3, bare.NotHeld.Count);
        var alone = FolderVerifier.Verify(new Folders { Vehicles = [] }.Make());
        Assert.Equal(["PF8043"], alone.Findings.Select(f => f.Code));
        Assert.False(alone.IsClear);

        // A further vehicle is a vehicle.
        Assert.Empty(FolderVerifier.Verify(new Folders { Vehicles = [] }.Make(), [Pieces.Coach(228, 162, 34)]).NotHeld);
    }

    [Theory]
    [InlineData("scaled by 1.02", 1.02, 0, 0, 0, 1.02, 0, 0, 0, 1.02)]
    [InlineData("scaled by 0.5", 0.5, 0, 0, 0, 0.5, 0, 0, 0, 0.5)]
    [InlineData("stretched", 1, 0, 0, 0, 1.01, 0, 0, 0, 1)]
    [InlineData("mirrored", -1, 0, 0, 0, 1, 0, 0, 0, 1)]
    [InlineData("skewed", 1, 0, 0, 0.02, 0.9998, 0, 0, 0, 1)]
    [InlineData("tipped over", 1, 0, 0, 0, -1, 0, 0, 0, -1)]
    public void What_a_plate_prints_is_turned_and_shifted_and_nothing_else(string how, double a, double b, double c, double d, double e, double f, double g,
        double h, double i)
    {
        // The skewed axis is of unit length, so that only the angle tells.
        var y = new Point3(d, e, f) * (how == "skewed" ? 1 / new Point3(d, e, f).Length : 1);
        AffineMotion Bent(AffineMotion m) => new AffineMotion(new(a, b, c), y, new(g, h, i), default).Then(m);
        var plate = FolderVerifier.Verify(new Folders { OnBed = (k, m) => k == 1 ? Bent(m) : m }.Make());
        Assert.Contains(plate.Findings, x => x is { Code: "PF8044", Kind: FaultKind.Mesh } && x.Message.Contains(how, StringComparison.Ordinal)
            && x.Message.Contains("plate-02", StringComparison.Ordinal));
        var all = FolderVerifier.Verify(new Folders { InAll = (k, m) => k == 1 ? Bent(m) : m }.Make());
        Assert.Contains(all.Findings, x => x.Code == "PF8044" && x.Message.Contains("-all.3mf", StringComparison.Ordinal));
        Assert.False(plate.IsClear || all.IsClear);
    }

    [Fact]
    public void The_file_of_all_plates_has_the_sections_as_they_are_and_where_they_are()
    {
        var grown = FolderVerifier.Verify(new Folders { InAllMesh = (i, m) => i == 2 ? m with { Vertices = Array.ConvertAll(m.Vertices, v => v * 1.01) } : m }
            .Make());
        Assert.Contains(grown.Findings, f => f.Code == "PF8005" && f.Message.Contains("-all.3mf", StringComparison.Ordinal));
        var moved = FolderVerifier.Verify(new Folders { InAll = (i, m) => i == 0 ? m with { Shift = m.Shift + new Point3(0, 30, 0) } : m }.Make());
        Assert.Equal(["PF8048"], moved.Findings.Select(f => f.Code));
        var onto = FolderVerifier.Verify(new Folders { InAll = (i, m) => i == 1 ? m with { Shift = new(10, 10, 0) } : m }.Make());
        Assert.Contains(onto.Findings, f => f.Code == "PF8015");
        var less = FolderVerifier.Verify(new Folders { InAllWithout = 1 }.Make());
        Assert.Contains(less.Findings, f => f.Code == "PF8006" && f.Message.Contains("-all.3mf", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1, 0.01)]
    [InlineData(0, 3)]
    [InlineData(1, -12.5)]
    [InlineData(2, 40)]
    [InlineData(2, 260)]
    [InlineData(0, 520)]
    [InlineData(1, -520)]
    [InlineData(2, 99999)]
    public void A_whole_plate_that_lies_aside_in_the_file_of_all_plates_is_found(int plate, double by)
    {
        var verdict = FolderVerifier.Verify(new Folders { InAll = (i, m) => i == plate ? m with { Shift = m.Shift + new Point3(by, 0, 0) } : m }.Make());
        var told = Assert.Single(verdict.Findings, f => f.Code == "PF8048");
        Assert.Contains("-all.3mf", told.Message, StringComparison.Ordinal);
        Assert.False(verdict.IsClear);
    }

    [Fact]
    public void Any_corner_that_lies_elsewhere_in_a_3MF_file_is_found_though_box_and_volume_are_the_same()
    {
        var random = new Random(8005);
        Assert.All(Enumerable.Range(0, 12), i =>
        {
            // By 0.01 to 0.3 mm into its own box.
            double by = 0.01 * Math.Pow(30, random.NextDouble());
            Mesh Pushed(Mesh mesh)
            {
                var (low, high) = mesh.Box();
                int which = random.Next(mesh.Vertices.Length);
                return mesh
                    with
                { Vertices = [.. mesh.Vertices.Select((v, k) => k == which ? v with { Y = v.Y + (v.Y < (low.Y + high.Y) / 2 ? by : -by) } : v)] };
            }

            var verdict = FolderVerifier.Verify(new Folders { InAllMesh = (k, m) => k == i % 3 ? Pushed(m) : m }.Make());
            Assert.Contains(verdict.Findings, f => f.Code == "PF8005" && f.Message.Contains("-all.3mf", StringComparison.Ordinal));
            Assert.False(verdict.IsClear);
        });

        // The same triangles in another order and begun at other corners are the same solid.
        var turned =
            FolderVerifier.Verify(new Folders
            {
                InAllMesh = (_, m) =>
                m with { Triangles = [.. m.Triangles.Chunk(3).Reverse().SelectMany(t => new[] { t[1], t[2], t[0] })], Paints = [] }
            }.Make());
        Assert.Empty(turned.Findings);
        var flipped =
            FolderVerifier.Verify(new Folders { InAllMesh = (_, m) => m with { Triangles = [.. m.Triangles.Take(3).Reverse(), .. m.Triangles.Skip(3)] } }
                .Make());
        Assert.Contains(flipped.Findings, f => f.Code == "PF8005");
    }

    [Fact]
    public void A_section_that_a_3MF_file_prints_though_the_manifest_has_it_elsewhere_is_told()
    {
        var made = new Folders().Make();
        var manifest = ManifestForm.Read(made[Manifest.FileName]!, Manifest.FileName).Value!;
        manifest = manifest with { Sections = [.. manifest.Sections.Select((s, i) => i == 1 ? s with { AllPlates = null } : s)] };
        var verdict =
            FolderVerifier.Verify(new([.. made.Files.Where(f => f.Path != Manifest.FileName), new(Manifest.FileName, ManifestForm.ToBytes(manifest))]));
        var told = Assert.Single(verdict.Findings, f => f.Code == "PF8046");
        Assert.Contains("Pendlewick up side 2 of 3", told.Message, StringComparison.Ordinal);
        Assert.False(verdict.IsClear);
    }

    [Theory]
    [InlineData(true, "two sections of number 1")]
    [InlineData(false, "not after its beginning")]
    public void Sections_that_the_manifest_has_out_of_their_row_are_a_fault(bool twice, string said)
    {
        var made = new Folders().Make();
        var manifest = ManifestForm.Read(made[Manifest.FileName]!, Manifest.FileName).Value!;
        manifest = manifest
            with
        { Sections = [.. manifest.Sections.Select((s, i) => i != 1 ? s : twice ? s with { Number = 1 } : s with { To = s.From - 5 })] };
        var verdict =
            FolderVerifier.Verify(new([.. made.Files.Where(f => f.Path != Manifest.FileName), new(Manifest.FileName, ManifestForm.ToBytes(manifest))]));
        Assert.Contains(said, Assert.Single(verdict.Findings).Message, StringComparison.Ordinal);
        Assert.False(verdict.IsClear);
    }

    /// <summary>Paper, sheet, gauges, a scene, a survey: such a folder is sound, and building it again would not give it sections.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_folder_made_without_prints_is_told_as_that_and_never_called_clear(bool copied)
    {
        var made = new Folders().Make();
        OutputFile[] kept = [.. made.Files.Where(f => f.Path == DesignCopy.FileName && copied)];
        var manifest = ManifestForm.Read(made[Manifest.FileName], Manifest.FileName).Value!;
        manifest = manifest with { Sections = [], Files = [.. manifest.Files.Where(f => kept.Any(k => k.Path == f.Path))] };
        var verdict = FolderVerifier.Verify(new([.. kept, new(Manifest.FileName, ManifestForm.ToBytes(manifest))]));
        var told = Assert.Single(verdict.Findings);
        Assert.Equal(("PF8051", FaultKind.Input), (told.Code, told.Kind));
        Assert.DoesNotContain("again", told.Remedy, StringComparison.Ordinal);
        Assert.False(verdict.IsClear);
        Assert.NotEmpty(verdict.NotHeld);
    }

    [Fact]
    public void Without_a_design_copy_nothing_is_held_and_no_further_vehicle_has_a_scale()
    {
        var made = new Folders().Make();
        WrittenFolder bare = new([.. made.Files.Where(f => f.Path != DesignCopy.FileName)]);
        var verdict = FolderVerifier.Verify(bare);
        Assert.Contains(verdict.Findings, f => f.Code == "PF8004");
        Assert.Contains(verdict.NotHeld, n => n.Contains(DesignCopy.FileName, StringComparison.Ordinal));
        Assert.Equal("PF1021", Assert.Single(FurtherVehicles.Read(["goods-van"], bare).Findings).Code);
    }

    [Fact]
    public void A_section_whose_motion_mirrors_it_is_told()
    {
        var section = Pieces.Section(Pieces.Bar(Pieces.Straight(1000), 400, 500, 24, 60, 0, 20));
        var mirrored = section with { ToLayout = new RigidTransform(new(1, 0, 0), new(0, 1, 0), new(0, 0, -1), new(0, 0, 20)) };
        Assert.Contains(SectionsVerifier.Verify([mirrored], Pieces.Facts(Pieces.Straight(1000), Pieces.Coach())).Findings, f => f.Code == "PF8031");
        Assert.DoesNotContain(SectionsVerifier.Verify([section], Pieces.Facts(Pieces.Straight(1000), Pieces.Coach())).Findings, f => f.Code == "PF8031");
    }

    [Fact]
    public void Walls_that_were_not_measured_are_told()
    {
        SectionVerdict unmeasured = new("a", "a.stl", 1, 1, new(1, 1, 1), true, double.NaN);
        Assert.Equal(["PF8070"], WallRule.Check(unmeasured, PrinterSpec.Oblong(200, 200, 200)).Select(f => f.Code));
    }

    [Fact]
    public void A_3MF_file_that_no_section_is_in_is_told()
    {
        var verdict = FolderVerifier.Verify(new Folders { NamesAll = false }.Make());
        Assert.Equal(["PF8045"], verdict.Findings.Select(f => f.Code));
    }

    [Fact]
    public void Prints_that_the_manifest_does_not_list_are_told_and_keep_the_rest_from_being_called_clear()
    {
        var verdict = FolderVerifier.Verify(new Folders().Make() with { Unlisted = ["stl/another.stl"] });
        Assert.Equal(["PF8047"], verdict.Findings.Select(f => f.Code));
        Assert.True(verdict.Passed);
        Assert.False(verdict.IsClear);
        Assert.Contains("stl/another.stl", Assert.Single(verdict.NotHeld), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5, "'5.stl', not of this build")]
    [InlineData(6, "'5.stl' and 1 more, not of this build")]
    [InlineData(9, "'5.stl' and 4 more, not of this build")]
    public void Of_many_prints_that_are_not_listed_five_are_named_and_the_rest_counted(int strangers, string told)
    {
        var verdict = FolderVerifier.Verify(new Folders().Make() with { Unlisted = [.. Enumerable.Range(1, strangers).Select(i => $"{i}.stl")] });
        Assert.EndsWith(told, Assert.Single(verdict.NotHeld), StringComparison.Ordinal);
    }

    /// <summary>Where two sections are trimmed as far as a joint may be, 2 mm are left along the edge; across a platform with square ends nothing is
    /// longer.</summary>
    [Theory]
    [InlineData(1.8, false)]
    [InlineData(2.3, true)]
    public void A_gap_wider_than_two_trimmed_ends_is_told(double gap, bool told)
    {
        // Of the second section the last facet is drawn in, but for 0.1 mm that either end is trimmed by.
        double share = (gap - (2 * Folders.Trim)) / ((200 - (2 * Folders.Trim)) / Folders.Facets);
        Point3 Drawn(Point3[] v, int k) => k < 4 * Folders.Facets ? v[k] : v[k] + ((v[k - 4] - v[k]) * share);
        Mesh Shorter(Mesh m) => m with { Vertices = [.. m.Vertices.Select((_, k) => Drawn(m.Vertices, k))] };
        var verdict = FolderVerifier.Verify(new Folders { Stl = (i, m) => i == 1 ? Shorter(m) : m }.Make());
        Assert.Equal(told, verdict.Findings.Any(f => f.Code == "PF8034"));
    }

    /// <summary>A platform stands 24 to 64 mm from its track: one of its sections moved 30 mm towards it lies 6 mm across the middle.</summary>
    [Fact]
    public void A_section_across_the_middle_of_its_track_is_told_with_how_far()
    {
        double heading = Folders.Track.At(620).Heading;
        var towards = RigidTransform.Shift(-30 * Math.Sin(heading), 30 * Math.Cos(heading), 0);
        var verdict = FolderVerifier.Verify(new Folders { Motion = (i, m) => i == 1 ? m.Then(towards) : m }.Make());
        string told = Assert.Single(verdict.Findings, f => f.Code == "PF8033").Message;
        Assert.Equal(6, double.Parse(Regex.Match(told, @"by ([0-9.]+) mm").Groups[1].Value, CultureInfo.InvariantCulture), 0.5);
    }

    public static TheoryData<string> Damages => ["truncated", "empty", "nan", "no triangle"];

    [Theory]
    [MemberData(nameof(Damages))]
    public void A_damaged_STL_is_a_fault_of_the_mesh_with_no_untrue_second_one(string damage)
    {
        byte[] Spoilt(byte[] b) => damage switch
        {
            "truncated" => b[..^70],
            "empty" => [],
            "nan" => [.. b[..100], 0, 0, 0xC0, 0x7F, .. b[104..]],
            _ => [.. b[..80], 0, 0, 0, 0],
        };
        foreach (bool all in new[] { false, true })
        {
            var folder = new Folders().Make();
            foreach (string path in folder.Files.Select(f => f.Path).Where(p => p.EndsWith(".stl", StringComparison.Ordinal) && (all || p == FirstStl))
                .ToArray())
            {
                folder = Changed(folder, path, Spoilt);
            }

            var verdict = FolderVerifier.Verify(folder);
            Assert.All(verdict.Findings, f => Assert.Equal(FaultKind.Mesh, f.Kind));
            Assert.All(verdict.Findings, f => Assert.Contains(f.Code, new[] { "PF8003", "PF7101", "PF7102", "PF7104" }));
            Assert.Equal(all ? 3 : 1, verdict.NotHeld.Count);
            Assert.Contains("1 of 3, which could not be read", verdict.NotHeld[0], StringComparison.Ordinal);
            Assert.False(verdict.Passed);
        }
    }

    [Fact]
    public void A_link_and_a_pipe_in_a_finished_folder_are_not_read()
    {
        string path = Path.Combine(Path.GetTempPath(), "platformforge-" + Guid.NewGuid().ToString("N"));
        try
        {
            var made = new Folders().Make();
            var manifest = ManifestForm.Read(made[Manifest.FileName]!, Manifest.FileName).Value!;
            Assert.True(OutputFolder.Write(path, manifest, [.. made.Files.Where(f => f.Path != Manifest.FileName)]).Succeeded);
            string stl = Path.Combine(path, FirstStl), elsewhere = Path.Combine(path, "elsewhere.bin");
            File.Move(stl, elsewhere);
            File.CreateSymbolicLink(stl, elsewhere);
            File.WriteAllText(Path.Combine(path, "stl", "mine.STL"), "solid mine");
            var folder = FolderReader.Read(path).Value!;
            Assert.Null(folder[FirstStl]);
            Assert.Equal(["stl/mine.STL"], folder.Unlisted);
            var verdict = FolderVerifier.Verify(folder);
            Assert.Contains(verdict.Findings, f => f.Code == "PF8003" && f.Message.Contains("is a link", StringComparison.Ordinal));
            Assert.Contains(verdict.Findings, f => f.Code == "PF8047");
        }
        finally
        {
            Directory.Delete(path, recursive: true);
        }
    }

    private static RigidTransform Turned(RigidTransform motion, double angle)
    {
        var middle = Folders.Track.PointAt(620, -Folders.Reach);
        return motion.Then(RigidTransform.Shift(-middle.X, -middle.Y, 0)).Then(RigidTransform.AboutZ(angle)).Then(RigidTransform.Shift(middle.X, middle.Y, 0));
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
