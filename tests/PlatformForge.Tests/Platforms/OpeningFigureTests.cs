using PlatformForge.Platforms.WallFittings;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>What is said of openings that a printer cannot make, by hand, in hundredths of a millimetre on the side that can be made.</summary>
public class OpeningFigureTests
{
    /// <summary>1.503 mm of opening and 0.8 mm behind it are 2.303 mm of wall; a wall that leaves 1.238 mm takes 1.23.</summary>
    [Fact]
    public void A_wall_too_thin_for_its_openings_is_told_the_depth_that_fits_and_the_thickness()
    {
        var told = OpeningFaults.Depth("opening[0]", 1.503, (0.3, 1.238), "wall.front_thickness", 0.8);
        Assert.Equal(("opening[0].depth", "opening[0].depth", "1.23"), (told.Key, told.Cure!.Key, told.Cure.Value));
        Assert.Equal("Give 1.23 mm or less, or make the wall 2.31 mm thick.", told.Remedy);
    }

    /// <summary>Where what fits is hardly deeper than a joint the wall alone is offered.</summary>
    [Fact]
    public void A_wall_that_leaves_no_more_than_a_joint_is_to_be_thicker()
    {
        var told = OpeningFaults.Depth("opening[0]", 1.503, (0.3, 0.38), "wall.front_thickness", 0.8);
        Assert.Equal(("wall.front_thickness", "wall.front_thickness", "2.31"), (told.Key, told.Cure!.Key, told.Cure.Value));
        Assert.Equal("Make the wall 2.31 mm thick.", told.Remedy);
    }

    [Fact]
    public void Openings_no_deeper_than_joints_are_to_be_a_layers_depth_deeper()
    {
        var told = OpeningFaults.Depth("opening[0]", 0.3, (0.3, 1.238), "wall.front_thickness", 0.8);
        Assert.Equal(("opening[0].depth", "0.5", "Give 0.5 mm or more."), (told.Key, told.Cure!.Value, told.Remedy));
    }

    [Fact]
    public void An_opening_too_small_is_told_the_least_that_stays_open()
    {
        var told = OpeningFaults.TooSmall("opening[0].width", 0.5, 0.803);
        Assert.Equal(("0.81", "Give 0.81 mm or more."), (told.Cure!.Value, told.Remedy));
    }
}
