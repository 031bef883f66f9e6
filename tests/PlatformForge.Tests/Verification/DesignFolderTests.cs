using FsCheck.Xunit;
using PlatformForge.Tests.Clearance.Motion;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>Designs by lot as written files: what the plan keeps, the folder keeps, and it is said so.</summary>
public class DesignFolderTests
{
    [Property(MaxTest = 6)]
    public void A_folder_of_a_design_by_lot_is_clear(int seed) => Held(RandomDesign.Of(seed));

    [Property(MaxTest = 3)]
    public void So_is_one_that_ends_where_vehicles_halt(int seed) => Held(RandomDesign.AtHalt(seed));

    // Its end's corner stood 0.24 mm nearer to cylinders that halt beyond it than the budget allows, and verification ran vehicles on beyond the track's end.
    [Fact]
    public void The_folder_of_a_platform_that_ends_beside_buffers_is_clear() => Assert.NotNull(Held(RandomDesign.Of(105566)).Verdict);

    private static DesignFolder Held(RandomDesign design)
    {
        var folder = DesignFolder.Of(design);
        Assert.True(folder.IsClear,
            $"design {design.Seed}: {folder.Verdict?.Tightest}; {string.Join(' ', folder.Verdict?.Findings.Select(f => f.Code + " " + f.Message) ?? [])}");
        return folder;
    }
}
