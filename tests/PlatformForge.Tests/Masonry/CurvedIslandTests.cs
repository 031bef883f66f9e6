using FsCheck.Xunit;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Projects;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Islands between two curves: one face bends away from whoever stands before it, the other towards them.</summary>
public class CurvedIslandTests
{
    private const string Island = """
        [layout]
        name = "Quillhaven"
        scale = "4mm"
        rail_top = 8
        [[track]]
        name = "main"
        start = { x = 0, y = 0, heading = 0 }
        alignment = [{ straight = 250 }, { curve = 1500, length = 400, hand = "left" }, { straight = 300 }]
        [[track]]
        name = "down"
        start = { x = 0, y = 90, heading = 0 }
        alignment = [{ straight = 250 }, { curve = 1410, length = 376, hand = "left" }, { straight = 300 }]
        [[vehicle]]
        name = "coach"
        length = 228
        pivots = 162
        width = 34
        low = 3
        [clearance]
        running = 0.7
        [[platform]]
        name = "island"
        kind = "island"
        height = 12
        face = { track = "main", side = "left", from = 250, to = 650 }
        other_face = { track = "down", side = "right" }
        coping = { kind = "bricks" }
        """;

    [Theory]
    [InlineData("facing.plinth.steps=2")]
    [InlineData("facing.corbel.courses=2")]
    [InlineData("facing.batter=1")]
    public void An_island_with_a_profile_is_built_where_slabs_of_its_coping_end_beside_a_station(string profile) =>
        Built(Island, "platform[0]." + profile, "platform[0].facing.bond=english");

    /// <summary>Wherever its ends and cuts fall, whatever its bond and profile.</summary>
    [Property(MaxTest = 6)]
    public void An_island_is_built_wherever_it_is_cut(int seed)
    {
        var random = new Random(seed);
        double from = 255 + (random.NextDouble() * 60), to = from + 90 + (random.NextDouble() * 60);
        double cut = from + ((to - from) * (0.4 + (0.2 * random.NextDouble())));
        string[] profiles = ["plinth.steps=2", "corbel.courses=2", "batter=1", "plinth.projection=0.7"];
        string[] walls = ["bond=english", "bond=flemish", "bond=stretcher", "bond=english-garden-wall", "front=stone", "front=rubble"];
        string text = Island.Replace("from = 250, to = 650", FormattableString.Invariant($"from = {from:0.000}, to = {to:0.000}"), StringComparison.Ordinal);
        Built(text + FormattableString.Invariant($"\ncuts = [{cut:0.000}]\n"), "platform[0].facing." + profiles[random.Next(profiles.Length)],
            "platform[0].facing." + walls[random.Next(walls.Length)]);
    }

    private static void Built(string text, params string[] sets)
    {
        var run = DesignRun.Design(Samples.Read(text, sets).Value!, RunWatch.None);
        Assert.True(run.Succeeded, string.Join('\n', run.Findings.Select(f => f.Message)));
        var sections = run.Value!.Platforms[0].Sections.Sections;
        Assert.True(sections.Count > 1);
        Assert.All(sections, section =>
        {
            var report = MeshCheck.Inspect(section.Solid.Mesh);
            Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());
            Assert.InRange(section.Solid.ColumnVolume / report.Volume, 1 - 2e-6, 1 + 2e-6);
            Assert.Contains(section.Faced.SelectMany(w => w.Stretches), s => s.Face.EndsWith("front of face 2", StringComparison.Ordinal));
        });
    }
}
