using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Rules;
using PlatformForge.Solids;
using PlatformForge.Tests.Meshes;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Walls of stone, timber and concrete, by what is laid and by their meshes.</summary>
public class FinishTests
{
    private static readonly FacingSpec Facing = FacingSpec.For(new(76.2));

    // A section with a ramp, faced on all walls, made once for each finish.
    private static readonly Dictionary<WallFinish, Lazy<PlatformSection>> Made = Enum.GetValues<WallFinish>()
        .ToDictionary(f => f, f => new Lazy<PlatformSection>(() =>
        Assert.Single(Workbench.Made(
            Workbench.Straight(130, Side.Left, s => s with { Facing = Facing with { Front = f }, StartRamp = new(Gradient: 4) }), Workbench.Printer,
            new SectionSpec { Pose = PrintPose.Upright }).Sections)));

    // Behind the ramp, mm along the track.
    private const double LevelFrom = 290;

    public static TheoryData<WallFinish, Paint> Finishes() => new()
    {
        { WallFinish.Stone, Paint.Stone }, { WallFinish.Rubble, Paint.Stone }, { WallFinish.Planks, Paint.Timber }, { WallFinish.UprightPlanks, Paint.Timber },
        { WallFinish.Sleepers, Paint.Timber }, { WallFinish.Panels, Paint.Concrete },
    };

    [Theory]
    [MemberData(nameof(Finishes))]
    internal void Every_finish_makes_a_sound_section_of_its_own_colour(WallFinish finish, Paint paint)
    {
        var section = Made[finish].Value;
        Sound(section);
        Assert.Contains((byte)paint, section.Solid.Mesh.Paints);
        Assert.DoesNotContain((byte)Paint.Wall, Outer(section));
        Assert.Equal(finish is WallFinish.Stone or WallFinish.Rubble, section.Solid.Mesh.Paints.Contains((byte)Paint.Mortar));

        // Nothing stands farther out than the smooth wall did.
        Assert.Equal(Workbench.Straight(130).WallFace.Reach[0], section.Solid.Mesh.Vertices.Where(v => v.X > LevelFrom && v.Z < 15).Min(v => v.Y), 1e-4);
    }

    [Theory]
    [InlineData(WallFinish.Stone)]
    [InlineData(WallFinish.Rubble)]
    public void Stones_on_a_curve_run_over_its_bends(WallFinish finish)
    {
        var plan = Workbench.PendlewickAs(p => p with
        {
            Face = p.Face with { To = p.Face.From + 120 },
            Features = [],
            StartRamp = null,
            EndRamp = null,
            Facing = Facing with { Front = finish },
        });
        Assert.All(Workbench.Made(plan, Workbench.Printer, new()).Sections, s =>
        {
            Sound(s);
            Assert.NotEmpty(s.Faced.SelectMany(w => w.Wall.Bends));
        });
    }

    [Fact]
    public void Courses_of_stone_are_of_three_heights_and_no_perpend_comes_nearer_than_the_lap_to_one_above()
    {
        var (regions, spec) = Laid(f => f with { Front = WallFinish.Stone }, Flat(300, 40));
        var rows = regions.GroupBy(r => Math.Round(r.Outline.Max(p => p.Y), 6)).OrderByDescending(r => r.Key).Select(r => r.OrderBy(s => Left(s)).ToList())
            .ToList();
        Assert.True(rows.Count > 10);
        double course = ((StoneworkSpec)spec).Course, length = ((StoneworkSpec)spec).Length, joint = spec.Laying.Joint;
        double[] heights = [.. rows.Zip(rows.Skip(1), (a, b) => Top(a[0]) - Top(b[0]))];
        Assert.All(heights, h => Assert.Contains(new[] { 0.75, 1, 1.25 }, share => Math.Abs(h - (share * course)) < 1e-6));
        Assert.Equal(3, heights.Select(h => Math.Round(h, 4)).Distinct().Count());
        double[][] perpends = [.. rows.Select(r => r.Zip(r.Skip(1), (a, b) => (Right(a) + Left(b)) / 2).ToArray())];
        Assert.All(perpends.Zip(perpends.Skip(1)), pair => Assert.All(pair.Second, p => Assert.True(
            pair.First.Min(q => Math.Abs(p - q)) > (StoneworkSpec.Lap * length) - 1e-6)));
        Assert.All(rows.SkipLast(1).SelectMany(r => r), s => Assert.InRange(Right(s) - Left(s) + joint, (StoneworkSpec.LeastStone * length) - 0.15,
            (StoneworkSpec.LongestStone * length) + 1e-6));

        // A long stone and a short one in turn at both ends.
        Assert.All(rows.SkipLast(2).Zip(rows.Skip(1)), pair => Assert.True(Math.Abs(Right(pair.First[0]) - Right(pair.Second[0])) > 0.4 * length));
    }

    /// <summary>Corners near a bend are moved off it, which turned a long thin stone over: this length of this sample had one.</summary>
    [Fact]
    public void A_thin_stone_of_rubble_beside_a_bend_is_no_fault_of_the_program()
    {
        string text = File.ReadAllText(Path.Combine(House.SourceTree.Root, "presets", "finished", "pendlewick-brick.toml"));
        text = text[..text.IndexOf("[[platform.board]]", StringComparison.Ordinal)] + text[text.IndexOf("[printer]", StringComparison.Ordinal)..];
        text = text.Replace("to = 1000,", "to = 560,", StringComparison.Ordinal).Replace("bond = \"english\"", "front = \"rubble\"", StringComparison.Ordinal);
        var design = PlatformForge.Projects.Runs.DesignRun.Design(PlatformForge.Projects.ProjectReader.Read(text, "halt.toml", null, []).Value!,
            PlatformForge.Projects.Watches.RunWatch.None);
        Assert.DoesNotContain(design.Findings, f => f.Severity == PlatformForge.Units.Severity.Error);
    }

    [Fact]
    public void Stones_of_rubble_are_convex_keep_their_joints_from_one_another_and_are_the_same_for_one_seed()
    {
        var (regions, spec) = Laid(f => f with { Front = WallFinish.Rubble }, Flat(120, 18));
        double joint = spec.Laying.Joint;
        Assert.All(regions, r => Assert.All(Enumerable.Range(0, r.Outline.Length), i => Assert.True(Point2.Cross(
            r.Outline[(i + 1) % r.Outline.Length] - r.Outline[i], r.Outline[(i + 2) % r.Outline.Length] - r.Outline[(i + 1) % r.Outline.Length]) > 0)));

        // A joint at least lies between any two.
        for (int i = 0; i < regions.Length; i++)
        {
            for (int k = 0; k < i; k++)
            {
                double apart = Math.Min(Apart(regions[i].Outline, regions[k].Outline), Apart(regions[k].Outline, regions[i].Outline));
                Assert.True(apart > joint - 1e-6, $"{apart}");
            }
        }

        // Joints take less than two fifths of the wall, and stones are about as large as asked.
        double area = regions.Sum(Area), size = ((RubbleSpec)spec).Size;
        Assert.InRange(area / (120 * 18), 0.6, 0.95);
        Assert.InRange(regions.Length / (120 * 18 / (RubbleSpec.Aspect * size * size)), 0.85, 1.25);
        Assert.Equal(regions.Select(r => r.Outline), Laid(f => f with { Front = WallFinish.Rubble }, Flat(120, 18)).Regions.Select(r => r.Outline));
        Assert.NotEqual(regions.Select(r => r.Outline[0]), Laid(f => f with { Front = WallFinish.Rubble, Seed = 2 }, Flat(120, 18)).Regions
            .Select(r => r.Outline[0]));
    }

    [Theory]
    [InlineData(WallFinish.Planks, 176, 3657.6)]
    [InlineData(WallFinish.Sleepers, 254, 2590.8)]
    public void Level_timber_has_its_width_and_each_course_laps_the_next_by_half(WallFinish finish, double width, double length)
    {
        // Sleepers of 8 ft 6 in by 10 in, planks of 7 in and a gap, 12 ft long: from memory, no source.
        var (regions, spec) = Laid(f => f with { Front = finish }, Flat(300, 40));
        var rows = regions.GroupBy(r => Math.Round(Top(r), 6)).OrderByDescending(r => r.Key).Select(r => r.OrderBy(s => Left(s)).ToList()).ToList();
        Assert.All(rows.Zip(rows.Skip(1)), p => Assert.Equal(width / 76.2, Top(p.First[0]) - Top(p.Second[0]), 1e-6));
        double half = (Right(rows[1][0]) - Left(rows[1][0]) + spec.Laying.Joint) / (Right(rows[0][0]) - Left(rows[0][0]) + spec.Laying.Joint);
        Assert.Equal(0.5, half, 1e-6);
        Assert.InRange(Right(rows[0][0]) - Left(rows[0][0]) + spec.Laying.Joint, length / 76.2, 1.12 * length / 76.2);
    }

    [Fact]
    public void Posts_stand_before_their_panels_and_planks_stand_from_the_foot_to_the_top()
    {
        var (panels, spec) = Laid(f => f with { Front = WallFinish.Panels }, Flat(240, 18));
        Assert.Equal([PanelSpec.Back * Facing.Depth, Facing.Depth], panels.Select(r => r.Out).Distinct().Order());
        var posts = panels.Where(r => r.Out == Facing.Depth).OrderBy(Left).ToArray();
        Assert.Equal(11, posts.Length);
        Assert.All(posts, p => Assert.Equal(152.4 / 76.2, Right(p) - Left(p), 1e-6));
        Assert.Equal(240 - 2 - (2 * spec.Laying.Stop), Left(posts[^1]) - Left(posts[0]), 1e-6);
        var planks = Laid(f => f with { Front = WallFinish.UprightPlanks }, Flat(240, 18)).Regions;
        Assert.All(planks, p => Assert.Equal(18 - spec.Laying.Foot - spec.Laying.Bed, Top(p) - p.Outline.Min(q => q.Y), 1e-6));
        Assert.Equal(103, planks.Length); // 240 mm of planks of 2.31
    }

    /// <summary>Whatever room there is, as between a corner and a pipe beside it: posts are no narrower than stated where there is room for one, and a joint
    /// parts what stands side by side.</summary>
    [Fact]
    public void Posts_and_panels_of_a_wall_of_any_length_have_their_joints()
    {
        double joint = Facing.Joint, post = 152.4 / 76.2;
        for (double length = 3; length < 60; length += 0.37)
        {
            var (regions, spec) = Laid(f => f with { Front = WallFinish.Panels }, Flat(length, 18));
            double least = Math.Min(post, length - (2 * spec.Laying.Stop)) - 1e-6;
            var row = regions.Where(r => r.Out == Facing.Depth || Top(r) > 10).OrderBy(Left).DistinctBy(Left).ToArray();
            Assert.True(row.Length > 0, $"{length}");
            Assert.All(row.Where(r => r.Out == Facing.Depth), r => Assert.True(Right(r) - Left(r) > least, $"{length}"));
            Assert.AllOrNone(row.Zip(row.Skip(1)), p => Assert.True(Left(p.Second) - Right(p.First) > joint - 1e-6,
                $"{length}: {Right(p.First)} and {Left(p.Second)}"));
        }
    }

    [Fact]
    public void What_stands_out_adds_its_areas_times_how_far_it_does()
    {
        foreach (var finish in new[] { WallFinish.Stone, WallFinish.Rubble, WallFinish.Panels })
        {
            var facing = Facing with { Front = finish, Back = WallFinish.Plain, Ends = WallFinish.Plain };
            var section = Workbench.Made(Workbench.Straight(60, Side.Left, s => s with { Facing = facing }), Workbench.Printer, new()).Sections[0];
            double by = section.Faced.SelectMany(w => w.Regions).Sum(r => Area(r) * r.Out);
            Assert.Equal(by, section.Volumes.Facing, 1e-6 * by);
        }
    }

    [Theory]
    [InlineData(WallFinish.Stone, 2)]
    [InlineData(WallFinish.Rubble, 1)]
    [InlineData(WallFinish.Planks, 2)]
    [InlineData(WallFinish.UprightPlanks, 1)]
    [InlineData(WallFinish.Sleepers, 2)]
    [InlineData(WallFinish.Panels, 3)]
    public void What_is_smaller_than_the_printer_shows_is_refused_with_a_figure_that_is_taken(WallFinish finish, int figures)
    {
        var small = Facing with
        {
            Front = finish,
            StoneCourse = 0.5,
            StoneLength = 0.5,
            RubbleSize = 0.5,
            PlankWidth = 0.5,
            PlankLength = 0.5,
            SleeperWidth = 0.5,
            SleeperLength = 0.5,
            Bay = 0.5,
            PostWidth = 0.5,
            PanelHeight = 0.5,
        };
        var found = Check(small).ToList();
        Assert.Equal(figures, found.Count);
        Assert.All(found, f =>
        {
            Assert.Equal(("PF5036", Severity.Error), (f.Code, f.Severity));
            var key = Assert.Single(FacingSpec.Keys.All, k => f.Key == "platform[0].facing." + k.Name);
            Assert.NotNull(key);
        });
        Assert.Empty(Check(Facing with { Front = finish }));
        Assert.All(found, f => Assert.InRange(double.Parse(f.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture), 0.8, 3));
    }

    [Fact]
    public void The_back_of_an_island_is_told_to_say_nothing()
    {
        // By the rule alone: an island's plan is not needed for it.
        var plan = Workbench.Straight(60, Side.Left, s => s with { Facing = Facing with { Back = WallFinish.Plain } });
        Assert.Empty(FacingRule.Check(plan, Workbench.Printer, new()));
        var island = plan with { Spec = plan.Spec with { OtherFace = plan.Spec.Face } };
        var found = Assert.Single(FacingRule.Check(island, Workbench.Printer, new()));
        Assert.Equal(("PF5037", "platform[0].facing.back"), (found.Code, found.Key));
        Assert.Empty(FacingRule.Check(island with { Spec = island.Spec with { Facing = Facing } }, Workbench.Printer, new()));
    }

    private static IEnumerable<Finding> Check(FacingSpec facing) =>
        FacingRule.Check(Workbench.Straight(60, Side.Left, s => s with { Facing = facing }), Workbench.Printer, new());

    private static void Sound(PlatformSection section)
    {
        var report = MeshCheck.Inspect(section.Solid.Mesh);
        Assert.True(report is { IsClosed: true, DegenerateTriangles: 0, Components: 1 }, report.ToString());
        Assert.InRange(section.Volumes.Finished / report.Volume, 1 - 3e-5, 1 + 3e-5);
        Assert.True(MeshCheck.Inspect(section.PrintMesh()) is { IsClosed: true, DegenerateTriangles: 0 });
        Assert.NotEmpty(section.Faced);
    }

    // What a wall shows where it looks along the front's outward direction.
    private static IEnumerable<byte> Outer(PlatformSection section)
    {
        var mesh = section.Solid.Mesh;
        double front = mesh.Vertices.Where(v => v.X > LevelFrom && v.Z < 10).Min(v => v.Y);
        return Enumerable.Range(0, mesh.TriangleCount)
            .Where(t => Enumerable.Range(3 * t, 3).All(i => mesh.Vertices[mesh.Triangles[i]] is var v && v.X > LevelFrom && v.Z < 10 && v.Y < front + 0.3))
            .Select(t => mesh.Paints[t]);
    }

    private static FlatWall Flat(double length, double height) =>
        new([new(0, length, false, false, false)], [new(0, 0), new(length, 0)], [new(0, height), new(length, height)], [], false);

    private static (WallRegion[] Regions, WallWork Spec) Laid(Func<FacingSpec, FacingSpec> change, FlatWall wall)
    {
        var plan = Workbench.Straight(60, Side.Left, s => s with { Facing = change(Facing) });
        var work = PrintedFacing.Of(plan, Workbench.Printer, new())!.Finishes[0].Work;
        work = work with { Laying = work.Laying with { Datum = wall.Top[0].Y - work.Laying.Bed, Room = 0 } };
        return ([.. work.On(wall).Regions()], work);
    }

    private static double Left(WallRegion r) => r.Outline.Min(p => p.X);

    private static double Right(WallRegion r) => r.Outline.Max(p => p.X);

    private static double Top(WallRegion r) => r.Outline.Max(p => p.Y);

    private static double Area(WallRegion r) => Enumerable.Range(0, r.Outline.Length)
        .Sum(i => Point2.Cross(r.Outline[i], r.Outline[(i + 1) % r.Outline.Length])) / 2;

    // How near the corners of one outline come to the sides of another, mm.
    private static double Apart(Point2[] one, Point2[] other) => one.Min(p => Enumerable.Range(0, other.Length).Min(i =>
    {
        Point2 a = other[i], along = other[(i + 1) % other.Length] - a;
        return (p - a - (along * Math.Clamp(Point2.Dot(p - a, along) / Point2.Dot(along, along), 0, 1))).Length;
    }));
}
