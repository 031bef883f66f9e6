using PlatformForge.Projects;
using PlatformForge.Projects.Runs;
using PlatformForge.Projects.Watches;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>The finished samples that show backs, designed and held against their vehicles.</summary>
public class FinishedBackTests
{
    [Theory]
    [InlineData("ottermoss", 2)]
    [InlineData("cindlemoor", 2)]
    public void They_are_sound_print_without_supports_and_are_clear(string name, int platforms)
    {
        var project = ProjectReader.ReadFile(Path.Combine(House.SourceTree.Root, "presets", "finished", name + ".toml"));
        Assert.NotNull(project.Value);
        var design = DesignRun.Design(project.Value, RunWatch.None);
        Assert.NotNull(design.Value);
        Assert.Equal(platforms, design.Value.Platforms.Count);
        Assert.DoesNotContain(design.Findings, f => f.Code == "PF6007" && f.Severity != PlatformForge.Units.Severity.Note); // a note wants no supports
        Assert.True(TrialVerdict.Of(design.Value).IsClear);
    }
}
