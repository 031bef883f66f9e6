using PlatformForge.Exports.Files;
using PlatformForge.Geometry;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Tests.Clearance;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>Tracks whose rails lie at different heights: each vehicle at its own, one deck, level, whose height over either rail is told.</summary>
public class IslandHeightTests
{
    // The up track's rails lie 8 mm over the baseboard.
    private const double Layout = 8;

    private static Outcome<Dossier> Design(params string[] sets)
    {
        var read = Samples.Read(PresetShelf.Sample("thornhithe")!, sets);
        return read.Value is { } project ? DesignRun.Design(project, Samples.Known) : Outcome.Fault<Dossier>(read.Findings);
    }

    private static Dossier Sound(params string[] sets)
    {
        var outcome = Design(sets);
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings.Where(f => f.Severity == Severity.Error).Select(f => f.Message)));
        return outcome.Value!;
    }

    [Fact]
    public void The_deck_is_one_level_and_its_height_over_either_rail_is_told()
    {
        var outcome = Design("track.down.rail_top=8.6");
        var finding = Assert.Single(outcome.Findings, f => f.Code is "PF4140" or "PF4141");
        Assert.Equal("PF4140", finding.Code);
        Assert.Contains("11.4 mm on the other", finding.Message, StringComparison.Ordinal);
        var platform = outcome.Value!.Platforms[0];
        Assert.Equal([20.0, 20.0], platform.Faces.Select(f => f.Plan.Profile.Level));
        Assert.Equal([8.0, 8.6], platform.Faces.Select(f => f.Plan.Site.RailTop));
        Assert.Equal([12.0, 11.4], platform.Faces.Select(f => f.Plan.Spec.Height));
        Assert.Equal([20.0, 20.0], platform.Sections.Sections.Where(s => s.Number == 2).SelectMany(s => new[] { s.Solid.Mesh.Vertices.Max(v => v.Z), 20 })
            .Select(z => Math.Round(z, 6)));
        string report = Exports.ReportWords.Of(outcome.Value!);
        Assert.Contains("track down 8.6 mm", report, StringComparison.Ordinal);
        Assert.Contains("Along down the coping is 11.40 mm above rails that lie 8.60 mm over the baseboard", report, StringComparison.Ordinal);

        // 2 ft 6 in to 3 ft of full size (requirements of 1885 and 1902) are 10 to 12 mm: 14 are not within, and one height does for both when the rails differ
        // by no more than 2 mm.
        var warning = Assert.Single(Design("track.down.rail_top=6").Findings, f => f.Code is "PF4140" or "PF4141");
        Assert.Equal("PF4141", warning.Code);
        Assert.Contains("A height of 10 mm", warning.Remedy, StringComparison.Ordinal);
        Assert.Single(Design("track.down.rail_top=6", "platform[0].height=10").Findings, f => f.Code == "PF4140");
    }

    // A part 2 mm above its own rail meets what stands 2 mm above that, wherever the other track's rails are: the cylinders of an engine, 2 to 12 mm over the
    // rail, reach a coping's underside (20 - 1.2 mm) where the rail lies high enough, and stay below it where it lies low.
    [Theory]
    [InlineData(6)]
    [InlineData(8)]
    [InlineData(11)]
    public void Both_edges_are_clear_at_the_heights_of_their_own_rails_by_a_sweeper_that_shares_nothing(double top)
    {
        var dossier = Sound(FormattableString.Invariant($"track.down.rail_top={top}"));
        var verdict = TrialVerdict.Of(dossier);
        Assert.DoesNotContain(verdict.Findings, f => f.Severity == Severity.Error);
        var platform = dossier.Platforms[0];
        foreach (var face in platform.Faces)
        {
            double rail = face.Track == "down" ? top : Layout;
            var run = dossier.Tracks.First(t => t.Ride.Name == face.Track);
            foreach (var vehicle in run.Vehicles)
            {
                // What stands between the heights of a part is kept clear of it.
                double low = rail + vehicle.Parts.Min(p => p.ZLow), high = rail + vehicle.Parts.Max(p => p.ZHigh);
                Point2[] held = [.. platform.Sections.Sections.SelectMany(s => s.Solid.Mesh.Vertices).Where(v => v.Z > low && v.Z < high)
                    .Select(v => new Point2(v.X, v.Y))];
                double[] stations = [.. Enumerable.Range(0, 44).Select(i => face.Plan.Spec.Face.From - 10 + (i * 10.0))];
                double least = BruteSweep.Touched(run.Ride, run.Ride, vehicle, stations, 4).Min(p => held.Min(v => (v - p).Length));
                Assert.True(least >= face.Budget.Margin - 1e-3, $"{vehicle.Name} on {face.Track}: {least}");
            }
        }
    }

    [Fact]
    public void A_vehicle_told_higher_on_its_own_track_is_the_same_as_its_track_laid_higher()
    {
        // Rails 2 mm higher, and the same vehicle with all its heights 2 mm higher on rails that are not: one edge, one coping.
        double[] Edge(params string[] sets) => Sound(sets).Platforms[0].Plan.Faces[1].CopingFront.Reach;
        double[] raised = Edge("track.down.rail_top=10"), told = Edge("vehicle.long-coach.low=5", "vehicle.railcar.low=5", "vehicle.tender-engine.low=5");
        Assert.Equal(told.Length, raised.Length);
        Assert.All(told.Zip(raised), t => Assert.Equal(t.First, t.Second, 1e-9));
    }

    [Fact]
    public void A_side_platform_stands_over_the_rails_of_its_own_track()
    {
        var read = Samples.Read(PresetShelf.Sample("pendlewick")!, ["track[0].rail_top=11"]);
        var plan = DesignRun.Design(read.Value!, Samples.Known).Value!.Platforms[0].Plan;
        Assert.Equal(11 + plan.Spec.Height, plan.Profile.Level, 1e-9);
    }

    [Fact]
    public void A_deck_below_the_rails_of_the_other_track_is_refused_with_a_height_that_works()
    {
        var finding = Assert.Single(Design("track.down.rail_top=21").Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF4142", "platform[0].height"), (finding.Code, finding.Key));
        Assert.DoesNotContain(Design("track.down.rail_top=21", FormattableString.Invariant($"platform[0].height={finding.Cure!.Value}")).Findings,
            f => f.Code == "PF4142");
    }
}
