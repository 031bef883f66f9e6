using System.Globalization;
using System.Text.RegularExpressions;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections;
using PlatformForge.Sections.Cuts;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Where platforms are cut.</summary>
public class CutTests
{
    // Bed and pieces: 1800 mm on a 256 bed with 10 mm margin per axis needs 8 pieces of 225, on a 220 bed 9 of 200 (computed from published
    // bed sizes). The platform is as wide as the bed nearly is, so that a piece cannot gain by lying askew.
    [Theory]
    [InlineData(256, 240, 25, 8, 225)]
    [InlineData(220, 205, 25, 9, 200)]
    public void A_long_platform_is_shared_out_evenly_over_the_fewest_beds(double bed, double width, double slab, int count, double length)
    {
        var plan = Workbench.Straight(1800, change: s => s with { Deck = s.Deck with { Width = width }, Coping = s.Coping with { SlabLength = slab } });
        var ends = Choose(plan, PrinterSpec.Oblong(bed, bed, 250) with { Margin = 5 });
        Assert.Equal(count, ends.Length - 1);
        Assert.All(ends.Zip(ends.Skip(1)), pair => Assert.Equal(length, pair.Second - pair.First, 6));
    }

    [Fact]
    public void A_narrow_platform_gains_by_lying_askew()
    {
        // A strip l by w lies across a square b where l + w ≤ b√2: 60 mm wide on 204 takes 228.5 mm, nine slabs of 25.
        var plan = Workbench.Straight(1800);
        Assert.Equal(8, Choose(plan, Workbench.Printer).Length - 1);
        Assert.Equal(9, Choose(plan, Workbench.Printer with { Margin = 12 }).Length - 1);
    }

    [Fact]
    public void A_ramp_is_cut_off_at_its_head_when_that_costs_no_piece_too_many()
    {
        var plan = Workbench.Straight(400, change: s => s with { StartRamp = new(Gradient: 8) });
        var ends = Choose(plan, Workbench.Printer);
        Assert.Equal([200, 296], ends[..2], (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(4, ends.Length);
    }

    // Half a dowel of 12, 0.5 of allowance and a wall of 0.8 behind the bore reach 7.3 mm from the cut.
    [Theory]
    [InlineData(3.5, 1)]
    [InlineData(7, 1)]
    [InlineData(7.5, 2)]
    public void A_ramp_is_cut_off_at_its_head_only_where_the_level_deck_has_room_for_the_joint(double level, int count)
    {
        var plan = Workbench.Straight(96 + level, change: s => s with { StartRamp = new(Gradient: 8) });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.Equal(count, set.Sections.Count);
        Assert.All(set.Sections, s => Assert.InRange(s.Solid.Mesh.Box().High.X, s.From, s.To + 1e-6));
        Assert.All(set.Sections, s => Assert.InRange(s.Solid.Mesh.Box().Low.X, s.From - 1e-6, s.To));
    }

    [Fact]
    public void Sections_too_short_for_their_joints_are_told_with_the_dowel_that_goes_in()
    {
        // Two joints share 12 mm: 6 hold half a dowel of 9.4, 0.5 of allowance and 0.8 of wall.
        var plan = Workbench.Straight(60, change: s => s with { Coping = s.Coping with { SlabLength = 12 } });
        Outcome<SectionSet> With(double dowel) =>
            SectionMaker.Make(plan, Workbench.Printer, new() { LongestSection = 12, Joint = new() { DowelLength = dowel } });
        var findings = With(12).Findings;
        Assert.Equal(3, findings.Count(f => f is { Code: "PF6011", Kind: FaultKind.DesignRule }
            && f.Remedy.Contains("dowels 9.4 mm", StringComparison.Ordinal)));
        Assert.NotNull(With(9.4).Value);
        Assert.Null(With(9.5).Value);
    }

    [Fact]
    public void Upright_prints_take_no_notice_of_ramp_heads()
    {
        var plan = Workbench.Straight(200, change: s => s with { StartRamp = new(Gradient: 8) });
        Assert.Equal(3, Choose(plan, Workbench.Printer).Length);
        Assert.Equal(2, Choose(plan, Workbench.Printer, new() { Pose = PrintPose.Upright }).Length);
    }

    [Fact]
    public void A_cut_that_is_asked_for_keeps_its_dowels_and_a_joint_in_the_baseboard_has_none()
    {
        var plan = Workbench.Straight(300, change: s => s with { ForcedCuts = [260], BaseboardJoints = [410] });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.Contains(260.0, set.Cuts);
        Assert.Contains(410.0, set.Cuts);
        Assert.Equal(4, set.Sections.SelectMany(s => s.Bores).Count(b => b.Chainage == 260)); // two in each face
        Assert.DoesNotContain(set.Sections.SelectMany(s => s.Bores), b => b.Chainage == 410);
        Assert.Equal(2 * (set.Cuts.Count - 1), set.Dowels.Sum(d => d.Count));
    }

    [Fact]
    public void A_wish_for_short_sections_is_followed()
    {
        var ends = Choose(Workbench.Straight(600), Workbench.Printer, new() { LongestSection = 110 });
        Assert.All(ends.Zip(ends.Skip(1)), pair => Assert.InRange(pair.Second - pair.First, 0, 110));
    }

    [Theory]
    [InlineData(250, 100, "across")]
    [InlineData(60, 300, "along")]
    public void A_bed_too_small_for_any_cut_is_told_with_what_works(double width, double slab, string side)
    {
        var plan = Workbench.Straight(900, change: s => s with { Deck = s.Deck with { Width = width }, Coping = s.Coping with { SlabLength = slab } });
        var outcome = new CutChooser(new FacetedPlan(plan), Workbench.Printer, new()).Choose();
        Assert.Null(outcome.Value);
        Assert.All(outcome.Findings, f => Assert.Equal(("PF6001", FaultKind.DesignRule), (f.Code, f.Kind)));
        if (side == "across")
        {
            // 250 by 100 on 204 of bed lies best across the corners: 350/√2 - 204 = 43.5 are missing. Square to the bed 204 by 100 fits.
            Assert.Contains("43.5 mm too large", outcome.Findings[0].Message, StringComparison.Ordinal);
            Assert.Contains("204.0 mm", outcome.Findings[0].Remedy, StringComparison.Ordinal);
        }
        else
        {
            // 60 wide across the diagonal of 204: 204√2 - 60 = 228.5.
            Assert.Contains("228.5 mm", outcome.Findings[0].Remedy, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_print_too_tall_is_told_with_the_height_that_works()
    {
        var outcome = new CutChooser(new FacetedPlan(Workbench.Straight(300)), PrinterSpec.Oblong(220, 220, 15), new()).Choose();
        Assert.Contains(outcome.Findings, f => f.Code == "PF6002" && f.Message.Contains("20.0 mm high", StringComparison.Ordinal)
            && f.Remedy.Contains("by 5 mm", StringComparison.Ordinal) && f.Remedy.Contains("20 mm (height)", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(60, 12, 40, 40)]
    [InlineData(250, 100, 200, 180)]
    [InlineData(35, 300, 100, 220)]
    public void The_bed_that_is_named_works_and_one_a_little_smaller_does_not(double width, double slab, double bedWidth, double bedDepth)
    {
        var plan =
            new FacetedPlan(Workbench.Straight(900, change: s => s with
            {
                Deck = s.Deck with { Width = width },
                Coping = s.Coping with { SlabLength = slab }
            }));
        Outcome<double[]> On(double across, double deep) => new CutChooser(plan, PrinterSpec.Oblong(across, deep, 250), new()).Choose();
        var finding = Assert.Single(On(bedWidth, bedDepth).Findings);
        Assert.Equal("PF6001", finding.Code);
        var named = Regex.Match(finding.Remedy, @"measures ([\d.]+) by ([\d.]+) mm");
        double w = double.Parse(named.Groups[1].Value, CultureInfo.InvariantCulture), d = double.Parse(named.Groups[2].Value, CultureInfo.InvariantCulture);
        Assert.NotNull(On(w, d).Value);
        Assert.Null(On(w - 0.2, d - 0.2).Value);
    }

    private static double[] Choose(PlatformPlan plan, PrinterSpec printer, SectionSpec? spec = null)
    {
        var outcome = new CutChooser(new FacetedPlan(plan), printer, spec ?? new()).Choose();
        Assert.True(outcome.Succeeded, string.Join("; ", outcome.Findings.Select(f => f.Message)));
        return outcome.Value!;
    }

    /// <summary>
    /// A deck 180 wide lies across a bed of 200 by 150, so that sections are as long as the bed is deep: five or more for 600 mm. The bed that is offered
    /// takes half as many, and one that is 3 mm smaller does not.
    /// </summary>
    [Fact]
    public void A_deck_wider_than_its_sections_are_long_is_told_the_bed_that_halves_them()
    {
        var plan = Workbench.Straight(600, change: s => s with { Deck = s.Deck with { Width = 180 } });
        SectionSet With(double across, double deep) => SectionMaker.Make(plan, PrinterSpec.Oblong(across, deep, 250), new()).Value!;
        var made = SectionMaker.Make(plan, PrinterSpec.Oblong(200, 150, 250), new());
        int count = made.Value!.Sections.Count;
        Assert.True(count > 3);
        var told = Assert.Single(made.Findings, f => f.Remedy.Contains("a bed of", StringComparison.Ordinal));
        double[] bed = [.. Regex.Match(told.Remedy, @"a bed of (\d+(?:\.\d)?) by (\d+(?:\.\d)?)").Groups.Values.Skip(1)
            .Select(g => double.Parse(g.Value, CultureInfo.InvariantCulture))];
        Assert.Equal(50, bed[0] - bed[1], 1e-6);
        Assert.True(With(bed[0], bed[1]).Sections.Count <= (count + 1) / 2);
        Assert.True(With(bed[0] - 3, bed[1] - 3).Sections.Count > (count + 1) / 2);
    }
}
