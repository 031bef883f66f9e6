using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Solids.Bodies;
using PlatformForge.Solids.Kernel;
using PlatformForge.Tests.Projects;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Platforms;

/// <summary>A pillar under the deck and the hole for a screw in it: in the solid, among ribs and cuts, in tables, and where it has no place.</summary>
public class FixingTests
{
    private const double Screw = 3, Fit = 0.2, Wall = 2, Depth = 8;

    private static PlatformSpec Plain(PlatformSpec spec) => spec with { Ribs = new() { Pitch = 0, LongitudinalCount = 0 } };

    [Fact]
    public void The_solid_gains_a_pillar_as_high_as_the_deck_s_underside_and_lacks_its_hole()
    {
        var plan = Workbench.Straight(600, change: s => Plain(s).With<FixingSpec>([new(300, 20)]));
        var without = Workbench.Straight(600, change: Plain);
        double hole = (Screw * 0.75) + Fit, clear = plan.TopAt(300, plan.Back.At(300) - 20) - plan.Spec.Deck.Thickness;

        // Areas of polygons of twelve sides about a circle of a diameter: 3 d² tan(15°).
        double Area(double diameter) => 3 * diameter * diameter * Math.Tan(Math.PI / 12);
        Assert.Equal((Area(hole + (2 * Wall)) * clear) - (Area(hole) * Depth), Volume(plan) - Volume(without), 1e-3);
        Assert.Empty(plan.Openings);
    }

    [Fact]
    public void It_stands_on_the_baseboard_on_a_ramp_with_a_crossfall_on_a_curve_too()
    {
        var request = Bench.Request(7, EdgeStyle.Fitted,
            s => (Plain(s) with { StartRamp = new(Length: 120), Deck = s.Deck with { Width = 50, Crossfall = 60 } })
            .With<FixingSpec>([new(s.Face.From + 100, 20) { Depth = 6 }]));
        var plan = Bench.Plan(request);
        var ring = Assert.Single(plan.Features.SelectMany(f => f.Prisms), p => p.Act == PrismAct.Add).Ring;
        var solid = SolidRaiser.Raise(PlatformBody.Blocks(plan).All);
        var bare = SolidRaiser.Raise(PlatformBody.Blocks(Bench.Plan(request with { Spec = request.Spec.With<FixingSpec>([]) })).All);

        // Its mean height is that of the deck's underside over its middle, since that is a plane there.
        double pilot = (Screw * 0.75) + Fit, hole = 3 * pilot * pilot * Math.Tan(Math.PI / 12) * 6;
        var middle = new Point2(ring.Average(p => p.X), ring.Average(p => p.Y));
        var place = plan.Chart.Locate(middle);
        double under = plan.TopAt(place.Chainage, plan.Side.Reach(place.Offset)) - plan.Spec.Deck.Thickness;
        Assert.Equal((ConvexRing.Area(ring) * under) - hole, solid.ColumnVolume - bare.ColumnVolume, 1e-3 * ConvexRing.Area(ring) * under);
    }

    [Fact]
    public void Ribs_cuts_and_other_features_keep_off_it()
    {
        for (double at = 330; at <= 470; at += 13)
        {
            var plan = Workbench.Straight(500, change: s => s.With<FixingSpec>([new(at, 20)]));
            var made = SectionMaker.Make(plan, Workbench.Printer with { Bed = [new(0, 0), new(150, 0), new(150, 150), new(0, 150)] }, new()).Value!;
            var pillar = made.Plan.Keepouts.Single();
            Assert.All(made.Cuts, c => Assert.True(c < pillar.From - 2.9 || c > pillar.To + 2.9, $"cut at {c}, pillar {pillar.From} to {pillar.To}"));
            Assert.DoesNotContain(made.Plan.Ribs, r => r.Kind == RibKind.Transverse && r.From < pillar.To && r.To > pillar.From);
        }

        var twice = PlatformPlanner.Plan(Bench.Straight(s => s.With<FixingSpec>([new(500, 20), new(503, 20)])));
        Assert.Equal("PF4033", Assert.Single(twice.Findings, f => f.Severity == Severity.Error).Code);
    }

    [Theory]
    [InlineData(30, "PF4134", Severity.Error)]
    [InlineData(4, "PF4135", Severity.Warning)]
    public void A_hole_into_the_deck_or_too_shallow_is_told_and_the_depth_that_is_offered_works(double depth, string code, Severity severity)
    {
        PlatformPlan? With(double deep, out IReadOnlyList<Finding> told)
        {
            var outcome = PlatformPlanner.Plan(Bench.Straight(s => s.With<FixingSpec>([new(500, 20) { Depth = deep }])));
            told = outcome.Findings;
            return outcome.Value;
        }

        var plan = With(depth, out var findings);
        var finding = Assert.Single(findings, f => f.Code == code);
        Assert.Equal(("platform[0].fixing[0].depth", severity, severity == Severity.Warning), (finding.Key, finding.Severity, plan is not null));
        Assert.NotNull(With(double.Parse(finding.Cure!.Value!, System.Globalization.CultureInfo.InvariantCulture), out findings));
        Assert.DoesNotContain(findings, f => f.Code is "PF4134" or "PF4135");
    }

    [Fact]
    public void Where_the_platform_is_too_low_for_a_screw_it_has_to_go()
    {
        var low = PlatformPlanner.Plan(Bench.Straight(s => (s with { EndRamp = new(Length: 96, FootHeight: -4) }).With<FixingSpec>([new(s.Face.To - 12, 20)])));
        var finding = Assert.Single(low.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(("PF4134", CureAct.LeaveOut, "platform[0].fixing[0]"), (finding.Code, finding.Cure!.Act, finding.Cure.Key));
    }

    [Fact]
    public void Its_keys_are_read_and_the_table_tells_where_to_drill()
    {
        var project = Samples.Read(Samples.Small + "fixing = [{ at = 440, inset = 9, screw = 2.5, fit = 0.1, depth = \"6 mm\", wall = 1.6, name = \"east "
            + "screw\" }]\n").Value!;
        var asked = Assert.Single(project.Platforms[0].Of<FixingSpec>());
        Assert.Equal(new FixingSpec(440, 9) { Screw = 2.5, Fit = 0.1, Depth = 6, Wall = 1.6, Name = "east screw" }, asked);
        var plan = Bench.Plan(Bench.Straight(s => s.With<FixingSpec>([asked with { Chainage = 500 }])));
        var hole = Assert.Single(plan.Features[0].BoardHoles);
        Point2 place = plan.ToLayout(500, plan.Back.At(500) - 9), told = plan.ToLayout(hole.Place.Chainage, hole.Place.Reach);
        Assert.True((place - told).Length < 1e-9 && hole.Diameter == 3, $"{hole}");
        Assert.Equal(("wood screw", 1, (double?)2.5), plan.Features[0].Parts.Select(p => (p.What, p.Count, p.Diameter)).Single());
    }

    private static double Volume(PlatformPlan plan) => SolidRaiser.Raise(PlatformBody.Blocks(plan).All).ColumnVolume;
}
