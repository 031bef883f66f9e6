using PlatformForge.Clearance;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>Figures for an edge that can't be kept, or that say nothing of it, are told.</summary>
public class FairingRuleTests
{
    [Theory]
    [InlineData(Side.Left, 582)]
    [InlineData(Side.Right, 618)]
    public void A_least_radius_that_the_track_does_not_allow_is_told_with_the_one_it_does(Side side, double allowed)
    {
        // A curve of 600 mm to the left and an edge 17 + 1 mm from its middle: concentric, 582 or 618 mm.
        var track = TrackLayer.Lay(new("up", new(0, 0), 0, [new CurveSpec(600, Hand.Left, Length: 1000)])).Value!;
        PlatformRequest Asked(double radius) => new(
            new("up side", new FaceSpec("up", side, 200, 800, EdgeStyle.Faired) { LeastRadius = radius }), Bench.Site, track,
            Bench.Envelope(track, side, _ => 17), ClearanceBudget.Of(running: 1));
        var finding = Assert.Single(PlatformPlanner.Plan(Asked(900)).Findings, f => f.Code == "PF4208");
        Assert.Equal(("platform[0].face.least_radius", Severity.Warning), (finding.Key, finding.Severity));
        Assert.Contains($" {allowed} mm", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(PlatformPlanner.Plan(Asked(allowed - 0.1)).Findings, f => f.Code == "PF4208");
    }

    [Fact]
    public void Figures_that_say_nothing_of_an_edge_of_its_style_are_told()
    {
        string[] Told(FaceSpec face) => [.. PlatformPlanner.Plan(Bench.Straight(s => s with { Face = face })).Findings.Where(f => f.Code == "PF4209")
            .Select(f => f.Key)];
        var plain = Bench.Straight().Spec.Face;
        Assert.Equal(["platform[0].face.least_radius", "platform[0].face.taper"], Told(plain with { LeastRadius = 900, Taper = 30 }));
        Assert.Empty(Told(plain));
        Assert.Empty(Told(plain with { Edge = EdgeStyle.Faired, LeastRadius = 900, Taper = 30 }));
    }

    [Fact]
    public void The_largest_entry_of_a_budget_wider_than_the_platform_is_told_with_what_it_may_be()
    {
        var request = Bench.Straight() with { Budget = ClearanceBudget.Of(running: 1, print: 80, fitting: 0.2) };
        var finding = Assert.Single(PlatformPlanner.Plan(request).Findings, f => f.Code == "PF4024");
        double most = request.Spec.Deck.Width - 1.2;
        Assert.Contains($"the print tolerance has to be below {most.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture)} mm", finding.Remedy,
            StringComparison.Ordinal);
        Assert.DoesNotContain(PlatformPlanner.Plan(request with { Budget = ClearanceBudget.Of(running: 1, print: most - 0.01, fitting: 0.2) }).Findings,
            f => f.Code == "PF4024");
    }
}
