using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
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
        string curved = straight.Replace("{ straight = 900 }", $"{{ straight = 300 }}, {{ curve = {radius}, angle = 60, hand = \"left\" }}, {{ straight = 900 }}");
        Assert.NotEqual(straight, curved);
        Kept(Samples.Read(curved).Value!);
    }

    [Theory]
    [InlineData("25")]
    [InlineData("29")]
    public void A_large_budget_is_kept_along_a_transition(string running) =>
        Kept(Samples.Read(PresetShelf.Sample("pendlewick")!, $"clearance.running={running}").Value!);

    private static void Kept(PlatformForge.Projects.ProjectSpec project)
    {
        var design = DesignRun.Design(project, RunWatch.None);
        Assert.True(design.Succeeded, string.Join('\n', design.Findings.Select(f => f.Message)));
        var verdict = TrialVerdict.Of(design.Value!);
        Assert.True(verdict.Passed, string.Join('\n', verdict.Findings.Select(f => f.Message)));
    }
}
