using PlatformForge.Geometry;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Sections;

/// <summary>How pieces stand on the bed when it is not the usual way.</summary>
public class PoseTests
{
    [Fact]
    public void An_upright_piece_stands_as_on_the_layout_and_tells_its_bridges()
    {
        var section = Assert.Single(Workbench.Made(Workbench.Straight(180), Workbench.Printer, new() { Pose = PrintPose.Upright }).Sections);
        Assert.Equal(PrintPose.Upright, section.Pose);
        Assert.Equal(20, section.Size.Z, 9);
        var up = section.ToLayout.Apply(new(0, 0, 1)) - section.ToLayout.Apply(default);
        Assert.Equal(1, up.Z, 12);

        // The deck hangs over one hollow wider than a bridge, and the coping over nothing.
        Assert.True(section.Overhangs.Unsupported > 170 * 50);
    }

    /// <summary>A seat of half the deck leaves too little of it to lie on: the section and its platform are named, and what turned it.</summary>
    [Fact]
    public void A_piece_that_a_wide_recess_turns_upright_names_it_and_its_platform()
    {
        var plan = Workbench.Straight(120, change: s => s.With<SocketSpec>([new(260, 22) { Along = 92, Across = 40, Depth = 0.5, Name = "building" }]));
        var outcome = SectionMaker.Make(plan, Workbench.Printer, new());
        Assert.Equal(PrintPose.Upright, Assert.Single(outcome.Value!.Sections).Pose);
        string told = Assert.Single(outcome.Findings, f => f.Code == "PF6007").Message;
        Assert.StartsWith("straight 1 of 1 has", told, StringComparison.Ordinal);
        Assert.Contains("upright because of the building at chainage 260 mm;", told, StringComparison.Ordinal);
    }

    [Fact]
    public void A_piece_that_is_part_ramp_part_level_stands_upright_and_says_why()
    {
        // With no place for a cut at the head of the ramp no one face is flat.
        var plan = Workbench.Straight(150, change: s => s with { StartRamp = new(Length: 60) });
        var outcome = SectionMaker.Make(plan with { CutCandidates = [] }, Workbench.Printer, new());
        var section = Assert.Single(outcome.Value!.Sections);
        Assert.Equal(PrintPose.Upright, section.Pose);
        Assert.Contains(outcome.Findings, f => f.Code == "PF6009" && f.Message.Contains("upright", StringComparison.Ordinal)
            && f.Remedy.Contains("260 mm", StringComparison.Ordinal));
        Assert.Contains(outcome.Findings, f => f.Code == "PF6007" && f.Severity == Severity.Warning);
    }

    [Fact]
    public void A_piece_that_is_part_ramp_part_level_offers_cuts_that_let_it_lie_flat()
    {
        // So short that it goes on the bed as one piece, which costs fewer pieces than two cuts.
        static PlatformForge.Platforms.Plans.PlatformPlan Planned(double[] cuts) =>
            Workbench.Straight(180, change: s => s with { StartRamp = new(Length: 60), EndRamp = new(Length: 60), ForcedCuts = cuts });
        var outcome = SectionMaker.Make(Planned([]), Workbench.Printer, new());
        var finding = Assert.Single(outcome.Findings, f => f.Code == "PF6009");
        Assert.Equal(("platform[0].cuts", "[260, 320]"), (finding.Cure!.Key, finding.Cure.Value));
        Assert.Contains("[260, 320]", finding.Remedy, StringComparison.Ordinal);
        Assert.Contains("chainage", Assert.Single(outcome.Findings, f => f.Code == "PF6007").Message, StringComparison.Ordinal);

        var mended = SectionMaker.Make(Planned([260, 320]), Workbench.Printer, new());
        Assert.DoesNotContain(mended.Findings, f => f.Code is "PF6007" or "PF6009");
        Assert.All(mended.Value!.Sections, s => Assert.Equal(PrintPose.DeckDown, s.Pose));
    }

    [Fact]
    public void A_piece_that_stands_deck_down_by_order_is_not_told_to_stand_upright()
    {
        var plan = Workbench.Straight(150, change: s => s with { StartRamp = new(Length: 60) });
        var outcome = SectionMaker.Make(plan with { CutCandidates = [] }, Workbench.Printer, new() { Pose = PrintPose.DeckDown });
        Assert.DoesNotContain("upright", Assert.Single(outcome.Findings, f => f.Code == "PF6009").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_platform_wider_than_its_bed_is_told_which_width_and_which_bed_would_halve_its_sections()
    {
        var printer = PrinterSpec.Oblong(220, 220, 250);
        static PlatformForge.Platforms.Plans.PlatformPlan Wide(double width) =>
            Workbench.Straight(600, change: s => s with { Deck = s.Deck with { Width = width }, Coping = s.Coping with { SlabLength = 12 } });
        var outcome = SectionMaker.Make(Wide(235), printer, new());
        var finding = Assert.Single(outcome.Findings, f => f.Code == "PF6040");
        int count = outcome.Value!.Sections.Count;
        Assert.Contains($"that makes {count} sections", finding.Message, StringComparison.Ordinal);
        double width = double.Parse(finding.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(width, 60, 234);
        Assert.InRange(Workbench.Made(Wide(width), printer, new()).Sections.Count, 1, (count + 1) / 2);
        Assert.True(Workbench.Made(Wide(width + 1), printer, new()).Sections.Count > (count + 1) / 2);

        string[] bed = finding.Remedy.Split("a bed of ")[1].Split(' ');
        double side = double.Parse(bed[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(bed[0], bed[2]); // a square bed stays square
        Assert.InRange(Workbench.Made(Wide(235), PrinterSpec.Oblong(side, side, 250), new()).Sections.Count, 1, (count + 1) / 2);
    }

    [Fact]
    public void A_level_straight_piece_lies_with_its_whole_deck_on_the_bed()
    {
        var section = Assert.Single(Workbench.Made(Workbench.Straight(180), Workbench.Printer, new()).Sections);
        var mesh = section.PrintMesh();
        double lying = 0;
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[i]], b = mesh.Vertices[mesh.Triangles[i + 1]], c = mesh.Vertices[mesh.Triangles[i + 2]];
            lying += Math.Max(a.Z, Math.Max(b.Z, c.Z)) < 1e-9 ? -Point3.Cross(b - a, c - a).Z / 2 : 0;
        }

        Assert.Equal(180 * 60, lying, 1e-3);
        Assert.Equal(0, section.Overhangs.Lift, 9);
    }

    [Fact]
    public void Plain_butted_ends_have_walls_and_trim_but_no_bores()
    {
        var set = Workbench.Made(Workbench.Straight(400), Workbench.Printer, new() { Joint = new() { Kind = JointKind.None } });
        Assert.NotEmpty(set.Cuts);
        Assert.Empty(set.Dowels);
        Assert.All(set.Sections, s => Assert.Empty(s.Bores));
        Assert.All(set.Sections, s => Assert.Equal(0, s.Volumes.Bores));

        // By hand: a slice of 0.1 through two slabs and two walls; 2 mm of wall between front wall and back wall under the deck.
        double slice = (59 * 1.5) + (1 * 1.2) + (2 * 1.625 * 18.5), wall = 2 * (59 - (2 * 1.625)) * 18.5;
        Assert.Equal(0.1 * slice, set.Sections[0].Volumes.Trim, 0.1 * slice * 1e-3);
        Assert.Equal(wall, set.Sections[0].Volumes.EndWalls, wall * 1e-4);
    }
}
