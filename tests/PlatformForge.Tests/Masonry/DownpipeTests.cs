using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Solids;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Downpipes before walls, by the meshes of sections.</summary>
public class DownpipeTests
{
    private static readonly ModelScale Scale = new(76.2);

    private static readonly FacingSpec Piped = FacingSpec.For(Scale) with { Downpipes = DownpipeSpec.For(Scale) with { On = PierWalls.Front, At = [320] } };

    [Theory]
    [InlineData(Side.Left, WallFinish.Brick, WallFinish.Brick, false, PierWalls.Front, PipeShape.Round)]
    [InlineData(Side.Right, WallFinish.Brick, WallFinish.Plain, true, PierWalls.Both, PipeShape.Square)]
    [InlineData(Side.Left, WallFinish.Rubble, WallFinish.Brick, true, PierWalls.Both, PipeShape.Round)]
    [InlineData(Side.Right, WallFinish.Stone, WallFinish.Brick, false, PierWalls.Back, PipeShape.Round)]
    [InlineData(Side.Left, WallFinish.Planks, WallFinish.Planks, false, PierWalls.Front, PipeShape.Square)]
    [InlineData(Side.Right, WallFinish.Sheet, WallFinish.Plain, false, PierWalls.Front, PipeShape.Round)]
    [InlineData(Side.Left, WallFinish.Plain, WallFinish.Plain, true, PierWalls.Both, PipeShape.Round)]
    [InlineData(Side.Right, WallFinish.Panels, WallFinish.Panels, true, PierWalls.Both, PipeShape.Round)]
    [InlineData(Side.Left, WallFinish.UprightPlanks, WallFinish.Sleepers, true, PierWalls.Both, PipeShape.Round)]
    public void Sections_with_downpipes_are_sound_and_of_their_volume(Side side, WallFinish front, WallFinish ends, bool ramps, PierWalls on, PipeShape shape)
    {
        var facing = Piped with { Front = front, Ends = ends, Downpipes = Piped.Downpipes! with { On = on, Shape = shape } };
        var set = Workbench.Made(Straight(ramps ? 420 : 330, side, facing, ramps), Workbench.Printer, new());
        Assert.NotEmpty(set.Cuts);
        Assert.NotEmpty(set.Plan.Downpipes);
        Assert.All(set.Sections, s => SoundSection.Check(s, front != WallFinish.Plain));
    }

    [Fact]
    public void Downpipes_on_a_curve_are_sound_and_of_their_volume()
    {
        var set = Workbench.Made(Workbench.PendlewickAs(p => p with { Features = [], EndRamp = null, Facing = Piped }), Workbench.Printer, new());
        Assert.True(set.Plan.Downpipes.Count >= set.Cuts.Count);
        Assert.All(set.Sections, s => SoundSection.Check(s, true));
    }

    /// <summary>By the triangles in the colour of cast iron that a level plane meets: a circle's flats are tangents, so no point lies within it, and none
    /// farther out than a corner of the sixteen-sided figure round it, 1 / cos(180° / 16).</summary>
    [Fact]
    public void Pipes_measured_on_the_mesh_are_as_wide_as_stated_and_stand_where_they_are_planned()
    {
        var set = Workbench.Made(Straight(330, Side.Left, Piped, false), Workbench.Printer, new());
        var pipes = Piped.Downpipes!;
        double wall = set.Plan.WallFace.Reach[0], radius = pipes.Diameter / 2, centre = wall + pipes.Clip + radius;
        Assert.Equal(set.Cuts.Count + 1, set.Plan.Downpipes.Count);
        foreach (var pipe in set.Plan.Downpipes)
        {
            var mesh = set.Sections.Single(s => s.From < pipe.Middle && s.To > pipe.Middle).Solid.Mesh;
            Point2[] round = [.. Level(mesh, 5).Where(p => Math.Abs(p.X - pipe.Middle) < 3)];
            Assert.Equal(pipes.Diameter, round.Max(p => p.X) - round.Min(p => p.X), 1e-3);
            Assert.Equal(pipe.Middle, (round.Max(p => p.X) + round.Min(p => p.X)) / 2, 1e-3);
            Assert.Equal(wall + pipes.Clip, round.Min(p => p.Y), 1e-3);
            Point2[] front = [.. round.Where(p => p.Y < centre)];
            Assert.True(front.Length >= 8);
            Assert.All(front, p => Assert.InRange((p - new Point2(pipe.Middle, centre)).Length, radius - 1e-3, (radius / Math.Cos(Math.PI / 16)) + 1e-3));

            // Hopper head, twice as wide, under the coping.
            Point2[] head = [.. Level(mesh, pipe.Under - 0.1).Where(p => Math.Abs(p.X - pipe.Middle) < 3)];
            Assert.Equal(2 * pipes.Diameter, head.Max(p => p.X) - head.Min(p => p.X), 1e-3);
        }
    }

    [Theory]
    [InlineData(Side.Left)]
    [InlineData(Side.Right)]
    public void Nothing_of_a_downpipe_stands_before_the_face_that_is_held_against_vehicles(Side side)
    {
        var set = Workbench.Made(
            Workbench.PendlewickAs(p => p with { Face = p.Face with { Side = side }, Features = [], EndRamp = null, Facing = Piped }), Workbench.Printer,
            new());
        var plan = set.Plan;
        Point2[] wall = [.. plan.Stations.Select(s => plan.ToLayout(s, plan.WallFace.At(s)))];
        (Point2 From, Point2 Ahead)[] chords = [.. wall.Zip(wall.Skip(1), (a, b) => (a, b - a))];
        double least = double.PositiveInfinity;
        foreach (var mesh in set.Sections.Select(s => s.Solid.Mesh))
        {
            foreach (int v in Enumerable.Range(0, mesh.TriangleCount).Where(t => mesh.Paints[t] == (byte)Paint.Iron)
                .SelectMany(t => new[] { mesh.Triangles[3 * t], mesh.Triangles[(3 * t) + 1], mesh.Triangles[(3 * t) + 2] }).Distinct())
            {
                Point2 p = new(mesh.Vertices[v].X, mesh.Vertices[v].Y);
                var (from, ahead) = chords.First(c => Point2.Dot(p - c.From, c.Ahead) is var on && on >= -1e-3 && on <= c.Ahead.Length * c.Ahead.Length);
                least = Math.Min(least, (int)side * Point2.Cross(ahead, p - from) / ahead.Length);
            }
        }

        Assert.InRange(least, -1e-3, 1e-3);
    }

    /// <summary>Square pipes by closed formulae: the wall goes back with the deck's edge under the coping and the end walls are shorter; pipes, and what
    /// stands round them 0.2 mm before the wall, are boxes.</summary>
    [Fact]
    public void Square_downpipes_before_plain_walls_have_the_volume_of_their_boxes()
    {
        var pipes = new DownpipeSpec
        {
            On = PierWalls.Front,
            At = [240, 270, 310],
            Shape = PipeShape.Square,
            Diameter = 2,
            Projection = 3,
            Clip = 0.4,
            ClipHeight = 0.8,
            ClipPitch = 5,
        };
        FacingSpec plain = Piped with { Front = WallFinish.Plain, Back = WallFinish.Plain, Ends = WallFinish.Plain, Downpipes = pipes };
        double with = Workbench.Made(Straight(150, Side.Left, plain, false), Workbench.Printer, new()).Sections[0].Volumes.Finished,
            without = Workbench.Made(Straight(150, Side.Left, null, false), Workbench.Printer, new()).Sections[0].Volumes.Finished;

        // The wall is 18.5 high under a deck 1.5 thick, and the coping 1.2. Between shoe, 2 high, and hopper head, 3 high, 13.8 are left: two clips, of which
        // 5 mm are the greatest distance.
        const double back = 3, height = 18.5, edge = 1.5 - 1.2, end = 1.625, under = height + edge, clear = 3 - 0.2;
        const double pipe = 2 * (back - 0.4) * under, within = 2 * (clear - 0.4);
        const double ring = (2.8 * clear) - within, bowl = (3 * (clear - 0.2)) - within, head = (4 * clear) - within;
        const double one = pipe + (ring * (2 + (2 * 0.8))) + (bowl * 1.2) + (head * 1.8);
        Assert.Equal((3 * one) - (150 * back * edge) - (2 * end * back * height), with - without, 1e-3);
    }

    [Fact]
    public void A_downpipe_stands_beside_each_joint_and_none_across_one() => Assert.All(Simulations.Cases(5, 150), seed =>
    {
        var random = new Random(seed);
        var pipes = Piped.Downpipes! with { Diameter = 0.8 + random.NextDouble(), Hopper = random.Next(2) == 0, At = [250 + (200 * random.NextDouble())] };
        pipes = pipes with { Projection = pipes.LeastProjection + random.NextDouble() };
        var plan = Straight(420, (Side)((2 * random.Next(2)) - 1), Piped with { Downpipes = pipes }, false);
        double[] cuts = [plan.Stations[0] + 150 + (20 * random.NextDouble()), plan.Stations[0] + 300 + (20 * random.NextDouble())];
        var divided = PlatformPlanner.Divided(plan, cuts).Value!;
        Assert.All(divided.Downpipes, p => Assert.DoesNotContain(cuts, c => c > p.From - Piped.Joint + 1e-9 && c < p.To + Piped.Joint - 1e-9));
        Assert.All(cuts, c => Assert.Single(divided.Downpipes, p => p.Cut == c && p.Middle - c < 4 && p.Middle > c));
        Assert.All(divided.Downpipes.Zip(divided.Downpipes.Skip(1)), p => Assert.True(p.Second.From >= p.First.To - 1e-9));
    });

    [Fact]
    public void Stated_downpipes_off_the_wall_are_told_and_one_across_a_joint_is_the_one_beside_it()
    {
        var plan = Straight(300, Side.Left, Piped with { Downpipes = Piped.Downpipes! with { At = [150, 260, 351] } }, false);
        var beside = PlatformPlanner.Divided(plan, [350]);
        Assert.Equal([Severity.Warning, Severity.Note], beside.Findings.Where(f => f.Code == "PF4199").Select(f => f.Severity));
        Assert.Equal(2, beside.Value!.Downpipes.Count);

        // Where none is asked for at joints it is moved off the joint, so far that a closer lies between.
        plan = Straight(300, Side.Left, Piped with { Downpipes = Piped.Downpipes! with { At = [351], Joints = PierJoints.Between } }, false);
        var moved = PlatformPlanner.Divided(plan, [350]);
        Assert.Equal(Severity.Note, Assert.Single(moved.Findings, f => f.Code == "PF4199").Severity);
        double closer = (112.5 / 76.2 / 2) + Piped.Joint, pipe = Assert.Single(moved.Value!.Downpipes).Middle;
        Assert.Equal(350 + (Piped.Downpipes!.Diameter / 2) + closer, pipe, 1e-9);
    }

    [Fact]
    public void Downpipes_that_a_platform_does_not_take_are_refused_with_what_is_taken()
    {
        var piers = Assert.Single(Rules(Spec(Piped.Downpipes!) with { Facing = Piped with { Piers = PierSpec.For(Scale) } }));
        Assert.Equal(("PF4197", "\"back\""), (piers.Code, piers.Cure!.Value));
        Assert.Empty(Rules(Spec(Piped.Downpipes!) with
        {
            Facing = Piped with { Piers = PierSpec.For(Scale), Downpipes = Piped.Downpipes! with { On = PierWalls.Back } },
        }));
        var flat = Assert.Single(Rules(Spec(Piped.Downpipes! with { Projection = 0.5 })));
        Assert.Equal("PF4198", flat.Code);
        Assert.Empty(Rules(Spec(Piped.Downpipes! with { Projection = Figure(flat) })));
        Assert.Equal("PF4171", Assert.Single(Rules(Spec(Piped.Downpipes! with { On = PierWalls.Back }) with
        {
            OtherFace = new("down", Side.Right, 200, 500, EdgeStyle.Uniform),
        })).Code);
    }

    [Theory]
    [InlineData("PF6080", 0.6, 0.25)]
    [InlineData("PF6081", 1.3, 0.5)]
    public void Downpipes_that_a_printer_does_not_take_are_told_with_a_figure_that_it_takes(string code, double diameter, double clip)
    {
        var pipes = Piped.Downpipes! with { Diameter = diameter, Clip = clip };
        var told = Assert.Single(Found(pipes));
        Assert.Equal(code, told.Code);
        Assert.Empty(Found(code == "PF6080" ? pipes with { Diameter = Figure(told) } : pipes with { Clip = Figure(told) }));

        static IEnumerable<Finding> Found(DownpipeSpec pipes) =>
            SectionMaker.Make(Straight(150, Side.Left, Piped with { Downpipes = pipes }, false), Workbench.Printer, new()).Findings
                .Where(f => f.Key.Contains("downpipes", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(22.5)]
    [InlineData(43.5)]
    [InlineData(76.2)]
    [InlineData(148)]
    [InlineData(160)]
    public void Unasked_sizes_are_taken_by_a_nozzle_of_0_4_at_every_scale(double ratio)
    {
        var pipes = DownpipeSpec.For(new(ratio));
        Assert.True(pipes.Diameter >= 0.8 && pipes.Projection >= pipes.LeastProjection && pipes.Clip >= 0.25);

        // A size of BS 460 (from memory), down to where two lines are more.
        Assert.True(pipes.Diameter == 0.8 || Math.Abs((pipes.Diameter * ratio) - 100) < 1e-9);
    }

    // Where a level plane meets the triangles that show cast iron.
    private static IEnumerable<Point2> Level(Mesh mesh, double height)
    {
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3[] corners = [.. Enumerable.Range(3 * t, 3).Select(i => mesh.Vertices[mesh.Triangles[i]])];
            for (int i = 0; mesh.Paints[t] == (byte)Paint.Iron && i < 3; i++)
            {
                Point3 a = corners[i], b = corners[(i + 1) % 3];
                if ((a.Z - height) * (b.Z - height) < 0)
                {
                    var p = a + ((b - a) * ((height - a.Z) / (b.Z - a.Z)));
                    yield return new(p.X, p.Y);
                }
            }
        }
    }

    private static double Figure(Finding finding) => double.Parse(finding.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);

    private static PlatformSpec Spec(DownpipeSpec pipes) => Straight(150, Side.Left, null, false).Spec with { Facing = Piped with { Downpipes = pipes } };

    private static List<Finding> Rules(PlatformSpec spec)
    {
        var findings = new List<Finding>();
        PlatformForge.Platforms.Rules.DownpipeRule.Check(spec, findings);
        return findings;
    }

    private static PlatformPlan Straight(double length, Side side, FacingSpec? facing, bool ramps) =>
        Workbench.Straight(length, side, s => s with { Facing = facing, StartRamp = ramps ? new(Gradient: 8) : null });
}
