using PlatformForge.Geometry;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Runs;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Projects;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>Sample Gullerby, whose joint between baseboards lies askew under its ramp.</summary>
public class SkewRampSampleTests
{
    /// <summary>Both faces of the joint by the triangles of the sections: the track has turned right by 300 mm of a radius of 1800, and the joint lies 20
    /// degrees off the square to it, its back farther on.</summary>
    [Fact]
    public void The_joint_on_the_ramp_is_cut_at_its_angle_and_the_sections_lie_deck_down()
    {
        var design = DesignRun.Design(Samples.Sound(PresetShelf.Sample("gullerby")!), Samples.Known);
        Assert.DoesNotContain(design.Findings, f => f.Severity == Severity.Error);
        var set = design.Value!.Platforms[0].Sections;
        Assert.True(set.Plan.Profile.EndHead < 690, "the cut lies on the ramp");
        double heading = -300.0 / 1800, askew = 20 * Math.PI / 180;
        foreach (var (section, outward) in new[] { (set.Sections.Single(s => s.To == 690), 1), (set.Sections.Single(s => s.From == 690), -1) })
        {
            Assert.InRange(Area(section.Solid.Mesh, Point2.FromAngle(heading - askew) * outward), 50, 1000);
            SoundSection.Check(section);
            Assert.Equal(PrintPose.DeckDown, section.Pose);
        }
    }

    // Area of the upright triangles that look in a direction, mm².
    private static double Area(Mesh mesh, Point2 outward)
    {
        double area = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            var normal = Point3.Cross(b - a, c - a);
            area += Point3.Dot(normal, new(outward.X, outward.Y, 0)) > 0.99999 * normal.Length ? normal.Length / 2 : 0;
        }

        return area;
    }
}
