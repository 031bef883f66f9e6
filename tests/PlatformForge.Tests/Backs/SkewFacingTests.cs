using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Sections;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Backs;

/// <summary>What is laid on walls stays on its own side of a cut on the skew, and of the plane of a skew end.</summary>
public class SkewFacingTests
{
    private const double Width = 32, At = 340, Trim = 0.1;

    [Theory]
    [InlineData(Side.Left, 40, WallFinish.Brick)]
    [InlineData(Side.Left, -40, WallFinish.Brick)]
    [InlineData(Side.Right, 25, WallFinish.Stone)]
    [InlineData(Side.Right, -25, WallFinish.Rubble)]
    [InlineData(Side.Left, 30, WallFinish.Sleepers)]
    public void Nothing_on_a_wall_stands_beyond_its_sections_end_face(Side side, double angle, WallFinish finish)
    {
        var plan = Workbench.Straight(300, side, s => s with
        {
            Skew = new() { Start = angle / 2, Cuts = [new() { At = At, Angle = angle }] },
            Deck = s.Deck with { Width = Width },
            Ribs = new() { Pitch = 30, LongitudinalCount = 1 },
            BaseboardJoints = [At],
            Facing = FacingSpec.For(new(76.2)) with { Front = finish, Back = finish, Ends = finish },
        });
        var set = Workbench.Made(plan, Workbench.Printer, new() { Joint = new() { EndTrim = Trim } });
        Assert.All(set.Sections, SoundSection.Check);
        double way = side == Side.Left ? 1 : -1, front = plan.CopingFront.Reach[0];
        double Beyond(PlatformSection section, double at, double askew, double ahead)
        {
            double radians = askew * Math.PI / 180;
            Point3 normal = new(ahead * Math.Cos(radians), -ahead * way * Math.Sin(radians), 0), on = new(at, way * front, 0);
            return section.Solid.Mesh.Vertices.Max(v => Point3.Dot(v - on, normal));
        }

        foreach (var section in set.Sections)
        {
            if (Math.Abs(section.To - At) < 1e-6)
            {
                Assert.InRange(Beyond(section, At - Trim, angle, 1), -1e-3, 1e-3);
            }

            if (Math.Abs(section.From - At) < 1e-6)
            {
                Assert.InRange(Beyond(section, At + Trim, angle, -1), -1e-3, 1e-3);
            }
        }
    }
}
