using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
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

    // The end's own wall, which runs out at an open back, lies along the end's line: nothing on it stops short of that.
    [Theory]
    [InlineData(WallFinish.Brick)]
    [InlineData(WallFinish.Stone)]
    [InlineData(WallFinish.Rubble)]
    [InlineData(WallFinish.Planks)]
    [InlineData(WallFinish.UprightPlanks)]
    [InlineData(WallFinish.Sleepers)]
    [InlineData(WallFinish.Panels)]
    [InlineData(WallFinish.Sheet)]
    public void Walls_of_skew_ends_that_run_out_at_an_open_back_are_sound(WallFinish finish)
    {
        foreach (double scale in new[] { 43.5, 76.2, 87 })
        {
            foreach (var side in new[] { Side.Left, Side.Right })
            {
                Assert.All(new[] { (25.0, -15.0), (-40, 40), (12.5, 30) }, skew => Assert.All(
                    new[] { false, true }, pipes => SoundAtOpenBack(new(scale), finish, side, skew, pipes)));
            }
        }
    }

    private static void SoundAtOpenBack(ModelScale scale, WallFinish finish, Side side, (double Start, double End) skew, bool pipes)
    {
        var plan = Workbench.Straight(160, side, s => s with
        {
            Skew = new() { Start = skew.Start, End = skew.End },
            Back = s.Back with { Kind = BackKind.Open },
            Deck = s.Deck with { Width = Width },
            Ribs = new() { Pitch = 30, LongitudinalCount = 1 },
            Facing = FacingSpec.For(scale) with
            {
                Front = finish,
                Ends = finish,
                Downpipes = pipes ? DownpipeSpec.For(scale) with { On = PierWalls.Front } : null,
            },
        });
        double way = side == Side.Left ? 1 : -1, back = plan.CopingFront.Reach[0] + Width;
        foreach (var section in Workbench.Made(plan, Workbench.Printer, new()).Sections)
        {
            SoundSection.Check(section, faced: true);
            Assert.InRange(section.Solid.Mesh.Vertices.Max(v => way * v.Y) - back, -1e-2, 1e-3);
        }
    }
}
