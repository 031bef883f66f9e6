using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using Xunit;

namespace PlatformForge.Tests.Projects;

/// <summary>Platforms as they look when they are finished (presets/finished): large, so that they are shaped and held against their vehicles here and not written.</summary>
public class FinishedSampleTests
{
    [Theory]
    [InlineData("pendlewick-brick", "brick", 5)]
    [InlineData("oxenwharf", "brick", 6)]
    [InlineData("wrenlow", "sheet", 4)]
    [InlineData("ollingshaw", null, 3)]
    public void They_are_sound_faced_and_clear(string name, string? finish, int sections)
    {
        string file = Path.Combine(House.SourceTree.Root, "presets", "finished", name + ".toml");
        var project = ProjectReader.ReadFile(file);
        Assert.NotNull(project.Value);
        var design = DesignRun.Design(project.Value, RunWatch.None);
        Assert.NotNull(design.Value);
        var platform = Assert.Single(design.Value.Platforms);
        Assert.Equal(sections, platform.Sections.Sections.Count);
        Assert.Equal(finish is null ? [] : [finish], platform.Sections.Facing?.Finishes.Select(f => PlatformForge.Masonry.FacingSpec.Name(f.Work.Finish)).Distinct() ?? []);
        Assert.True(TrialVerdict.Of(design.Value).IsClear);
    }
}
