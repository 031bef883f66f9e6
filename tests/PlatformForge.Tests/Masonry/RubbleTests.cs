using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Random rubble by the mesh: the faces of its stones, found as flat patches of triangles a joint's depth before their ground.</summary>
public class RubbleTests
{
    // Numbers of 32-bit grids, mm.
    private const double Near = 2e-3;

    /// <summary>No stone is narrower than a line of the nozzle, nor than three tenths of the stated size, and none is missing: ground beside them is joints
    /// alone.</summary>
    [Fact]
    public void Stones_are_as_wide_as_stated_and_leave_joints_alone() => Assert.All(Simulations.Cases(3, 60), seed =>
    {
        var random = new Random(seed);
        ModelScale scale = new(random.Next(2) == 0 ? 76.2 : 43.5);
        var refuge = OpeningSpec.For(scale) with { Sill = 3, Height = 8, Width = 7, Head = (OpeningHead)random.Next(3), Pitch = 60 };
        var facing = FacingSpec.For(scale) with
        {
            Front = WallFinish.Rubble,
            Back = WallFinish.Rubble,
            Ends = WallFinish.Rubble,
            Seed = random.Next(1000),
            Openings = scale.Ratio < 50 || random.Next(2) == 0 ? [] : [refuge],
        };
        double crossfall = random.Next(2) == 0 ? 0 : 60;
        var plan = Workbench.Straight(200 + (random.NextDouble() * 60), (Side)((2 * random.Next(2)) - 1), s => s with
        {
            Height = s.Height + (random.NextDouble() * 2),
            Deck = s.Deck with { Crossfall = crossfall },
            Walls = s.Walls with { FrontThickness = 2.4, BackThickness = 2.4, EndThickness = 2.4 },
            EndRamp = random.Next(2) == 0 ? null : new(Gradient: 8, FootHeight: 0),
            Facing = facing,
        });
        Assert.All(Workbench.Made(plan, Workbench.Printer, new()).Sections, section =>
        {
            SoundSection.Check(section);
            double least = Math.Max(Workbench.Printer.Nozzle, 0.3 * facing.RubbleSize), off = 2 * facing.RubbleSize;
            foreach (double face in new[] { plan.WallFace.Reach[0], plan.Back.Reach[0] })
            {
                // Corners are turned by half a stone, and a ramp's slope cuts.
                double from = section.From == 200 ? 200 + off : section.From;
                double to = Math.Min(section.To, plan.Profile.EndHead) - (section.To > plan.Profile.EndHead - 1 ? off : 0);
                var stones = FacePatches.Of(section.Solid.Mesh, new(0, 1), plan.Side == Side.Left ? face : -face)
                    .Where(r => -r.Max(p => p.X) > from && -r.Min(p => p.X) < to).ToArray();
                Assert.True(stones.Length > 0 || to - from < 20, section.Name);
                foreach (double width in stones.Select(ConvexWidth.Of))
                {
                    // Corners are moved off bends by 0.02 at most.
                    Assert.InRange(width, least - 0.04 - Near, 2 * facing.RubbleSize);
                }
            }
        });
    });

    /// <summary>Stones that turn a corner, laid flat over its edge from both walls, are as wide as those between, and each is seen on both walls.</summary>
    [Fact]
    public void Stones_that_turn_corners_are_as_wide_as_stated() => Assert.All(Simulations.Cases(4, 40), seed =>
    {
        var random = new Random(seed);
        ModelScale scale = new(random.Next(2) == 0 ? 76.2 : 43.5);
        var facing = FacingSpec.For(scale) with { Front = WallFinish.Rubble, Back = WallFinish.Rubble, Ends = WallFinish.Rubble, Seed = random.Next(1000) };
        var plan = Workbench.Straight(180, Side.Left, s => s with
        {
            Height = s.Height + (random.NextDouble() * 2),
            Walls = s.Walls with { FrontThickness = 2.4, BackThickness = 2.4, EndThickness = 2.4 },
            Facing = facing,
        });
        var mesh = Assert.Single(Workbench.Made(plan, Workbench.Printer, new()).Sections).Solid.Mesh;
        double least = Math.Max(Workbench.Printer.Nozzle, 0.3 * facing.RubbleSize);
        foreach (double face in new[] { plan.WallFace.Reach[0], plan.Back.Reach[0] })
        {
            foreach (double end in new[] { 200.0, 380.0 })
            {
                // Along either wall from the corner, those of the end to the left.
                double into = end < 300 ? 1 : -1, behind = face < 40 ? 1 : -1;
                Point2[][] beside = [.. FacePatches.Of(mesh, new(0, 1), face).Select(r => Array.ConvertAll(r, p => new Point2(into * (-p.X - end), p.Y)))];
                Point2[][] round = [.. FacePatches.Of(mesh, new(1, 0), end).Select(r => Array.ConvertAll(r, p => new Point2(-behind * (p.X - face), p.Y)))];
                // The deck's own edge is no stone.
                var turning = beside.Where(r => Math.Abs(r.Min(p => p.X)) < Near && r.Max(p => p.Y) < plan.Profile.Level - 1)
                    .Select(r => (Front: r, Edge: Edge(r))).ToArray();
                // The larger stones of 1:43.5 may be but two at a corner.
                Assert.True(turning.Length >= 2, $"{turning.Length} at {end}, {face}");
                foreach (var (front, edge) in turning)
                {
                    var other = Assert.Single(round, r => Math.Abs(r.Max(p => p.X)) < Near && Math.Abs(Edge(r).Low - edge.Low) < Near
                        && Math.Abs(Edge(r).High - edge.High) < Near);
                    Assert.InRange(ConvexWidth.Of(ConvexRing.Hull([.. front, .. other])), least - 0.04 - Near, 3 * facing.RubbleSize);
                }
            }
        }

        static (double Low, double High) Edge(Point2[] ring) =>
            (ring.Where(p => Math.Abs(p.X) < Near).Min(p => p.Y), ring.Where(p => Math.Abs(p.X) < Near).Max(p => p.Y));
    });
}
