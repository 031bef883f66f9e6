using PlatformForge.Masonry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Projects;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>What of a facing is not stated yields to the nozzle; what is stated stays as it is, and is told.</summary>
public class NozzleRoomTests
{
    /// <summary>Undersides wider than a line hang free (common practice, no source), so none is made unasked, and nothing is told; layers are half a nozzle
    /// high, or a quarter of a course of bricks of 75 mm (BS EN 771 work size with joints of 10) where that is less.</summary>
    [Theory]
    [InlineData(22.5, 0.2)]
    [InlineData(43.5, 0.2)]
    [InlineData(76.2, 0.2)]
    [InlineData(87, 0.25)]
    [InlineData(76.2, 0.25)]
    [InlineData(120, 0.2)]
    [InlineData(43.5, 0.6)]
    public void Joints_plinths_and_recesses_that_are_not_stated_print_and_nothing_is_told(double ratio, double nozzle)
    {
        var scale = new ModelScale(ratio);
        var printer = Workbench.Printer with { Nozzle = nozzle, Layer = Math.Min(nozzle / 2, 75 / ratio / 4) };

        // In the largest scale this wall is lower than the sill of an opening for cables.
        OpeningSpec[] openings = ratio < 40 ? [] : [OpeningSpec.For(scale) with { Kind = OpeningKind.Cable }];
        var facing = FacingSpec.For(scale) with { Plinth = PlinthSpec.For(scale), Openings = openings };
        var told = Told(facing, printer);
        Assert.DoesNotContain(told, f => f.Code is "PF5030" or "PF5035" or "PF5055" or "PF5052");
    }

    [Fact]
    public void What_is_stated_stays_and_is_told()
    {
        var scale = new ModelScale(76.2);
        var printer = Workbench.Printer with { Nozzle = 0.25, Layer = 0.12 };
        var facing = FacingSpec.For(scale) with { Depth = 0.3, Plinth = PlinthSpec.For(scale) with { Steps = 1 } };
        Assert.Equal(facing.Depth, facing.Printed(0.25, 1.6, 1.6).Depth);
        Assert.Equal(["PF5035", "PF5055"], Told(facing, printer).Select(f => f.Code).Where(c => c is "PF5035" or "PF5055").Order());
    }

    [Theory]
    [InlineData("0.2", "facing = {}", 0.2)]
    [InlineData("0.4", "facing = {}", 0.262)]
    [InlineData("0.2", "facing = { depth = 0.3 }", 0.3)]
    public void A_project_that_is_read_has_joints_for_its_nozzle(string nozzle, string facing, double depth)
    {
        string text = Samples.Small + facing + "\n[printer]\nbed = [220, 220]\nnozzle = " + nozzle + "\n";
        var read = Samples.Read(text);
        Assert.True(read.Succeeded, string.Join("; ", read.Findings.Select(f => f.Key + " " + f.Message)));
        Assert.Equal(depth, read.Value!.Platforms[0].Facing!.Depth, 5e-4);
    }

    /// <summary>Slicers print whole layers, and through one the deck's colour shows (common practice, no source): unasked an inlay is two.</summary>
    [Theory]
    [InlineData("0.12", "form = \"inlay\"", 0.24)]
    [InlineData("0.3", "form = \"inlay\"", 0.6)]
    [InlineData("0.12", "form = \"inlay\", depth = 0.36", 0.36)]
    [InlineData("0.12", "form = \"strip\"", 0.4)]
    public void An_inlay_whose_depth_is_not_stated_is_two_layers_of_the_printer_deep(string layer, string line, double depth)
    {
        var spec = Samples.Sound(Samples.Small + "line = { " + line + " }\n[printer]\nbed = [220, 220]\nlayer = " + layer + "\n");
        var asked = spec.Platforms[0].WhiteLine!;
        Assert.Equal(depth, asked.Depth, 1e-9);
        var plan = Workbench.Straight(150, Side.Left, s => s with { WhiteLine = asked });
        Assert.DoesNotContain(SectionMaker.Make(plan, spec.Printer, spec.Sections).Findings, f => f.Code is "PF5043" or "PF5044");
    }

    /// <summary>Two lines are the least wall, and a line the widest ledge that holds itself (common practice, no source): what is so thin or so wide by
    /// default is not told, but made otherwise.</summary>
    [Theory]
    [InlineData(43.5, 0.6)]
    [InlineData(43.5, 0.8)]
    [InlineData(76.2, 0.6)]
    [InlineData(76.2, 0.8)]
    [InlineData(87, 0.6)]
    [InlineData(87, 0.8)]
    [InlineData(22.5, 0.4)]
    [InlineData(148, 0.4)]
    public void Walls_ribs_pavings_and_pipes_that_are_not_stated_print_and_nothing_is_told(double ratio, double nozzle)
    {
        var scale = new ModelScale(ratio);
        var printer = Workbench.Printer with { Nozzle = nozzle, Layer = 0.2 };
        var facing = FacingSpec.For(scale) with
        {
            Front = WallFinish.Brick,
            Piers = PierSpec.For(scale),
            Downpipes = DownpipeSpec.For(scale),
            Openings = [OpeningSpec.For(scale) with { Kind = OpeningKind.Weep }],
        };
        foreach (var kind in Enum.GetValues<PavingKind>())
        {
            PlatformSpec Asked(PlatformSpec s) => (s with
            {
                Walls = new(),
                Ribs = new(),
                Deck = new() { Width = s.Deck.Width, Paving = PavingSpec.For(scale) with { Kind = kind } },
                Tactile = TactileSpec.For(scale),
                Facing = facing,
                Features = [new FenceSpec()],
            }).Seated.Printed(nozzle);
            string[] codes = [.. SectionMaker.Make(Workbench.Straight(150, Side.Left, Asked), printer, new()).Findings.Select(f => f.Code)];
            Assert.DoesNotContain(codes, c => c is "PF6004" or "PF6021" or "PF5030" or "PF5038" or "PF5040" or "PF5045" or "PF5050" or "PF5053" or "PF6080"
                or "PF6081");
        }
    }

    /// <summary>The same that a user states is told, each under its own key.</summary>
    [Fact]
    public void Walls_ribs_and_pavings_that_are_stated_stay_and_are_told()
    {
        const string asked = "deck = { thickness = 1.5, paving = { depth = 0.3 } }\nwall = { front_thickness = 1.2 }\nribs = { thickness = 1.2 }\n"
            + "[printer]\nbed = [220, 220]\nnozzle = 0.8\n";
        var spec = Samples.Sound(Samples.Small + asked);
        var platform = spec.Platforms[0];
        Assert.Equal((1.2, 1.6, 1.2, 1.6), (platform.Walls.FrontThickness, platform.Walls.BackThickness, platform.Ribs.Thickness,
            platform.Ribs.LongitudinalThickness));
        var plan = Workbench.Straight(150, Side.Left, s => s with { Deck = platform.Deck, Walls = platform.Walls, Ribs = platform.Ribs });
        var told = SectionMaker.Make(plan, spec.Printer, spec.Sections).Findings;
        string key = plan.Spec.Key;
        Assert.Equal([key + ".deck.paving.depth", key + ".ribs.thickness", key + ".wall.front_thickness"],
            told.Where(f => f.Code is "PF6004" or "PF5040").Select(f => f.Key).Order(StringComparer.Ordinal));
    }

    /// <summary>A deck as thick as two lines has no room for joints; the thickness that is advised has it.</summary>
    [Fact]
    public void A_deck_too_thin_for_joints_that_nobody_stated_is_told_by_its_own_key()
    {
        const string printer = "[printer]\nbed = [220, 220]\nnozzle = 0.8\n";
        IReadOnlyList<Finding> Told(string deck)
        {
            var spec = Samples.Sound(Samples.Small + deck + printer);
            var plan = Workbench.Straight(150, Side.Left, s => s with { Deck = spec.Platforms[0].Deck });
            return [.. SectionMaker.Make(plan, spec.Printer, spec.Sections).Findings.Where(f => f.Code == "PF5040")];
        }

        var found = Assert.Single(Told("deck = { thickness = 1.6, paving = {} }\n"));
        Assert.EndsWith(".deck.thickness", found.Key, StringComparison.Ordinal);
        Assert.Contains("1.9 mm thick", found.Remedy, StringComparison.Ordinal);
        Assert.Empty(Told("deck = { thickness = 1.9, paving = {} }\n"));
        Assert.Empty(Told("deck = { paving = {} }\n"));
    }

    private static IReadOnlyList<Finding> Told(FacingSpec facing, PrinterSpec printer)
    {
        PlatformSpec Printed(PlatformSpec s) =>
            (s with { Walls = s.Walls with { FrontThickness = 1.6, BackThickness = 1.6, EndThickness = 1.6 }, Facing = facing }).Printed(printer.Nozzle);
        var plan = Workbench.Straight(150, Side.Left, Printed);
        return SectionMaker.Make(plan, printer, new()).Findings;
    }
}
