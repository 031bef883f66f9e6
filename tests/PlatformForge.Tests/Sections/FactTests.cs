using PlatformForge.Geometry;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Joints;
using PlatformForge.Sections.Marks;
using PlatformForge.Sections.Poses;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Layers;
using PlatformForge.Solids.Kernel;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>Printing facts against published figures.</summary>
public class FactTests
{
    [Fact]
    public void Filament_agrees_with_published_figures()
    {
        // fabbaloo.com 2018: a metre of 1.75 mm filament is 2.405 cm³; 11.4 cm³ of 2.85 mm filament is 178.7 cm.
        Assert.Equal(1, new FilamentSpec(Diameter: 1.75).Metres(2405.282), 5);
        Assert.Equal(1.78700, new FilamentSpec(Diameter: 2.85).Metres(11400), 4);

        // 6000 mm³ of PLA at 1.24 g/cm³ (computed); fabbaloo.com 2016: 750 g of density 1.20 are 625 cm³.
        Assert.Equal(7.440, new FilamentSpec().Grams(6000), 9);
        Assert.Equal(750, new FilamentSpec(Density: 1.20).Grams(625_000), 9);
    }

    [Fact]
    public void Fits_and_walls_are_the_published_ones()
    {
        var joint = new JointSpec();

        // Users of cut-filament dowels: hole 0.2 over the dowel, 0.5 deeper, mouth 0.4; 0.1 trimmed off each glued butt end.
        Assert.Equal(1.95, joint.BoreDiameter, 9);
        Assert.Equal((12 / 2.0) - 0.1 + 0.5, joint.BoreDepth, 9);
        Assert.Equal(0.4, joint.MouthChamfer);

        // printparams.com: least wall two lines, 0.8 for a 0.4 and 1.2 for a 0.6 nozzle.
        Assert.Equal(0.8, Workbench.Printer.LeastWall, 9);
        Assert.Equal(1.2, (Workbench.Printer with { Nozzle = 0.6 }).LeastWall, 9);
    }

    [Fact]
    public void An_estimate_costs_what_its_grams_cost()
    {
        var printer = Workbench.Printer with { Filament = new(Density: 1.25, PricePerKilogram: 20) };
        var estimate = PrintEstimate.Of(40_000, 36_000, 2, printer);
        Assert.Equal(45, estimate.Grams, 9);
        Assert.Equal(0.9, estimate.Cost!.Value, 9);
        Assert.Null(PrintEstimate.Of(1, 1, 1, Workbench.Printer).Cost);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_bore_takes_out_what_its_measures_say(double slot)
    {
        // A block of 20 x 20 x 10 with a bore into its end: an eight-sided prism with a mouth.
        var bore = new Bore(0, new(0, 10, 5), new(1, 0, 0), 2, 6, slot);
        Point2[] ring = [new(0, 0), new(20, 0), new(20, 20), new(0, 20)];
        var solid = SolidRaiser.Raise([new(ring, new(0), new(10), BlockAction.Add, Paint.Wall), .. BoreBlocks.Cut(bore, 0.4)]);
        double taken = 4000 - solid.ColumnVolume, section = (8 * Math.Tan(Math.PI / 8)) + (2 * slot);
        Assert.Equal(BoreBlocks.Volume(bore, 0.4), taken, 0.002);
        Assert.InRange(taken, section * 6, section * 6 * 1.1);
    }

    [Fact]
    public void A_dowel_too_large_for_the_end_is_told_with_the_largest_that_goes_in()
    {
        // Under a deck of 1.5 at 20 mm there are 18.5 mm: less two lines and the mouth on either side, and the fit.
        var plan = Workbench.Straight(400);
        var outcome = SectionMaker.Make(plan, Workbench.Printer, new() { Joint = new() { DowelDiameter = 17 } });
        Assert.Null(outcome.Value);
        var finding = Assert.Single(outcome.Findings, f => f.Code == "PF6005" && f.Message.Contains("baseboard", StringComparison.Ordinal));
        Assert.Equal(FaultKind.DesignRule, finding.Kind);
        double largest = 18.5 - 0.2 - (2 * (0.4 + 0.8));
        Assert.Contains(FormattableString.Invariant($"{largest:F2} mm"), finding.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain(JointRule.Check(JointPlace.At(new FacetedPlan(plan), 300, new()), new() { DowelDiameter = largest - 0.01 }, Workbench.Printer),
            f => f.Message.Contains("baseboard", StringComparison.Ordinal));
    }

    /// <summary>A dowel that goes in with a usual fit is not blamed, and neither is the platform, for a fit that is a slip; the largest fit told goes in, a
    /// hundredth more does not.</summary>
    [Fact]
    public void A_fit_that_is_too_large_is_told_as_the_fit()
    {
        var place = JointPlace.At(new FacetedPlan(Workbench.Straight(600)), 300, new());
        var finding = Assert.Single(JointRule.Check(place, new() { Fit = 20 }, Workbench.Printer));
        Assert.Equal(("PF6005", "joint.fit", "0.2"), (finding.Code, finding.Key, finding.Cure!.Value));
        double largest = double.Parse(System.Text.RegularExpressions.Regex.Match(finding.Remedy, @"([\d.]+) the largest").Groups[1].Value,
            System.Globalization.CultureInfo.InvariantCulture);
        Assert.Empty(JointRule.Check(place, new() { Fit = largest }, Workbench.Printer));
        Assert.Equal("joint.fit", Assert.Single(JointRule.Check(place, new() { Fit = largest + 0.011 }, Workbench.Printer)).Key);
    }

    [Fact]
    public void A_wall_under_two_lines_is_warned_of()
    {
        var plan = Workbench.Straight(150, change: s => s with { Walls = s.Walls with { BackThickness = 0.6 } });
        var outcome = SectionMaker.Make(plan, Workbench.Printer, new());
        var finding = Assert.Single(outcome.Findings, f => f.Code == "PF6004");
        Assert.Equal("platform[0].wall.back_thickness", finding.Key);
        Assert.Contains("0.80 mm", finding.Remedy, StringComparison.Ordinal);
        Assert.True(outcome.Succeeded);
    }

    [Fact]
    public void A_roof_between_walls_is_a_bridge_and_a_ledge_is_not_supported()
    {
        // A table 10 wide between two walls 2 thick and 10 high, with a ledge of 3 outside.
        static ColumnBlock Box(double x0, double x1, double z0, double z1) =>
            new([new(x0, 0), new(x1, 0), new(x1, 30), new(x0, 30)], new(z0), new(z1), BlockAction.Add, Paint.Wall);
        var mesh = SolidRaiser.Raise([Box(0, 2, 0, 10), Box(12, 14, 0, 10), Box(0, 17, 9, 11)]).Mesh;
        var report = OverhangMeter.Measure(mesh, 0.2, 0.4, 20);
        Assert.Equal(300, report.Bridged, 6);
        Assert.Equal(10, report.WidestBridge, 6);
        Assert.Equal(90, report.Unsupported, 6);
        Assert.Equal(390, OverhangMeter.Measure(mesh, 0.2, 0.4, 8).Unsupported, 6);
    }

    /// <summary>Printing guides put the limit of what holds itself at "about 45 degrees" from the upright (common practice); a chamfer of 45 that lies on a
    /// slope of 2 is let through.</summary>
    [Theory]
    [InlineData(20, false)]
    [InlineData(40, false)]
    [InlineData(45, false)]
    [InlineData(46.5, false)]
    [InlineData(47.5, true)]
    [InlineData(55, true)]
    [InlineData(80, true)]
    public void A_face_that_leans_out_hangs_when_it_is_flatter_than_about_45_degrees(double degrees, bool hangs)
    {
        // A bar whose side leans out over the bed by so much from the upright, 6 high and 30 long: the leaning face is 6 over the cosine wide.
        double lean = Math.Tan(degrees * Math.PI / 180);
        ColumnBlock[] blocks = [new([new(0, 0), new(10, 0), new(10, 30), new(0, 30)], new(0), new(7), BlockAction.Add, Paint.Wall),
            new([new(10, 0), new(10 + (6 * lean), 0), new(10 + (6 * lean), 30), new(10, 30)], new(-10 / lean, 1 / lean), new(7), BlockAction.Add, Paint.Wall)];
        var report = OverhangMeter.Measure(SolidRaiser.Raise(blocks).Mesh, 0.2, 0.4, 1);
        Assert.Equal(hangs ? 30 * 6 / Math.Cos(degrees * Math.PI / 180) : 0, report.Unsupported + report.Bridged, 30 * 1e-4); // the grid of plans is 1/32768 mm
    }

    [Fact]
    public void Every_letter_and_figure_has_a_drawing_of_its_own()
    {
        const string all = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789ÄÉÑÇ&!?()#→↑";
        var drawings = all.Select(c => string.Join(";", EngravedLetters.Strokes(c.ToString()).Select(r => string.Join(",", r)))).ToArray();
        Assert.All(drawings, d => Assert.NotEmpty(d));
        Assert.Equal(all.Length, drawings.Distinct(StringComparer.Ordinal).Count());
        Assert.All(all, c => Assert.All(EngravedLetters.Strokes(c.ToString()), r => Assert.True(ConvexRing.Area(r) > 0)));
    }

    [Theory]
    [InlineData("Brückwald & Söhne (Nord)", "Brückwald & Söhne (Nord)", "")]
    [InlineData("Łódź #2", "Lódz #2", "")]
    [InlineData("Straße", "Strasse", "")]
    [InlineData("駅 7", "7", "駅")]
    public void A_name_is_engraved_in_its_own_letters_else_in_plain_ones_and_what_neither_has_is_told(string name, string engraved, string left)
    {
        Assert.Equal(engraved, Engraving.Drawable(name), StringComparer.OrdinalIgnoreCase);
        Assert.Equal(left, string.Concat(Engraving.LeftOut(name)));
    }

    [Fact]
    public void No_stroke_of_a_letter_is_cut_twice_or_is_nothing()
    {
        foreach (char letter in "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789ÄÉÇ&→↑@%½")
        {
            var bars = EngravedLetters.Strokes(letter.ToString()).ToArray();
            Assert.Equal(bars.Length, bars.Select(b => string.Join(';', b)).Distinct(StringComparer.Ordinal).Count());
            Assert.All(bars, b => Assert.True(ConvexRing.Area(b) > EngravedLetters.StrokeWidth * EngravedLetters.StrokeWidth));
            var (low, high) = EngravedLetters.Reach(letter.ToString());
            Assert.All(bars.SelectMany(b => b), p => Assert.InRange(p.Y, low - EngravedLetters.StrokeWidth, high + EngravedLetters.StrokeWidth));
        }
    }

    [Fact]
    public void Lettering_is_read_from_below_and_its_arrow_leads_up_the_chainage()
    {
        // Straight track along x, platform on the left: from below, with x to the right, y runs down the page.
        var chart = new FacetedPlan(Workbench.Straight(150));
        var blocks = Engraving.Of(chart, 205, 345, 1, 1, "", new(), Workbench.Printer).Removed;
        var strokes = blocks.Select(b => b.Outline.Select(p => new Point2(p.X, -p.Y)).ToArray()).ToArray();
        double left = strokes.Min(r => r.Min(p => p.X)), bottom = strokes.Min(r => r.Min(p => p.Y)), unit = 7 / EngravedLetters.CapHeight;

        // Each stroke of the plain writing "1/1→" must be found again, moved to where the writing begins.
        var plain = EngravedLetters.Strokes("1/1→").ToArray();
        double left0 = plain.Min(r => r.Min(p => p.X)), bottom0 = plain.Min(r => r.Min(p => p.Y));
        Assert.Equal(plain.Length, strokes.Length);
        foreach (var stroke in plain)
        {
            Point2[] there = [.. stroke.Select(p => new Point2(left + ((p.X - left0) * unit), bottom + ((p.Y - bottom0) * unit)))];
            Assert.Contains(strokes, r => there.All(p => r.Any(q => (p - q).Length < 1e-6)));
        }
    }

    [Fact]
    public void A_deck_too_thin_for_lettering_is_left_whole()
    {
        Assert.Equal(0.4, Engraving.DepthIn(1.5, new(), Workbench.Printer), 9);
        Assert.Equal(0.3, Engraving.DepthIn(1.1, new(), Workbench.Printer), 9);
        Assert.Equal(0, Engraving.DepthIn(0.9, new(), Workbench.Printer));
    }
}
