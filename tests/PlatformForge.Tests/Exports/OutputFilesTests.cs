using System.Globalization;
using System.Text;
using System.Text.Json;
using PlatformForge.Exports;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.Tables;
using PlatformForge.Exports.ThreeMf;
using Xunit;

namespace PlatformForge.Tests.Exports;

/// <summary>Everything a run writes, held against the dossier it was made from.</summary>
public class OutputFilesTests
{
    private static readonly Dossier Dossier = HandDossier.Pendlewick();
    private static readonly PlatformDossier Platform = Dossier.Platforms[0];
    private static readonly OutputSet Set = OutputFiles.Of(Dossier, new() { PictureWidth = 160 });

    [Fact]
    public void Every_path_is_below_the_folder_and_there_once()
    {
        Assert.All(Set.Files, f => Assert.True(ManifestForm.IsInside(f.Path)));
        Assert.Equal(Set.Files.Count, Set.Files.Select(f => f.Path.ToUpperInvariant()).Distinct().Count());
        Assert.Equal(4, Set.Files.Count(f => f.Path.EndsWith(".stl", StringComparison.Ordinal)));
        Assert.Equal(3, Set.Files.Count(f => f.Path.EndsWith(".3mf", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_manifest_puts_every_written_section_back_where_it_belongs_on_the_layout()
    {
        foreach (var (listed, section) in Set.Manifest.Sections.Zip(Platform.Sections.Sections))
        {
            var stl = StlReader.Read(Bytes(listed.Stl), listed.Stl).Value!.Mesh.Moved(listed.ToLayout);
            var plate = ThreeMfReader.Read(Bytes(listed.Plate), listed.Plate).Value!;
            var thing = plate.Objects.Single(o => o.Id == listed.ObjectId);
            Assert.Equal(section.Name, thing.Name);
            var packed = thing.Mesh!.Moved(listed.ToLayout);
            foreach (var mesh in new[] { stl, packed })
            {
                var apart = StlTests.Corners(section.Solid.Mesh).Zip(StlTests.Corners(mesh)).Max(p => (p.First - p.Second).Length);
                Assert.True(apart < 2e-5, $"{apart} mm off"); // a 32-bit float of 200 mm has steps of 1.5e-5
            }
        }
    }

    [Fact]
    public void Plates_lie_on_the_bed_in_the_positive_octant_and_their_volumes_are_the_sections()
    {
        foreach (var file in Set.Files.Where(f => f.Path.EndsWith(".3mf", StringComparison.Ordinal)))
        {
            var model = ThreeMfReader.Read(file.Bytes, file.Path).Value!;
            Assert.All(model.PlacedMeshes(), m => Assert.True(Math.Min(m.Box().Low.X, Math.Min(m.Box().Low.Y, m.Box().Low.Z)) > -1e-6));
            Assert.Equal(model.Objects.Sum(o => Platform.Sections.Sections[o.Id - 1].Solid.ColumnVolume), model.PlacedMeshes().Sum(m => m.Volume()), 1);
            Assert.NotNull(model.Thumbnail);
            Assert.Equal(["Title", "Description", "Application"], model.Metadata.Select(m => m.Name));
            Assert.Equal(["Deck", "Coping", "Line", "Wall"], model.Materials.Select(m => m.Name));
        }
    }

    [Fact]
    public void The_setting_out_table_gives_reach_and_offset_from_the_running_edge()
    {
        var rows = Rows(PlatformTables.SettingOut(Dossier, Platform, 25));
        Assert.Equal("start", rows[1][8]);
        Assert.Equal("end", rows[^1][8]);
        Assert.Equal(3, rows.Count(r => r[8] == "cut"));
        foreach (string[] row in rows.Skip(1))
        {
            double s = Number(row[0]), reach = Number(row[1]);
            Assert.True(Math.Abs(reach - 8.25 - Number(row[2])) < 1.1e-3);
            Assert.True(Math.Abs(Platform.Plan.CopingFront.At(s) - reach) < 1.1e-3);
            var place = Dossier.Tracks[0].Ride.Locate(new(Number(row[5]), Number(row[6])), s);
            Assert.True(Math.Abs(s - place.Chainage) < 2e-3);
            Assert.True(Math.Abs(-reach - place.Offset) < 2e-3); // the platform lies to the right
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => PlatformTables.SettingOut(Dossier, Platform, 0));
    }

    [Fact]
    public void Tables_are_square_and_quote_what_would_break_them()
    {
        foreach (byte[] table in new[] { PlatformTables.Gaps(Platform), PlatformTables.Sections(Platform), PlatformTables.CuttingList(Platform) })
        {
            var rows = Rows(table);
            Assert.All(rows, r => Assert.Equal(rows[0].Length, r.Length));
        }

        var odd = Platform with { Sections = Platform.Sections with { Dowels = [new("dowel, \"thin\"", 1, 2, 3)] } };
        Assert.EndsWith("\n\"dowel, \"\"thin\"\"\",3,1.00,2.0,6.0\n", Encoding.UTF8.GetString(PlatformTables.CuttingList(odd)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_report_says_budget_gaps_sections_findings_and_cautions()
    {
        string text = Encoding.UTF8.GetString(Bytes("report.md"));
        Assert.All(Platform.Budget.Lines, l => Assert.Contains(l.Name, text, StringComparison.Ordinal));
        Assert.All(Platform.Plan.Requirement.Vehicles.Take(2), v => Assert.Contains(v, text, StringComparison.Ordinal));
        Assert.Contains("PF4999", text, StringComparison.Ordinal);
        Assert.Contains("For model railways only", text, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(Bytes("report.json"));
        var platform = json.RootElement.GetProperty("platforms")[0];
        Assert.Equal(1.2, platform.GetProperty("budget").GetProperty("margin").GetDouble(), 12);
        Assert.Equal(4, platform.GetProperty("sections").GetArrayLength());
        Assert.Equal("tank engine", platform.GetProperty("governing")[0].GetProperty("vehicle").GetString());
    }

    [Fact]
    public void The_design_copy_holds_what_the_folder_was_designed_for()
    {
        var design = DesignForm.Read(Bytes("design.json"), "design.json").Value!;
        Assert.Equal(Dossier.RailTop, design.RailTop);
        Assert.Equal(Dossier.Tracks[0].Ride.PointAt(700, 20), design.Tracks[0].ToCentreline().PointAt(700, 20));
        Assert.Equal(Platform.Budget.Margin, design.Platforms[0].Budget.Margin);
        Assert.Equal(Dossier.Tracks[0].Vehicles.Select(v => v.Length), design.Tracks[0].Vehicles.Select(v => v.Length));
    }

    [Fact]
    public void The_same_dossier_gives_the_same_bytes_in_three_cultures()
    {
        var before = CultureInfo.CurrentCulture;
        var without = OutputFiles.Of(Dossier, new() { Pictures = false });
        try
        {
            foreach (string culture in (string[])["de-DE", "ru-RU"])
            {
                CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.GetCultureInfo(culture);
                var again = OutputFiles.Of(HandDossier.Pendlewick(), new() { Pictures = false });
                foreach (var (one, other) in without.Files.Zip(again.Files))
                {
                    Assert.Equal(one.Path, other.Path);
                    Assert.True(one.Bytes.AsSpan().SequenceEqual(other.Bytes), $"{one.Path} differs in {culture}");
                }
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
            CultureInfo.DefaultThreadCurrentCulture = null;
        }
    }

    [Theory]
    [InlineData("Pendlewick up side", "pendlewick-up-side")]
    [InlineData("  Überführung No. 2 / ../etc ", "uberfuhrung-no-2-etc")]
    [InlineData("站台", "platform")]
    public void File_names_are_plain(string name, string plain) => Assert.Equal(plain, FileNames.Plain(name));

    [Fact]
    public void Platforms_of_one_name_get_files_of_their_own() =>
        Assert.Equal(["up", "up-2", "up-3"], FileNames.Distinct(["Up", "up!", "UP"]));

    private static byte[] Bytes(string path) => Set.Files.Single(f => f.Path == path).Bytes;

    private static string[][] Rows(byte[] csv) => [.. Encoding.UTF8.GetString(csv).TrimEnd('\n').Split('\n').Select(l => l.Split(','))];

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
