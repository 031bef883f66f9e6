using PlatformForge.Solids.Bodies.Walls;
using Xunit;

namespace PlatformForge.Tests.Solids.Bodies;

/// <summary>What is said of walls too thin for what is laid on them, by hand.</summary>
public class FacingFigureTests
{
    /// <summary>1.2 mm of wall less 0.5 of joint are 0.7 where 0.8 are wanted: 1.3 of wall, or 0.4 of joint, which comes first where a line of 0.4 would
    /// leave 0.1 of its underside in the air and not where one of 0.6 carries all of it.</summary>
    [Theory]
    [InlineData(0.6, "Make the wall 1.3 mm thick, or the joints 0.4 mm deep (facing.depth).", "walls.front_thickness", "1.3")]
    [InlineData(0.4, "Make the joints 0.4 mm deep (facing.depth), or make the wall 1.3 mm thick.", "platform[0].facing.depth", "0.4")]
    public void A_wall_too_thin_for_its_joints_is_told_both_ways_out(double line, string remedy, string key, string value)
    {
        var told = FacingFindings.WallTooThin("walls.front_thickness", "front", 1.2, 0.5, 0.8, "platform[0].facing.depth", line);
        Assert.Equal(remedy, told.Remedy);
        Assert.Equal((key, value), (told.Cure!.Key, told.Cure.Value));
    }

    /// <summary>Where the wall is thinner than what has to stand behind joints, none is shallow enough.</summary>
    [Fact]
    public void A_wall_thinner_than_what_stands_behind_joints_is_to_be_thicker_and_nothing_else()
    {
        var told = FacingFindings.WallTooThin("walls.front_thickness", "front", 0.7, 0.5, 0.8, "platform[0].facing.depth", 0.4);
        Assert.Equal("Make the wall 1.3 mm thick.", told.Remedy);
    }
}
