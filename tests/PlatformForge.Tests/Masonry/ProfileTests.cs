using PlatformForge.Geometry;
using PlatformForge.Masonry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections;
using PlatformForge.Sections.Forms;
using PlatformForge.Tests.Fixtures;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using PlatformForge.Units;
using Xunit;

namespace PlatformForge.Tests.Masonry;

/// <summary>Plinths and corbelled courses, by the meshes of sections.</summary>
public class ProfileTests
{
    private static readonly ModelScale Scale = new(76.2);

    // A wall of eighteen courses of bricks, 75 mm each in full size (BS EN 771 work size with its joint), over the ground that is left under the
    // lowest: in whole
    // ten-thousandths of a mm, so that they are drawn out by four millionths.
    private const double Under = 17.7666, Course = (Under - 0.05) / 18;

    private static readonly FacingSpec Profiled = FacingSpec.For(Scale) with
    {
        Plinth = PlinthSpec.For(Scale) with { Projection = 0.6 },
        Corbel = CorbelSpec.For(Scale)
    };

    private static readonly Lazy<PlatformSection> Level =
        new(() => Workbench.Made(Straight(150, Side.Left, Profiled, false), Workbench.Printer, new()).Sections[0]);

    [Theory]
    [InlineData(Side.Left, WallFinish.Brick, WallFinish.Brick, false, false)]
    [InlineData(Side.Right, WallFinish.Brick, WallFinish.Plain, true, false)]
    [InlineData(Side.Left, WallFinish.Stone, WallFinish.Stone, true, true)]
    [InlineData(Side.Right, WallFinish.Rubble, WallFinish.Brick, true, false)]
    [InlineData(Side.Right, WallFinish.Brick, WallFinish.Brick, false, true)]
    [InlineData(Side.Left, WallFinish.Plain, WallFinish.Plain, true, true)]
    public void Sections_with_plinth_and_corbel_are_sound_and_of_their_volume(Side side, WallFinish front, WallFinish ends, bool ramps, bool piers)
    {
        var facing = Profiled with { Front = front, Ends = ends, Piers = piers ? PierSpec.For(Scale) : null };
        Assert.All(Workbench.Made(Straight(ramps ? 260 : 130, side, facing, ramps), Workbench.Printer, new()).Sections,
            s => SoundSection.Check(s, front != WallFinish.Plain));
    }

    [Fact]
    public void A_profile_on_a_curve_is_sound_and_of_its_volume() => Assert.All(
        Workbench.Made(Workbench.PendlewickAs(p => p with { Face = p.Face with { To = p.Face.From + 240 }, Features = [], EndRamp = null, Facing = Profiled }),
            Workbench.Printer, new()).Sections, s => SoundSection.Check(s, true));

    /// <summary>All round a ring of walls each part has the area between two oblongs, times its height.</summary>
    [Theory]
    [InlineData(0.75, 2, 0.25, 2)]
    [InlineData(0.75, 3, 0.25, 0)]
    [InlineData(0.0, 0, 0.375, 3)]
    [InlineData(0.25, 1, 0.375, 2)]
    public void Plain_walls_have_the_volume_of_their_oblongs(double projection, int steps, double each, int corbelled)
    {
        var plain = Profiled with
        {
            Front = WallFinish.Plain,
            Back = WallFinish.Plain,
            Ends = WallFinish.Plain,
            Plinth = steps > 0 ? new() { Height = 3.9, Projection = projection, Steps = steps } : null,
            Corbel = corbelled > 0 ? new() { Courses = corbelled, Projection = each } : null,
        };
        double with = Workbench.Made(Straight(150, Side.Left, plain, false), Workbench.Printer, new()).Sections[0].Volumes.Finished,
            without = Workbench.Made(Straight(150, Side.Left, null, false), Workbench.Printer, new()).Sections[0].Volumes.Finished;

        // Walls of 1.625 mm all round an oblong of 150 by 59 go back on all sides, with the deck's edge under the coping.
        const double long0 = 150, wide0 = 59, wall = 1.625, edge = 1.5 - 1.2;
        double deep = Math.Max(projection, corbelled * each), expected = -8 * deep * wall * Under;
        double Area(double o) => ((long0 - (2 * (deep - o))) * (wide0 - (2 * (deep - o)))) - ((long0 - (2 * deep)) * (wide0 - (2 * deep)));

        // The head lies on the bed nearest to 3.9 mm, counted from the deck's underside.
        double head = Enumerable.Range(0, 18).Select(i => Under - (i * Course)).MinBy(y => Math.Abs(y - 3.9));
        for (int k = 1; k <= steps; k++)
        {
            double high = head - ((steps - k) * Course), low = k == 1 ? 0 : high - Course;
            expected += Area(projection * (steps - k + 1) / steps) * (high - low);
        }

        for (int j = 1; j <= corbelled; j++)
        {
            expected += Area(each * j) * Course;
        }

        // The cap behind the coping fills what the deck leaves of it, as far as the uppermost course stands out.
        double cap = corbelled * each;
        expected += (edge * cap * (long0 - (2 * (deep - cap)))) - (edge * deep * long0);
        Assert.Equal(expected, with - without, 2e-3);
    }

    /// <summary>Corbelled courses as far out as the plinth's steps, as both are where nothing is stated: each part is laid flat by itself, within its
    /// heights.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_corbel_as_far_out_as_the_plinth_leaves_the_plinth_its_walls(bool faced)
    {
        var alike = FacingSpec.For(Scale) with { Plinth = PlinthSpec.For(Scale), Corbel = CorbelSpec.For(Scale) };
        alike = faced ? alike : alike with { Front = WallFinish.Plain, Back = WallFinish.Plain, Ends = WallFinish.Plain };
        var plan = Straight(260, Side.Left, alike, true);
        var set = Workbench.Made(plan, Workbench.Printer, new());
        var zones = WallProfiles.Of(set.Plan).Zones;
        Assert.Equal(5, zones.Count);
        foreach (var section in set.Sections)
        {
            var walls = faced ? section.Faced : PlatformForge.Sections.Rules.PlainWalls.Of(set, section);
            Assert.Contains(walls, w => w.Zone.Number == 1);
            Assert.All(walls, w => Assert.True(w.Wall.Top.Max(p => p.Y) <= w.Zone.High + 1e-3 && w.Wall.Foot.Min(p => p.Y) >= w.Zone.Low - 1e-3,
                $"part {w.Zone.Number}"));
        }
    }

    [Fact]
    public void Courses_measured_on_the_mesh_are_level_whole_and_each_in_its_plane()
    {
        double wall = Plan.WallFace.Reach[0];
        var mesh = Level.Value.Solid.Mesh;
        Assert.Equal(wall, mesh.Vertices.Where(v => v.Z < Under).Min(v => v.Y), 1e-4);
        double deep = 2 * 28.125 / 76.2, joint = Profiled.Joint;

        // A plinth of two courses, fourteen of the wall, two corbelled ones.
        List<(double From, double To, double Low, double High)>[] planes =
            [.. Planes(deep).Select(back => BrickFaces.In(mesh, new(0, wall + back), new(1, 0)).SelectMany(r => r).ToList())];
        double[][] tops = [.. planes.Select(p => p.Select(b => Math.Round(b.High, 3)).Distinct().Order().ToArray())];
        double[] all = [.. Enumerable.Range(0, 18).Select(i => Math.Round(Under - joint - (i * Course), 3)).Order()];

        Assert.Equal(all[..2], tops[0], Near);
        Assert.Equal(all[2..3], tops[1], Near);
        Assert.Equal(all[3..^2], tops[2], Near);
        Assert.Equal(all[^2..^1], tops[3], Near);
        Assert.Equal(all[^1..], tops[4], Near);
        Assert.All(planes.SelectMany(p => p), b => Assert.Equal(Course - joint, b.High - b.Low, 2e-3));

        static bool Near(double a, double b) => Math.Abs(a - b) < 2e-3;
    }

    [Fact]
    public void Perpends_lap_over_the_edges_between_parts_as_within_them()
    {
        double wall = Plan.WallFace.Reach[0], deep = 2 * 28.125 / 76.2;
        var rows = Planes(deep).SelectMany(back => BrickFaces.In(Level.Value.Solid.Mesh, new(0, wall + back), new(1, 0)))
            .OrderBy(r => r[0].High).ToList();
        Assert.Equal(18, rows.Count);
        Assert.All(rows.Zip(rows.Skip(1)), pair =>
        {
            double[] lower = [.. pair.First.Skip(1).Select(b => b.From)], upper = [.. pair.Second.Skip(1).Select(b => b.From)];
            Assert.InRange(lower.Min(a => upper.Min(b => Math.Abs(a - b))), 0.2, 2);
        });
    }

    // Behind the proven face, from the foot up: a plinth of 0.6 in two steps, the wall, two courses.
    private static double[] Planes(double deep) => [deep - 0.6, deep - 0.3, deep, deep / 2, 0];

    [Theory]
    [InlineData("PF4161", 2.95, 1, 18)]
    [InlineData("PF4162", 2.95, 17, 2)]
    [InlineData("PF4163", 1.2, 3, 2)]
    [InlineData("PF4163", 17.5, 2, 2)]
    public void Profiles_without_room_are_refused_with_a_figure_that_is_taken(string code, double height, int steps, int courses)
    {
        var facing = Profiled with { Plinth = Profiled.Plinth! with { Height = height, Steps = steps }, Corbel = Profiled.Corbel! with { Courses = courses } };
        var found = Assert.Single(Rules(Plan.Spec, facing));
        Assert.Equal(code, found.Code);
        double figure = double.Parse(found.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        var mended = code switch
        {
            "PF4161" => facing with { Corbel = facing.Corbel! with { Courses = (int)figure } },
            "PF4162" => facing with { Plinth = facing.Plinth! with { Steps = (int)figure } },
            _ => facing with { Plinth = facing.Plinth! with { Height = figure } },
        };
        Assert.DoesNotContain(Rules(Plan.Spec, mended), f => f.Code == code);
    }

    [Theory]
    [InlineData("PF4164", 1.5, 5)]
    [InlineData("PF4165", 4.0, 12)]
    public void Openings_keep_between_plinth_and_corbel(string code, double sill, double height)
    {
        var facing = Profiled with { Openings = [new() { Kind = OpeningKind.Cable, Ratio = 76.2, Sill = sill, Height = height, Width = 3 }] };
        var found = Assert.Single(Rules(Plan.Spec, facing));
        Assert.Equal(code, found.Code);
        double figure = double.Parse(found.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        var mended = facing.Openings[0] with { Sill = code == "PF4164" ? figure : sill, Height = code == "PF4165" ? figure : height };
        Assert.Empty(Rules(Plan.Spec, facing with { Openings = [mended] }));
        var set = Workbench.Made(Straight(150, Side.Left, facing with { Openings = [mended] }, false), Workbench.Printer, new());
        Assert.Contains(set.Sections[0].Faced.SelectMany(w => w.Regions), r => r.Out < 0);
        Assert.All(set.Sections, s => SoundSection.Check(s, true));
    }

    [Theory]
    [InlineData(WallFinish.Brick, false, false)]
    [InlineData(WallFinish.Brick, true, false)]
    [InlineData(WallFinish.Stone, false, false)]
    [InlineData(WallFinish.Brick, false, true)]
    public void Weep_holes_of_a_wall_that_leans_stand_in_the_place_of_a_brick(WallFinish front, bool through, bool plinth)
    {
        var facing = FacingSpec.For(Scale) with
        {
            Front = front,
            Batter = 1.5,
            Plinth = plinth ? Profiled.Plinth : null,
            Openings = [new() { Kind = OpeningKind.Weep, Ratio = 76.2, IsThrough = through, At = [240, 275, 310] }],
        };
        Assert.Empty(Rules(Plan.Spec, facing));
        var set = Workbench.Made(Straight(150, Side.Left, facing, false), Workbench.Printer, new());
        Assert.All(set.Sections, s => SoundSection.Check(s, true));
        var holes = set.Sections[0].Faced.SelectMany(w => w.Regions.Where(r => r.Out < 0).Select(r => (Wall: w, r.Outline))).ToArray();
        Assert.Equal(3, holes.Length);
        var weep = facing.Openings[0];
        Assert.All(holes, h =>
        {
            Assert.True(h.Wall.Zone.Out > 0.5 && !h.Wall.Zone.IsDeepest);
            double low = h.Outline.Min(p => p.Y), high = h.Outline.Max(p => p.Y);
            Assert.InRange(h.Wall.Zone.Low, weep.Sill - (high - low), weep.Sill + (high - low));
            Assert.True(low > h.Wall.Zone.Low && high < h.Wall.Zone.High);
        });
    }

    [Theory]
    [InlineData(OpeningKind.Weep, 2.5, WallFinish.Brick, "height")]
    [InlineData(OpeningKind.Refuge, 9.8, WallFinish.Brick, "batter")]
    [InlineData(OpeningKind.Weep, 0.9, WallFinish.Rubble, "batter")]
    public void What_does_not_go_into_a_course_of_a_wall_that_leans_is_refused_with_a_remedy_that_works(OpeningKind kind, double height, WallFinish front,
        string cured)
    {
        var facing = FacingSpec.For(Scale) with { Front = front, Batter = 1.5, Openings = [new() { Kind = kind, Ratio = 76.2, Height = height }] };
        var found = Assert.Single(Rules(Plan.Spec, facing));
        Assert.Equal("PF4136", found.Code);
        Assert.EndsWith(cured, found.Cure!.Key, StringComparison.Ordinal);
        var mended = cured == "batter" ? facing with { Batter = 0 }
            : facing
            with
            { Openings = [facing.Openings[0] with { Height = double.Parse(found.Cure.Value, System.Globalization.CultureInfo.InvariantCulture) }] };
        Assert.Empty(Rules(Plan.Spec, mended));
    }

    [Fact]
    public void Openings_stand_between_buttresses_under_their_heads()
    {
        var facing = FacingSpec.For(Scale) with
        {
            Piers = PierSpec.For(Scale) with { Height = 13 },
            Openings = [new() { Kind = OpeningKind.Weep, Ratio = 76.2 }],
        };
        Assert.Empty(Rules(Plan.Spec, facing));
        var set = Workbench.Made(Straight(150, Side.Left, facing, false), Workbench.Printer, new());
        Assert.All(set.Sections, s => SoundSection.Check(s, true));
        Assert.Equal(set.Plan.WallOpenings.Count, set.Sections.Sum(s => s.Faced.Sum(w => w.Regions.Count(r => r.Out < 0))));
        Assert.NotEmpty(set.Plan.WallOpenings);
    }

    [Theory]
    [InlineData("PF5055", PrintPose.Automatic, 1, 0.3, WallFinish.Brick)]
    [InlineData("PF5056", PrintPose.Upright, 2, 0.5, WallFinish.Brick)]
    [InlineData("PF5057", PrintPose.Automatic, 2, 0.3, WallFinish.Planks)]
    public void Profiles_that_a_printer_or_a_wall_does_not_take_are_told(string code, PrintPose pose, int steps, double each, WallFinish ends)
    {
        var facing = Profiled with { Ends = ends, Plinth = Profiled.Plinth! with { Steps = steps }, Corbel = Profiled.Corbel! with { Projection = each } };
        var made = SectionMaker.Make(Straight(150, Side.Left, facing, false), Workbench.Printer, new() { Pose = pose });
        Assert.Single(made.Findings, f => f.Code == code);
    }

    [Theory]
    [InlineData(WallFinish.Brick, Side.Left, true, false)]
    [InlineData(WallFinish.Rubble, Side.Right, false, false)]
    [InlineData(WallFinish.Brick, Side.Right, false, true)]
    public void Walls_that_lean_are_sound_and_of_their_volume(WallFinish front, Side side, bool ramps, bool piers)
    {
        var facing = FacingSpec.For(Scale) with { Front = front, Batter = 1.5, Piers = piers ? PierSpec.For(Scale) : null };
        Assert.All(Workbench.Made(Straight(ramps ? 260 : 130, side, facing, ramps), Workbench.Printer, new()).Sections, s => SoundSection.Check(s, true));
    }

    /// <summary>Of eighteen courses each stands back behind the one below it by an even share of its height; the foot stands at the proven face.</summary>
    [Fact]
    public void A_wall_that_leans_goes_back_by_an_even_share_each_course_from_the_proven_face()
    {
        const double batter = 1.5;
        double wall = Plan.WallFace.Reach[0], joint = Profiled.Joint;
        var mesh = Workbench.Made(Straight(150, Side.Left, FacingSpec.For(Scale) with { Batter = batter }, false), Workbench.Printer,
            new()).Sections[0].Solid.Mesh;

        // Courses meet in the middle of beds; the lowest begins at the baseboard.
        double upper = Under - joint - Course + (joint / 2);
        for (int i = 0; i < 18; i++)
        {
            double foot = i == 17 ? 0 : Under - joint - ((i + 1) * Course) + (joint / 2), back = batter * foot / upper;
            var row = BrickFaces.In(mesh, new(0, wall + back), new(1, 0)).SelectMany(r => r).ToList();
            Assert.True(row.Count > 30);
            Assert.All(row, b => Assert.Equal(Under - joint - (i * Course), b.High, 2e-3));
        }

        Assert.Equal(wall, mesh.Vertices.Where(v => v.Z < Under).Min(v => v.Y), 1e-4);
    }

    [Fact]
    public void A_plain_wall_that_leans_has_the_volume_of_its_oblongs()
    {
        const double batter = 1.5, long0 = 150, wide0 = 59, wall = 1.625, edge = 1.5 - 1.2;
        var plain = Profiled with { Front = WallFinish.Plain, Back = WallFinish.Plain, Ends = WallFinish.Plain, Plinth = null, Corbel = null, Batter = batter };
        double with = Workbench.Made(Straight(150, Side.Left, plain, false), Workbench.Printer, new()).Sections[0].Volumes.Finished,
            without = Workbench.Made(Straight(150, Side.Left, null, false), Workbench.Printer, new()).Sections[0].Volumes.Finished;
        double Area(double o) => ((long0 - (2 * (batter - o))) * (wide0 - (2 * (batter - o)))) - ((long0 - (2 * batter)) * (wide0 - (2 * batter)));
        double expected = (-8 * batter * wall * Under) - (edge * batter * long0), upper = Under - Course;

        // Lines of the plan go to its grid.
        double OnGrid(double o) => batter - (Math.Round((batter - o) / Tolerances.GridStep) * Tolerances.GridStep);
        for (double high = upper; high > 0.06; high -= Course)
        {
            double low = high < Course + 0.06 ? 0 : high - Course;
            expected += Area(OnGrid(batter * (1 - (low / upper)))) * (high - low);
        }

        Assert.Equal(expected, with - without, 2e-3);
    }

    /// <summary>Beside piers, where what stands out is shorter than what is behind it, the coping in an elevation still lies on one level.</summary>
    [Fact]
    public void An_elevation_of_walls_with_piers_has_one_upper_edge()
    {
        var facing = Profiled with { Piers = PierSpec.For(Scale) };
        var section = Workbench.Made(Straight(150, Side.Left, facing, false), Workbench.Printer, new()).Sections[0];
        var slices = PlatformForge.Exports.Drawings.Elevations.Walls.WallSlice.Of(section, PlatformForge.Solids.Bodies.Layers.WallNames.FrontOf(1)).ToArray();
        Assert.True(slices.Length >= 7);
        Assert.All(slices.SelectMany(s => s.Top), p => Assert.Equal(Under, p.Y, 1e-6));
        Assert.All(slices, s => Assert.Equal([1, 2, 3, 4, 5], s.Parts().Select(p => p.Part.Wall.Zone.Number).Distinct().Order()));
    }

    [Fact]
    public void A_lean_that_no_wall_has_is_refused_and_one_wider_than_a_line_a_course_is_told()
    {
        var found = Assert.Single(Rules(Plan.Spec, FacingSpec.For(Scale) with { Batter = 6 }));
        Assert.Equal(("PF4166", "4.44"), (found.Code, found.Cure!.Value));
        Assert.Empty(Rules(Plan.Spec, FacingSpec.For(Scale) with { Batter = 4.44 }));
        var rubble = FacingSpec.For(Scale) with { Front = WallFinish.Rubble, Batter = 2.5 };
        var made = SectionMaker.Make(Straight(150, Side.Left, rubble, false), Workbench.Printer, new());
        var told = Assert.Single(made.Findings, f => f.Code == "PF5055");
        double figure = double.Parse(told.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.DoesNotContain(SectionMaker.Make(Straight(150, Side.Left, rubble with { Batter = figure }, false), Workbench.Printer, new()).Findings,
            f => f.Code == "PF5055");
    }

    [Theory]
    [InlineData(WallFinish.Brick, Side.Left, false, true, 0.0)]
    [InlineData(WallFinish.Stone, Side.Right, true, false, 0.0)]
    [InlineData(WallFinish.Brick, Side.Right, false, false, 1.0)]
    [InlineData(WallFinish.Plain, Side.Left, true, true, 0.0)]
    public void Buttresses_with_weathered_heads_are_sound_and_of_their_volume(WallFinish front, Side side, bool ramps, bool plinth, double batter)
    {
        var facing = FacingSpec.For(Scale) with
        {
            Front = front,
            Batter = batter,
            Plinth = plinth ? PlinthSpec.For(Scale) : null,
            Piers = PierSpec.For(Scale) with { Height = 12, On = PierWalls.Both },
        };
        Assert.All(Workbench.Made(Straight(ramps ? 260 : 130, side, facing, ramps), Workbench.Printer, new()).Sections,
            s => SoundSection.Check(s, front != WallFinish.Plain));
    }

    [Fact]
    public void A_buttresss_head_measured_on_the_mesh_slopes_as_stated_from_the_wall_down_to_its_front()
    {
        var piers = new PierSpec { Width = 6, Projection = 1.5, Height = 12, Weathering = 60 };
        var plain = Profiled with { Front = WallFinish.Plain, Back = WallFinish.Plain, Ends = WallFinish.Plain, Plinth = null, Corbel = null, Piers = piers };
        var plan = Straight(150, Side.Left, plain, false);
        var mesh = Workbench.Made(plan, Workbench.Printer, new()).Sections[0].Solid.Mesh;
        double wall = plan.WallFace.Reach[0], head = Enumerable.Range(0, 18).Select(i => Under - (i * Course)).MinBy(y => Math.Abs(y - 12)),
            fall = Math.Tan(Math.PI / 3);
        Assert.Equal(wall, mesh.Vertices.Where(v => v.Z < Under).Min(v => v.Y), 1e-4);
        double area = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3[] c = [.. Enumerable.Range(0, 3).Select(k => mesh.Vertices[mesh.Triangles[(3 * t) + k]])];
            var normal = Point3.Cross(c[1] - c[0], c[2] - c[0]);
            if (normal.Length > 1e-9 && normal.Z / normal.Length is > 0.1 and < 0.9 && c[0].Z < Under)
            {
                // From a tenth of a mm over the head's level, where the wall is, down to the front.
                Assert.All(c, p => Assert.Equal(head + 0.1 - (fall * (wall + 1.5 - p.Y)), p.Z, 2e-3));
                area += normal.Length / 2;
            }
        }

        // The slope begins where it comes down to the head's level.
        double wide = 1.5 - (0.1 / fall);
        Assert.Equal(plan.Piers.Count * 6 * wide / Math.Cos(Math.PI / 3), area, 0.02);
        Assert.True(plan.Piers.Count >= 3);

        // The front is as wide as stated, up to where the slope ends.
        var fronts = BrickFaces.In(mesh, new(0, wall), new(1, 0)).SelectMany(r => r).Where(b => b.High < Under - 1).ToList();
        Assert.Equal(plan.Piers.Count, fronts.Count);
        Assert.All(fronts, f => Assert.Equal(6, f.To - f.From, 2e-3));
        Assert.All(fronts, f => Assert.Equal(head + 0.1 - (fall * 1.5), f.High, 2e-3));
    }

    /// <summary>Weathered heads of buttresses in brick and in stone, beside a ramp too: one slope of the stated fall each, before which nothing
    /// stands.</summary>
    [Theory]
    [InlineData(WallFinish.Brick, 60, false)]
    [InlineData(WallFinish.Brick, 50, true)]
    [InlineData(WallFinish.Stone, 60, true)]
    public void Heads_of_faced_buttresses_slope_as_stated(WallFinish front, double weathering, bool ramps)
    {
        var facing = FacingSpec.For(Scale) with { Front = front, Piers = PierSpec.For(Scale) with { Height = 11, Weathering = weathering } };
        var plan = Straight(ramps ? 260 : 150, Side.Left, facing, ramps);
        double wall = plan.WallFace.Reach[0], back = facing.SetBack(false), area = 0, other = 0;
        foreach (var section in Workbench.Made(plan, Workbench.Printer, new()).Sections)
        {
            SoundSection.Check(section, true);
            var mesh = section.Solid.Mesh;
            var level = mesh.Vertices.Where(v => v.X > plan.Profile.StartHead + 1 && v.Z < Under - 1).Select(v => v.Y);
            Assert.Equal(wall, level.DefaultIfEmpty(wall).Min(), 1e-4);
            for (int t = 0; t < mesh.TriangleCount; t++)
            {
                Point3[] c = [.. Enumerable.Range(0, 3).Select(k => mesh.Vertices[mesh.Triangles[(3 * t) + k]])];
                var normal = Point3.Cross(c[1] - c[0], c[2] - c[0]);
                bool slopes = normal.Length > 1e-6 && Math.Abs(normal.X / normal.Length) < 0.02 && -normal.Y / normal.Length > 0.2
                    && normal.Z / normal.Length > 0.2;
                if (slopes && c[0].Z < Under - 1 && c.All(p => p.Y > wall - 1e-4 && p.Y < wall + back + 0.2))
                {
                    bool isHead = Math.Abs((Math.Atan2(-normal.Y, normal.Z) * 180 / Math.PI) - weathering) < 0.5;
                    (area, other) = isHead ? (area + (normal.Length / 2), other) : (area, other + (normal.Length / 2));
                }
            }
        }

        // As wide as a pier, from the wall down to its front; the joints' depth less at either side.
        double slope = (back - facing.Depth) / Math.Cos(weathering * Math.PI / 180);
        Assert.InRange(area / (plan.Piers.Count * facing.Piers!.Width * slope), 0.8, 1.1);

        // Where bricks turn a pier's corner under its head they are mitred.
        Assert.InRange(other, 0, 0.05 * area);
    }

    [Fact]
    public void Bricks_turn_a_buttresss_corners_and_the_wall_over_its_head_goes_on_in_bond()
    {
        var facing = FacingSpec.For(Scale) with { Piers = PierSpec.For(Scale) with { Height = 12 } };
        var plan = Straight(150, Side.Left, facing, false);
        var mesh = Workbench.Made(plan, Workbench.Printer, new()).Sections[0].Solid.Mesh;
        double wall = plan.WallFace.Reach[0], header = 112.5 / 76.2, back = facing.SetBack(false);
        var over = BrickFaces.In(mesh, new(0, wall + back), new(1, 0)).Where(r => r[0].Low > 12.5).ToList();
        Assert.True(over.Count >= 5);

        // Over the heads nothing breaks a course: closers stand beside the two quoins alone.
        Assert.All(over, row => Assert.InRange(row.Count(b => b.To - b.From + facing.Joint < 0.6 * header), 0, 2));
        var fronts = BrickFaces.In(mesh, new(0, wall + 0), new(1, 0)).Where(r => r[0].High < 9).ToList();
        Assert.True(fronts.Count > 5);
        Assert.All(fronts.Where(r => r[0].High - r[0].Low > 0.6), row => Assert.Contains(row.Count, new[] { 2 * plan.Piers.Count, 3 * plan.Piers.Count }));
    }

    [Fact]
    public void A_wall_that_leans_goes_on_in_bond_over_the_heads_of_its_buttresses()
    {
        const double batter = 1;
        var facing = FacingSpec.For(Scale) with { Batter = batter, Piers = PierSpec.For(Scale) with { Height = 12 } };
        var plan = Straight(150, Side.Left, facing, false);
        var mesh = Workbench.Made(plan, Workbench.Printer, new()).Sections[0].Solid.Mesh;
        double deepest = plan.WallFace.Reach[0] + facing.SetBack(false), joint = facing.Joint, upper = Under - joint - Course + (joint / 2),
            header = 112.5 / 76.2;
        for (int i = 0; i < 5; i++)
        {
            double foot = Under - joint - ((i + 1) * Course) + (joint / 2);
            var row = BrickFaces.In(mesh, new(0, deepest - (batter * (1 - (foot / upper)))), new(1, 0)).SelectMany(r => r).ToList();
            Assert.True(row.Count > 30);
            Assert.All(row, b => Assert.Equal(Course - joint, b.High - b.Low, 2e-3));
            Assert.InRange(row.Count(b => b.To - b.From + joint < 0.6 * header), 0, 2);
        }
    }

    /// <summary>Ledges of a plinth's steps and of a lean, against oblongs all round: less only the corners, which the walls beside them both have.</summary>
    [Theory]
    [InlineData(0.6, 2, 0.0)]
    [InlineData(0.0, 0, 1.5)]
    public void Ledges_have_the_area_between_their_oblongs(double projection, int steps, double batter)
    {
        var plinth = steps > 0 ? PlinthSpec.For(Scale) with { Projection = projection, Steps = steps } : null;
        var facing = FacingSpec.For(Scale) with { Plinth = plinth, Batter = batter };
        var plan = Straight(150, Side.Left, facing, false);
        var section = Workbench.Made(plan, Workbench.Printer, new()).Sections[0];
        double told = PlatformForge.Exports.Workshop.LedgeAreas.Of(plan, section).Sum(l => l.Area), foot = projection + batter;

        // The foot stands at the proven faces but for the joints' depth, at which the ground of bricks lies: 59 mm across from wall to wall.
        double length = 150 - (2 * facing.Depth), width = 59 - (2 * facing.Depth), whole = (length * width) - ((length - (2 * foot)) * (width - (2 * foot)));
        double one = steps > 0 ? projection / steps : batter * Course / (Under - Course);
        Assert.InRange(told, whole, whole + (4 * foot * one) + 0.01);
    }

    /// <summary>Profiles with ends askew, banks and open backs, each with plinth and corbelled courses, a lean, or buttresses over a plinth.</summary>
    [Theory]
    [InlineData(1, Side.Left, BackKind.Wall, 30, -20)]
    [InlineData(0, Side.Right, BackKind.Bank, 15, 25)]
    [InlineData(1, Side.Right, BackKind.Bank, 15, 25)]
    [InlineData(2, Side.Right, BackKind.Bank, 15, 25)]
    [InlineData(1, Side.Left, BackKind.Open, -40, 0)]
    [InlineData(0, Side.Right, BackKind.Open, 0, 0)]
    [InlineData(1, Side.Left, BackKind.Bank, 0, 0)]
    [InlineData(2, Side.Left, BackKind.Bank, 0, 0)]
    public void Profiles_go_with_ends_askew_banks_and_open_backs(int which, Side side, BackKind kind, double start, double end)
    {
        FacingSpec plain = FacingSpec.For(Scale) with { HasBack = false }, facing = which switch
        {
            0 => plain with { Plinth = PlinthSpec.For(Scale), Corbel = CorbelSpec.For(Scale) },
            1 => plain with { Batter = 1.5 },
            _ => plain with { Plinth = PlinthSpec.For(Scale), Piers = PierSpec.For(Scale) with { Height = 12 } },
        };
        var plan = Workbench.Straight(260, side, s => s with
        {
            Facing = facing,
            Back = new() { Kind = kind },
            Skew = new() { Start = start, End = end },
            Deck = s.Deck with { Width = 32 },
            Ribs = new() { Pitch = 40 },
        });
        var set = Workbench.Made(plan, Workbench.Printer, new());
        Assert.All(set.Sections, s => SoundSection.Check(s, true));

        // What stands out most stands at the face that is held against vehicles, nowhere before it; where lines across turn, on a grid's step behind it.
        double way = side == Side.Left ? 1 : -1, proven = plan.CopingFront.Reach[0] + plan.Spec.Coping.Overhang;
        Assert.All(set.Sections, s => Assert.InRange(s.Solid.Mesh.Vertices.Where(v => v.Z < Under - 0.5).Min(v => way * v.Y), proven - 1e-4, proven + 0.02));
    }

    /// <summary>A plinth's steps at skew ends are as wide at the back as at the edge, hold themselves by their own line, and have the area between two
    /// parallelograms: by w of line, w·P − w²·Σ cot(θ/2).</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(0, 2)]
    [InlineData(20, 1)]
    [InlineData(30, 2)]
    [InlineData(40, 1)]
    [InlineData(-40, 2)]
    public void Steps_of_a_line_hold_themselves_at_ends_askew(double angle, int steps)
    {
        const double Width = 32, Length = 260, Line = 0.4;
        FacingSpec plain = Profiled with
        {
            Front = WallFinish.Plain,
            Back = WallFinish.Plain,
            Ends = WallFinish.Plain,
            Plinth = new() { Height = 3.9, Projection = Line * steps, Steps = steps },
            Corbel = null,
        };
        var plan = Workbench.Straight(Length, Side.Left, s => s with
        {
            Facing = plain,
            Skew = new() { Start = angle, End = -angle },
            Deck = s.Deck with { Width = Width },
            Ribs = new() { Pitch = 40 },
        });
        var set = Workbench.Made(plan, PrinterSpec.Oblong(400, 220, 250), new() { Engrave = false });
        var section = Assert.Single(set.Sections);
        SoundSection.Check(section, false);

        double turn = angle * Math.PI / 180, across = Width - plan.Spec.Coping.Overhang;
        double[] shelves = [.. UpwardAreas(section.Solid.Mesh, 1, 10)];
        Assert.Equal(steps, shelves.Length);
        double corners = 2 * ((1 / Math.Tan((90 - angle) * Math.PI / 360)) + (1 / Math.Tan((90 + angle) * Math.PI / 360)));
        for (int k = 0; k < steps; k++)
        {
            double round = (2 * (Length + (across / Math.Cos(turn)))) - (2 * k * Line * corners);
            Assert.Equal((Line * round) - (Line * Line * corners), shelves[k], 0.15);
        }
    }

    // Level areas that look up, by height between two, the lowest first: mm².
    private static SortedDictionary<double, double>.ValueCollection UpwardAreas(Mesh mesh, double low, double high)
    {
        var found = new SortedDictionary<double, double>();
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 a = mesh.Vertices[mesh.Triangles[3 * t]], b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]], c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            var normal = Point3.Cross(b - a, c - a);
            if (a.Z > low && a.Z < high && normal.Z > 0.999 * normal.Length)
            {
                found[Math.Round(a.Z, 3)] = found.GetValueOrDefault(Math.Round(a.Z, 3)) + (normal.Z / 2);
            }
        }

        return found.Values;
    }

    [Fact]
    public void Trestles_take_no_profile()
    {
        var found = new List<Finding>();
        PlatformForge.Platforms.Rules.ProfileRule.Check(Plan.Spec with { Facing = Profiled, Trestle = new() }, Plan.Site, found);
        Assert.Equal("PF4168", Assert.Single(found).Code);
    }

    [Theory]
    [InlineData(2.5)]
    [InlineData(18.2)]
    public void Buttresses_without_room_for_their_heads_are_refused_with_a_height_that_is_taken(double height)
    {
        var facing = FacingSpec.For(Scale) with { Piers = PierSpec.For(Scale) with { Height = height } };
        var found = Assert.Single(Rules(Plan.Spec, facing));
        Assert.Equal("PF4167", found.Code);
        double figure = double.Parse(found.Cure!.Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Empty(Rules(Plan.Spec, facing with { Piers = facing.Piers! with { Height = figure } }));
    }

    private static List<Finding> Rules(PlatformSpec spec, FacingSpec facing)
    {
        var findings = new List<Finding>();
        PlatformForge.Platforms.Rules.ProfileRule.Check(spec with { Facing = facing }, Plan.Site, findings);
        return findings;
    }

    private static PlatformPlan Plan { get; } = Straight(150, Side.Left, Profiled, false);

    private static PlatformPlan Straight(double length, Side side, FacingSpec? facing, bool ramps) =>
        Workbench.Straight(length, side, s => s with
        {
            // On the others courses are drawn out.
            Height = !ramps && facing?.Front is null or WallFinish.Brick or WallFinish.Plain ? Under + 1.5 - Pendlewick.Site.RailTop : s.Height,
            Facing = facing,
            StartRamp = ramps ? new(Gradient: 8) : null,
        });
}
