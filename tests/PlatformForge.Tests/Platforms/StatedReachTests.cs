using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

public class StatedReachTests
{
    // Vehicles reach 18 mm but for a bump to 20 at chainage 500; 1 mm is kept.
    private static Outcome<PlatformPlan> Plan(double? reach, EdgeStyle edge = EdgeStyle.Uniform)
    {
        var request = Bench.Straight(s => s with { Face = s.Face with { Edge = edge, Reach = reach } });
        return PlatformPlanner.Plan(request
            with
        { Envelope = Bench.Envelope(request.Chart, Side.Left, s => 18 + (2 * Math.Exp(-(s - 500) * (s - 500) / 800))) });
    }

    [Theory]
    [InlineData(19.0, "fouls it by 1.00 mm")]
    [InlineData(20.4, "leaves 0.40 mm where 1.00 mm")]
    public void A_reach_that_is_too_little_is_refused_with_place_vehicle_part_and_the_least_that_works(double reach, string told)
    {
        var finding = Assert.Single(Plan(reach).Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF4025", "platform[0].face.reach", FaultKind.DesignRule), (finding.Code, finding.Key, finding.Kind));
        Assert.Contains("at chainage 500 mm fleet (body) reaches 20.00 mm", finding.Message, StringComparison.Ordinal);
        Assert.Contains(told, finding.Message, StringComparison.Ordinal);
        double offered = double.Parse(System.Text.RegularExpressions.Regex.Match(finding.Remedy, @"\d+(\.\d+)?").Value,
            System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(offered, 21, 21.03);
        Assert.True(Plan(offered).Succeeded);
        Assert.False(Plan(offered - 0.02).Succeeded);
    }

    // On a bend the straight facets ask for more than any station; and a lack may be less than two digits show.
    [Theory]
    [InlineData(-0.03)]
    [InlineData(-0.004)]
    [InlineData(-0.0004)]
    [InlineData(-0.00004)]
    public void What_is_told_to_be_left_is_less_than_what_is_told_to_be_kept(double lack)
    {
        var bend = TrackLayer.Lay(new("up", new PlatformForge.Geometry.Point2(0, 0), 0,
            [new StraightSpec(100), new CurveSpec(500, Hand.Right, Length: 800), new StraightSpec(100)])).Value!;
        PlatformRequest Request(double? reach)
        {
            var request = Bench.Straight(s => s with { Face = s.Face with { Edge = EdgeStyle.Uniform, Reach = reach } }) with { Chart = bend };
            return request with { Envelope = Bench.Envelope(bend, Side.Left, _ => 18) };
        }

        double least = PlatformPlanner.Plan(Request(null)).Value!.CopingFront.Reach[0];
        var finding = Assert.Single(PlatformPlanner.Plan(Request(least + lack)).Findings, f => f.Severity == Severity.Error);
        var told = System.Text.RegularExpressions.Regex.Match(finding.Message,
            @"leaves ([\d.]+) mm where ([\d.]+) mm are to be kept(?: and ([\d.]+) mm more for)?");
        double Of(int group) => told.Groups[group].Success ? double.Parse(told.Groups[group].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) : 0;
        Assert.True(told.Success, finding.Message);
        Assert.True(Of(1) < Of(2) + Of(3), finding.Message);
    }

    [Fact]
    public void A_reach_that_is_enough_is_kept_from_end_to_end_and_the_other_styles_stay_inside_it()
    {
        var plan = Plan(23.5).Value!;
        Assert.All(plan.CopingFront.Reach, t => Assert.Equal(23.5, t));
        Assert.All(plan.Alternatives[(int)EdgeStyle.Fitted].Reach.Zip(plan.Alternatives[(int)EdgeStyle.Faired].Reach),
            p => Assert.True(p.First <= p.Second && p.Second <= 23.5));
    }
}
