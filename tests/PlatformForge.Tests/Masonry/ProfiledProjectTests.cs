using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using PlatformForge.Exports.Drawings.Elevations;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Reports;
using PlatformForge.Exports.Tables;
using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Projects;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>An island with ramps between two curves, faced in brick with a plinth and corbelled courses, from its project file on.</summary>
public class ProfiledProjectTests
{
    private static readonly Lazy<Dossier> Designed = new(() =>
    {
        string text = Regex.Replace(PresetShelf.Sample("thornhithe")!, "vehicles = \\[\"long coach\".*\\]", "vehicles = [\"long coach\"]");
        text = Regex.Replace(text, @"\[\[platform\.(board|hole)\]\][^\[]*", "");
        var read = Samples.Read(text, "platform[0].facing.bond=flemish", "platform[0].facing.plinth.projection=0.7", "platform[0].facing.corbel.courses=2",
            "platform[0].face.to=690");
        var run = DesignRun.Design(read.Value!, RunWatch.None);
        Assert.True(run.Succeeded, string.Join('\n', run.Findings.Select(f => f.Message)));
        return run.Value!;
    });

    private static PlatformDossier Island => Designed.Value.Platforms[0];

    [Fact]
    public void Every_section_of_an_island_is_sound() => Assert.All(Island.Sections.Sections, section =>
    {
        var report = MeshCheck.Inspect(section.Solid.Mesh);
        Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());
        Assert.InRange(section.Solid.ColumnVolume / report.Volume, 1 - 2e-6, 1 + 2e-6);
        Assert.InRange(section.Volumes.Finished / report.Volume, 1 - 3e-5, 1 + 3e-5);
        Assert.InRange(section.Overhangs.Unsupported, 0, 0.2);
        Assert.Superset(new HashSet<int> { 1, 2, 3 }, section.Faced.Select(w => w.Zone.Number).ToHashSet());
    });

    [Fact]
    public void Its_bricks_come_no_nearer_to_the_vehicles_of_either_track_than_the_budget_of_each_face()
    {
        var verdict = TrialVerdict.Of(Designed.Value);
        Assert.DoesNotContain(verdict.Findings, f => f.Severity == Severity.Error);
        Assert.All(verdict.Vehicles, v => Assert.InRange(v.Closest!.Clearance, v.Track == "up" ? 1.1 : 1.3, double.PositiveInfinity));
    }

    /// <summary>The foot of the setting-out table is where bricks of the plinth stand on the baseboard.</summary>
    [Fact]
    public void The_foot_that_is_told_is_the_plinths()
    {
        double outer = (Designed.Value.Gauge / 2) + Designed.Value.RailHead, joint = Island.Plan.Spec.Facing!.Depth;
        string[][] rows = [.. Encoding.UTF8.GetString(SettingOut.Table(Designed.Value, Island, 20)).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1)
            .Select(r => r.Split(','))];
        var feet = Island.Sections.Sections.SelectMany(s => s.Solid.Mesh.Vertices.Where(v => v.Z < 0.6)).Select(v => new Point2(v.X, v.Y)).Distinct().ToArray();
        var inner = rows.Where(r => Number(r[0]) > Island.Plan.Profile.From + 5 && Number(r[0]) < Island.Plan.Profile.To - 5).ToArray();
        Assert.True(inner.Length > 5);
        Assert.All(inner, row =>
        {
            double s = Number(row[0]), told = Number(row[1]) + outer;
            var frame = Island.Plan.Chart.At(s);
            double[] there = [.. feet.Where(p => Math.Abs(Point2.Dot(p - frame.Position, frame.Tangent)) < 2)
                .Select(p => Island.Plan.Side.Reach(Point2.Cross(frame.Tangent, p - frame.Position)))];
            Assert.InRange(there.Min(), told - FacetAndRounding, told + joint);
        });

        static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
    }

    // A facet lies off its curve by 0.02 mm at most (docs/decisions/0002), and tables round to a hundredth.
    private const double FacetAndRounding = 0.02 + 0.005;

    /// <summary>Of every part of a wall's height an elevation draws as many bricks as the section has of that face, at their heights.</summary>
    [Fact]
    public void Elevations_have_each_part_of_a_walls_height_over_its_place()
    {
        var face = ElevationFaces.Of(Island).First();

        // Beside a cut askew a piece narrower than a joint is a slice of its own.
        Assert.All(face.Slices.Where(s => s.Length > 1), slice =>
        {
            // Every part that begins under the deck is there, under ramps as many as that is high.
            var numbers = slice.Parts().Select(p => p.Part.Wall.Zone.Number).ToHashSet();
            Assert.Superset(Zones.Where(z => z.Low < slice.Height - 0.5).Select(z => z.Number).ToHashSet(), numbers);
            Assert.Subset(Zones.Where(z => z.Low < slice.Height).Select(z => z.Number).ToHashSet(), numbers);
        });

        var level = Assert.Single(face.Slices, s => s.Length > 1 && s.Top.Max(p => p.Y) - s.Top.Min(p => p.Y) < 0.05);
        Assert.All(level.Bands.Where(b => b.To - b.From > 1), b =>
        {
            // Around a curve what stands out is a share longer or shorter than what it stands out of; round a corner by as much as it stands out.
            Assert.InRange(b.At + ((b.To - b.From) / 2), level.From + (level.Length / 2) - 1, level.From + (level.Length / 2) + 1);
            Assert.InRange(b.To - b.From, (0.98 * level.Length) - 1.5, (1.02 * level.Length) + 1.5);
        });

        // Over a section without a ramp the coping lies on the uppermost course, the thickness of the deck under its top.
        Assert.Equal(5, level.Bands.Max(b => b.Wall.Zone.Number));
        double bed = Zones.Single(z => z.IsDeepest).High;
        Assert.InRange(level.Height, bed + (2 * 75 / 76.2) - 0.2, bed + (2 * 75 / 76.2) + 0.4);
    }

    private static IReadOnlyList<WallZone> Zones => WallProfiles.Of(Island.Sections.Plan).Zones;

    [Fact]
    public void The_report_tells_the_profile()
    {
        string words = Exports.ReportWords.Of(Designed.Value);
        Assert.Contains("its foot stands 0.70 mm before what is over it, drawn back in 2 steps", words, StringComparison.Ordinal);
        Assert.Contains("2 corbelled courses stand out, each 0.37 mm before what is under it", words, StringComparison.Ordinal);
        Assert.Contains("the wall between is set back 0.74 mm", words, StringComparison.Ordinal);

        // One row a wall, with all of its parts.
        var facing = ReportReader.Read(ReportWriter.Json(Designed.Value), "report.json").Value!.Platforms[0].Facing!;
        var walls = Island.Sections.Sections.SelectMany(s => s.Faced).ToArray();
        Assert.Equal(walls.Sum(w => w.Regions.Count), facing.Walls.Sum(w => w.Pieces));
        Assert.Equal(walls.Sum(w => w.Area), facing.Walls.Sum(w => w.Area), 1e-6);
        Assert.InRange(facing.Walls.Count, Island.Sections.Sections.Count, walls.Length / 3);
    }
}
