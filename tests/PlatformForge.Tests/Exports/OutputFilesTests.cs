using System.Globalization;
using System.Text;
using System.Text.Json;
using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Manifests;
using PlatformForge.Exports.Stl;
using PlatformForge.Exports.Tables;
using PlatformForge.Exports.ThreeMf;
using PlatformForge.Exports.Workshop;
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
                double apart = StlTests.Apart(section.Solid.Mesh, mesh);
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
            Assert.Equal(model.Objects.Sum(o => Platform.Sections.Sections[o.Id - 1].Solid.ColumnVolume), model.PlacedMeshes().Sum(m => m.Volume()), 0.05);
            Assert.NotNull(model.Thumbnail);
            Assert.Equal(["Title", "Description", "Application"], model.Metadata.Select(m => m.Name));
            Assert.Equal(["Deck", "Coping", "Line", "Wall"], model.Materials.Select(m => m.Name));
        }
    }

    [Fact]
    public void The_setting_out_table_gives_foot_back_and_edge_from_the_nearer_rails_outer_face()
    {
        var rows = Rows(SettingOut.Table(Dossier, Platform, 25));
        int At(string heading) => Array.IndexOf(rows[0], heading);
        Assert.Equal("start", rows[1][^1]);
        Assert.Equal("end", rows[^1][^1]);
        Assert.Equal(3, rows.Count(r => r[^1].Contains("cut", StringComparison.Ordinal)));
        double outer = 8.25 + (70 / Dossier.Scale.Ratio);
        foreach (string[] row in rows.Skip(1))
        {
            double s = Number(row[0]);
            foreach (var (from, x, line) in new[] { ("wall_foot", "wall_foot_x_mm", Platform.Plan.WallFace),
                ("back_edge", "back_edge_x_mm", Platform.Plan.Back), ("coping_edge", "coping_edge_x_mm", Platform.Plan.CopingFront) })
            {
                double distance = Number(row[At(from + "_from_rail_outer_face_mm")]);
                Assert.True(Math.Abs(line.At(s) - outer - distance) < 0.011);

                // The place named lies as far from the track as the distance says, on the right of it.
                var place = Dossier.Tracks[0].Ride.Locate(new(Number(row[At(x)]), Number(row[At(x) + 1])), s);
                Assert.True(Math.Abs(s - place.Chainage) < 0.02);
                Assert.True(Math.Abs(-(distance + outer) - place.Offset) < 0.02);
            }
        }

        var stated = Rows(SettingOut.Table(Dossier with { RailHeadWidth = 0.7 }, Platform, 25));
        Assert.Equal(Number(rows[1][1]) + (70 / Dossier.Scale.Ratio) - 0.7, Number(stated[1][1]), 0.011);
        Assert.Throws<ArgumentOutOfRangeException>(() => SettingOut.Table(Dossier, Platform, 0));
    }

    [Fact]
    public void With_the_chords_alone_a_platform_is_stepped_off_to_a_fifth_of_a_millimetre()
    {
        string[][] rows = [.. Rows(SettingOut.Chords(Platform)).Skip(1)];
        var plan = Platform.Plan;
        Assert.Equal(("start", "end"), (rows[0][0], rows[^1][1]));
        Assert.All(plan.Sockets, s => Assert.Contains(rows, r => Math.Abs(Number(r[3]) - s.Chainage) < 0.06));
        Assert.Equal(Platform.Sections.Cuts.Count, rows.Count(r => r[1].Contains("cut", StringComparison.Ordinal)));

        // Two compasses from the last pair of marks give the next pair: nothing but the table's distances is used.
        double start = Number(rows[0][2]);
        Geometry.Point2 foot = plan.ToLayout(start, plan.WallFace.At(start)), back = plan.ToLayout(start, plan.Back.At(start));
        foreach (string[] row in rows)
        {
            var ahead = plan.Chart.At(Number(row[3])).Tangent;
            (foot, back) = (Compass(foot, Number(row[4]), back, Number(row[8]), ahead), Compass(back, Number(row[6]), foot, Number(row[7]), ahead));
            double s = Number(row[3]);
            Assert.True((plan.ToLayout(s, plan.WallFace.At(s)) - foot).Length < 0.2);
            Assert.True((plan.ToLayout(s, plan.Back.At(s)) - back).Length < 0.2);
        }
    }

    // Where two circles meet, on the side that lies ahead.
    private static Geometry.Point2 Compass(Geometry.Point2 a, double fromA, Geometry.Point2 b, double fromB, Geometry.Point2 ahead)
    {
        var join = b - a;
        double apart = join.Length, along = ((fromA * fromA) - (fromB * fromB) + (apart * apart)) / (2 * apart),
            up = Math.Sqrt(Math.Max(0, (fromA * fromA) - (along * along)));
        var unit = join * (1 / apart);
        var high = unit.Left * (Geometry.Point2.Dot(unit.Left, ahead) > 0 ? up : -up);
        return a + (unit * along) + high;
    }

    [Fact]
    public void Tables_are_square_and_quote_what_would_break_them()
    {
        foreach (byte[] table in new[] { PlatformTables.Gaps(Platform), PlatformTables.Sections(Platform) })
        {
            var rows = Rows(table);
            Assert.All(rows, r => Assert.Equal(rows[0].Length, r.Length));
        }

        var odd = Platform with { Sections = Platform.Sections with { Dowels = [new("dowel, \"thin\"", 1, 2, 3)] } };
        Assert.Contains("\n\"dowel, \"\"thin\"\"\",3,1.00,2.0,6.0,", Encoding.UTF8.GetString(CutTables.DowelsAndRods(odd).ToCsv()), StringComparison.Ordinal);
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
    public void The_report_tells_the_largest_gap_at_full_size_and_in_the_model()
    {
        // Fitted, long coach: 4.1 mm and, on the mean, 2.2 mm at 1:76.2 are 312.4 and 167.6 mm.
        string[] row = ReportRow("largest at full size", "long coach");
        Assert.Equal(["fitted (chosen)", "long coach", "1.1 at 300", "2.2", "168 mm (6.6 in)", "4.1 at 700", "312 mm (12.3 in)", "3.0"], row[..8]);
    }

    [Fact]
    public void Where_a_vehicle_comes_nearest_the_report_and_its_drawing_tell_what_is_left_beyond_the_budget()
    {
        // The budget's margin is 0.8 + 0.2 + 0.2: of 1.95 mm to the coping 0.75 are left.
        Assert.Equal(1.2, Platform.Budget.Margin, 12);
        var coach = Dossier.Tracks[0].Vehicles[0];
        Assert.True(PlatformForge.Clearance.Vehicles.PoseSolver.TryPlace(Dossier.Tracks[0].Ride, coach, 700, out var pose));
        var place = new TightPlace(new(coach, false, pose, []), "body", 610, 20.4, 1.95);
        var dossier = Dossier with { Platforms = [Platform with { Tightest = [place] }] };
        string text = Encoding.UTF8.GetString(OutputFiles.Of(dossier, new() { Pictures = false }).Files.Single(f => f.Path == "report.md").Bytes);
        Assert.Equal(["long coach", "up", "body", "610", "20.40", "1.95", "0.75"], ReportRow(text, "left after play and budget", "long coach"));
        var sheet = PlatformForge.Exports.Drawings.Gaps.TightDrawing.Draw(dossier, dossier.Platforms[0]);
        Assert.Contains(sheet.Items.OfType<PlatformForge.Exports.Drawings.Ink.SheetText>(),
            t => t.Text.StartsWith("body at chainage 610: 1.95 to the coping, 0.75 beyond the budget;", StringComparison.Ordinal));
    }

    private static string[] ReportRow(string heading, string vehicle) => ReportRow(Encoding.UTF8.GetString(Bytes("report.md")), heading, vehicle);

    // Cells of a vehicle's first row in the table that has a heading.
    private static string[] ReportRow(string report, string heading, string vehicle) =>
        report.Split('\n').SkipWhile(l => !l.Contains(heading, StringComparison.Ordinal))
        .Select(l => l.Trim('|', ' ').Split('|').Select(c => c.Trim()).ToArray()).First(cells => cells.Contains(vehicle));

    [Fact]
    public void The_design_copy_holds_what_the_folder_was_designed_for()
    {
        var design = DesignForm.Read(Bytes("design.json"), "design.json").Value!;
        Assert.Equal(Dossier.RailTop, design.RailTop);
        Assert.Equal(Dossier.Tracks[0].Ride.PointAt(700, 20), design.Tracks[0].ToCentreline().PointAt(700, 20));
        Assert.Equal(Platform.Budget.Margin, design.Platforms[0].Budget.Margin);
        Assert.Equal(Dossier.Tracks[0].Vehicles.Select(v => v.Length), design.Tracks[0].Vehicles.Select(v => v.Length));
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
