using PlatformForge.Masonry;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Top courses under level edges that lie lower than the front's: the back where the deck falls to it, and the end wall at a ramp's foot.</summary>
public class TopCourseTests
{
    // What a fall of 1 in 39 takes off half of the longest stone, a share of a course, and numbers, mm.
    private const double Near = 0.05;

    /// <summary>By the mesh: of no course is less than half left there, whatever the fall and the foot; a brick is split in two at most (common practice, no
    /// source). Sizes: 75 mm with a joint of 10, BS EN 771 work size, at 1:76.2.</summary>
    [Fact]
    public void No_sliver_lies_under_a_level_edge() => Assert.All(Enumerable.Range(0, 12), k =>
    {
        double foot = 0.15 * k, crossfall = k % 2 == 0 ? 0 : 30 + (9 * k);
        var finish = k % 3 == 0 ? WallFinish.Stone : WallFinish.Brick;
        var plan = Workbench.Straight(260, Side.Left, s => s with
        {
            Deck = s.Deck with { Crossfall = crossfall, Width = 40 },
            EndRamp = new(Gradient: 8, FootHeight: foot),
            Facing = FacingSpec.For(new(76.2)) with { Front = finish, Back = finish, Ends = finish },
        });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        double joint = plan.Spec.Facing!.Joint, course = finish == WallFinish.Brick ? 75 / 76.2 : 0.75 * plan.Spec.Facing.StoneCourse;
        double back = plan.Back.Reach[0], end = plan.Profile.To;
        int seen = 0;
        foreach (var section in set.Sections)
        {
            SoundSection.Check(section);
            var pieces = FacePatches.Of(section.Solid.Mesh, new(0, 1), back).Where(r => -r.Min(p => p.X) < plan.Profile.EndHead - 0.5)
                .Concat(FacePatches.Of(section.Solid.Mesh, new(1, 0), end)).ToArray();
            Array.ForEach(pieces, Whole);
        }

        Assert.True(seen > 100, $"{seen}");

        void Whole(Geometry.Point2[] piece)
        {
            seen++;
            double high = piece.Max(p => p.Y) - piece.Min(p => p.Y);
            Assert.True(high >= (0.5 * (course - joint)) - Near, $"{k}: {high:0.000} of {course - joint:0.000} at {piece[0]}");
        }
    });
}
