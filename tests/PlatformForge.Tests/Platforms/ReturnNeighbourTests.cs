using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Returns of banks beyond the ends of platforms that stand one behind the other along a track, and of platforms beside them.</summary>
public class ReturnNeighbourTests
{
    // A bank of 1 in 1 from a deck 20 mm over the baseboard.
    private const double Radius = 20;

    private static PlatformPlan Of(string key, double y, Side side, double from, double to, BankReturns returns)
    {
        var request = Bench.Straight(s => s with
        {
            Name = key,
            Key = key,
            Height = 12,
            Face = s.Face with { Side = side, From = from, To = to },
            Deck = s.Deck with { Width = 40, Crossfall = 0 },
            StartRamp = null,
            EndRamp = null,
            Back = new() { Kind = BackKind.Bank, Slope = 1, Returns = returns },
        });
        var track = TrackLayer.Lay(new("up", new Point2(0, y), 0, [new StraightSpec(1000)])).Value!;
        return Bench.Plan(request with { Chart = track, Envelope = Bench.Envelope(track, side, _ => 18) });
    }

    /// <summary>Two returns towards one another, and one towards a bare end: quarter circles touch where their corners are two radii apart, or one.</summary>
    [Theory]
    [InlineData(BankReturns.Start, 2 * Radius)]
    [InlineData(BankReturns.None, Radius)]
    public void One_behind_the_other_they_have_room_from_their_radii_on(BankReturns second, double room)
    {
        foreach (var side in (Side[])[Side.Left, Side.Right])
        {
            var first = Of("platform[0]", 0, side, 200, 400, BankReturns.Both);
            Assert.Equal(Radius, first.Bank!.Returns[0].Radius, 1e-9);
            Assert.Empty(PlatformNeighbours.Check([first, Of("platform[1]", 0, side, 400 + room + 0.1, 700, second)]));
            var told = Assert.Single(PlatformNeighbours.Check([first, Of("platform[1]", 0, side, 400 + room - 2, 700, second)]));
            Assert.Equal(("PF4027", "platform[0].back.returns", "\"start\""), (told.Code, told.Key, told.Cure!.Value));

            // What is offered works; the other platform's own return is as far from the first platform's end as before.
            Assert.Empty(PlatformNeighbours.Check([Of("platform[0]", 0, side, 200, 400, BankReturns.Start),
                Of("platform[1]", 0, side, 400 + room - 2, 700, second)]));
        }
    }

    /// <summary>Back to back: a platform that begins beyond the other's end, and reaches behind it into the return there.</summary>
    [Fact]
    public void A_platform_of_another_track_that_reaches_into_a_return_is_told_whichever_is_first()
    {
        // Fronts at 19 and 19 + 78 from either track, 40 deep: backs 18 apart, so that a bank of 20 meets the other's back beyond the end.
        PlatformPlan first = Of("platform[0]", 0, Side.Left, 200, 400, BankReturns.End), second = Bare(136);
        Assert.Equal("platform[0].back.returns", Assert.Single(PlatformNeighbours.Check([first, second])).Key);
        Assert.Equal("platform[0].back.returns", Assert.Single(PlatformNeighbours.Check([second, first])).Key);
        Assert.Empty(PlatformNeighbours.Check([first, Bare(139)]));
    }

    private static PlatformPlan Bare(double y)
    {
        var request = Bench.Straight(s => s with
        {
            Name = "other",
            Key = "platform[1]",
            Face = s.Face with { Side = Side.Right, From = 401, To = 700 },
            Deck = s.Deck with { Width = 40 }
        });
        var track = TrackLayer.Lay(new("up", new Point2(0, y), 0, [new StraightSpec(1000)])).Value!;
        return Bench.Plan(request with { Chart = track, Envelope = Bench.Envelope(track, Side.Right, _ => 18) });
    }
}
