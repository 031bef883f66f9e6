using PlatformForge.Exports.Files;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Projects;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Openings in walls that are left smooth.</summary>
public class SmoothOpeningTests
{
    private const string Smooth = "platform[0].facing.front=plain", Height = "platform[0].height=12";

    private static PlatformDossier Made(string text, params string[] sets)
    {
        var run = DesignRun.Design(Samples.Read(text, [Height, .. sets]).Value!, RunWatch.None);
        Assert.True(run.Succeeded, string.Join('\n', run.Findings.Select(f => f.Message)));
        Assert.DoesNotContain(run.Findings, f => f.Code is "PF6082" or "PF6083" or "PF5054");
        return run.Value!.Platforms[0];
    }

    private static string With(string opening) => Samples.Small + "[[platform.facing.opening]]\n" + opening + "\n";

    /// <summary>What each takes of its wall is its width by its height by its depth.</summary>
    [Theory]
    [InlineData("kind = \"weep\"", true)]
    [InlineData("kind = \"cable\"", true)]
    [InlineData("kind = \"refuge\"", false)]
    [InlineData("kind = \"refuge\"\nhead = \"segmental\"", false)]
    public void Every_opening_that_is_planned_is_cut_into_the_wall(string opening, bool isOblong)
    {
        var without = Made(Samples.Small, Smooth);
        var with = Made(With(opening), Smooth);
        var laid = LaidHole.Of(with.Plan, with.Sections.Sections);
        Assert.NotEmpty(laid);
        Assert.Equal(with.Plan.WallOpenings.Select(o => o.Chainage).Order(), laid.Select(o => o.Planned.Middle));
        double depth = with.Plan.Spec.Facing!.Openings[0].Depth, taken = 0;
        foreach (var (one, other) in without.Sections.Sections.Zip(with.Sections.Sections))
        {
            var report = MeshCheck.Inspect(other.Solid.Mesh);
            Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());
            taken += MeshCheck.Inspect(one.Solid.Mesh).Volume - report.Volume;
        }

        double boxes = laid.Sum(o => o.Width * o.Height * depth);
        Assert.InRange(taken / boxes, isOblong ? 0.999 : 0.7, isOblong ? 1.001 : 0.999);
        Assert.All(laid, o => Assert.Equal((o.Planned.Width, o.Planned.Hole!.Height, o.Planned.Hole.Sill), (o.Width, o.Height, o.Sill), new Near(0.05)));
    }

    [Theory]
    [InlineData("platform[0].facing.batter=1")]
    [InlineData("platform[0].facing.plinth.steps=2")]
    [InlineData("platform[0].facing.corbel.courses=2")]
    public void Weep_holes_find_their_place_in_a_smooth_wall_that_is_no_plane(string profile)
    {
        var platform = Made(With("kind = \"weep\""), Smooth, profile);
        Assert.Equal(platform.Plan.WallOpenings.Count, LaidHole.Of(platform.Plan, platform.Sections.Sections).Count);
        Assert.All(platform.Sections.Sections, s => Assert.True(MeshCheck.Inspect(s.Solid.Mesh) is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }));
    }

    [Fact]
    public void A_smooth_front_before_a_back_of_bricks_has_its_openings_too()
    {
        var platform = Made(With("kind = \"weep\""), Smooth, "platform[0].facing.back=brick");
        Assert.Equal(platform.Plan.WallOpenings.Count, LaidHole.Of(platform.Plan, platform.Sections.Sections).Count);
    }

    /// <summary>Buttresses part all walls at the height of their heads; with piers up to the coping, as is advised, the openings are there.</summary>
    [Theory]
    [InlineData("rubble")]
    [InlineData("brick")]
    public void An_opening_that_reaches_over_the_heads_of_low_buttresses_is_told_and_what_is_advised_makes_room_for_it(string back)
    {
        string text = Samples.Small + $"[platform.facing]\nback = \"{back}\"\n[[platform.facing.opening]]\nkind = \"refuge\"\non = \"back\"\n";
        var run = DesignRun.Design(Samples.Read(text, Height, "platform[0].facing.piers.height=11").Value!, RunWatch.None);
        Assert.True(run.Succeeded, string.Join('\n', run.Findings.Select(f => f.Message)));
        var told = Assert.Single(run.Findings, f => f.Code == "PF6083");
        Assert.Equal(("platform[0].facing.piers.height", CureAct.LeaveOut), (told.Cure!.Key, told.Cure.Act));
        var piers = Made(text, "platform[0].facing.piers.on=front");
        Assert.NotEmpty(LaidHole.Of(piers.Plan, piers.Sections.Sections));
    }

    private sealed class Near(double within) : IEqualityComparer<(double, double, double)>
    {
        public bool Equals((double, double, double) a, (double, double, double) b) =>
            Math.Abs(a.Item1 - b.Item1) < within && Math.Abs(a.Item2 - b.Item2) < within && Math.Abs(a.Item3 - b.Item3) < within;

        public int GetHashCode((double, double, double) of) => 0;
    }
}
