using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>What the edge is made to keep, verification must find kept, where the swept line runs at a slope too.</summary>
public class KeptClearanceTests
{
    [Theory]
    [InlineData(115)]
    [InlineData(150)]
    [InlineData(200)]
    public void On_the_inside_of_a_tight_curve_the_budget_is_kept(int radius)
    {
        string straight = PresetShelf.Sample("straight-halt")!;
        string curved = straight.Replace("{ straight = 900 }", $"{{ straight = 300 }}, {{ curve = {radius}, angle = 60, hand = \"left\" }}, {{ straight = 900 "
            + "}");
        Assert.NotEqual(straight, curved);
        Kept(Samples.Read(curved).Value!);
    }

    [Theory]
    [InlineData("25")]
    [InlineData("29")]
    public void A_large_budget_is_kept_along_a_transition(string running) =>
        Kept(Samples.Read(PresetShelf.Sample("pendlewick")!, $"clearance.running={running}").Value!);

    [Theory]
    [InlineData("12", "14", "2")]
    [InlineData("12.3", "14", "1.7")]
    [InlineData("11.1", "13.2", "2.1")]
    public void A_body_exactly_the_vertical_gap_above_the_coping_passes_over(string height, string low, string gap)
    {
        string text = Samples.With(12, $"width = 34\nlow = {low}\npart = [{{ name = \"steps\", from = -60, to = 60, width = 30, low = 3, high = 9 }}]");
        text = text.Replace("to = 540 }", $"to = 540, bodies_pass_over = true, vertical_gap = {gap} }}\nheight = {height}");
        var project = Samples.Read(text).Value!;
        var design = DesignRun.Design(project, RunWatch.None);
        Assert.DoesNotContain(design.Findings, f => f.Code == "PF4206");
        Assert.All(design.Value!.Platforms[0].Plan.Requirement.GoverningPart, p => Assert.Equal("steps", p));
        Kept(project);
    }

    // An engine that never runs turned halts with its cylinders at 117 to 126 mm from the buffers, wider than its body, about where the platform ends.
    [Theory]
    [InlineData("start", 113)]
    [InlineData("start", 116.5)]
    [InlineData("start", 118)]
    [InlineData("start", 126.7)]
    [InlineData("end", 115.2)]
    [InlineData("end", 116.9)]
    public void An_end_keeps_the_budget_to_what_halts_beside_it_or_beyond_it(string buffers, double end)
    {
        var (from, to, low, high) = buffers == "start" ? (25.0, end, 37, 46) : (700 - end, 675.0, -46, -37);
        string text = string.Create(System.Globalization.CultureInfo.InvariantCulture, $$"""
            layout = { name = "Bufferend", scale = "4mm", rail_top = 8 }
            track = [{ name = "bay", buffers = "{{buffers}}", alignment = [{ straight = 700 }] }]
            vehicle = [{ name = "engine", length = 160, pivots = 112, width = 34, either_way = false,
                part = [{ name = "cylinders", from = {{low}}, to = {{high}}, width = 44, low = 2, high = 11 }] }]
            clearance = { running = 1, print = 0.2, fitting = 0.2 }
            platform = [{ name = "bay side", height = 12, deck = { width = 46 },
                face = { track = "bay", side = "left", from = {{from}}, to = {{to}}, edge = "uniform" } }]
            printer = { preset = "bed-180x180" }
            """);
        Kept(Samples.Read(text).Value!);
    }

    private static void Kept(PlatformForge.Projects.ProjectSpec project)
    {
        var design = DesignRun.Design(project, RunWatch.None);
        Assert.True(design.Succeeded, string.Join('\n', design.Findings.Select(f => f.Message)));
        var verdict = TrialVerdict.Of(design.Value!);
        Assert.True(verdict.Passed, string.Join('\n', verdict.Findings.Select(f => f.Message)));
    }
}
