using System.Text.RegularExpressions;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Reports;
using PlatformForge.Geometry;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Projects;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>An island with ramps between two curves, faced in brick, from its project file to the report.</summary>
public class FacedIslandTests
{
    private static readonly Lazy<Dossier> Designed = new(() =>
    {
        // The long coach governs both faces, and half the length shows all there is: the rest would only take time.
        string text = Regex.Replace(PresetShelf.Sample("thornhithe")!, "vehicles = \\[\"long coach\".*\\]", "vehicles = [\"long coach\"]");
        text = Regex.Replace(text, @"\[\[platform\.(board|hole)\]\][^\[]*", "");
        var run = DesignRun.Design(Samples.Read(text, "platform[0].facing.bond=flemish", "platform[0].face.to=690").Value!, RunWatch.None);
        Assert.True(run.Succeeded, string.Join('\n', run.Findings.Select(f => f.Message)));
        return run.Value!;
    });

    private static PlatformDossier Island => Designed.Value.Platforms[0];

    [Fact]
    public void Both_faces_and_both_ends_are_faced_and_every_section_is_sound()
    {
        var stretches = Island.Sections.Sections.SelectMany(s => s.Faced).SelectMany(w => w.Stretches);
        string[] names = [.. stretches.Select(s => s.Face).Distinct().Order(StringComparer.Ordinal)];
        Assert.Equal(["end wall at the end", "end wall at the start", "front of face 1", "front of face 2"], names);
        Assert.All(Island.Sections.Sections, section =>
        {
            var report = MeshCheck.Inspect(section.Solid.Mesh);
            Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());
            Assert.InRange(section.Solid.ColumnVolume / report.Volume, 1 - 2e-6, 1 + 2e-6);

            // As much as of sections of any form: ramps bend with their curves.
            Assert.InRange(section.Volumes.Finished / report.Volume, 1 - 3e-5, 1 + 3e-5);
            Assert.InRange(section.Overhangs.Unsupported, 0, 0.2);
        });
    }

    [Fact]
    public void Its_bricks_come_no_nearer_to_the_vehicles_of_either_track_than_the_budget_of_each_face()
    {
        var verdict = TrialVerdict.Of(Designed.Value);
        Assert.DoesNotContain(verdict.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(["up", "down"], verdict.Vehicles.Select(v => v.Track));
        Assert.All(verdict.Vehicles, v => Assert.InRange(v.Closest!.Clearance, v.Track == "up" ? 1.1 : 1.3, double.PositiveInfinity));
    }

    [Fact]
    public void The_report_tells_its_walls_in_words_and_figures()
    {
        string words = Exports.ReportWords.Of(Designed.Value);
        Assert.Contains("Flemish bond: with its joint a stretcher is 2.95 mm long, a header 1.48, a course 1.02 high", words, StringComparison.Ordinal);
        Assert.Contains("it shows as an upright line at each cut", words, StringComparison.Ordinal);
        var facing = ReportReader.Read(ReportWriter.Json(Designed.Value), "report.json").Value!.Platforms[0].Facing!;
        Assert.Equal(("flemish", true, 0.25), (facing.Brickwork!.Bond, facing.Brickwork.Perpends, facing.Joint));

        // Words, figures and what was made are one.
        var made = Island.Sections.Sections.SelectMany(s => s.Faced.Select(w => (s.Number, w.Regions.Count, w.Area)));
        Assert.Equal(made, facing.Walls.Select(w => (w.Section, w.Pieces, w.Area)));
        Assert.All(facing.Walls, w => Assert.Contains(FormattableString.Invariant($"| {w.Pieces} "), words, StringComparison.Ordinal));
        Assert.All(facing.Walls, w => Assert.InRange(w.Draw, 0, 0.05));
    }

    [Fact]
    public void Bricks_and_joints_are_painted_by_what_is_seen_of_each()
    {
        var platform = ReportReader.Read(ReportWriter.Json(Designed.Value), "report.json").Value!.Platforms[0];
        var paint = Assert.Single(platform.Bench, t => t.Name == "paint");
        double Of(string surface) => 100 * Assert.Single(paint.Rows, r => r[0].Words == surface)[1].Figure!.Value;
        FacedWall[] walls = [.. Island.Sections.Sections.SelectMany(s => s.Faced)];
        double bricks = walls.Sum(w => w.Area), ground = walls.Sum(w => Under(w.Wall.Top) - Under(w.Wall.Foot)) - bricks;
        Assert.InRange(Of("joints of mortar") / ground, 0.97, 1.03);
        Assert.InRange(Of("walls") / bricks, 1, 1.05);
    }

    // Area between an edge and the baseboard, mm²: trapezoids.
    private static double Under(IReadOnlyList<Point2> edge) => edge.Zip(edge.Skip(1), (a, b) => (b.X - a.X) * (a.Y + b.Y) / 2).Sum();
}
