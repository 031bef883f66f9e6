using PlatformForge.Exports.Files;
using PlatformForge.Platforms.Plans;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Projects;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Plinths, corbelled courses and openings of which nothing is stated find room beside one another; what is told where they do not can be
/// done.</summary>
public class ProfileRoomTests
{
    private static string Halt(double ratio, string facing, string printer = "") => FormattableString.Invariant($$"""
        [layout]
        name = "Quillhaven"
        scale = "{{(ratio == 76.2 ? "4mm" : ratio == 43.5 ? "7mm" : FormattableString.Invariant($"1-{ratio}"))}}"
        rail_top = {{8 * 76.2 / ratio:0.##}}
        [[track]]
        name = "main"
        alignment = [{ straight = {{900 * 76.2 / ratio:0}} }]
        [[vehicle]]
        name = "coach"
        length = {{228 * 76.2 / ratio:0.##}}
        pivots = {{162 * 76.2 / ratio:0.##}}
        width = {{34 * 76.2 / ratio:0.##}}
        [clearance]
        running = 0.7
        [[platform]]
        name = "halt"
        height = {{12 * 76.2 / ratio:0.##}}
        face = { track = "main", side = "left", from = {{350 * 76.2 / ratio:0}}, to = {{470 * 76.2 / ratio:0}} }
        [platform.facing]
        {{facing}}
        [printer]
        bed = [300, 300]
        {{printer}}
        """);

    private static Outcome<Dossier> Run(string text, params string[] sets) => DesignRun.Design(Samples.Read(text, sets).Value!, RunWatch.None);

    private static PlatformDossier Sound(string text, params string[] sets)
    {
        var run = Run(text, sets);
        Assert.True(run.Succeeded, string.Join('\n', run.Findings.Select(f => f.Message)));
        return run.Value!.Platforms[0];
    }

    /// <summary>A plinth is 225 mm high at full size (common practice, no source), and half a course more at most, whatever its courses are.</summary>
    [Theory]
    [InlineData(76.2, "brick", 75)]
    [InlineData(76.2, "stone", 225)]
    [InlineData(76.2, "rubble", 280)]
    [InlineData(43.5, "stone", 225)]
    [InlineData(43.5, "rubble", 280)]
    [InlineData(22.5, "rubble", 280)]
    public void A_plinth_of_which_nothing_is_stated_is_about_as_high_in_stone_as_in_bricks(double ratio, string finish, double course)
    {
        var platform = Sound(Halt(ratio, $"front = \"{finish}\"\nplinth = {{}}\ncorbel = {{}}\n"));
        double head = WallProfiles.Of(platform.Plan).Between.Low * ratio;
        Assert.InRange(head, 0.5 * 225, 225 + (0.75 * course));
    }

    [Theory]
    [InlineData(87, "rubble")]
    [InlineData(76.2, "rubble")]
    [InlineData(76.2, "stone")]
    [InlineData(43.5, "rubble")]
    public void A_refuge_of_which_nothing_is_stated_finds_room_under_corbelled_courses(double ratio, string finish)
    {
        var platform = Sound(Halt(ratio, $"front = \"{finish}\"\ncorbel = {{}}\n[[platform.facing.opening]]\nkind = \"refuge\"\n"));
        double under = WallProfiles.Of(platform.Plan).Between.High;
        Assert.NotEmpty(platform.Plan.WallOpenings);
        Assert.True(double.IsFinite(under));
        Assert.All(platform.Plan.WallOpenings, o => Assert.InRange(o.Spec.Sill + o.Spec.Height, 1, under));
        Assert.NotEmpty(LaidHole.Of(platform.Plan, platform.Sections.Sections));
    }

    [Fact]
    public void A_wall_that_leans_has_no_courses_for_a_weep_hole_of_a_wide_nozzle_and_what_is_advised_is_to_leave_it_out()
    {
        string text = Halt(76.2, "batter = 2\n[[platform.facing.opening]]\nkind = \"weep\"\n", "nozzle = 0.6\nlayer = 0.24");
        var fault = Assert.Single(Run(text).Findings, f => f.Code == "PF4136");
        Assert.Equal(("platform[0].facing.opening[0]", true), (fault.Key, fault.Cure is { Act: CureAct.LeaveOut }));
        Sound(Halt(76.2, "batter = 2\n", "nozzle = 0.6\nlayer = 0.24"));
    }

    [Fact]
    public void A_plinth_too_wide_for_the_courses_of_its_wall_can_be_made_as_narrow_as_is_advised()
    {
        string text = Halt(76.2, "front = \"rubble\"\n[platform.facing.plinth]\nprojection = 2.4\n");
        var fault = Assert.Single(Run(text).Findings, f => f.Code == "PF4162");
        Assert.Equal("platform[0].facing.plinth.projection", fault.Key);
        Sound(text, "platform[0].facing.plinth.projection=" + fault.Cure!.Value);
    }
}
