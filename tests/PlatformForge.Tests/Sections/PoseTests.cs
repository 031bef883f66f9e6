using PlatformForge.Geometry;
using PlatformForge.Sections;
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

    [Fact]
    public void A_piece_that_is_part_ramp_part_level_stands_upright_and_says_why()
    {
        // With no place for a cut at the head of the ramp no one face is flat.
        var plan = Workbench.Straight(150, change: s => s with { StartRamp = new(Length: 60) });
        var outcome = SectionMaker.Make(plan with { CutCandidates = [] }, Workbench.Printer, new());
        var section = Assert.Single(outcome.Value!.Sections);
        Assert.Equal(PrintPose.Upright, section.Pose);
        Assert.Contains(outcome.Findings, f => f.Code == "PF6009" && f.Message.Contains("upright", StringComparison.Ordinal) && f.Remedy.Contains("260.0 mm", StringComparison.Ordinal));
        Assert.Contains(outcome.Findings, f => f.Code == "PF6007" && f.Severity == Severity.Warning);
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
