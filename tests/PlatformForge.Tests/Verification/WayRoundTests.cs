using PlatformForge.Clearance.Vehicles;
using PlatformForge.Verification;
using PlatformForge.Verification.Poses;
using Xunit;

namespace PlatformForge.Tests.Verification;

public class WayRoundTests
{
    private static readonly Vehicle Coach = Pieces.Coach(250, 180, 34, 36);

    [Fact]
    public void A_vehicle_with_equal_ends_is_alike_turned_and_one_with_unequal_ends_is_not()
    {
        Assert.True(WayRound.IsAlike(Coach));
        Assert.False(WayRound.IsAlike(Coach with { TrailingWheelbase = 30 }));
        Assert.False(WayRound.IsAlike(Coach with { LeadingPivotAhead = 1 }));
        Assert.False(WayRound.IsAlike(Coach with { Parts = [.. Coach.Parts, VehiclePart.Box("steps", PartCarrier.Body, -100, -80, 36, 4, 6)] }));
        Assert.False(WayRound.IsAlike(Coach with { Parts = [.. Coach.Parts, VehiclePart.Box("frame", PartCarrier.LeadingBogie, -20, 20, 30, 1, 6)] }));
        Assert.False(
            WayRound.IsAlike(Coach
                with
            {
                Parts =
                    [.. Coach.Parts.Select(p =>
                        p with { Outline = [.. p.Outline.Skip(1).Prepend(p.Outline[0] + new PlatformForge.Geometry.Point2(1, 0))] })]
            }));
        Assert.True(
            WayRound.IsAlike(Coach with
            {
                Parts = [VehiclePart.Box("ahead", PartCarrier.LeadingBogie, -20, 22, 30, 1, 6),
                VehiclePart.Box("behind", PartCarrier.TrailingBogie, -22, 20, 30, 1, 6)]
            }));
    }

    [Fact]
    public void Turned_twice_a_vehicle_stands_as_it_stood()
    {
        var engine = Coach with { TrailingWheelbase = 30, LeadingPivotAhead = 3, TrailingPivotAhead = -5 };
        var turned = WayRound.Turned(WayRound.Turned(engine));
        Assert.Equal((engine.LeadingWheelbase, engine.TrailingWheelbase), (turned.LeadingWheelbase, turned.TrailingWheelbase));
        Assert.Equal((engine.LeadingPivotAhead, engine.TrailingPivotAhead), (turned.LeadingPivotAhead, turned.TrailingPivotAhead));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    public void A_vehicle_that_is_alike_comes_as_near_as_one_that_is_held_both_ways_round(double play)
    {
        // A hair's difference between its ends makes it unlike, so that it is tried either way.
        var unlike = Coach with { Name = "unlike", Parts = [.. Coach.Parts, VehiclePart.Box("lamp", PartCarrier.Body, 1, 2, 1, 30, 31)] };
        var track = Pieces.Curve(1500, 610);
        var facts = Pieces.Facts(track, Coach, unlike) with { Play = new(play) };
        var held = SectionsVerifier.Verify([Pieces.Section(Pieces.Bar(track, 600, 800, 22, 70, 0, 20, 40))], facts).Vehicles;
        Assert.Equal(held[1].Closest!.Clearance, held[0].Closest!.Clearance);
        Assert.Equal(held[1].Tightest!.Clearance, held[0].Tightest!.Clearance);
    }
}
