using PlatformForge.Exports;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Paper;
using PlatformForge.Exports.Paper.FullSize;
using PlatformForge.Exports.Reports;
using PlatformForge.Geometry;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Clearance;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>An island that two curves, of 610 and 760 mm, draw in to a waist: through every room.</summary>
public class ThornhitheTests
{
    // 12 ft and 6 ft at 1:76.2, mm: least widths of an island and beside what stands on it (common practice).
    private const double TwelveFeet = 48, SixFeet = 24;

    private static readonly Lazy<Outcome<Dossier>> Designed = new(() => Design(Sample));

    private static string Sample => PresetShelf.Sample("thornhithe")!;

    private static Dossier Dossier => Designed.Value.Value!;

    private static Outcome<Dossier> Design(string text, params string[] sets)
    {
        var read = Samples.Read(text, sets);
        return read.Value is { } project ? DesignRun.Design(project, RunWatch.None) : Outcome.Fault<Dossier>(read.Findings);
    }

    [Fact]
    public void Both_tracks_are_kept_clear_by_the_budget_of_each_face()
    {
        var verdict = TrialVerdict.Of(Dossier);
        Assert.DoesNotContain(verdict.Findings, f => f.Severity == Severity.Error);
        Assert.Equal([("long coach", "up"), ("tank engine", "up"), ("long coach", "down"), ("railcar", "down"), ("tender engine", "down")],
            verdict.Vehicles.Select(v => (v.Vehicle, v.Track)));

        // Running 0.7 and print and fitting 0.2 each on the up side; running 0.9 on the down side.
        Assert.Equal(1.1, Dossier.Platforms[0].Budget.Margin, 1e-9);
        Assert.Equal(1.3, Dossier.Platforms[0].FurtherFaces[0].Budget.Margin, 1e-9);
        Assert.All(verdict.Vehicles, v => Assert.InRange(v.Tightest!.Clearance, 0, double.PositiveInfinity));
        Assert.InRange(verdict.Vehicles[0].Closest!.Clearance, 1.1, 1.2);
        Assert.InRange(verdict.Vehicles[2].Closest!.Clearance, 1.3, 1.4);
    }

    [Fact]
    public void Full_size_sheets_are_made_along_either_face_and_both_show_one_platform()
    {
        string[] files = [.. PaperSet.Files(Dossier, new PaperSpec()).Value!.Select(f => f.Path)];
        Assert.All(new[] { "island-up", "island-down" },
            n => Assert.All(new[] { ".pdf", "-key.svg", "-01.svg", ".json" }, end => Assert.Contains($"paper/{n}{end}", files)));
        var platform = Dossier.Platforms[0];
        FullSizeFigures[] sheets = [.. platform.Faces.Select(f => PlanFigures.Of(Dossier, f, platform))];

        // What is drilled, let in and cut lies at one place of the layout, whichever track it is told along; the second edge is one edge.
        Assert.NotEmpty(sheets[0].Marks);
        Assert.Equal(sheets[0].Marks.Count, sheets[1].Marks.Count);
        Assert.All(sheets[0].Marks, m => Assert.Contains(sheets[1].Marks, o => (o.At - m.At).Length < 1e-6 && o.Diameter == m.Diameter));

        // One body: its edges, ends and cuts are the same lines; the rails are each track's own.
        foreach (var kind in new[] { FullSizeLine.CopingEdge, FullSizeLine.PlatformEnd, FullSizeLine.Cut, FullSizeLine.Arrow, FullSizeLine.SlabJoint })
        {
            Point2[][] points = [.. sheets.Select(x => x.Lines.Where(l => l.Kind == kind).SelectMany(l => l.Points).ToArray())];
            Assert.NotEmpty(points[0]);
            Assert.Equal(points[0], points[1]);
        }

        Assert.DoesNotContain(sheets[1].Lines.Where(l => l.Kind == FullSizeLine.Middle).SelectMany(l => l.Points),
            p => sheets[0].Lines.Any(l => l.Kind == FullSizeLine.Middle && l.Points.Contains(p)));
    }

    [Fact]
    public void The_printed_sections_are_clear_of_both_tracks_by_a_sweeper_that_shares_nothing_with_the_design()
    {
        var platform = Dossier.Platforms[0];
        Point2[] plan = [.. platform.Sections.Sections.SelectMany(s => s.Solid.Mesh.Vertices).Where(v => v.Z > Dossier.RailTop + 3)
            .Select(v => new Point2(v.X, v.Y))];
        foreach (var face in platform.Faces)
        {
            var run = Dossier.Tracks.First(t => t.Ride.Name == face.Track);
            double[] stations = [.. Enumerable.Range(0, 110).Select(i => face.Plan.Spec.Face.From - 20 + (i * 5.0))];
            foreach (var vehicle in run.Vehicles)
            {
                var touched = BruteSweep.Touched(run.Ride, run.Ride, vehicle, stations, 3);
                double least = touched.Min(p => plan.Min(v => (v - p).Length));
                Assert.True(least >= face.Budget.Margin - 1e-3, $"{vehicle.Name} on {face.Track}: {least}");
            }
        }
    }

    [Fact]
    public void The_waist_is_told_with_its_place_on_both_tracks_and_so_is_what_stands_too_near_in_it()
    {
        var plan = Dossier.Platforms[0].Plan;
        var (near, far) = (plan.Faces[0], plan.Faces[1]);
        var waist = plan.Waist!;
        Assert.InRange(waist.Width, 40, TwelveFeet);

        // Both curves are nearest where they are parallel: on the line through their centres, told by their elements.
        Point2 Centre(Centre c) => c.Chart.PointAt(c.Chainage, c.Left / c.Chart.At(c.Chainage).Curvature * Math.Sign(c.Left));
        var join = Centre(new(far.Chart, waist.Second, 1)) - Centre(new(near.Chart, waist.First, 1));
        var across = far.ToLayout(waist.Second, 0) - near.ToLayout(waist.First, 0);
        Assert.InRange(Math.Abs(Point2.Cross(join * (1 / join.Length), across)), 0, 0.6);
        var warning = Assert.Single(Designed.Value.Findings, f => f.Code == "PF4121");
        Assert.Contains("track 'up'", warning.Message, StringComparison.Ordinal);
        Assert.Contains("track 'down'", warning.Message, StringComparison.Ordinal);
        Assert.Equal(2, Designed.Value.Findings.Count(f => f.Code == "PF4133" && f.Message.Contains($"{SixFeet} mm", StringComparison.Ordinal)));
    }

    private sealed record Centre(PlatformForge.Track.Centreline Chart, double Chainage, int Left);

    [Fact]
    public void What_the_other_face_places_stands_at_its_inset_from_that_edge()
    {
        var plan = Dossier.Platforms[0].Plan;
        var lamp = plan.Features.SelectMany(f => f.Openings).Single(o => o.Name == "lamp");
        var far = plan.Faces[1];
        var place = far.Chart.Locate(plan.ToLayout(lamp.Middle.Chainage, lamp.Middle.Reach));
        Assert.Equal(640, place.Chainage, 1e-3);
        Assert.Equal(22, far.Side.Reach(place.Offset) - far.CopingFront.At(640), 1e-3);
    }

    [Fact]
    public void Every_face_has_its_drawings_tables_and_part_of_the_report()
    {
        var files = OutputFiles.Of(Dossier, new() { Pictures = false });
        foreach (string track in (string[])["up", "down"])
        {
            foreach (string file in (string[])["drawings/island-{0}-gaps.svg", "drawings/island-{0}-cross-section.svg", "drawings/island-{0}-tightest.svg",
                "tables/island-{0}-gaps.csv", "tables/island-{0}-setting-out.csv"])
            {
                Assert.Contains(files.Files, f => f.Path == string.Format(System.Globalization.CultureInfo.InvariantCulture, file, track));
            }
        }

        string report = Exports.ReportWords.Of(Dossier);
        Assert.Contains("An island between tracks up and down, narrowest at chainage", report, StringComparison.Ordinal);
        Assert.Contains("Face on track down", report, StringComparison.Ordinal);
        Assert.Contains("\"other_face\"", System.Text.Encoding.UTF8.GetString(ReportWriter.Json(Dossier)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("PF4124", "other_face.side=\"right\"")]
    [InlineData("PF4125", "other_face.track=\"up\"", "hole[0].face=\"up\"")]
    [InlineData("PF4126", "deck.crossfall=80")]
    [InlineData("PF4131", "face.to=990", "vehicle[2].length=420")]
    [InlineData("PF1014", "deck.width=60")]
    [InlineData("PF1014", "kind=\"side\"")]
    [InlineData("PF4127", "fence.pitch=32")]
    [InlineData("PF4129", "hole[0].at=300")]
    [InlineData("PF4128", "hole[0].inset_from=\"back\"")]
    [InlineData("PF1016", "hole[0].face=\"loop\"")]
    [InlineData("PF1016", "other_face.track=\"loop\"")]
    [InlineData("PF4120", "coping.width=24")]
    public void What_makes_no_island_is_told_at_its_key_with_what_would(string code, params string[] sets)
    {
        var outcome = Design(Sample, [.. sets.Select(s => s.StartsWith("vehicle", StringComparison.Ordinal) ? s : "platform[0]." + s)]);
        var finding = outcome.Findings.First(f => f.Code == code);
        Assert.Null(outcome.Value);
        Assert.StartsWith("platform[0]", finding.Key, StringComparison.Ordinal);
        Assert.NotEqual(0, finding.Remedy.Length);
        Assert.Equal(Severity.Error, finding.Severity);
    }

    // Near its ends the second face reaches past the first one's: what stands there is told by the same rule.
    [Theory]
    [InlineData(300)]
    [InlineData(495)]
    [InlineData(968)]
    [InlineData(1200)]
    public void What_lies_beyond_the_other_face_is_mended_by_the_figure_offered(double at)
    {
        var finding = Assert.Single(Design(Sample, FormattableString.Invariant($"platform[0].hole[0].at={at}")).Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF4129", "platform[0].hole[0].at"), (finding.Code, finding.Key));
        Assert.NotNull(Design(Sample, "platform[0].hole[0].at=" + finding.Cure!.Value).Value);
    }

    [Fact]
    public void Tracks_that_draw_the_edges_across_one_another_are_told_with_how_far_to_lay_them_apart()
    {
        var outcome = Design(Sample, "track[1].start.y=" + (TrackStart() - 52).ToString(System.Globalization.CultureInfo.InvariantCulture));
        var finding = Assert.Single(outcome.Findings, f => f.Code == "PF4120");
        Assert.Contains("cross", finding.Message, StringComparison.Ordinal);
        Assert.Contains("farther apart", finding.Remedy, StringComparison.Ordinal);
    }

    private static double TrackStart() => Dossier.Tracks[1].Ride.PointAt(0).Y;

    [Fact]
    public void Gaps_measured_on_the_layout_are_held_to_the_face_that_they_name()
    {
        const string Table = "chainage,gap,platform\n640,14.0,down\n";
        var built = AsBuiltCheck.Of(Dossier, Table, "gaps.csv");
        var edge = Assert.Single(built.Value!);
        Assert.Equal("island, track down", edge.Platform);
        Assert.Equal(Dossier.Platforms[0].FurtherFaces[0].Plan.First.CopingFront.At(640), edge.Measures[0].Planned, 1e-9);
    }
}
