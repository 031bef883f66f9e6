using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Tests.Clearance.Motion;
using PlatformForge.Verification;
using PlatformForge.Verification.Written;
using Xunit;

namespace PlatformForge.Tests.Verification;

/// <summary>Beside buffers a vehicle halts with its axles on the track, and what of it lies ahead of them may never come beside a short platform.</summary>
public class HaltsShortTests
{
    // Axles 74 mm apart, and frames 15.5 mm to either side from 25 mm ahead of the foremost on: they begin at 99 mm where the hindmost axle is at the start.
    private static readonly Vehicle Truck = new("truck", 74, 0, 0, [VehiclePart.Box("frames", PartCarrier.Body, 62, 84, 31, 2, 9)]) { EitherWayRound = false };

    private const double Begins = 74 + 25;

    private static Verdict Held(double to, bool buffers)
    {
        var track = Pieces.Straight(1200);
        var facts = Pieces.Facts(track, Truck);
        var run = new TrackRun(track, [Truck]) { StartsAtBuffers = buffers };
        return SectionsVerifier.Verify([Pieces.Section(Pieces.Bar(track, 5, to, 20, 70, 0, 20))], facts with { Runs = [run] });
    }

    [Fact]
    public void A_platform_that_ends_before_it_has_nothing_to_hold_against_it()
    {
        var verdict = Held(60, true);
        Assert.Empty(verdict.Findings);
        Assert.Null(Assert.Single(verdict.Vehicles).Closest);
    }

    [Fact]
    public void One_that_goes_on_beyond_its_place_is_held_as_ever()
    {
        var verdict = Held(Begins + 5, true);
        Assert.Empty(verdict.Findings);
        Assert.Equal(20 - 15.5, Assert.Single(verdict.Vehicles).Closest!.Clearance, 1e-6);
    }

    [Fact]
    public void Where_the_track_is_not_said_to_end_too_little_of_it_is_still_told() =>
        Assert.Equal("PF8022", Assert.Single(Held(60, false).Findings).Code);

    /// <summary>Short platforms beside buffers that a truck on an arm halts short of, leading and trailing.</summary>
    [Theory]
    [InlineData(221)]
    [InlineData(399)]
    [InlineData(404)]
    [InlineData(437)]
    public void Nor_have_designs_by_lot_whose_trucks_halt_short(int seed)
    {
        var folder = DesignFolder.Of(RandomDesign.AtHalt(seed));
        Assert.True(folder is { Verdict: not null, IsClear: true }, string.Join(' ', folder.Verdict?.Findings.Select(f => f.Message) ?? []));
    }
}
