using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

public class HoleAndSeatTests
{
    [Fact]
    public void A_lamp_hole_goes_through_the_deck_where_it_is_asked_for_and_no_rib_is_in_its_way()
    {
        var rib = Bench.Plan(Bench.Straight()).Ribs.First(r => r.Kind == RibKind.Transverse && r.From > 450);
        double at = (rib.From + rib.To) / 2;
        var plan = Bench.Plan(Bench.Straight(s => s.With<HoleSpec>([new(at, 12) { Diameter = 1.5, Fit = 0.1 }])));
        var hole = Assert.Single(plan.PostHoles);
        Assert.Equal(("lamp", at, 1.6), (hole.Name, hole.Chainage, hole.Diameter));
        Assert.Null(hole.Depth);
        Assert.Equal(plan.Back.At(at) - 12, hole.Reach, 1e-9);
        Assert.DoesNotContain(plan.Ribs, r => r.Kind == RibKind.Transverse && r.From < at + 0.79 && r.To > at - 0.79);
    }

    [Theory]
    [InlineData(201, 10, "PF4032", "at")]
    [InlineData(500, 1, "PF4031", "inset")]
    [InlineData(500, 44, "PF4030", "inset")]
    public void A_hole_off_the_platform_or_in_the_coping_is_an_error(double chainage, double inset, string code, string field)
    {
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => s.With<HoleSpec>([new(300, 10), new(chainage, inset)])));
        Assert.Equal((code, "platform[0].hole[1]." + field), outcome.Findings.Where(f => f.Severity == Severity.Error).Select(f => (f.Code, f.Key)).Single());
    }

    [Fact]
    public void A_building_seat_is_a_shallow_recess_with_its_bedding_gap_and_ribs_may_stand_under_it()
    {
        // Pendlewick's building: 92 × 34 mm on a platform 62 wide leaves 28 mm to the edge, more than the scaled 6 ft of 24 (USERS.md (f) 1).
        PlatformSpec Seat(PlatformSpec s, double width) => (s with { Deck = s.Deck with { Width = width } })
            .With<SocketSpec>([new(500, 34 / 2.0 + 0.9) { Along = 92, Across = 34, Depth = 0.5, Fit = 0.2, Name = "building" }]);
        var free = Bench.Plan(Bench.Straight(s => s with { Deck = s.Deck with { Width = 62.9 } }));
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => Seat(s, 62.9)));
        Assert.Empty(outcome.Findings);
        var plan = outcome.Value!;
        var seat = Assert.Single(plan.Sockets);
        Assert.Equal((92.2, 34.2, 0.5, 0.0), (seat.Along, seat.Across, seat.Depth, seat.BossWall));
        Assert.Equal(free.Ribs.Select(r => r.From), plan.Ribs.Select(r => r.From));
        Assert.DoesNotContain(plan.CutCandidates, c => c.Chainage is > 500 - 46 and < 500 + 46);

        // 3 mm narrower still leaves it, 5 mm do not: a warning with figures.
        Assert.DoesNotContain(PlatformPlanner.Plan(Bench.Straight(s => Seat(s, 59.9))).Findings, f => f.Code == "PF4202");
        var warning = Assert.Single(PlatformPlanner.Plan(Bench.Straight(s => Seat(s, 57.9))).Findings, f => f.Code == "PF4202");
        Assert.Contains("23 mm are clear", warning.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_seat_that_overlaps_the_platforms_back_is_off_the_deck()
    {
        var outcome = PlatformPlanner.Plan(Bench.Straight(s => s.With<SocketSpec>([new(500, 10) { Along = 92, Across = 34, Depth = 0.5 }])));
        var finding = Assert.Single(outcome.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF4031", "platform[0].board[0].inset"), (finding.Code, finding.Key));
        Assert.Contains("17.9 mm or more", finding.Remedy, StringComparison.Ordinal);
    }
}
