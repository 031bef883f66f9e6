using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Joints;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>What joints and openings need of a printer: plates for low platforms, reliefs, ribs beside walls, holes that stay open.</summary>
public class LowJointTests
{
    // 380 mm over rail, the lowest usual height of platforms on continental lines (common practice, no source), is 2.4 mm in 1:160; rails 1.5 mm over the
    // baseboard: 3.9 mm in all.
    [Fact]
    public void Where_a_platform_is_too_low_for_dowels_plates_are_offered_and_go_in()
    {
        var plan = Workbench.Low(3.9);
        var outcome = SectionMaker.Make(plan, Workbench.Printer, new());
        var finding = Assert.Single(outcome.Findings, f => f.Code == "PF6005" && f.Message.Contains("baseboard", StringComparison.Ordinal));
        Assert.Equal(new Cure(CureAct.Set, "joint.kind", "\"plate\""), finding.Cure);
        Assert.Contains("joint.kind = \"plate\"", finding.Remedy, StringComparison.Ordinal);

        var set = Workbench.Made(plan, Workbench.Printer, new() { Joint = new() { Kind = JointKind.Plate }, Engrave = false });
        Assert.NotEmpty(set.Cuts);
        var plates = Assert.Single(set.Dowels);
        Assert.Equal((2 * set.Cuts.Count, 12.0), (plates.Count, plates.Length));
        foreach (var section in set.Sections)
        {
            Assert.Equal(section.Volumes.Finished, section.Solid.ColumnVolume, section.Solid.ColumnVolume * 1e-5);
            Pockets(plan, set, new(section));
        }
    }

    // From below, on the joint's line of plates: nothing up to 1.2 mm, then plastic; 6.4 mm deep and 5.2 wide.
    private static void Pockets(PlatformPlan plan, SectionSet set, Gauge gauge)
    {
        foreach (double cut in set.Cuts.Where(c => c == gauge.Section.From || c == gauge.Section.To))
        {
            var place = JointPlace.At(new FacetedPlan(set.Plan), cut, new());
            int way = cut == gauge.Section.From ? 1 : -1;
            var blocks = new JointBlocks(new(set.Plan), place, new() { Kind = JointKind.Plate }, 0.8, way > 0, dowels: true);
            Assert.Equal(2, blocks.Pockets.Count);
            Assert.All(blocks.Pockets, ring => Assert.Equal(6.4 * 5.2, ConvexRing.Area(ring), 1e-9));
            foreach (var middle in new[] { place.Round, place.Slotted })
            {
                var inside = middle + (place.Forward * (way * 3.0));
                Assert.Equal(1.2, gauge.Along(new(inside.X, inside.Y, 0.05), new(0, 0, 1))[0] + 0.05, 0.01);
                Assert.All(new[] { 1, -1 }, side => Assert.Equal(2.6, gauge.Feel(new(inside.X, inside.Y, 0.6), place.Away * side), 0.01));
                Assert.Equal(6.4, gauge.Feel(new(middle.X + (place.Forward.X * way * 0.1), middle.Y + (place.Forward.Y * way * 0.1), 0.6),
                    place.Forward * way), 0.01);
            }
        }

        Assert.Equal(3.9, plan.Profile.Level, 9);
    }

    [Fact]
    public void A_plate_too_thick_or_too_wide_is_told_with_what_goes_in()
    {
        var plan = Workbench.Low(3.9);
        foreach (var (joint, key) in new[] { (new JointSpec { Kind = JointKind.Plate, PlateThickness = 4 }, "joint.plate_thickness"),
            (new JointSpec { Kind = JointKind.Plate, PlateWidth = 40 }, "joint.plate_width") })
        {
            var told = SectionMaker.Make(plan, Workbench.Printer, new() { Joint = joint }).Findings.First(f => f.Code == "PF6022");
            Assert.Equal(key, told.Key);
            double value = double.Parse(told.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
            var mended = key.EndsWith("width", StringComparison.Ordinal) ? joint with { PlateWidth = value } : joint with { PlateThickness = value };
            Assert.NotNull(SectionMaker.Make(plan, Workbench.Printer, new() { Joint = mended }).Value);
        }
    }

    [Fact]
    public void No_rib_stands_within_5_mm_of_a_joint_s_wall_and_no_bay_grows_past_the_pitch()
    {
        var plan = Workbench.Straight(600, change: s => s with
        {
            Ribs = new() { Pitch = 30, Thickness = 1.2, LongitudinalCount = 0 },
            Coping = s.Coping with { SlabLength = 12 }
        });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        double wall = 0.1 + 2;
        Assert.NotEmpty(set.Cuts);
        var across = set.Plan.Ribs.Where(r => r.Kind == RibKind.Transverse).ToArray();
        Assert.All(across, r => Assert.All(set.Cuts, c => Assert.True(Gap(r, c) >= wall + 5, $"{r.From} at {c}")));

        // A support is a rib, a joint's wall or an end wall.
        double[] supports = [.. across.Select(r => (r.From + r.To) / 2), .. set.Cuts, 200, 800];
        Array.Sort(supports);
        Assert.All(supports.Zip(supports.Skip(1)), p => Assert.InRange(p.Second - p.First, 0, 30 + 1e-6));

        static double Gap(PlanRib rib, double cut) => Math.Max(rib.From - cut, cut - rib.To);
    }

    [Theory]
    [InlineData(0.4, 0.5, true)]
    [InlineData(0.4, 0.6, false)]
    [InlineData(0.6, 0.9, true)]
    [InlineData(0.25, 0.5, false)]
    public void A_hole_narrower_than_two_lines_is_told_with_the_pin_and_the_nozzle_that_work(double nozzle, double pin, bool told)
    {
        // Holes are 0.2 wider than their pins.
        var plan = Workbench.Straight(150, change: s => s.With<FenceSpec>([new() { PinDiameter = pin }]));
        var findings = SectionMaker.Make(plan, Workbench.Printer with { Nozzle = nozzle }, new()).Findings.Where(f => f.Code == "PF6021").ToArray();
        Assert.Equal(told, findings.Length == 1);
        if (told)
        {
            Assert.Equal(("platform[0].fence.pin", Severity.Warning), (findings[0].Key, findings[0].Severity));
            double offered = double.Parse(findings[0].Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
            Assert.Equal((2 * nozzle) - 0.2, offered, 9);
        }
    }

    [Fact]
    public void An_upright_piece_is_relieved_at_its_foot_and_not_at_its_deck()
    {
        var set = Workbench.Made(Workbench.Straight(400), Workbench.Printer, new() { Pose = PrintPose.Upright, Engrave = false });
        var gauge = new Gauge(set.Sections[0]);
        double cut = set.Cuts[0];

        // Straight track along x with the platform on the left: from outside the joint, back into the first piece.
        double At(double z) => gauge.Feel(new(cut + 1, 45, z), new(-1, 0)) - 1;
        Assert.Equal(0.1 + 0.2, At(0.1), 0.01);
        Assert.Equal(0.1, At(1), 0.01);
        Assert.Equal(0.1, At(19.9), 0.01);
    }
}
