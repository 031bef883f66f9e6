using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Downpipes on ramps before walls that lean or have plinths: none goes through what is over it, by the meshes of sections alone.</summary>
public class LeaningPipeTests
{
    // A vertex lies on a grid of a ten-thousandth of a mm or so in plan; a slope of 1 in 3 makes no more than this of it, mm.
    private const double Grid = 1e-3;

    private static readonly ModelScale Scale = new(76.2);

    [Theory]
    [InlineData(Side.Left, false, 1.0, 8, WallFinish.Brick, PierWalls.Front, PipeShape.Round)]
    [InlineData(Side.Right, true, 1.5, 8, WallFinish.Brick, PierWalls.Both, PipeShape.Square)]
    [InlineData(Side.Left, true, 0.5, 12, WallFinish.Stone, PierWalls.Back, PipeShape.Round)]
    [InlineData(Side.Right, false, 2.0, 6, WallFinish.Plain, PierWalls.Both, PipeShape.Round)]
    [InlineData(Side.Left, false, 0.0, 8, WallFinish.Brick, PierWalls.Both, PipeShape.Round)]
    [InlineData(Side.Left, false, 1.0, 22.5, WallFinish.Brick, PierWalls.Both, PipeShape.Round)]
    [InlineData(Side.Right, true, 2.0, 8, WallFinish.Stone, PierWalls.Both, PipeShape.Square)]
    public void No_pipe_on_a_ramp_goes_up_into_its_coping_and_every_section_lies_deck_down(
        Side side, bool atEnd, double batter, double slope, WallFinish front, PierWalls on, PipeShape shape)
    {
        // Upright walls have a plinth instead that is higher than where the ramp is low.
        var plinth = batter > 0 ? null : PlinthSpec.For(Scale) with { Height = 14 };
        var facing = FacingSpec.For(Scale) with { Front = front, Back = front, Batter = batter, Plinth = plinth };
        double head = Head(Straight(side, atEnd, slope, facing), atEnd);
        double[] at = [.. new[] { 70, 55, 40, 20, 6.5 }.Select(s => atEnd ? head + s : head - s)];
        var piped = facing with { Downpipes = DownpipeSpec.For(Scale) with { On = on, At = at, Shape = shape } };
        var set = Workbench.Made(Straight(side, atEnd, slope, piped), Workbench.Printer, new());

        Assert.True(set.Plan.Downpipes.Count(p => atEnd ? p.Middle > head : p.Middle < head) >= (on == PierWalls.Both ? 8 : 4));
        Assert.All(set.Sections, s =>
        {
            var report = MeshCheck.Inspect(s.Solid.Mesh);
            Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, $"{s.Name}: {report}");
            Assert.InRange(s.Volumes.Finished / report.Volume, 1 - 2e-5, 1 + 2e-5);
            Assert.Equal(PrintPose.DeckDown, s.Pose);

            // Nothing hangs free, of no pipe at all: less than a nozzle's width square is no place.
            Assert.InRange(s.Overhangs.Unsupported, 0, 0.2);
            UnderItsCoping(s, set.Plan, slope);
        });
    }

    /// <summary>Over a pipe across a ramp's head two planes meet: printed upright, no cut lies there.</summary>
    [Theory]
    [InlineData(0.0, 0.3)]
    [InlineData(1.0, -0.4)]
    public void A_pipe_across_a_ramps_head_ends_under_both_planes(double batter, double off)
    {
        var facing = FacingSpec.For(Scale) with { Batter = batter, Downpipes = DownpipeSpec.For(Scale) with { On = PierWalls.Front } };
        double head = Head(Straight(Side.Left, false, 2, facing), false);
        facing = facing with { Downpipes = facing.Downpipes! with { At = [head + off], Joints = PierJoints.Between } };
        var set = Workbench.Made(Straight(Side.Left, false, 2, facing, 0.4), Workbench.Printer, new() { Pose = PrintPose.Upright });
        var pipe = Assert.Single(set.Plan.Downpipes);
        Assert.InRange(head, pipe.From, pipe.To);
        UnderItsCoping(set.Sections.Single(s => s.From < head && s.To > head), set.Plan, 2);
    }

    // The deck lies 20 mm over the baseboard and falls away from its head by 1 in so many, by that formula; the coping's underside lies its thickness lower,
    // and at a back the deck's.
    private static void UnderItsCoping(PlatformSection section, PlatformPlan plan, double slope)
    {
        double start = plan.Profile.StartHead, end = plan.Profile.EndHead;
        double middle = (plan.WallFace.Reach[0] + plan.BackWallFace.Reach[0]) / 2;
        int looked = 0;
        foreach (var v in Iron(section.Solid.Mesh))
        {
            double top = 20 - (Math.Max(0, Math.Max(start - v.X, v.X - end)) / slope);
            double under = Math.Abs(v.Y) < middle ? plan.Spec.Coping.Thickness : plan.Spec.Deck.Thickness;
            Assert.True(v.Z <= top - under + Grid, $"{section.Name}: a pipe goes up to {v.Z} at {v.X}, {v.Y}, where the deck lies at {top}.");
            looked++;
        }

        Assert.Equal(plan.Downpipes.Any(p => p.From > section.From && p.To < section.To), looked > 0);
    }

    private static IEnumerable<Point3> Iron(Mesh mesh) => Enumerable.Range(0, mesh.TriangleCount).Where(t => mesh.Paints[t] == (byte)Paint.Iron)
        .SelectMany(t => Enumerable.Range(3 * t, 3)).Select(i => mesh.Vertices[mesh.Triangles[i]]);

    private static double Head(PlatformPlan plan, bool atEnd) => atEnd ? plan.Profile.EndHead : plan.Profile.StartHead;

    private static PlatformPlan Straight(Side side, bool atEnd, double slope, FacingSpec facing, double? coping = null) =>
        Workbench.Straight(slope > 12 ? 560 : 300, side, s => s with
        {
            Facing = facing,
            Coping = s.Coping with { Thickness = coping ?? s.Coping.Thickness },
            StartRamp = atEnd ? null : new(Gradient: slope),
            EndRamp = atEnd ? new(Gradient: slope) : null,
        });
}
