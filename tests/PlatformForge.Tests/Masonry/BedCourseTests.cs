using PlatformForge.Platforms.Plans;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Bricks too small for the nozzle, of which only the beds are made: each course is one band.</summary>
public class BedCourseTests
{
    private const string Halt = """
        [layout]
        name = "Quillhaven"
        scale = "1-148"
        rail_top = 4.12
        [[track]]
        name = "main"
        alignment = [{ straight = 440 }]
        [[vehicle]]
        name = "coach"
        length = 117.39
        pivots = 83.41
        width = 17.51
        low = 1.54
        [clearance]
        running = 0.7
        [[platform]]
        name = "halt"
        height = 6.18
        face = { track = "main", side = "left", from = 128.72, to = 308.72 }
        deck = { width = 24 }
        ramps = { start = { gradient = 8 }, end = { gradient = 8 } }
        [platform.facing]
        bond = "english"
        [printer]
        bed = [220, 220]
        nozzle = 0.4
        layer = 0.12
        """;

    /// <summary>Measured at the meshes: at the front's bricks the farthest corner of each course's lower side, held against where the slope leaves less of
    /// the course than is laid (half a line of the nozzle) over its bed.</summary>
    [Fact]
    public void Each_course_runs_on_both_ramps_to_where_the_slope_cuts_it()
    {
        var run = DesignRun.Design(Samples.Read(Halt).Value!, RunWatch.None);
        Assert.True(run.Succeeded, string.Join('\n', run.Findings.Select(f => f.Message)));
        Assert.Contains(run.Findings, f => f.Code == "PF5033");
        var platform = run.Value!.Platforms[0];
        var plan = platform.Plan;
        var facing = plan.Spec.Facing!;
        double bricks = plan.WallFace.At(200), from = plan.Stations[0], to = plan.Stations[^1], head = plan.Profile.StartHead, end = plan.Profile.EndHead;
        var corners = platform.Sections.Sections.SelectMany(s => s.Solid.Mesh.Vertices).Where(v => Math.Abs(v.Y - bricks) < 1e-3).ToArray();
        var courses = WallProfiles.Courses(plan.Spec, plan.Site, WallProfiles.Under(plan)).Where(c => c.Low > 0.1).ToArray();
        Assert.InRange(courses.Length, 12, 20);
        int sloped = 0;
        foreach (var (_, low) in courses)
        {
            double Left(double s) => plan.TopAt(s, bricks) - plan.Spec.Deck.Thickness - facing.Joint - low - 0.2;
            double first = Enumerable.Range(0, 20_000).Select(i => from + (i * 0.01)).First(s => Left(s) >= 0);
            double last = Enumerable.Range(0, 20_000).Select(i => to - (i * 0.01)).First(s => Left(s) >= 0);
            double[] at = [.. corners.Where(v => Math.Abs(v.Z - low) < 2e-3).Select(v => v.X)];
            if (first > from + 1 && last < to - 1)
            {
                Assert.InRange(at.Min(), first - 0.05, Math.Min(head, first + 0.3));
                Assert.InRange(at.Max(), Math.Max(end, last - 0.3), last + 0.05);
                sloped++;
            }
            else
            {
                Assert.InRange(at.Max() - at.Min(), to - from - 2, to - from + 0.1);
            }
        }

        Assert.True(sloped > 5);
        Assert.All(platform.Sections.Sections, s => Assert.True(MeshCheck.Inspect(s.Solid.Mesh) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }));
    }
}
