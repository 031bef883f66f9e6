using PlatformForge.Exports.Drawings.Plans;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Reports.Forms;
using PlatformForge.Exports.Workshop;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Openings and piers as they are told: in the report, its table and the plan.</summary>
public class WallPlaceTests
{
    private static readonly Lazy<PlatformDossier> Faced = new(() =>
    {
        string text = PresetShelf.Sample("straight-halt")!;
        var read = Samples.Read(text, "platform[0].facing={ opening = [{ kind = \"cable\", through = true, pitch = 60 }, { kind = \"weep\", on = \"back\" }], "
            + "piers = { on = \"front\", pitch = 50 } }");
        var run = DesignRun.Design(read.Value!, RunWatch.None);
        Assert.True(run.Succeeded, string.Join('\n', run.Findings.Select(f => f.Message)));
        return Assert.Single(run.Value!.Platforms);
    });

    [Fact]
    public void The_report_lists_each_opening_where_the_walls_have_it()
    {
        var set = Faced.Value.Sections;
        var report = FacingReport.Of(set)!;
        Assert.Equal(set.Plan.WallOpenings.Count, report.Openings!.Count);
        Assert.Contains(report.Openings, o => o is { Through: true, Depth: null, Kind: "cable" });
        Assert.Contains(report.Openings, o => o is { Through: false, Depth: > 0, Kind: "weep" });

        // Each lies within half a brick of a hole of its section's walls, in plan; each hole has one.
        double half = 112.5 / Faced.Value.Plan.Site.Scale.Ratio;
        var holes = set.Sections.SelectMany(s => s.Faced.SelectMany(w => w.Regions.Where(r => r.Out < 0)
            .Select(r => (s.Number, Place: w.Place((r.Outline.Min(p => p.X) + r.Outline.Max(p => p.X)) / 2), IsThrough: r.Behind is not null)))).ToList();
        Assert.Equal(holes.Count, report.Openings.Count);
        Assert.All(report.Openings, o => Assert.Single(holes, h => h.Number == o.Section && h.IsThrough == o.Through
            && Math.Abs(set.Plan.Chart.Locate(h.Place, o.At).Chainage - o.At) < half));
    }

    [Fact]
    public void The_report_lists_each_pier_and_the_table_all_of_both()
    {
        var set = Faced.Value.Sections;
        var report = FacingReport.Of(set)!;
        Assert.Equal(set.Plan.Piers.Count, report.Piers!.Count);
        double wide = set.Plan.Spec.Facing!.Piers!.Width;
        Assert.All(report.Piers, p => Assert.Equal(wide, p.To - p.From, 1.0)); // of their ground: a joint's depth less at either side
        var table = WallPlaces.Table(set);
        Assert.Equal(report.Openings!.Count + report.Piers.Count, table.Rows.Count);
        int through = table.Columns.Select((c, i) => (c.Key, i)).Single(c => c.Key == "through").i;
        Assert.Equal(report.Openings.Count(o => o.Through), table.Rows.Count(r => r[through].Words == "yes"));
        Assert.Equal(report.Piers.Count, table.Rows.Count(r => r[0].Words == "pier"));
    }

    [Fact]
    public void A_plan_shows_piers_by_their_projection_and_openings_by_their_depth()
    {
        var plan = Faced.Value.Sections.Plan;
        var shown = FittingView.Of(plan).ToList();
        Assert.Equal(plan.Piers.Count + plan.WallOpenings.Count, shown.Count);
        double projection = plan.Spec.Facing!.Piers!.Projection;
        Assert.All(shown.Take(plan.Piers.Count), p => Assert.Equal(projection, p.Far.At(p.From) - p.Near.At(p.From), 1e-9));
        Assert.All(shown.Skip(plan.Piers.Count).Zip(plan.WallOpenings), p =>
        {
            var (near, far, from, to) = p.First;
            double deep = Math.Abs(far.At(from) - near.At(from));
            Assert.Equal(p.Second.Spec.Width, to - from, 1e-6);
            Assert.Equal(p.Second.Spec.IsThrough ? plan.Spec.Walls.FrontThickness : p.Second.Spec.Depth, deep, 1e-9);
        });
    }
}
